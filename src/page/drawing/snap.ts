import type { PanelId } from '../../assembly/index.ts'
import type { Vec3 } from '../../geometry/index.ts'
import { formatInch, formatMm, type Units } from '../../length/index.ts'
import type { Look, Scene, SceneEdge, SceneHole, ScenePoint } from '../scene/types.ts'
import { nearest } from './near.ts'

/** A point that is measured from or to. */
export interface MeasurePoint {
  readonly at: ScenePoint
  /** In the frame of the scene, mm; nothing for a free point. */
  readonly place?: Vec3
  readonly kind: 'centre' | 'corner' | 'edge' | 'free'
  /** The panel that it belongs to, where distances between two panels of the drawing mean nothing. */
  readonly of?: PanelId
}

/** Middles and corners draw harder than the edges that they lie on: an edge is taken only within this part of the reach. */
const EDGE_REACH = 0.6

/** What measuring takes at a point of the drawing: middle, corner, the nearest of an edge; else, where it means something, the point. */
export function snapAt(
  scene: Scene,
  holes: readonly SceneHole[],
  at: ScenePoint,
  reach: number,
): MeasurePoint | undefined {
  const point = nearest(measurePoints(scene, holes), at, reach)
  if (point !== undefined) return point
  const onEdges = scene.edges.map((edge) => onEdge(edge, at))
  return nearest(onEdges, at, reach * EDGE_REACH) ?? freeAt(scene, at)
}

/** The point itself, where distances on the drawing are true; of a pair only on a panel, to which it then belongs. */
function freeAt({ look, flat, edges }: Scene, at: ScenePoint): MeasurePoint | undefined {
  if (!flat) return undefined
  if (look.kind !== 'pair') return { at, kind: 'free' }
  const of = look.panels.find((panel) =>
    isInside(
      edges.filter(({ from }) => from.of === panel),
      at,
    ),
  )
  return of === undefined ? undefined : { at, kind: 'free', of }
}

/** Within closed rows of edges: a line from the point to the right crosses an odd number of them. */
function isInside(edges: readonly SceneEdge[], [x, y]: ScenePoint): boolean {
  const crossed = edges.filter(({ from: { at: a }, to: { at: b } }) => {
    if (a[1] > y === b[1] > y) return false
    return x < a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0])
  })
  return crossed.length % 2 === 1
}

/** All points that have a name, of the `holes` that are shown and the corners: what the arrow keys step between. */
export function measurePoints({ look, snaps }: Scene, holes: readonly SceneHole[]): readonly MeasurePoint[] {
  const isPair = look.kind === 'pair'
  return [
    ...holes.map(({ at, place, panel }): MeasurePoint => ({ at, place, kind: 'centre', ...(isPair && { of: panel }) })),
    ...snaps,
  ]
}

/** The point of an edge that is nearest on the drawing. The drawing is a parallel projection, so shares of an edge are true. */
function onEdge({ from, to }: SceneEdge, [x, y]: ScenePoint): MeasurePoint {
  const dx = to.at[0] - from.at[0]
  const dy = to.at[1] - from.at[1]
  const square = dx * dx + dy * dy
  const share = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - from.at[0]) * dx + (y - from.at[1]) * dy) / square))
  const between = (a: number, b: number): number => a + share * (b - a)
  return {
    at: [between(from.at[0], to.at[0]), between(from.at[1], to.at[1])],
    place: [
      between(from.place[0], to.place[0]),
      between(from.place[1], to.place[1]),
      between(from.place[2], to.place[2]),
    ],
    kind: 'edge',
    ...(from.of !== undefined && { of: from.of }),
  }
}

/** A distance in one direction, or straight. */
export interface Reading {
  readonly way: 'straight' | 'across' | 'up' | 'deep'
  readonly mm: number
}

/**
 * The straight distance first, then its parts. On a flat drawing distances are those of the drawing, whatever lies behind
 * it; else those between the places of the two points. Nothing where that means nothing: between two panels of a pair.
 */
export function measured(
  look: Look,
  flat: boolean,
  from: MeasurePoint,
  to: MeasurePoint,
): readonly Reading[] | undefined {
  if (from.of !== undefined && to.of !== undefined && from.of !== to.of) return undefined
  if (flat) {
    const across = Math.abs(to.at[0] - from.at[0])
    const second = Math.abs(to.at[1] - from.at[1])
    return [
      { way: 'straight', mm: Math.hypot(across, second) },
      { way: 'across', mm: across },
      { way: look.kind === 'floor' ? 'deep' : 'up', mm: second },
    ]
  }
  if (from.place === undefined || to.place === undefined) return undefined
  const [x, y, z] = [0, 1, 2].map((axis) => Math.abs((to.place?.[axis] ?? 0) - (from.place?.[axis] ?? 0)))
  if (x === undefined || y === undefined || z === undefined) return undefined
  return [
    { way: 'straight', mm: Math.hypot(x, y, z) },
    { way: 'across', mm: x },
    { way: 'deep', mm: y },
    { way: 'up', mm: z },
  ]
}

/** A length that was measured, to a hundredth of a mm, `32 mm`, or in inch fractions, `1 17/64 in − 0.1 mm`. */
export const lengthWords = (mm: number, units: Units): string =>
  units === 'in' ? formatInch(mm) : `${formatMm(Math.round(mm * 100) / 100)} mm`
