import { NOISE_MM } from '../geometry/index.ts'
import { type Field, movedTo, type Window } from './field.ts'
import { AXES, type Axis, clamp, contains, extent, hullOf } from './rects.ts'
import { allTied, CORNERS, cornerRange, type Range, seamRanges, showsCorner, tiedOf } from './ties.ts'
import type { FacePoint, Rect } from './types.ts'

/**
 * Ties windows that show all things: slides them to a corner of the face or to a seam with one that is tied, and where
 * that cannot be, adds blank ones between. At most `most` windows, else nothing. What they show together stays shown.
 */
export function mended(field: Field, windows: readonly Window[], most: number): Window[] | undefined {
  const plan = [...windows]
  for (const k of plan.keys()) slideToCorner(field, plan, k)
  for (;;) {
    const tied = tiedOf(field, plan)
    if (tied.every((one) => one)) return withoutSpare(field, plan)
    if (slideToTied(field, plan, tied) || pullTied(field, plan, tied)) continue
    if (plan.length >= most) return undefined
    plan.push(connecting(field, plan, tied))
  }
}

/** Without the windows that neither show a thing of their own nor tie another one. */
export function withoutSpare(field: Field, windows: readonly Window[]): Window[] {
  let plan = [...windows]
  for (const window of windows) {
    if (showsOwn(field, plan, window)) continue
    const less = plan.filter((one) => one !== window)
    if (allTied(field, less)) plan = less
  }
  return plan
}

/** What only one of the windows shows. */
export function ownOf({ things }: Field, windows: readonly Window[], index: number): Rect[] {
  const window = windows[index]
  if (window === undefined) throw new RangeError(`no window ${index}`)
  return things.filter(
    (thing) => contains(window, thing) && !windows.some((one, k) => k !== index && contains(one, thing)),
  )
}

/** Whether a window shows a thing whole that no other one does. */
function showsOwn({ things }: Field, plan: readonly Window[], window: Window): boolean {
  return things.some((thing) => contains(window, thing) && !plan.some((one) => one !== window && contains(one, thing)))
}

/** Where a window may be moved to without hiding a thing that no other window shows. */
export function freeRange(field: Field, windows: readonly Window[], index: number): Range {
  const { whole } = field
  const window = windows[index]
  if (window === undefined) throw new RangeError(`no window ${index}`)
  const own = hullOf(ownOf(field, windows, index))
  const low = (axis: Axis): number =>
    Math.max(whole.min[axis], (own?.max[axis] ?? Number.NEGATIVE_INFINITY) - extent(window, axis))
  const high = (axis: Axis): number =>
    Math.min(whole.max[axis] - extent(window, axis), own?.min[axis] ?? Number.POSITIVE_INFINITY)
  return { min: [low(0), low(1)], max: [high(0), high(1)] }
}

const sizeOf = (window: Rect): FacePoint => [extent(window, 0), extent(window, 1)]

const common = (a: Range, b: Range): Range => ({
  min: [Math.max(a.min[0], b.min[0]), Math.max(a.min[1], b.min[1])],
  max: [Math.min(a.max[0], b.max[0]), Math.min(a.max[1], b.max[1])],
})

const isEmpty = ({ min, max }: Range): boolean => AXES.some((axis) => max[axis] < min[axis] - NOISE_MM)

const nearest = ({ min, max }: Range, [x, y]: FacePoint): FacePoint => [
  clamp(x, min[0], max[0]),
  clamp(y, min[1], max[1]),
]

const distance = (a: FacePoint, b: FacePoint): number => Math.abs(a[0] - b[0]) + Math.abs(a[1] - b[1])

/** The place in one of the ranges, and in `free`, that is nearest to a point. */
function nearestOf(ranges: readonly Range[], at: FacePoint, free: Range): FacePoint | undefined {
  let best: FacePoint | undefined
  for (const { min, max } of ranges) {
    const [left, right] = [Math.max(min[0], free.min[0]), Math.min(max[0], free.max[0])]
    const [low, high] = [Math.max(min[1], free.min[1]), Math.min(max[1], free.max[1])]
    if (right < left - NOISE_MM || high < low - NOISE_MM) continue
    const place: FacePoint = [clamp(at[0], left, right), clamp(at[1], low, high)]
    if (best === undefined || distance(place, at) < distance(best, at)) best = place
  }
  return best
}

function slideToCorner(field: Field, plan: Window[], index: number): void {
  const window = plan[index]
  if (window === undefined || showsCorner(field, window)) return
  const free = freeRange(field, plan, index)
  const ranges = CORNERS.map((corner) => cornerRange(field, sizeOf(window), corner))
  const place = nearestOf(ranges, window.min, free)
  if (place !== undefined) plan[index] = movedTo(window, place)
}

/** Where windows of a room's size have a seam with a tied one. */
const tiedRanges = (field: Field, plan: readonly Window[], tied: readonly boolean[], size: FacePoint): Range[] =>
  plan.flatMap((to, k) => (tied[k] ? seamRanges(field, size, to) : []))

/** Slides the window that needs the least of it to a seam with a tied one. */
function slideToTied(field: Field, plan: Window[], tied: readonly boolean[]): boolean {
  let best: { index: number; window: Window; by: number } | undefined
  for (const { size, turned } of field.rooms) {
    const ranges = tiedRanges(field, plan, tied, size)
    plan.forEach((window, index) => {
      if (tied[index] || window.turned !== turned) return
      const free = freeRange(field, plan, index)
      const place = nearestOf(ranges, window.min, free)
      if (place === undefined) return
      const by = distance(place, window.min)
      if (best === undefined || by < best.by) best = { index, window: movedTo(window, place), by }
    })
  }
  if (best === undefined) return false
  plan[best.index] = best.window
  return true
}

/** Slides a tied window towards one that is not, as far as all that is tied stays so, and that one to it. */
function pullTied(field: Field, plan: Window[], tied: readonly boolean[]): boolean {
  const ranges = plan.map((_, k) => freeRange(field, plan, k))
  for (const [index, window] of plan.entries()) {
    const free = ranges[index]
    if (tied[index] || free === undefined) continue
    for (const [k, to] of plan.entries()) {
      const loose = ranges[k]
      if (!tied[k] || loose === undefined || !meet(free, window, loose, to)) continue
      const towards = movedTo(to, nearest(loose, nearest(free, to.min)))
      const trial = plan.map((one, n) => (n === k ? towards : one))
      const again = freeRange(field, trial, index)
      const place = nearestOf(seamRanges(field, sizeOf(window), towards), window.min, again)
      if (place === undefined) continue
      trial[index] = movedTo(window, place)
      const now = tiedOf(field, trial)
      if (!now[index] || now.some((one, n) => !one && tied[n])) continue
      plan.splice(0, plan.length, ...trial)
      return true
    }
  }
  return false
}

/** Whether two windows can overlap at all somewhere in their ranges. */
const meet = (a: Range, first: Window, b: Range, second: Window): boolean =>
  AXES.every(
    (axis) => a.min[axis] < b.max[axis] + extent(second, axis) && b.min[axis] < a.max[axis] + extent(first, axis),
  )

/** A blank window with a seam with an untied one, as near as can be to what would tie it. */
function connecting(field: Field, plan: readonly Window[], tied: readonly boolean[]): Window {
  let best: { window: Window; left: number } | undefined
  const { whole } = field
  for (const { size, turned } of field.rooms) {
    const inside: Range = { min: whole.min, max: [whole.max[0] - size[0], whole.max[1] - size[1]] }
    const within = (ranges: readonly Range[]): Range[] =>
      ranges.map((range) => common(inside, range)).filter((range) => !isEmpty(range))
    const goals = within([
      ...CORNERS.map((corner) => cornerRange(field, size, corner)),
      ...tiedRanges(field, plan, tied, size),
    ])
    const untied = tied.map((one) => !one)
    for (const start of within(tiedRanges(field, plan, untied, size))) {
      for (const goal of goals) {
        const left = apart(start, goal)
        if (best !== undefined && left >= best.left - NOISE_MM) continue
        const place = closest(start, goal)
        best = { window: { min: place, max: [place[0] + size[0], place[1] + size[1]], turned }, left }
      }
    }
  }
  if (best === undefined) throw new Error('no blank page has a seam with one that is to be tied')
  return best.window
}

/** How far apart two ranges lie along both axes together. */
const apart = (a: Range, b: Range): number =>
  Math.max(0, a.min[0] - b.max[0], b.min[0] - a.max[0]) + Math.max(0, a.min[1] - b.max[1], b.min[1] - a.max[1])

/** The point of a range that is nearest to another range. */
function closest(range: Range, to: Range): FacePoint {
  const along = (axis: Axis): number =>
    clamp(clamp(range.min[axis], to.min[axis], to.max[axis]), range.min[axis], range.max[axis])
  return [along(0), along(1)]
}
