import { MINUS_X, MINUS_Z, type Pose, poseOf, type Vec3, X, Y, Z } from '../../geometry/index.ts'
import type { Bound, Edge, Opening } from '../carcase/index.ts'
import type { PlacedDoor } from './fronts.ts'
import type { Span } from './hinge-rules.ts'

/**
 * The edge of a door or flap that has the hinges, and the panel that takes their plates. Positions along it are heights
 * (doors) or distances across the module (flaps), module frame, mm.
 */
export interface HingeLine {
  readonly from: number
  readonly to: number
  readonly wall: Bound | undefined
  /** The stretch of the opening, where plates have the wall to themselves. */
  readonly clear: Span
  /** Frame of a cup, `fromEdge` from the hinge edge, at a position along it. */
  readonly cup: (fromEdge: number, at: number) => Pose
  /** Frame of a plate on a plate line so far from the module's front. */
  readonly plate: (plateLine: number, at: number) => Pose
}

/** x and y of the stations: cups have x away from the hinge edge, plates into the carcase; z goes into the wood. */
const TURNS: Record<Edge, { readonly cup: readonly [Vec3, Vec3]; readonly plateY: Vec3 }> = {
  left: { cup: [X, Z], plateY: MINUS_Z },
  right: { cup: [MINUS_X, MINUS_Z], plateY: Z },
  top: { cup: [MINUS_Z, X], plateY: MINUS_X },
  bottom: { cup: [Z, MINUS_X], plateY: X },
}

/** The hinge line of a door or flap over an opening. */
export function hingeLine(door: PlacedDoor, opening: Opening): HingeLine {
  const { hang, hidden } = door
  const { cup, plateY } = TURNS[hang]
  const upright = hang === 'left' || hang === 'right'
  const edge = { left: door.x0, right: door.x1, top: door.z1, bottom: door.z0 }[hang]
  const inward = hang === 'left' || hang === 'bottom' ? 1 : -1
  const face = { left: opening.x0, right: opening.x1, top: opening.z1, bottom: opening.z0 }[hang]
  const point = (across: number, y: number, at: number): Vec3 => (upright ? [across, y, at] : [at, y, across])
  return {
    from: upright ? door.z0 : door.x0,
    to: upright ? door.z1 : door.x1,
    wall: opening[hang],
    clear: upright ? { from: opening.z0, to: opening.z1 } : { from: opening.x0, to: opening.x1 },
    cup: (fromEdge, at) => poseOf(cup[0], cup[1], point(edge + inward * fromEdge, hidden, at)),
    plate: (plateLine, at) => poseOf(Y, plateY, point(face, plateLine, at)),
  }
}
