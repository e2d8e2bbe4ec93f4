import type { Point } from '../drawing/index.ts'

/** A circular arc; mm or inches as its ends were, angles in radians from +x, counter-clockwise. */
export interface Arc {
  readonly centre: Point
  readonly radius: number
  /** Direction from the centre to the first end. */
  readonly start: number
  /** How far it turns; positive counter-clockwise. Never 0, never a full turn. */
  readonly sweep: number
}

/**
 * The arc of a segment with a bulge (not 0). With chord c and bulge b = tan(sweep / 4), the rise of the arc over its
 * chord is b·c/2, so the radius is c(1 + b²)/(4|b|), and the centre lies c(1 − b²)/(4b) to the left of the
 * chord's middle (elementary geometry of the circle).
 */
export function arcOf(from: Point, to: Point, bulge: number): Arc {
  const dx = to[0] - from[0]
  const dy = to[1] - from[1]
  const offset = (1 - bulge * bulge) / (4 * bulge)
  const centre: Point = [(from[0] + to[0]) / 2 - dy * offset, (from[1] + to[1]) / 2 + dx * offset]
  return {
    centre,
    radius: (Math.hypot(dx, dy) * (1 + bulge * bulge)) / (4 * Math.abs(bulge)),
    start: Math.atan2(from[1] - centre[1], from[0] - centre[0]),
    sweep: 4 * Math.atan(bulge),
  }
}

/** The point of an arc at a share (0..1) of its way. */
export function pointOn(arc: Arc, share: number): Point {
  const angle = arc.start + arc.sweep * share
  return [arc.centre[0] + arc.radius * Math.cos(angle), arc.centre[1] + arc.radius * Math.sin(angle)]
}

/** The points of an arc that are furthest right, up, left and down on its circle, those that it passes. */
export function turningPoints(arc: Arc): Point[] {
  const { centre, radius } = arc
  const candidates: [angle: number, at: Point][] = [
    [0, [centre[0] + radius, centre[1]]],
    [Math.PI / 2, [centre[0], centre[1] + radius]],
    [Math.PI, [centre[0] - radius, centre[1]]],
    [-Math.PI / 2, [centre[0], centre[1] - radius]],
  ]
  return candidates.filter(([angle]) => turnTo(arc, angle) < Math.abs(arc.sweep)).map(([, at]) => at)
}

/** How far an arc must turn, in its own sense, from its start to a direction; 0 up to a full turn, radians. */
export function turnTo(arc: Arc, angle: number): number {
  const full = 2 * Math.PI
  const turn = (arc.sweep > 0 ? angle - arc.start : arc.start - angle) % full
  return turn < 0 ? turn + full : turn
}
