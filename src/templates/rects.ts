import { NOISE_MM } from '../geometry/index.ts'
import type { FacePoint, Rect, Round } from './types.ts'

/** The axes, and for each the other one. */
export const AXES = [0, 1] as const
export type Axis = (typeof AXES)[number]
export const other = (axis: Axis): Axis => (axis === 0 ? 1 : 0)

export const boxOf = ({ at: [x, y], radius }: Round): Rect => ({
  min: [x - radius, y - radius],
  max: [x + radius, y + radius],
})

/** True when the inner rectangle lies inside the outer one, its sides included. */
export function contains(outer: Rect, inner: Rect): boolean {
  return (
    inner.min[0] >= outer.min[0] - NOISE_MM &&
    inner.max[0] <= outer.max[0] + NOISE_MM &&
    inner.min[1] >= outer.min[1] - NOISE_MM &&
    inner.max[1] <= outer.max[1] + NOISE_MM
  )
}

/** True when the round lies inside the rectangle, its rim included. */
export const liesWhole = (round: Round, rect: Rect): boolean => contains(rect, boxOf(round))

/** What two rectangles have in common; of two that lie apart a side is negative. */
export const shared = (a: Rect, b: Rect): Rect => ({
  min: [Math.max(a.min[0], b.min[0]), Math.max(a.min[1], b.min[1])],
  max: [Math.min(a.max[0], b.max[0]), Math.min(a.max[1], b.max[1])],
})

/** The smallest rectangle round both. */
export const hull = (a: Rect, b: Rect): Rect => ({
  min: [Math.min(a.min[0], b.min[0]), Math.min(a.min[1], b.min[1])],
  max: [Math.max(a.max[0], b.max[0]), Math.max(a.max[1], b.max[1])],
})

export const hullOf = (rects: readonly Rect[]): Rect | undefined =>
  rects.reduce<Rect | undefined>((whole, rect) => (whole === undefined ? rect : hull(whole, rect)), undefined)

/** How far the rectangle reaches along an axis, mm. */
export const extent = ({ min, max }: Rect, axis: Axis): number => max[axis] - min[axis]

/** A point from its figures along an axis and across it. */
export const pointOf = (axis: Axis, along: number, across: number): FacePoint =>
  axis === 0 ? [along, across] : [across, along]

export const clamp = (value: number, low: number, high: number): number => Math.max(low, Math.min(high, value))
