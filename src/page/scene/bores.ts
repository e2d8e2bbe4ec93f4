import { isHandWork, mouthRadius } from '../../drawing/index.ts'
import { NOISE_MM, type Vec3 } from '../../geometry/index.ts'
import type { Bore, Surface } from '../../panel/index.ts'
import { type Ellipse, ellipse, ellipseOf, polygon, strokes } from './lines.ts'
import { seen, seenWay } from './plane.ts'
import type { PanelToScene, ScenePoint } from './types.ts'

/** How a bore looks: its lines, and points that hold all of it. */
export interface BoreLines {
  readonly d: string
  readonly reach: readonly ScenePoint[]
}

/** The axes of the plane that a bit enters, panel frame. */
const PLANES: Readonly<Record<Surface, readonly [Vec3, Vec3]>> = {
  A: [
    [1, 0, 0],
    [0, 1, 0],
  ],
  B: [
    [1, 0, 0],
    [0, 1, 0],
  ],
  x0: [
    [0, 1, 0],
    [0, 0, 1],
  ],
  x1: [
    [0, 1, 0],
    [0, 0, 1],
  ],
  y0: [
    [1, 0, 0],
    [0, 0, 1],
  ],
  y1: [
    [1, 0, 0],
    [0, 0, 1],
  ],
}

/**
 * The rim of a bore where it enters, and that of its sink; of one that leans the whole mouth, an ellipse along the way that it
 * leans. `at`: where its middle is drawn. `end`: where it comes out there is no sink.
 */
export function rimOf(m: PanelToScene, bore: Bore, at: ScenePoint, end: 'in' | 'out'): BoreLines {
  const radius = bore.diameter / 2
  const rim = mouthOf(m, bore)
  const scaled = (by: number): Ellipse => ({ long: rim.long * by, short: rim.short * by, turn: rim.turn })
  const wide = end === 'in' ? mouthRadius(bore) : radius
  const sink = wide > radius + NOISE_MM ? ellipse(at, scaled(wide)) : ''
  const reach = wide * rim.long
  return {
    d: ellipse(at, scaled(radius)) + sink,
    reach: [
      [at[0] - reach, at[1] - reach],
      [at[0] + reach, at[1] + reach],
    ],
  }
}

/** The mouth of a bore of radius 1. */
export function mouthOf(m: PanelToScene, { surface, axis, leanDeg }: Bore): Ellipse {
  const [p, q] = PLANES[surface]
  const [u, v] = [seenWay(m, p), seenWay(m, q)]
  if (leanDeg === undefined) return ellipseOf(u, v)
  // On the surface the mouth is as much longer along the lean as the bit is slanted.
  const [a, b] = [dot(axis, p), dot(axis, q)]
  const flat = Math.hypot(a, b)
  const [cos, sin] = [a / flat, b / flat]
  const longer = 1 / Math.sin((leanDeg * Math.PI) / 180)
  const along: ScenePoint = [(u[0] * cos + v[0] * sin) * longer, (u[1] * cos + v[1] * sin) * longer]
  const across: ScenePoint = [v[0] * cos - u[0] * sin, v[1] * cos - u[1] * sin]
  return ellipseOf(along, across)
}

const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]

/** A bore that is seen from its side as it runs in the wood: a rectangle as long and wide as it is. */
export function sideOf(m: PanelToScene, bore: Bore): BoreLines {
  const at = seen(m, bore.at)
  const end = farEnd(m, bore)
  const [dx, dy] = [end[0] - at[0], end[1] - at[1]]
  const long = Math.hypot(dx, dy)
  const radius = bore.diameter / 2
  const [nx, ny] = [(-dy / long) * radius, (dx / long) * radius]
  const points: readonly ScenePoint[] = [
    [at[0] + nx, at[1] + ny],
    [end[0] + nx, end[1] + ny],
    [end[0] - nx, end[1] - ny],
    [at[0] - nx, at[1] - ny],
  ]
  return { d: polygon(points), reach: points }
}

/** The same as a stroke along its axis, for drawings on which it is too small for more. */
export function strokeOf(m: PanelToScene, bore: Bore): BoreLines {
  const line = [seen(m, bore.at), farEnd(m, bore)]
  return { d: strokes([line]), reach: line }
}

/** Where the axis ends. */
function farEnd(m: PanelToScene, { at, axis, depth }: Bore): ScenePoint {
  return seen(m, [at[0] + axis[0] * depth, at[1] + axis[1] * depth, at[2] + axis[2] * depth])
}

/** Its axis lies square to the line of sight; of one that leans, the surface does not decide. */
export function isSeenFromSide(m: PanelToScene, bore: Bore): boolean {
  return mouthOf(m, bore).short <= NOISE_MM
}

export const isInEdge = (bore: Bore): boolean => isHandWork(bore) && bore.leanDeg === undefined
