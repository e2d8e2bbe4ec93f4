import type { Field, Window } from './field.ts'
import { ownOf } from './mend.ts'
import { type Axis, contains, extent, hull, hullOf } from './rects.ts'
import { allTied, CORNERS, joinsOf, showsCorner } from './ties.ts'
import type { Rect } from './types.ts'

/** Beside what a sheet off a roll must show, so much more is left along it for words, mm. */
const ROOM = 30
/** A corner is laid on with so much of its edge, mm, where the sheet has it. */
const EDGE = 120

/**
 * Windows on sheets off a roll, no longer than what they are for needs: their own things, and a corner or their seams. A
 * window that shows a corner still shows one, the one that takes the least paper.
 */
export function cutOff(field: Field, windows: readonly Window[]): Window[] {
  let plan = [...windows]
  for (const [index, window] of windows.entries()) {
    const trials = [...needs(field, plan, index)]
      .map((needed) => shortened(window, needed))
      .filter((short) => showsCorner(field, short) || !showsCorner(field, window))
      .map((short) => ({ long: long(short), plan: plan.map((one, k) => (k === index ? short : one)) }))
      .filter((trial) => allTied(field, trial.plan))
    const shortest = trials.reduce<(typeof trials)[number] | undefined>(
      (best, trial) => (best === undefined || trial.long < best.long ? trial : best),
      undefined,
    )
    plan = shortest?.plan ?? plan
  }
  return plan
}

const long = (window: Window): number => extent(window, window.turned ? 0 : 1)

/** What a window may be cut back to: its own things, with a corner that it shows, with its seams. */
function needs(field: Field, plan: readonly Window[], index: number): (Rect | undefined)[] {
  const window = plan[index]
  if (window === undefined) return []
  const things = ownOf(field, plan, index)
  const seams = joinsOf(field, plan)
    .filter(({ first, second }) => first === index || second === index)
    .map(({ seam }) => seam)
  return [[], seams, ...CORNERS.map((corner) => cornerIn(field, window, corner))].map((more) =>
    hullOf([...things, ...more]),
  )
}

/** A corner of the face with enough of its edges to lay it on; nothing where the window does not show it. */
function cornerIn({ fold }: Field, window: Window, corner: (typeof CORNERS)[number]): Rect[] {
  const at = (axis: Axis): number => fold[corner[axis]][axis]
  const inward = (axis: Axis): number => at(axis) + (corner[axis] === 'min' ? EDGE : -EDGE)
  const tip: Rect = { min: [at(0), at(1)], max: [at(0), at(1)] }
  return contains(window, tip) ? [hull(tip, { min: [inward(0), inward(1)], max: [inward(0), inward(1)] })] : []
}

/** The window cut back along its roll to what is needed and some room; as it is where that is nothing. */
function shortened(window: Window, needed: Rect | undefined): Window {
  if (needed === undefined) return window
  const along: Axis = window.turned ? 0 : 1
  const low = Math.max(window.min[along], needed.min[along] - ROOM)
  const high = Math.min(window.max[along], needed.max[along] + ROOM)
  return along === 0
    ? { ...window, min: [low, window.min[1]], max: [high, window.max[1]] }
    : { ...window, min: [window.min[0], low], max: [window.max[0], high] }
}
