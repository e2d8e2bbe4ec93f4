import {
  apart,
  type Curve,
  circleArcOf,
  curvesOf,
  distanceToCurve,
  gapBetweenCurves,
  lengthOf,
  meetingPoints,
  pointAlong,
  turningPointsOf,
} from './curve.ts'
import { type PathVertex, reversed, type Vec2 } from './path.ts'
import type { ClosedPath } from './shapes.ts'
import { NOISE_MM } from './tolerance.ts'

/** The rectangle along the axes around a closed path, its arcs included, mm. */
export function boundsOf(path: ClosedPath): { readonly min: Vec2; readonly max: Vec2 } {
  if (path.every(({ bulge }) => bulge === 0)) return boundsOfPoints(path.map(({ at }) => at))
  const points = curvesOf(path).flatMap((curve) => [curve.from, ...turningPointsOf(curve)])
  return boundsOfPoints(points)
}

function boundsOfPoints(points: readonly Vec2[]): { readonly min: Vec2; readonly max: Vec2 } {
  const xs = points.map(([x]) => x)
  const ys = points.map(([, y]) => y)
  return { min: [Math.min(...xs), Math.min(...ys)], max: [Math.max(...xs), Math.max(...ys)] }
}

/** Middle of the rectangle around a closed path. */
export function middleOf(path: ClosedPath): Vec2 {
  const { min, max } = boundsOf(path)
  return [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2]
}

/**
 * True when a point lies inside a closed path, whichever way it runs; on the line itself either answer may come. Counts
 * how often a ray to the right crosses the path; an end belongs to the piece above it, so that none is counted twice.
 */
export function holdsPoint(path: ClosedPath, [x, y]: Vec2): boolean {
  const crossings = curvesOf(path)
    .flatMap(risingPieces)
    .filter(({ from, to }) => from[1] <= y !== to[1] <= y)
    .filter((piece) => crossingX(piece, y) > x)
  return crossings.length % 2 === 1
}

/** A piece that only rises or only falls; of an arc, with its centre and the side of it that it lies on. */
interface RisingPiece {
  readonly from: Vec2
  readonly to: Vec2
  readonly arc?: { readonly centre: Vec2; readonly radius: number; readonly side: 1 | -1 }
}

function risingPieces(curve: Curve): RisingPiece[] {
  if (curve.bulge === 0) return [curve]
  const { centre, radius, start, sweep } = circleArcOf(curve)
  // Cut at the top and the bottom of the circle, where it turns back.
  const quarter = Math.PI / 2
  const cuts: number[] = []
  const [low, high] = sweep > 0 ? [start, start + sweep] : [start + sweep, start]
  for (let k = Math.ceil((low - quarter) / Math.PI); quarter + k * Math.PI < high; k += 1)
    cuts.push(quarter + k * Math.PI)
  const angles = [low, ...cuts.filter((angle) => angle > low), high]
  const on = (angle: number): Vec2 => [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)]
  const [first, last] = sweep > 0 ? [curve.from, curve.to] : [curve.to, curve.from]
  return angles.slice(1).map((angle, k): RisingPiece => {
    const before = angles[k] ?? low
    const side = Math.cos((before + angle) / 2) > 0 ? 1 : -1
    // The very ends, so that the next piece begins where this one stops.
    const from = k === 0 ? first : on(before)
    const to = k === angles.length - 2 ? last : on(angle)
    return { from, to, arc: { centre, radius, side } }
  })
}

function crossingX({ from, to, arc }: RisingPiece, y: number): number {
  if (arc === undefined) return from[0] + ((to[0] - from[0]) * (y - from[1])) / (to[1] - from[1])
  const { centre, radius, side } = arc
  return centre[0] + side * Math.sqrt(Math.max(0, radius * radius - (y - centre[1]) ** 2))
}

/** Least distance from a point to the line of a closed path, mm. */
export function distanceToContour(path: ClosedPath, p: Vec2): number {
  return Math.min(...curvesOf(path).map((curve) => distanceToCurve(p, curve)))
}

/** Least distance between what two closed paths take in, mm; 0 where they meet or one lies in the other. */
export function gapBetweenShapes(a: ClosedPath, b: ClosedPath): number {
  const [first, second] = [a[0]?.at, b[0]?.at]
  if (first === undefined || second === undefined) throw new Error('a contour without vertices')
  if (holdsPoint(a, second) || holdsPoint(b, first)) return 0
  return gapBetweenContours(a, b)
}

/** Least distance between the lines of two closed paths, mm; 0 where they cross or touch. */
export function gapBetweenContours(a: ClosedPath, b: ClosedPath): number {
  const others = curvesOf(b).map((curve) => ({ curve, box: boxOfCurve(curve) }))
  let least = Number.POSITIVE_INFINITY
  for (const one of curvesOf(a)) {
    const box = boxOfCurve(one)
    for (const other of others) {
      // Most pieces of two long paths are further apart than the nearest found so far, as their boxes show.
      if (squaredGap(box, other.box) < least * least) least = Math.min(least, gapBetweenCurves(one, other.curve))
    }
    if (least === 0) return 0
  }
  return least
}

/** The square of the distance between two boxes: a root for each pair of pieces would take most of the time. */
function squaredGap(a: Bounds, b: Bounds): number {
  const x = Math.max(0, a.min[0] - b.max[0], b.min[0] - a.max[0])
  const y = Math.max(0, a.min[1] - b.max[1], b.min[1] - a.max[1])
  return x * x + y * y
}

/** True when all that `inner` takes in lies in `outer`; they may touch. */
export function liesIn(inner: ClosedPath, outer: ClosedPath): boolean {
  // No crossing: every piece between two touching points lies on one side, and its middle tells which.
  const cuts = curvesOf(outer)
  return curvesOf(inner).every((curve) => {
    const shares = [0, ...cuts.flatMap((cut) => meetingPoints(curve, cut)).map((p) => shareOf(curve, p)), 1]
    shares.sort((a, b) => a - b)
    return shares.slice(1).every((share, k) => {
      const p = pointAlong(curve, (share + (shares[k] ?? 0)) / 2)
      return holdsPoint(outer, p) || distanceToContour(outer, p) <= 10 * NOISE_MM
    })
  })
}

/** How far along a piece a point of it lies, 0..1. */
function shareOf(curve: Curve, p: Vec2): number {
  if (curve.bulge === 0) return Math.min(1, apart(curve.from, p) / lengthOf(curve))
  const { centre, start, sweep } = circleArcOf(curve)
  const full = 2 * Math.PI
  const turn = Math.atan2(p[1] - centre[1], p[0] - centre[0]) - start
  const ahead = (((sweep > 0 ? turn : -turn) % full) + full) % full
  return ahead > full - NOISE_MM ? 0 : Math.min(1, ahead / Math.abs(sweep))
}

/** Where a closed path crosses or touches itself; nothing when it is a simple contour. */
export function crossingOf(path: ClosedPath): Vec2 | undefined {
  const curves = curvesOf(path)
  const boxes = curves.map(boxOfCurve)
  for (const [k, a] of curves.entries()) {
    for (let n = k + 1; n < curves.length; n += 1) {
      const b = curves[n]
      if (b === undefined || areApart(boxes[k], boxes[n])) continue
      const joints = jointsOf(a, b, n === k + 1, (n + 1) % curves.length === k)
      const crossing = meetingPoints(a, b).find((p) => joints.every((joint) => apart(p, joint) > JOINT_MM))
      if (crossing !== undefined) return crossing
    }
  }
  return undefined
}

type Bounds = ReturnType<typeof boundsOf>

function boxOfCurve(curve: Curve): Bounds {
  return boundsOfPoints([curve.from, curve.to, ...turningPointsOf(curve)])
}

/** Two boxes have nothing in common, so that most pairs of pieces need no arithmetic. */
function areApart(a: Bounds | undefined, b: Bounds | undefined): boolean {
  if (a === undefined || b === undefined) return false
  return ([0, 1] as const).some((axis) => a.max[axis] < b.min[axis] - NOISE_MM || b.max[axis] < a.min[axis] - NOISE_MM)
}

/** Pieces that join meet at their joint, and by float noise a little beside it where they are tangent. */
const JOINT_MM = 0.002

function jointsOf(a: Curve, b: Curve, follows: boolean, precedes: boolean): Vec2[] {
  return [...(follows ? [a.to] : []), ...(precedes ? [a.from, b.to] : [])]
}

/** The same path elsewhere. */
export function movedPath(path: ClosedPath, [dx, dy]: Vec2): ClosedPath {
  return path.map(({ at, bulge }) => ({ at: [at[0] + dx, at[1] + dy], bulge }))
}

/** The path as one sees it who has turned its board over about the vertical: x becomes `width` − x; still counter-clockwise. */
export function mirroredPath(path: ClosedPath, width: number): ClosedPath {
  const seen = path.map(
    ({ at, bulge }): PathVertex => ({ at: [width - at[0], at[1]], bulge: bulge === 0 ? 0 : -bulge }),
  )
  return reversed(seen)
}

/** Points along a closed path, its corners and others no further than `step` apart, mm. */
export function pointsAlong(path: ClosedPath, step: number): Vec2[] {
  return curvesOf(path).flatMap((curve) => {
    const count = Math.max(1, Math.ceil(lengthOf(curve) / step))
    return Array.from({ length: count }, (_, k) => pointAlong(curve, k / count))
  })
}

/** The path turned a quarter turn to the left about (0, 0). */
export function turnedQuarter(path: ClosedPath): ClosedPath {
  return path.map(({ at, bulge }) => ({ at: [0 - at[1], at[0]], bulge }))
}
