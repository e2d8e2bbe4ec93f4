import { type Field, movedTo, type Window } from './field.ts'
import { freeRange } from './mend.ts'
import { isLess, type Merit } from './merit.ts'
import { AXES, type Axis, extent, pointOf, shared } from './rects.ts'
import { allTied, edgesShown, joinsOf, showsCorner } from './ties.ts'

/**
 * The same windows, slid where that is free: to show more corners and edges, to have fewer and longer seams, to lie in
 * line with others, and to overlap no more than they must. All stays shown and tied.
 */
export function settled(field: Field, windows: readonly Window[]): Window[] {
  let plan = [...windows]
  let merit = meritOf(field, plan)
  for (const index of plan.keys()) {
    for (const axis of AXES) {
      for (const place of placesFor(field, plan, index, axis)) {
        const trial = plan.map((window, k) =>
          k === index ? movedTo(window, pointOf(axis, place, window.min[axis === 0 ? 1 : 0])) : window,
        )
        const better = meritOf(field, trial)
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
  const beside = plan.flatMap((other, k) => {
    if (k === index) return []
    const [low, high] = [other.min[axis], other.max[axis]]
    return [low, high - size, high - overlap, low + overlap - size, high, low - size]
  })
  return [...new Set([...ends, ...beside])].filter((place) => place >= min[axis] && place <= max[axis])
}

/** Areas and lengths in whole mm, so that noise does not decide. */
function meritOf(field: Field, plan: readonly Window[]): Merit {
  const joins = joinsOf(field, plan)
  const corners = plan.filter((window) => showsCorner(field, window)).length
  const edges = plan.reduce((sum, window) => sum + edgesShown(field, window), 0)
  const shortest = Math.min(...joins.map(({ seam, along }) => extent(shared(seam, field.face), along)))
  return [
    joins.length,
    -corners,
    -edges,
    joins.length === 0 ? 0 : -Math.round(shortest),
    -plan.reduce((sum, window) => sum + endsShown(field, window), 0),
    Math.round(overlaps(plan)),
  ]
}

/** At how many sides a window shows all that there is. */
function endsShown({ whole }: Field, { min, max }: Window): number {
  return AXES.reduce<number>(
    (sum, axis) => sum + Number(min[axis] <= whole.min[axis]) + Number(max[axis] >= whole.max[axis]),
    0,
  )
}

/** The area that windows have in common, pair by pair, mm². */
function overlaps(plan: readonly Window[]): number {
  let sum = 0
  plan.forEach((window, k) => {
    for (const other of plan.slice(k + 1)) {
      const both = shared(window, other)
      sum += Math.max(0, extent(both, 0)) * Math.max(0, extent(both, 1))
    }
  })
  return sum
}
