import type { Field, Window } from './field.ts'
import { ownOf } from './mend.ts'
import { type Axis, extent, hull, hullOf, shared } from './rects.ts'
import { allTied, CORNERS, joinsOf, showsCorner } from './ties.ts'
import type { FacePoint, Rect } from './types.ts'

/** Beside what a sheet off a roll must show, so much more is left along it for words, mm. */
const ROOM = 30
/** A corner is laid on with so much of its edge, mm, where the sheet has it. */
const EDGE = 120

/** Windows on sheets off a roll, no longer than what they are for needs: their own things, a corner, their seams. */
export function cutOff(field: Field, windows: readonly Window[]): Window[] {
  let plan = [...windows]
  for (const [index, window] of windows.entries()) {
    for (const needed of [needs(field, plan, index, false), needs(field, plan, index, true)]) {
      const trial = plan.map((one, k) => (k === index ? shortened(window, needed) : one))
      if (!allTied(field, trial) || showsCorner(field, window) !== showsCorner(field, trial[index] ?? window)) continue
      plan = trial
      break
    }
  }
  return plan
}

/** What a window must show; with its seams as they are now, or as far as other needs show them. */
function needs(field: Field, plan: readonly Window[], index: number, seams: boolean): Rect | undefined {
  const window = plan[index]
  if (window === undefined) return undefined
  const things = ownOf(field, plan, index)
  const corners = CORNERS.flatMap((corner): Rect[] => {
    const at = (axis: Axis): number => field.fold[corner[axis]][axis]
    const inward = (axis: Axis): number => at(axis) + (corner[axis] === 'min' ? EDGE : -EDGE)
    const tip: FacePoint = [at(0), at(1)]
    const seen = shared(window, { min: tip, max: tip })
    if (extent(seen, 0) < 0 || extent(seen, 1) < 0) return []
    return [hull({ min: tip, max: tip }, { min: [inward(0), inward(1)], max: [inward(0), inward(1)] })]
  })
  const joined = joinsOf(field, plan).filter(({ first, second }) => first === index || second === index)
  return hullOf([
    ...things,
    ...(showsCorner(field, window) ? corners : []),
    ...(seams ? joined.map(({ seam }) => seam) : []),
  ])
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
