import { gridOf } from './bounds.ts'
import { Covering } from './cover.ts'
import { type Field, type Window, windowAt } from './field.ts'
import { mended, withoutSpare } from './mend.ts'
import { isLess, type Merit } from './merit.ts'
import { contains } from './rects.ts'
import { CORNERS, joinsOf, showsCorner } from './ties.ts'
import type { FacePoint } from './types.ts'

/** States that go on at each step of the search. */
const WIDTH = 4
/** How many sets of windows are tied, the smallest first; of large ones fewer, each of which takes longer. */
const MOST_TIED = 60
const MOST_TIED_WINDOWS = 400
/** How many when some are as few as can be. */
const ENOUGH_TIED = 20

/** The fewest windows found that show all things and are tied; `least` is known to be needed. */
export function fewestWindows(field: Field, least: number): readonly Window[] {
  if (field.things.length === 0) return []
  const covering = new Covering(field)
  const grid = gridOf(field, 'keep')
  const plans = new Plans(field, grid.length)
  const sets = unlike(
    seedsOf(field).flatMap((seed, k) => covering.covers(seed, grid.length, WIDTH, k === 0 ? undefined : k)),
  )
  let tried = 0
  for (const set of mostPromising(field, sets)) {
    if (set.length > plans.most || tried >= (plans.most === least ? ENOUGH_TIED : triesFor(set.length))) break
    plans.note(mended(field, set, plans.most))
    tried++
  }
  if (plans.isEmpty) plans.note(withoutSpare(field, grid))
  if (plans.most > least) save(field, covering, plans)
  return plans.best()
}

/** The smallest first; of equal ones, those of which more windows lie by a corner as they are. */
function mostPromising(field: Field, sets: readonly (readonly Window[])[]): (readonly Window[])[] {
  const ranked = sets.map((set) => ({ set, corners: set.filter((window) => showsCorner(field, window)).length }))
  return ranked.sort((a, b) => a.set.length - b.set.length || b.corners - a.corners).map(({ set }) => set)
}

const triesFor = (windows: number): number => Math.min(MOST_TIED, MOST_TIED_WINDOWS / windows)

/** The sets of windows without those that are there already in another order. */
function unlike(sets: readonly (readonly Window[])[]): (readonly Window[])[] {
  const known = new Set<string>()
  return sets.filter((set) => {
    const key = set
      .map(({ min, turned }) => `${min[0].toFixed(2)} ${min[1].toFixed(2)} ${turned}`)
      .sort()
      .join()
    return known.size < known.add(key).size
  })
}

/** The plans with the fewest windows so far. */
class Plans {
  most: number
  #field: Field
  #plans: Plan[] = []

  constructor(field: Field, most: number) {
    this.#field = field
    this.most = most
  }

  note(windows: readonly Window[] | undefined): void {
    if (windows === undefined || windows.length > this.most) return
    if (windows.length < this.most) this.#plans = []
    this.most = windows.length
    this.#plans.push({ windows, merit: meritOf(this.#field, windows) })
  }

  get isEmpty(): boolean {
    return this.#plans.length === 0
  }

  /** The first of the best. */
  best(): readonly Window[] {
    const [first, ...others] = this.#plans
    if (first === undefined) throw new Error('the full grid of pages is not tied')
    return others.reduce((best, plan) => (isLess(plan.merit, best.merit) ? plan : best), first).windows
  }
}

interface Plan {
  readonly windows: readonly Window[]
  readonly merit: Merit
}

const meritOf = (field: Field, windows: readonly Window[]): Merit => [
  windows.length,
  joinsOf(field, windows).length,
  -windows.filter((window) => showsCorner(field, window)).length,
]

/** Windows in none, some or all of the corners, each held either way and with something to show. */
function seedsOf(field: Field): Window[][] {
  const { whole, rooms } = field
  return CORNERS.reduce<Window[][]>(
    (seeds, corner) => {
      const at = (axis: 0 | 1, size: number): number =>
        corner[axis] === 'min' ? whole.min[axis] : whole.max[axis] - size
      const windows = rooms
        .map((room) => windowAt(field, room, [at(0, room.size[0]), at(1, room.size[1])]))
        .filter((window) => field.things.some((thing) => contains(window, thing)))
      return seeds.flatMap((seed) => [seed, ...windows.map((window) => [...seed, window])])
    },
    [[]],
  )
}

/** Windows that are taken out together, to be replaced by fewer. */
const GROUPS = [2, 3, 4] as const

/** Takes out windows that lie together and shows what they show with fewer, for as long as that saves one. */
function save(field: Field, covering: Covering, plans: Plans): void {
  let left = triesFor(plans.most)
  const saves = (plan: readonly Window[]): boolean => {
    for (const count of GROUPS) {
      for (const window of plan) {
        const out = nearestTo(window, plan).slice(0, count)
        const kept = plan.filter((one) => !out.includes(one))
        for (const set of unlike(covering.covers(kept, plan.length - 1, WIDTH))) {
          if (left-- <= 0) return false
          const better = mended(field, set, plan.length - 1)
          plans.note(better)
          if (better !== undefined) return true
        }
      }
    }
    return false
  }
  while (saves(plans.best()));
}

/** The windows of a plan, the nearest to one of them first: that one itself. */
function nearestTo(window: Window, plan: readonly Window[]): Window[] {
  const middle = ({ min, max }: Window): FacePoint => [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2]
  const [x, y] = middle(window)
  const away = (one: Window): number => {
    const [ox, oy] = middle(one)
    return Math.abs(ox - x) + Math.abs(oy - y)
  }
  return [...plan].sort((a, b) => away(a) - away(b))
}
