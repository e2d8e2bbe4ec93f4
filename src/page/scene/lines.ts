import { circleArcOf, curvesOf, NOISE_MM, type PathVertex, roundMm, type Vec3 } from '../../geometry/index.ts'
import { seen, seenWay } from './plane.ts'
import type { PanelToScene, ScenePoint } from './types.ts'

/** `12.5 -3`: rounded to 0.001 mm. Throws on NaN. */
export const pair = ([x, y]: ScenePoint): string => `${roundMm(x)} ${roundMm(y)}`

/** A closed polygon. */
export function polygon(points: readonly ScenePoint[]): string {
  return `M${points.map(pair).join('L')}z`
}

/** Open strokes, each from point to point. */
export function strokes(lines: readonly (readonly ScenePoint[])[]): string {
  return lines.map((line) => `M${line.map(pair).join('L')}`).join('')
}

/** A circle, or a small one in the middle of a cross. */
export function circle([x, y]: ScenePoint, radius: number): string {
  return `M${pair([x - radius, y])}${ringOf({ long: radius, short: radius, turn: 0 }, [1, 0])}`
}

/** The picture of a unit circle: an ellipse with its half axes, the longer one turned (radians, as SVG turns) from x. */
export interface Ellipse {
  readonly long: number
  readonly short: number
  readonly turn: number
}

/**
 * What the unit circle becomes when its two axes become u and v: the singular values of the matrix (u v) and the way of the
 * larger one (closed form for 2 × 2 matrices, elementary).
 */
export function ellipseOf(u: ScenePoint, v: ScenePoint): Ellipse {
  const [e, f] = [(u[0] + v[1]) / 2, (u[0] - v[1]) / 2]
  const [g, h] = [(u[1] + v[0]) / 2, (u[1] - v[0]) / 2]
  const [q, r] = [Math.hypot(e, h), Math.hypot(f, g)]
  const isRound = Math.min(q, r) <= NOISE_MM
  return {
    long: q + r,
    short: Math.abs(q - r),
    turn: isRound ? 0 : (Math.atan2(g, f) + Math.atan2(h, e)) / 2,
  }
}

const degrees = (radians: number): number => roundMm((radians * 180) / Math.PI)

/** The rest of a closed ellipse that begins at the end of its half axis `long`, which points against `way`. */
export function ringOf({ long, short, turn }: Ellipse, way: ScenePoint): string {
  const across: ScenePoint = [2 * long * way[0], 2 * long * way[1]]
  const arc = `a${roundMm(long)} ${roundMm(short)} ${degrees(turn)} 1 0 `
  return `${arc}${pair(across)}${arc}${pair([-across[0], -across[1]])}z`
}

/** A whole ellipse about a middle; a stroke where it has no width. */
export function ellipse([x, y]: ScenePoint, { long, short, turn }: Ellipse): string {
  const way: ScenePoint = [Math.cos(turn), Math.sin(turn)]
  const start: ScenePoint = [x - long * way[0], y - long * way[1]]
  if (short <= NOISE_MM) return `M${pair(start)}l${pair([2 * long * way[0], 2 * long * way[1]])}`
  return `M${pair(start)}${ringOf({ long, short, turn }, way)}`
}

/** A closed path of a panel (its own x and y) at the height z of its frame, arcs as arcs. */
export function closedPath(m: PanelToScene, path: readonly PathVertex[], z: number): string {
  const unit = ellipseOf(seenWay(m, [1, 0, 0]), seenWay(m, [0, 1, 0]))
  const mirrors = m[0] * m[5] - m[1] * m[4] > 0
  const at = (p: PathVertex['at']): string => pair(seen(m, [p[0], p[1], z]))
  const pieces = curvesOf(path).map((curve) => {
    if (curve.bulge === 0 || unit.short <= NOISE_MM) return `L${at(curve.to)}`
    const { radius } = circleArcOf(curve)
    const large = Math.abs(curve.bulge) > 1 ? 1 : 0
    // Counter-clockwise on the panel is against the way in which SVG turns, unless the panel is seen mirrored.
    const sweep = curve.bulge > 0 === mirrors ? 1 : 0
    const axes = `${roundMm(unit.long * radius)} ${roundMm(unit.short * radius)} ${degrees(unit.turn)}`
    return `A${axes} ${large} ${sweep} ${at(curve.to)}`
  })
  const [first] = path
  return first === undefined ? '' : `M${at(first.at)}${pieces.join('')}z`
}

/** The same in three dimensions: points of a panel, closed. */
export function closedAt(m: PanelToScene, points: readonly Vec3[]): string {
  return polygon(points.map((point) => seen(m, point)))
}
