import { gapBetweenShapes, holdsPoint } from '../contour.ts'
import { type Curve, circleArcOf, curvesOf, pointAlong, turningPointsOf } from '../curve.ts'
import type { Vec2 } from '../path.ts'
import { IDENTITY } from '../pose.ts'
import type { ClosedPath } from '../shapes.ts'
import { NOISE_MM } from '../tolerance.ts'
import type { Vec3 } from '../vec.ts'
import { gapBetweenBoxes, gapBetweenSolids } from './gap.ts'
import { boundsOfSolid, furthest } from './support.ts'
import type { Solid } from './types.ts'

/** All that a closed path takes in, whatever its shape, between two heights; mm. */
export interface Prism {
  readonly path: ClosedPath
  readonly low: number
  readonly high: number
}

/** Least distance between two prisms, mm; 0 where they meet. Exact: both are products of a shape and a height. */
export function gapBetweenPrisms(a: Prism, b: Prism): number {
  return Math.hypot(gapBetweenShapes(a.path, b.path), Math.max(0, a.low - b.high, b.low - a.high))
}

/** A piece of an arc that rises no more than this over its chord is as good as filled up to it, mm. */
const RISE_MM = 1e-4
/** Pieces looked at, at most; even an arc that runs along beside a bore needs a few dozen. */
const MOST_PIECES = 20_000

/** A piece of a prism's wall, and a distance that it is at least away. */
interface Piece {
  readonly curve: Curve
  readonly least: number
  /** By the box around the piece alone, not yet by the piece itself. */
  readonly roughly: boolean
}

/**
 * Least distance between a convex solid and a prism over any path, mm; 0 where they meet. Never more than the truth, and
 * less by 0.0001 at most. Where the truth is `upTo` or more, the answer may be anything from `upTo` to the truth.
 *
 * What is nearest lies either on a floor of the prism, right over the lowest or under the highest point of the solid, or
 * on its walls. Those are looked at piece by piece, the likeliest first: of an arc, the lump between arc and chord, which
 * is convex; it is halved until it is flat.
 */
export function gapToPrism(solid: Solid, prism: Prism, upTo = Number.POSITIVE_INFINITY): number {
  const over = gapOverFloor(solid, prism)
  return over ?? gapToWalls(solid, prism, upTo)
}

/** The gap where the solid lies inside the walls, or right over or under a point inside them. */
function gapOverFloor(solid: Solid, { path, low, high }: Prism): number | undefined {
  const [bottom, top] = [furthest(solid, [0, 0, -1]), furthest(solid, [0, 0, 1])]
  const between = (a: Vec3, b: Vec3, z: number): Vec2 => {
    const share = b[2] - a[2] > NOISE_MM ? (z - a[2]) / (b[2] - a[2]) : 0
    return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share]
  }
  const from = Math.max(low, bottom[2])
  const to = Math.min(high, top[2])
  // Above or below: its lowest or highest point counts; beside: any point of it on the way up.
  const at: Vec2 =
    from <= to ? between(bottom, top, from) : bottom[2] > high ? [bottom[0], bottom[1]] : [top[0], top[1]]
  return holdsPoint(path, at) ? Math.max(0, from - to) : undefined
}

function gapToWalls(solid: Solid, { path, low, high }: Prism, upTo: number): number {
  const around = boundsOfSolid(solid)
  const roughly = (curve: Curve): Piece => {
    const points = [curve.from, curve.to, ...turningPointsOf(curve)]
    const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
    const box = {
      min: [Math.min(...xs), Math.min(...ys), low] as const,
      max: [Math.max(...xs), Math.max(...ys), high] as const,
    }
    return { curve, least: gapBetweenBoxes(around, box), roughly: true }
  }
  const closely = (curve: Curve): Piece => {
    const lump: Solid = { kind: 'prism', pose: IDENTITY, pieces: [curve], low, high }
    return { curve, least: gapBetweenSolids(solid, lump), roughly: false }
  }
  const pieces = curvesOf(path).flatMap(withinHalfTurn).map(roughly)
  for (let looked = 0; looked < MOST_PIECES; looked += 1) {
    const piece = takeLeast(pieces)
    if (piece.least >= upTo) return piece.least
    if (piece.roughly) pieces.push(closely(piece.curve))
    else if (riseOf(piece.curve) <= RISE_MM) return piece.least
    else pieces.push(...halvesOf(piece.curve).map(roughly))
  }
  return takeLeast(pieces).least
}

function takeLeast(pieces: Piece[]): Piece {
  let best = 0
  for (const [k, { least }] of pieces.entries()) if (least < (pieces[best]?.least ?? 0)) best = k
  const [piece] = pieces.splice(best, 1)
  if (piece === undefined) throw new Error('a prism without walls')
  return piece
}

/** An arc in pieces of at most half a turn, so that arc and chord enclose the lump between them. */
const withinHalfTurn = (curve: Curve): Curve[] => (Math.abs(curve.bulge) > 1 ? halvesOf(curve) : [curve])

function halvesOf(curve: Curve): Curve[] {
  const middle = pointAlong(curve, 0.5)
  // tan of half the angle whose tangent the bulge is: an eighth of the arc in place of a quarter.
  const bulge = Math.tan(Math.atan(curve.bulge) / 2)
  return [
    { from: curve.from, to: middle, bulge },
    { from: middle, to: curve.to, bulge },
  ]
}

function riseOf(curve: Curve): number {
  if (curve.bulge === 0) return 0
  const { radius, sweep } = circleArcOf(curve)
  return radius * (1 - Math.cos(sweep / 2))
}
