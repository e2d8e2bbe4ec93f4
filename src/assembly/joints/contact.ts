import { type Box, NOISE_MM, type Vec3 } from '../../geometry/index.ts'
import { boardBox, thicknessAxis } from '../boards.ts'
import type { PlacedPanel } from '../types.ts'

type Axis = 0 | 1 | 2

/** Where the edge of one board (the tip) meets a face of another (the head), module frame, mm. */
export interface Contact {
  /** Square to the plane of contact, from the head into the tip. */
  readonly into: Vec3
  /** Middle of the rectangle of contact. */
  readonly middle: Vec3
  /** Along the joint. */
  readonly along: Vec3
  readonly length: number
}

const AXES: readonly Axis[] = [0, 1, 2]

const unit = (axis: Axis, sign: 1 | -1 = 1): Vec3 => [
  axis === 0 ? sign : 0,
  axis === 1 ? sign : 0,
  axis === 2 ? sign : 0,
]

/**
 * The contact of two boards that touch, the tip's edge on the head's face; `undefined` when they do not share an area.
 * `within` narrows the head's or the tip's extent where the boxes say too much (the shoulder of a rebate).
 */
export function contactOf(
  head: PlacedPanel,
  tip: PlacedPanel,
  headBox: Box = boardBox(head),
  tipBox: Box = boardBox(tip),
): Contact | undefined {
  const normal = thicknessAxis(head)
  const sign =
    Math.abs(headBox.max[normal] - tipBox.min[normal]) <= NOISE_MM
      ? 1
      : Math.abs(headBox.min[normal] - tipBox.max[normal]) <= NOISE_MM
        ? -1
        : undefined
  if (sign === undefined) return undefined
  const across = thicknessAxis(tip)
  const along = AXES.find((axis) => axis !== normal && axis !== across)
  if (along === undefined || across === normal) return undefined
  const low = (axis: Axis): number => Math.max(headBox.min[axis], tipBox.min[axis])
  const high = (axis: Axis): number => Math.min(headBox.max[axis], tipBox.max[axis])
  if (high(along) - low(along) <= NOISE_MM || high(across) - low(across) <= NOISE_MM) return undefined
  const middle: [number, number, number] = [0, 0, 0]
  middle[normal] = sign === 1 ? headBox.max[normal] : headBox.min[normal]
  middle[along] = (low(along) + high(along)) / 2
  middle[across] = (low(across) + high(across)) / 2
  return { into: unit(normal, sign), middle, along: unit(along), length: high(along) - low(along) }
}
