import { type Field, movedTo, type Window } from './field.ts'
import { freeRange } from './mend.ts'
import { isLess, type Merit } from './merit.ts'
import { AXES, type Axis, extent, other, pointOf, shared } from './rects.ts'
import { allTied, edgesShown, seamOf, showsCorner } from './ties.ts'
import type { Rect } from './types.ts'

/**
 * The same windows, slid where that is free: to show more corners and edges, to have fewer and longer seams, to lie in
 * line with others, and to overlap no more than they must. All stays shown and tied.
 */
export function settled(field: Field, windows: readonly Window[]): Window[] {
  let plan = [...windows]
  for (const index of plan.keys()) {
    let merit = meritOf(field, plan, index)
    for (const axis of AXES) {
      for (const place of placesFor(field, plan, index, axis)) {
        const trial = plan.map((window, k) =>
          k === index ? movedTo(window, pointOf(axis, place, window.min[other(axis)])) : window,
        )
        const better = meritOf(field, trial, index)
        if (!isLess(better, merit) || !allTied(field, trial)) continue
        plan = trial
        merit = better
      }
    }
  }
  return plan
}

/** Where a window would lie in line with another one or a seam's width over it, or at an end of the field. */
function placesFor(field: Field, plan: readonly Window[], index: number, axis: Axis): number[] {
  const window = plan[index]
  if (window === undefined) return []
  const size = extent(window, axis)
  const { min, max } = freeRange(field, plan, index)
  const { whole, fold, overlap } = field
  const ends = [whole.min[axis], whole.max[axis] - size, fold.min[axis], fold.max[axis] - size]
  const beside = plan.flatMap((one, k) => {
    if (k === index) return []
    const [low, high] = [one.min[axis], one.max[axis]]
    return [low, high - size, high - overlap, low + overlap - size, high, low - size]
  })
  return [...new Set([...ends, ...beside])].filter((place) => place >= min[axis] && place <= max[axis])
}

/** How well a window lies among the others. Areas and lengths in whole mm, so that noise does not decide. */
function meritOf(field: Field, plan: readonly Window[], index: number): Merit {
  const window = plan[index]
  if (window === undefined) throw new RangeError(`no window ${index}`)
  const others = plan.filter((one) => one !== window)
  const alone = showsCorner(field, window)
  const seams = others.flatMap((one) => {
    const join = alone && showsCorner(field, one) ? undefined : seamOf(field, window, one)
    return join === undefined ? [] : [extent(shared(join.seam, field.face), join.along)]
  })
  return [
    seams.length,
    alone ? 0 : 1,
    -edgesShown(field, window),
    seams.length === 0 ? 0 : -Math.round(Math.min(...seams)),
    -endsShown(field, window),
    Math.round(others.reduce((sum, one) => sum + areaOf(shared(window, one)), 0)),
  ]
}

const areaOf = (rect: Rect): number => Math.max(0, extent(rect, 0)) * Math.max(0, extent(rect, 1))

/** At how many sides a window shows all that there is. */
function endsShown({ whole }: Field, { min, max }: Window): number {
  return AXES.reduce<number>(
    (sum, axis) => sum + Number(min[axis] <= whole.min[axis]) + Number(max[axis] >= whole.max[axis]),
    0,
  )
}
