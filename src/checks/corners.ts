import type { ClosedPath, PathVertex, Vec2 } from '../geometry/index.ts'

/** A place of a contour that a round cutter, going round inside it, cannot follow. */
export interface TightSpot {
  readonly at: Vec2
  /** How far the contour turns there, degrees: 90 in the corner of a rectangle, 180 at the end of a slot. */
  readonly turnDeg: number
  /** Radius that the contour has there, mm; 0 in a sharp corner. */
  readonly radius: number
  /** Wood that the cutter leaves on the bisector, mm; without end where the contour turns back on itself. */
  readonly left: number
}

/** A contour that turns this far within one arc is as wide as the arc there, degrees. */
const TURNS_BACK_DEG = 179

/**
 * Corners and arcs of a counter-clockwise contour, seen from inside, that are sharper than the radius of a cutter. A corner
 * that turns by φ and has the radius ρ keeps (r − ρ)(1 / cos(φ / 2) − 1) of wood on its bisector: 0.414 r in a square one.
 */
export function tightSpots(path: ClosedPath, cutterRadius: number): TightSpot[] {
  return path.flatMap((vertex, k): TightSpot[] => {
    const next = path[(k + 1) % path.length] ?? vertex
    const before = path[(k + path.length - 1) % path.length] ?? vertex
    const corner = turnBetween(leaving(before, vertex, 'end'), leaving(vertex, next, 'start'))
    return [
      ...spot(vertex.at, corner, 0, cutterRadius),
      ...(vertex.bulge > 0
        ? spot(middleOfArc(vertex, next), sweepOf(vertex), radiusOf(vertex, next), cutterRadius)
        : []),
    ]
  })
}

function spot(at: Vec2, turnDeg: number, radius: number, cutterRadius: number): TightSpot[] {
  if (turnDeg <= 0 || radius >= cutterRadius) return []
  if (turnDeg >= TURNS_BACK_DEG) return [{ at, turnDeg, radius, left: Number.POSITIVE_INFINITY }]
  const half = (turnDeg / 2) * (Math.PI / 180)
  return [{ at, turnDeg, radius, left: (cutterRadius - radius) * (1 / Math.cos(half) - 1) }]
}

/** An arc of bulge b sweeps 4 atan b. */
const sweepOf = ({ bulge }: PathVertex): number => (4 * Math.atan(bulge) * 180) / Math.PI

const chordOf = (from: PathVertex, to: PathVertex): Vec2 => [to.at[0] - from.at[0], to.at[1] - from.at[1]]

/** r = c (1 + b²) / (4 b) of the chord c. */
const radiusOf = (from: PathVertex, to: PathVertex): number =>
  (Math.hypot(...chordOf(from, to)) * (1 + from.bulge ** 2)) / (4 * Math.abs(from.bulge))

function middleOfArc(from: PathVertex, to: PathVertex): Vec2 {
  const [dx, dy] = chordOf(from, to)
  // A positive bulge lies to the right of the way from one end to the other.
  return [(from.at[0] + to.at[0]) / 2 + (dy * from.bulge) / 2, (from.at[1] + to.at[1]) / 2 - (dx * from.bulge) / 2]
}

/** The way that a segment goes at its start or at its end, degrees. */
function leaving(from: PathVertex, to: PathVertex, where: 'start' | 'end'): number {
  const [dx, dy] = chordOf(from, to)
  const half = sweepOf(from) / 2
  return (Math.atan2(dy, dx) * 180) / Math.PI + (where === 'start' ? -half : half)
}

/** How far one turns to the left from one way to another, −180 to 180 degrees. */
function turnBetween(before: number, after: number): number {
  const turn = (((after - before) % 360) + 360) % 360
  return turn > 180 ? turn - 360 : turn
}
