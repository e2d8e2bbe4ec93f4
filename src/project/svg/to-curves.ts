import { arcsAlong, type Cubic, type Curve, type Vec2 } from '../../geometry/index.ts'
import { after, keepsCircles, type Matrix, mapped, PLAIN } from './matrix.ts'
import type { Stroke, Subpath } from './path-data.ts'

/** Arcs lie within this of the curves that they stand for, mm; half of the 0.01 mm that is promised. */
const FIT_MM = 0.005
/** An ellipse in as many cubic curves as a full turn takes: each is true to a millionth of its radius. */
const PIECES_A_TURN = 16

/** The lines and arcs of a subpath, mapped to mm. */
export function curvesFrom(subpath: Subpath, matrix: Matrix): Curve[] {
  let at = subpath.from
  return subpath.strokes.flatMap((stroke) => {
    const from = at
    at = stroke.to
    return strokeCurves(from, stroke, matrix)
  })
}

function strokeCurves(from: Vec2, stroke: Stroke, matrix: Matrix): Curve[] {
  const [start, end] = [mapped(matrix, from), mapped(matrix, stroke.to)]
  if (stroke.kind === 'line') return [{ from: start, to: end, bulge: 0 }]
  if (stroke.kind === 'cubic') {
    const cubic: Cubic = { from: start, c1: mapped(matrix, stroke.c1), c2: mapped(matrix, stroke.c2), to: end }
    return arcsAlong(cubic, FIT_MM)
  }
  return arcCurves(from, stroke, matrix)
}

type ArcStroke = Extract<Stroke, { kind: 'arc' }>

/**
 * An arc from its ends (SVG 1.1, appendix F.6): in the frame where its ellipse is the unit circle, the centre lies on the
 * line that halves the chord. Radii that are too small are made just large enough.
 */
function arcCurves(from: Vec2, arc: ArcStroke, matrix: Matrix): Curve[] {
  const { to } = arc
  if (from[0] === to[0] && from[1] === to[1]) return []
  const angle = (arc.turnDeg * Math.PI) / 180
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  const unitOf = ([x, y]: Vec2, k: number): Vec2 => [
    (cos * x + sin * y) / (k * arc.rx),
    (-sin * x + cos * y) / (k * arc.ry),
  ]
  const [first, last] = [unitOf(from, 1), unitOf(to, 1)]
  const grow = Math.max(1, Math.hypot(last[0] - first[0], last[1] - first[1]) / 2)
  const [a, b] = [unitOf(from, grow), unitOf(to, grow)]
  const half = Math.min(1, Math.hypot(b[0] - a[0], b[1] - a[1]) / 2)
  const off = (Math.sqrt(Math.max(0, 1 - half * half)) / (2 * half)) * (arc.large === arc.clockwise ? 1 : -1)
  const centre: Vec2 = [(a[0] + b[0]) / 2 + (b[1] - a[1]) * off, (a[1] + b[1]) / 2 - (b[0] - a[0]) * off]
  const start = Math.atan2(a[1] - centre[1], a[0] - centre[0])
  const turn = Math.atan2(b[1] - centre[1], b[0] - centre[0]) - start
  const full = 2 * Math.PI
  const ahead = ((turn % full) + full) % full
  const sweep = arc.clockwise ? (ahead === 0 ? full : ahead) : ahead - full
  const [kx, ky] = [grow * arc.rx, grow * arc.ry]
  const unit: Matrix = { a: cos * kx, b: sin * kx, c: -sin * ky, d: cos * ky, e: 0, f: 0 }
  const whole = after(matrix, after(unit, { ...PLAIN, e: centre[0], f: centre[1] }))
  return turnedArc(start, sweep, whole, [mapped(matrix, from), mapped(matrix, to)])
}

/** A part of the unit circle, mapped: arcs where it stays a circle, else curves that arcs are laid along. */
function turnedArc(start: number, sweep: number, matrix: Matrix, [from, to]: readonly [Vec2, Vec2]): Curve[] {
  const sense = keepsCircles(matrix)
  const count =
    sense === 0
      ? Math.max(1, Math.ceil((PIECES_A_TURN * Math.abs(sweep)) / (2 * Math.PI)))
      : Math.abs(sweep) > Math.PI
        ? 2
        : 1
  const step = sweep / count
  const on = (k: number): Vec2 => [Math.cos(start + k * step), Math.sin(start + k * step)]
  const end = (k: number): Vec2 => (k === 0 ? from : k === count ? to : mapped(matrix, on(k)))
  return Array.from({ length: count }, (_, k): Curve[] => {
    if (sense !== 0) return [{ from: end(k), to: end(k + 1), bulge: sense * Math.tan(step / 4) }]
    const reach = (4 / 3) * Math.tan(step / 4)
    const [a, b] = [on(k), on(k + 1)]
    const c1 = mapped(matrix, [a[0] - reach * a[1], a[1] + reach * a[0]])
    const c2 = mapped(matrix, [b[0] + reach * b[1], b[1] - reach * b[0]])
    return arcsAlong({ from: end(k), c1, c2, to: end(k + 1) }, FIT_MM)
  }).flat()
}
