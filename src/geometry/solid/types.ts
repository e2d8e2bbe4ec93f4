import { type Box, placedBox } from '../box.ts'
import type { Curve } from '../curve.ts'
import { compose, IDENTITY, type Pose, place, turn } from '../pose.ts'
import { add, cross, norm, scale, type Vec3 } from '../vec.ts'

/** A round solid with square ends, mm. */
export interface Cylinder {
  readonly kind: 'cylinder'
  /** Middle of the end at which it begins. */
  readonly from: Vec3
  /** Unit; runs into the solid. */
  readonly axis: Vec3
  readonly length: number
  readonly radius: number
}

/** A flat ellipse in space: its middle and its two half axes, square to each other, mm. */
export interface Ellipse {
  readonly middle: Vec3
  readonly u: Vec3
  readonly v: Vec3
}

/** All that lies between two ellipses (their convex hull): a countersink, or a bore whose mouth is cut slantwise by a face. */
export interface Taper {
  readonly kind: 'taper'
  readonly a: Ellipse
  readonly b: Ellipse
}

/** A box along the axes of its own frame, mm; `pose` takes that frame to the common one. */
export interface BoxSolid {
  readonly kind: 'box'
  readonly pose: Pose
  readonly box: Box
}

/**
 * A prism over a convex shape in x and y of its own frame, from z = `low` to `high`, mm. The shape is the convex hull of
 * its pieces, so that a wall is a single line, and a round lump of a wall a single arc.
 */
export interface ConvexPrism {
  readonly kind: 'prism'
  readonly pose: Pose
  readonly pieces: readonly Curve[]
  readonly low: number
  readonly high: number
}

/** All points within `radius` of the line between two points, mm. */
export interface Capsule {
  readonly kind: 'capsule'
  readonly from: Vec3
  readonly to: Vec3
  readonly radius: number
}

/** A convex solid; all of one frame, mm. */
export type Solid = Cylinder | Taper | BoxSolid | ConvexPrism | Capsule

/** A cylinder that begins at `from` and runs along `axis` (unit), mm. */
export const cylinder = (from: Vec3, axis: Vec3, length: number, radius: number): Cylinder => ({
  kind: 'cylinder',
  from,
  axis,
  length,
  radius,
})

/** A cone frustum: `radius` at `from`, `endRadius` at its other end; `axis` is unit, lengths in mm. */
export function frustum(from: Vec3, axis: Vec3, length: number, radius: number, endRadius: number): Taper {
  return {
    kind: 'taper',
    a: discAcross(from, axis, radius),
    b: discAcross(add(from, scale(axis, length)), axis, endRadius),
  }
}

/** A box; without a pose along the axes of the common frame. */
export const boxSolid = (box: Box, pose: Pose = IDENTITY): BoxSolid => ({ kind: 'box', pose, box })

/** A disc square to `axis` (unit). */
export function discAcross(middle: Vec3, axis: Vec3, radius: number): Ellipse {
  const [u, v] = acrossOf(axis)
  return { middle, u: scale(u, radius), v: scale(v, radius) }
}

/** Two unit directions square to a unit direction and to each other. */
export function acrossOf(axis: Vec3): readonly [Vec3, Vec3] {
  const [x, y, z] = [Math.abs(axis[0]), Math.abs(axis[1]), Math.abs(axis[2])]
  // The direction of the axes that this one is furthest from, so that the product is never short.
  const aside: Vec3 = x <= y && x <= z ? [1, 0, 0] : y <= z ? [0, 1, 0] : [0, 0, 1]
  const square = cross(axis, aside)
  const u = scale(square, 1 / norm(square))
  return [u, cross(axis, u)]
}

/** A solid of a child frame, as the parent frame sees it. */
export function placedSolid(pose: Pose, solid: Solid): Solid {
  switch (solid.kind) {
    case 'cylinder':
      return { ...solid, from: place(pose, solid.from), axis: turn(pose, solid.axis) }
    case 'capsule':
      return { ...solid, from: place(pose, solid.from), to: place(pose, solid.to) }
    case 'taper':
      return { ...solid, a: placedEllipse(pose, solid.a), b: placedEllipse(pose, solid.b) }
    default:
      return { ...solid, pose: compose(pose, solid.pose) }
  }
}

const placedEllipse = (pose: Pose, { middle, u, v }: Ellipse): Ellipse => ({
  middle: place(pose, middle),
  u: turn(pose, u),
  v: turn(pose, v),
})

/** The same solid elsewhere, moved by so many mm along the axes. */
export const movedSolid = (by: Vec3, solid: Solid): Solid => placedSolid({ ...IDENTITY, origin: by }, solid)

/** The box of a box solid in the common frame where it lies along the axes; nothing where it leans. */
export function alignedBox({ pose, box }: BoxSolid): Box | undefined {
  const alongAxes = [pose.x, pose.y, pose.z].every((axis) => axis.every((part) => part === 0 || Math.abs(part) === 1))
  return alongAxes ? placedBox(pose, box) : undefined
}
