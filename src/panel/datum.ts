import type { EdgeSide } from '../assembly/index.ts'
import type { Vec3 } from '../geometry/index.ts'
import type { EdgeName, Panel, Surface } from './types.ts'

/** A distance from a named edge of a panel, mm. */
export interface FromEdge {
  readonly edge: EdgeName
  readonly side: EdgeSide
  readonly mm: number
}

/** Distances of a point (panel frame) from the panel's two datum edges, mm. */
export function fromDatum(panel: Panel, at: Vec3): { readonly x: FromEdge; readonly y: FromEdge } {
  const { x, y } = panel.datum
  return {
    x: { edge: panel.edges[x], side: x, mm: x === 'x0' ? at[0] : panel.length - at[0] },
    y: { edge: panel.edges[y], side: y, mm: y === 'y0' ? at[1] : panel.width - at[1] },
  }
}

/** `face A (inside)`, `the front edge`. */
export function surfaceWords(panel: Panel, surface: Surface): string {
  return surface === 'A' || surface === 'B'
    ? `face ${surface} (${panel.faces[surface]})`
    : `the ${panel.edges[surface]} edge`
}
