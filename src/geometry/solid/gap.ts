import type { Box } from '../box.ts'
import { NOISE_MM } from '../tolerance.ts'
import { dot, norm, scale, sub, type Vec3 } from '../vec.ts'
import { nearestToOrigin } from './simplex.ts'
import { furthest } from './support.ts'
import { alignedBox, type Cylinder, frustum, type Solid } from './types.ts'

/** The gap is known to this share of itself; a thousandth of float noise for gaps of a millimetre. */
const SHARE = 1e-9
/** Rounds at most. Flat solids need fewer than ten, round ones a few dozen; only those that barely touch need more. */
const MOST_ROUNDS = 400

/**
 * Least distance between two convex solids, mm; 0 where they meet, or come nearer than float noise. In closed form for
 * cylinders with parallel axes and boxes along the axes; else by the furthest points of both (the algorithm of Gilbert,
 * Johnson and Keerthi, 1988; from memory), which closes in on the gap from above and below.
 */
export function gapBetweenSolids(a: Solid, b: Solid): number {
  if (a.kind === 'cylinder' && b.kind === 'cylinder' && areParallel(a, b)) return gapOfParallels(a, b)
  if (a.kind === 'box' && b.kind === 'box') {
    const [one, other] = [alignedBox(a), alignedBox(b)]
    if (one !== undefined && other !== undefined) return gapBetweenBoxes(one, other)
  }
  return gapByFurthestPoints(byEnds(a), byEnds(b))
}

/** Least distance between two boxes along the axes, mm; 0 where they meet. */
export function gapBetweenBoxes(a: Box, b: Box): number {
  const along = (axis: 0 | 1 | 2): number => Math.max(0, a.min[axis] - b.max[axis], b.min[axis] - a.max[axis])
  return Math.hypot(along(0), along(1), along(2))
}

const areParallel = (a: Cylinder, b: Cylinder): boolean => Math.abs(dot(a.axis, b.axis)) >= 1 - NOISE_MM * NOISE_MM

function gapOfParallels(a: Cylinder, b: Cylinder): number {
  const rel = sub(b.from, a.from)
  const along = dot(rel, a.axis)
  const across = Math.max(0, norm(sub(rel, scale(a.axis, along))) - a.radius - b.radius)
  const end = along + b.length * dot(a.axis, b.axis)
  return Math.hypot(across, Math.max(0, Math.min(along, end) - a.length, -Math.max(along, end)))
}

/** A cylinder by its two ends, so that its directions across are worked out once. */
const byEnds = (solid: Solid): Solid => {
  if (solid.kind !== 'cylinder') return solid
  const { from, axis, length, radius } = solid
  return frustum(from, axis, length, radius, radius)
}

/** The square root alone: `Math.hypot` guards against sizes that no furniture has, and takes most of the time. */
const long = (v: Vec3): number => Math.sqrt(dot(v, v))

/** The gap is the distance of the origin from the difference of the two solids, which is as convex as they are. */
function gapByFurthestPoints(a: Solid, b: Solid): number {
  const difference = (way: Vec3): Vec3 => sub(furthest(a, way), furthest(b, scale(way, -1)))
  let point = difference([1, 0, 0])
  let corners: readonly Vec3[] = [point]
  let gap = long(point)
  for (let round = 0; round < MOST_ROUNDS && gap > NOISE_MM; round += 1) {
    const corner = difference(scale(point, -1))
    // All of the difference lies beyond the plane through this corner, square to the way to the origin.
    if (gap - dot(point, corner) / gap <= SHARE * gap) return gap
    const nearest = nearestToOrigin([...corners, corner])
    const next = long(nearest.point)
    if (next >= gap) return gap
    corners = nearest.corners
    point = nearest.point
    gap = next
  }
  return gap <= NOISE_MM ? 0 : gap
}
