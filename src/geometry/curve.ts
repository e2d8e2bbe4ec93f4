import type { PathVertex, Vec2 } from './path.ts'
import { NOISE_MM } from './tolerance.ts'

/** One piece of a contour: a straight line (bulge 0) or an arc, with the bulge of PathVertex; mm. */
export interface Curve {
  readonly from: Vec2
  readonly to: Vec2
  readonly bulge: number
}

/** A circular arc: angles in radians from +x, counter-clockwise; a negative sweep runs clockwise. */
export interface CircleArc {
  readonly centre: Vec2
  readonly radius: number
  readonly start: number
  readonly sweep: number
}

/** The pieces of a closed path in order, the closing one last; a bulge too flat to tell from a line is 0. */
export function curvesOf(path: readonly PathVertex[]): Curve[] {
  return path.map(({ at, bulge }, k) => {
    const to = path[(k + 1) % path.length]?.at ?? at
    const rise = (Math.abs(bulge) * Math.hypot(to[0] - at[0], to[1] - at[1])) / 2
    return { from: at, to, bulge: rise < NOISE_MM ? 0 : bulge }
  })
}

/**
 * The arc of a piece with a bulge (not 0): with chord c, the radius is c(1 + b²)/(4|b|), and the centre lies
 * c(1 − b²)/(4b) to the left of the chord's middle (elementary geometry of the circle).
 */
export function circleArcOf({ from, to, bulge }: Curve): CircleArc {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const off = (1 - bulge * bulge) / (4 * bulge)
  const centre: Vec2 = [(from[0] + to[0]) / 2 - dy * off, (from[1] + to[1]) / 2 + dx * off]
  return {
    centre,
    radius: (Math.hypot(dx, dy) * (1 + bulge * bulge)) / (4 * Math.abs(bulge)),
    start: Math.atan2(from[1] - centre[1], from[0] - centre[0]),
    sweep: 4 * Math.atan(bulge),
  }
}

/** The point at a share (0..1) of the way along a piece. */
export function pointAlong(curve: Curve, share: number): Vec2 {
  const { from, to, bulge } = curve
  if (bulge === 0) return [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share]
  return onArc(circleArcOf(curve), share)
}

function onArc({ centre, radius, start, sweep }: CircleArc, share: number): Vec2 {
  const angle = start + sweep * share
  return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)]
}

/** Length along a piece, mm. */
export function lengthOf(curve: Curve): number {
  if (curve.bulge === 0) return Math.hypot(curve.to[0] - curve.from[0], curve.to[1] - curve.from[1])
  const { radius, sweep } = circleArcOf(curve)
  return radius * Math.abs(sweep)
}

/** True when the direction of an angle lies within an arc, its ends included. */
export function arcHas({ start, sweep, radius }: CircleArc, angle: number): boolean {
  const full = 2 * Math.PI
  const turn = (sweep > 0 ? angle - start : start - angle) % full
  const ahead = turn < 0 ? turn + full : turn
  const noise = NOISE_MM / Math.max(radius, NOISE_MM)
  return ahead <= Math.abs(sweep) + noise || ahead >= full - noise
}

/** The points of a piece that are furthest right, up, left and down on its circle, those that it passes. */
export function turningPointsOf(curve: Curve): Vec2[] {
  if (curve.bulge === 0) return []
  const arc = circleArcOf(curve)
  const { centre, radius } = arc
  const ways: [angle: number, at: Vec2][] = [
    [0, [centre[0] + radius, centre[1]]],
    [Math.PI / 2, [centre[0], centre[1] + radius]],
    [Math.PI, [centre[0] - radius, centre[1]]],
    [-Math.PI / 2, [centre[0], centre[1] - radius]],
  ]
  return ways.filter(([angle]) => arcHas(arc, angle)).map(([, at]) => at)
}

/** Least distance from a point to a piece, mm. */
export function distanceToCurve(p: Vec2, curve: Curve): number {
  const { from, to, bulge } = curve
  const ends = Math.min(apart(p, from), apart(p, to))
  if (bulge === 0) {
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
    const along = ((p[0] - from[0]) * dx + (p[1] - from[1]) * dy) / Math.max(dx * dx + dy * dy, Number.MIN_VALUE)
    return along <= 0 || along >= 1 ? ends : apart(p, [from[0] + dx * along, from[1] + dy * along])
  }
  const arc = circleArcOf(curve)
  const off = apart(p, arc.centre)
  if (off <= NOISE_MM) return arc.radius
  const angle = Math.atan2(p[1] - arc.centre[1], p[0] - arc.centre[0])
  return arcHas(arc, angle) ? Math.min(ends, Math.abs(off - arc.radius)) : ends
}

/** The points that two pieces share, each once or more; of two that run along each other, the ends of what they share. */
export function meetingPoints(a: Curve, b: Curve): Vec2[] {
  const ends = [
    ...[a.from, a.to].filter((p) => distanceToCurve(p, b) <= NOISE_MM),
    ...[b.from, b.to].filter((p) => distanceToCurve(p, a) <= NOISE_MM),
  ]
  const between = a.bulge === 0 ? (b.bulge === 0 ? lineLine(a, b) : lineArc(a, b)) : arcAny(a, b)
  return [...ends, ...between.filter((p) => distanceToCurve(p, a) <= NOISE_MM && distanceToCurve(p, b) <= NOISE_MM)]
}

/** Least distance between two pieces, mm; 0 where they meet. */
export function gapBetweenCurves(a: Curve, b: Curve): number {
  if (meetingPoints(a, b).length > 0) return 0
  const toB = [a.from, a.to, ...squarePoints(a, b)].map((p) => distanceToCurve(p, b))
  const toA = [b.from, b.to, ...squarePoints(b, a)].map((p) => distanceToCurve(p, a))
  return Math.min(...toB, ...toA)
}

/** The points inside an arc from which the way to the other piece can be square to both: nothing on a line. */
function squarePoints(curve: Curve, other: Curve): Vec2[] {
  if (curve.bulge === 0) return []
  const arc = circleArcOf(curve)
  const way = other.bulge === 0 ? normalOf(other) : toward(arc.centre, circleArcOf(other).centre)
  if (way === undefined) return []
  const angle = Math.atan2(way[1], way[0])
  return [angle, angle + Math.PI]
    .filter((one) => arcHas(arc, one))
    .map((one) => [arc.centre[0] + arc.radius * Math.cos(one), arc.centre[1] + arc.radius * Math.sin(one)])
}

const normalOf = ({ from, to }: Curve): Vec2 => [from[1] - to[1], to[0] - from[0]]
const toward = (from: Vec2, to: Vec2): Vec2 | undefined =>
  apart(from, to) <= NOISE_MM ? undefined : [to[0] - from[0], to[1] - from[1]]

function lineLine(a: Curve, b: Curve): Vec2[] {
  const [ax, ay] = [a.to[0] - a.from[0], a.to[1] - a.from[1]]
  const [bx, by] = [b.to[0] - b.from[0], b.to[1] - b.from[1]]
  const across = ax * by - ay * bx
  if (Math.abs(across) <= NOISE_MM * NOISE_MM) return []
  const t = ((b.from[0] - a.from[0]) * by - (b.from[1] - a.from[1]) * bx) / across
  return [[a.from[0] + ax * t, a.from[1] + ay * t]]
}

/** Where the line of a straight piece meets the circle of an arc. */
function lineArc(line: Curve, curve: Curve): Vec2[] {
  const { centre, radius } = circleArcOf(curve)
  const [dx, dy] = [line.to[0] - line.from[0], line.to[1] - line.from[1]]
  const long = Math.hypot(dx, dy)
  const [ux, uy] = [dx / long, dy / long]
  const along = (centre[0] - line.from[0]) * ux + (centre[1] - line.from[1]) * uy
  const foot: Vec2 = [line.from[0] + ux * along, line.from[1] + uy * along]
  const off = apart(foot, centre)
  if (off > radius + NOISE_MM) return []
  const half = Math.sqrt(Math.max(0, radius * radius - off * off))
  return [
    [foot[0] - ux * half, foot[1] - uy * half],
    [foot[0] + ux * half, foot[1] + uy * half],
  ]
}

function arcAny(curve: Curve, other: Curve): Vec2[] {
  if (other.bulge === 0) return lineArc(other, curve)
  const [a, b] = [circleArcOf(curve), circleArcOf(other)]
  const d = apart(a.centre, b.centre)
  if (d <= NOISE_MM || d > a.radius + b.radius + NOISE_MM || d < Math.abs(a.radius - b.radius) - NOISE_MM) return []
  const along = (d * d + a.radius * a.radius - b.radius * b.radius) / (2 * d)
  const half = Math.sqrt(Math.max(0, a.radius * a.radius - along * along))
  const [ux, uy] = [(b.centre[0] - a.centre[0]) / d, (b.centre[1] - a.centre[1]) / d]
  const foot: Vec2 = [a.centre[0] + ux * along, a.centre[1] + uy * along]
  return [
    [foot[0] - uy * half, foot[1] + ux * half],
    [foot[0] + uy * half, foot[1] - ux * half],
  ]
}

/** Distance between two points, mm. */
export const apart = (a: Vec2, b: Vec2): number => Math.hypot(a[0] - b[0], a[1] - b[1])
