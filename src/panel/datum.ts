import type { Vec2, Vec3 } from '../geometry/index.ts'
import type { EdgeName, Panel, Surface } from './types.ts'

/** A distance from a named edge of a panel, mm. */
export interface FromEdge {
  readonly edge: EdgeName
  readonly mm: number
}

/** Distances of a point (panel frame, as seen on face A) from the panel's two datum edges, mm. */
export function distancesFromDatum(panel: Panel, at: Vec3 | Vec2): { readonly x: number; readonly y: number } {
  return {
    x: panel.datum.x === 'x0' ? at[0] : panel.length - at[0],
    y: panel.datum.y === 'y0' ? at[1] : panel.width - at[1],
  }
}

/** The same with the names of the edges. */
export function fromDatum(panel: Panel, at: Vec3 | Vec2): { readonly x: FromEdge; readonly y: FromEdge } {
  const distances = distancesFromDatum(panel, at)
  return {
    x: { edge: panel.edges[panel.datum.x], mm: distances.x },
    y: { edge: panel.edges[panel.datum.y], mm: distances.y },
  }
}

/** `face A (inside)`, `the front edge`. */
export function surfaceWords(panel: Panel, surface: Surface): string {
  return surface === 'A' || surface === 'B'
    ? `face ${surface} (${panel.faces[surface]})`
    : `the ${panel.edges[surface]} edge`
}
