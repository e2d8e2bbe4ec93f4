import { type Pose, poseOf, X } from '../../geometry/index.ts'
import { type FlipSizes, type FlipSpec, flipSizes, type ModuleSpec, sidesDepth } from '../../project/index.ts'

/** Where a flip-over platform rests, module frame, mm. */
export interface FlipPlace {
  readonly spec: ModuleSpec
  readonly flip: FlipSpec
  readonly sizes: FlipSizes
  /** Inner faces of the sides. */
  readonly walls: { readonly left: number; readonly right: number }
  /** Ends of the platform. */
  readonly x0: number
  readonly x1: number
  readonly axle: { readonly y: number; readonly z: number }
  /** The place of a point of the platform once it is turned over: half a turn about the axle, exact. */
  readonly moduleTurned: Pose
}

/** The platform of a module of that carcase height. Platform width = inside width − 2 × gap. */
export function flipPlace(spec: ModuleSpec, flip: FlipSpec, height: number): FlipPlace {
  const sizes = flipSizes(flip, sidesDepth(spec))
  const walls = { left: spec.stock.thickness, right: spec.width - spec.stock.thickness }
  const axle = { y: sizes.axle.y, z: height - sizes.well + sizes.axle.aboveTop }
  return {
    spec,
    flip,
    sizes,
    walls,
    x0: walls.left + flip.gap,
    x1: walls.right - flip.gap,
    axle,
    moduleTurned: poseOf(X, [0, -1, 0], [0, 2 * axle.y, 2 * axle.z]),
  }
}
