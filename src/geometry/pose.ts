import { cross, dot, sub, type Vec3 } from './vec.ts'

/**
 * A proper rigid transform from a child frame to a parent frame. Named by both ends where it is used:
 * `moduleFromPanel` takes panel coordinates to module coordinates.
 * `x`, `y`, `z` are the child's axes and `origin` the child's origin (mm), all seen in the parent frame.
 * z is always x × y, so the determinant is +1 and nothing can be mirrored by a pose.
 */
export interface Pose {
  readonly x: Vec3
  readonly y: Vec3
  readonly z: Vec3
  readonly origin: Vec3
}

/** The pose whose x and y axes are given (unit, square to each other); z follows as x × y. */
export function poseOf(x: Vec3, y: Vec3, origin: Vec3): Pose {
  return { x, y, z: cross(x, y), origin }
}

export const IDENTITY: Pose = poseOf([1, 0, 0], [0, 1, 0], [0, 0, 0])

/** A direction of the child frame, seen in the parent frame. */
export function turn(pose: Pose, v: Vec3): Vec3 {
  return [
    pose.x[0] * v[0] + pose.y[0] * v[1] + pose.z[0] * v[2],
    pose.x[1] * v[0] + pose.y[1] * v[1] + pose.z[1] * v[2],
    pose.x[2] * v[0] + pose.y[2] * v[1] + pose.z[2] * v[2],
  ]
}

/** A point of the child frame (mm), seen in the parent frame (mm). */
export function place(pose: Pose, p: Vec3): Vec3 {
  const { x, y, z, origin } = pose
  return [
    x[0] * p[0] + y[0] * p[1] + z[0] * p[2] + origin[0],
    x[1] * p[0] + y[1] * p[1] + z[1] * p[2] + origin[1],
    x[2] * p[0] + y[2] * p[1] + z[2] * p[2] + origin[2],
  ]
}

/** A direction of the parent frame, seen in the child frame. */
export function turnBack(pose: Pose, v: Vec3): Vec3 {
  return [dot(pose.x, v), dot(pose.y, v), dot(pose.z, v)]
}

/** A point of the parent frame (mm), seen in the child frame (mm). */
export function placeBack(pose: Pose, p: Vec3): Vec3 {
  return turnBack(pose, sub(p, pose.origin))
}

/** `aFromC` from `aFromB` and `bFromC`. */
export function compose(aFromB: Pose, bFromC: Pose): Pose {
  return {
    x: turn(aFromB, bFromC.x),
    y: turn(aFromB, bFromC.y),
    z: turn(aFromB, bFromC.z),
    origin: place(aFromB, bFromC.origin),
  }
}

/** +1 for a proper pose, −1 for one that mirrors. */
export function determinant(pose: Pose): number {
  return dot(cross(pose.x, pose.y), pose.z)
}
