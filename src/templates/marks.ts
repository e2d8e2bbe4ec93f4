import { type Axis, extent, other, pointOf, shared } from './rects.ts'
import type { FacePoint, Rect, Round } from './types.ts'

/** Reach of a registration mark from its centre, mm: its circle, the short arms of its cross, and its letter. */
export const MARK_REACH = 6
/**
 * The arm of its cross that lies across the seam is longer, mm: it runs past the edge of the upper sheet, so that the
 * hairline of the lower sheet can be seen to go on in that of the upper one.
 */
export const MARK_ARM = 13

/** From the edge of the upper sheet to the middle of a mark, mm: the first at which both marks are clear of all else. */
const INSETS = [7, 9, 11] as const
/** Marks stand this far apart at least where the seam is long enough, mm: each 0.2 mm between them turns a sheet less. */
const APART = 60
/** Where the seam is short, or holes are in the way. */
const APART_LEAST = 20
const STEP = 1
/** Kept between a mark and what else is there, mm. */
const CLEAR = 1

/** Where two pages overlap: the one that lies on top, the one under it, and the axis that their seam follows. */
export interface Lap {
  readonly upper: Rect
  readonly lower: Rect
  readonly along: Axis
}

/** Where along the other axis the edge of the upper page lies on the lower one. */
export function lapEdge({ upper, lower, along }: Lap): { at: number; inward: 1 | -1 } {
  const across = other(along)
  const after = upper.min[across] + upper.max[across] >= lower.min[across] + lower.max[across]
  return after ? { at: upper.min[across], inward: 1 } : { at: upper.max[across], inward: -1 }
}

/**
 * Two places for registration marks in the strip that two pages show of the panel, near the edge of the upper one and
 * as far apart as they can be while clear of the `busy` rounds. Where that cannot be, they stand apart and cover as
 * little as can be. `face` is the panel: no mark lies on the paper beyond it, unless the panel is too narrow for two.
 */
export function seamMarks(lap: Lap, face: Rect, busy: readonly Round[]): [FacePoint, FacePoint] {
  const { upper, lower, along } = lap
  const strip = shared(upper, lower)
  const onPanel = shared(strip, face)
  const seam = extent(onPanel, along) >= 4 * MARK_REACH ? onPanel : strip
  const [from, to] = inner(seam, along)
  const across = inner(shared(strip, face), other(along))
  const apart = Math.min(APART, to - from)
  const { at, inward } = lapEdge(lap)
  const lines = INSETS.map((inset) => Math.max(across[0], Math.min(at + inward * inset, across[1])))
  const near = busy.filter(
    (round) => Math.abs(round.at[other(along)] - at) <= round.radius + INSETS[2] + MARK_ARM + CLEAR,
  )
  // Rather nearer to each other than on a hole.
  for (const least of [apart, Math.min(APART_LEAST, apart)]) {
    for (const line of lines) {
      const clear = places(from, to).filter((place) => roomAt(pointOf(along, place, line), along, near) >= 0)
      const [low, high] = [clear[0], clear.at(-1)]
      if (low !== undefined && high !== undefined && high - low >= least)
        return [pointOf(along, low, line), pointOf(along, high, line)]
    }
  }
  const [line = at] = lines
  const room = (place: number): number => roomAt(pointOf(along, place, line), along, near)
  const best = (some: readonly number[]): number => some.reduce((one, next) => (room(next) > room(one) ? next : one))
  const third = Math.max(0, (to - from - apart) / 2)
  return [
    pointOf(along, best(places(from, from + third)), line),
    pointOf(along, best(places(to - third, to).reverse()), line),
  ]
}

/** From where to where the middles of marks may lie, which reach as far as the ends; the middle where there is no room. */
function inner({ min, max }: Rect, axis: Axis): [from: number, to: number] {
  const [from, to] = [min[axis] + MARK_REACH, max[axis] - MARK_REACH]
  return from <= to ? [from, to] : [(from + to) / 2, (from + to) / 2]
}

function places(from: number, to: number): number[] {
  const count = Math.floor((to - from) / STEP)
  return [...Array.from({ length: count + 1 }, (_, k) => from + k * STEP), to]
}

/** Space left between a mark and the nearest busy round, mm; negative where they overlap. */
function roomAt(place: FacePoint, along: Axis, busy: readonly Round[]): number {
  const across = other(along)
  let room = Number.POSITIVE_INFINITY
  for (const { at, radius } of busy) {
    const past = Math.max(0, Math.abs(at[across] - place[across]) - (MARK_ARM - MARK_REACH))
    room = Math.min(room, Math.hypot(past, at[along] - place[along]) - radius - MARK_REACH - CLEAR)
  }
  return room
}
