import { type Pose, place } from './pose.ts'
import type { Vec3 } from './vec.ts'

/** An axis-aligned box, mm; `min` is never above `max` on any axis. */
export interface Box {
  readonly min: Vec3
  readonly max: Vec3
}

/** The box around the child's box once it is placed in the parent; exact for quarter turns. */
export function placedBox(pose: Pose, box: Box): Box {
  const a = place(pose, box.min)
  const b = place(pose, box.max)
  return {
    min: [Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.min(a[2], b[2])],
    max: [Math.max(a[0], b[0]), Math.max(a[1], b[1]), Math.max(a[2], b[2])],
  }
}

/** Extent of a box along one axis (0 = x, 1 = y, 2 = z), mm. */
export function extent(box: Box, axis: 0 | 1 | 2): number {
  return box.max[axis] - box.min[axis]
}

/** What two boxes have in common; `undefined` when that is less than `least` (mm) along some axis. */
export function commonBox(a: Box, b: Box, least: number): Box | undefined {
  const each = (value: (axis: 0 | 1 | 2) => number): Vec3 => [value(0), value(1), value(2)]
  const min = each((axis) => Math.max(a.min[axis], b.min[axis]))
  const max = each((axis) => Math.min(a.max[axis], b.max[axis]))
  return [0, 1, 2].every((axis) => (max[axis] ?? 0) - (min[axis] ?? 0) > least) ? { min, max } : undefined
}

/** A box less another, as boxes that do not overlap; pieces thinner than `least` (mm) are left out. */
export function boxWithout(box: Box, cut: Box, least: number): Box[] {
  if (commonBox(box, cut, 0) === undefined) return [box]
  const pieces: Box[] = []
  let rest = box
  for (const axis of [0, 1, 2] as const) {
    const upTo = Math.max(rest.min[axis], cut.min[axis])
    const from = Math.min(rest.max[axis], cut.max[axis])
    pieces.push({ min: rest.min, max: withCoordinate(rest.max, axis, upTo) })
    pieces.push({ min: withCoordinate(rest.min, axis, from), max: rest.max })
    rest = { min: withCoordinate(rest.min, axis, upTo), max: withCoordinate(rest.max, axis, from) }
  }
  return pieces.filter((piece) => [0, 1, 2].every((axis) => extent(piece, axis as 0 | 1 | 2) > least))
}

function withCoordinate(v: Vec3, axis: 0 | 1 | 2, value: number): Vec3 {
  return [axis === 0 ? value : v[0], axis === 1 ? value : v[1], axis === 2 ? value : v[2]]
}
