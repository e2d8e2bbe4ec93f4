import { apart, type Curve, distanceToCurve, pointAlong } from './curve.ts'
import type { Vec2 } from './path.ts'

/** A cubic Bezier curve: ends and the two points that draw it, mm. */
export interface Cubic {
  readonly from: Vec2
  readonly c1: Vec2
  readonly c2: Vec2
  readonly to: Vec2
}

/** Halvings at most: 4,096 pieces of one curve, far below any bit. */
const MOST_HALVINGS = 12
/** Places along a curve and its arcs at which they are compared. */
const PROBES = 12
/** Shorter than this, a curve is a point, mm. */
const POINT_MM = 1e-5

/**
 * A Bezier curve as arcs and lines that join without corners and lie within `tolerance` of it, mm: two arcs that take up
 * its directions at both ends (a biarc), halved until they fit.
 */
export function arcsAlong(cubic: Cubic, tolerance: number, halvings = MOST_HALVINGS): Curve[] {
  const { from, to } = cubic
  if (apart(from, to) < POINT_MM && spread(cubic) < POINT_MM) return []
  if (isStraight(cubic)) return [{ from, to, bulge: 0 }]
  const arcs = biarc(cubic)
  if (arcs !== undefined && deviation(cubic, arcs) <= tolerance) return arcs
  if (halvings === 0) return [{ from, to, bulge: 0 }]
  return halves(cubic).flatMap((half) => arcsAlong(half, tolerance, halvings - 1))
}

const spread = ({ from, c1, c2 }: Cubic): number => Math.max(apart(from, c1), apart(from, c2))

function isStraight({ from, c1, c2, to }: Cubic): boolean {
  const long = apart(from, to)
  if (long < POINT_MM) return false
  const [ux, uy] = [(to[0] - from[0]) / long, (to[1] - from[1]) / long]
  return [c1, c2].every((c) => {
    const [dx, dy] = [c[0] - from[0], c[1] - from[1]]
    const along = dx * ux + dy * uy
    return Math.abs(dx * uy - dy * ux) < POINT_MM && along > -POINT_MM && along < long + POINT_MM
  })
}

/** Directions at both ends; where a drawing point lies on its end, toward the next that does not. */
function endDirections({ from, c1, c2, to }: Cubic): [Vec2, Vec2] | undefined {
  const start = [c1, c2, to].map((p) => unit(from, p)).find((way) => way !== undefined)
  const end = [c2, c1, from].map((p) => unit(p, to)).find((way) => way !== undefined)
  return start === undefined || end === undefined ? undefined : [start, end]
}

function unit(from: Vec2, to: Vec2): Vec2 | undefined {
  const long = apart(from, to)
  return long < POINT_MM ? undefined : [(to[0] - from[0]) / long, (to[1] - from[1]) / long]
}

/** Two arcs of equal reach from both ends (elementary geometry of the biarc, from memory). */
function biarc(cubic: Cubic): Curve[] | undefined {
  const ways = endDirections(cubic)
  if (ways === undefined) return undefined
  const [[ax, ay], [bx, by]] = ways
  const { from, to } = cubic
  const [vx, vy] = [to[0] - from[0], to[1] - from[1]]
  const square = vx * vx + vy * vy
  const both = vx * (ax + bx) + vy * (ay + by)
  const open = 2 * (1 - (ax * bx + ay * by))
  const reach = open < 1e-12 ? square / (2 * both) : (Math.sqrt(both * both + open * square) - both) / open
  if (!(reach > 0 && Number.isFinite(reach))) return undefined
  const joint: Vec2 = [(from[0] + to[0] + reach * (ax - bx)) / 2, (from[1] + to[1] + reach * (ay - by)) / 2]
  const [first, second] = [unit(from, joint), unit(joint, to)]
  if (first === undefined || second === undefined) return undefined
  const arcs = [
    { from, to: joint, bulge: Math.tan(turnFrom([ax, ay], first) / 2) },
    { from: joint, to, bulge: Math.tan(turnFrom(second, [bx, by]) / 2) },
  ]
  return arcs.every(({ bulge }) => Math.abs(bulge) <= 1) ? arcs : undefined
}

/** How far one turns to the left from one direction to another, radians. */
const turnFrom = (a: Vec2, b: Vec2): number => Math.atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1])

/** How far the curve strays from its arcs, and they from its chords; mm. */
function deviation(cubic: Cubic, arcs: readonly Curve[]): number {
  const probes = Array.from({ length: PROBES + 1 }, (_, k) => onCubic(cubic, k / PROBES))
  const chords = probes.slice(1).map((to, k): Curve => ({ from: probes[k] ?? to, to, bulge: 0 }))
  const off = (p: Vec2, curves: readonly Curve[]): number => Math.min(...curves.map((one) => distanceToCurve(p, one)))
  const fine = Array.from({ length: 4 * PROBES }, (_, k) => onCubic(cubic, k / (4 * PROBES)))
  const sag = Math.max(...fine.map((p) => off(p, chords)))
  const strays = arcs.flatMap((arc) => [0.25, 0.5, 0.75].map((share) => off(pointAlong(arc, share), chords) - sag))
  return Math.max(...fine.map((p) => off(p, arcs)), ...strays)
}

function onCubic({ from, c1, c2, to }: Cubic, t: number): Vec2 {
  const u = 1 - t
  const at = (axis: 0 | 1): number =>
    u * u * u * from[axis] + 3 * u * u * t * c1[axis] + 3 * u * t * t * c2[axis] + t * t * t * to[axis]
  return [at(0), at(1)]
}

/** Cut at its middle (de Casteljau). */
function halves({ from, c1, c2, to }: Cubic): [Cubic, Cubic] {
  const mid = (a: Vec2, b: Vec2): Vec2 => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
  const [a, b, c] = [mid(from, c1), mid(c1, c2), mid(c2, to)]
  const [d, e] = [mid(a, b), mid(b, c)]
  const middle = mid(d, e)
  return [
    { from, c1: a, c2: d, to: middle },
    { from: middle, c1: e, c2: c, to },
  ]
}
