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
