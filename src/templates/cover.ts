import { NOISE_MM } from '../geometry/index.ts'
import { type Field, type Window, windowAt } from './field.ts'
import { AXES, type Axis, contains, other, pointOf } from './rects.ts'
import type { Rect } from './types.ts'

/** Which things are shown: a bit for each. */
type Mask = Uint32Array

/** From which side a face is covered. */
interface Sweep {
  readonly axis: Axis
  /** From the low end of the axis, or from the high one. */
  readonly upwards: boolean
}

const SWEEPS: readonly Sweep[] = AXES.flatMap((axis) => [true, false].map((upwards) => ({ axis, upwards })))

/** A window with what it shows. */
interface Shot {
  readonly window: Window
  readonly shows: Mask
}

interface State {
  readonly shown: Mask
  readonly count: number
  readonly windows: readonly Window[]
}

/** A window added to a state: how many things are shown then. */
interface Step {
  readonly state: State
  readonly shot: Shot
  readonly count: number
}

/**
 * Searches for few windows that show all things, whatever ties them: of the things not yet shown, one lies furthest to
 * one side, and a window that shows it may as well begin with it; each that could be best is tried, and at every step
 * the `width` states that show most go on.
 */
export class Covering {
  readonly #field: Field
  readonly #orders: ReadonlyMap<Sweep, readonly number[]>
  readonly #shots = new Map<Sweep, Map<number, readonly Shot[]>>(SWEEPS.map((sweep) => [sweep, new Map()]))

  constructor(field: Field) {
    this.#field = field
    const reach = ({ axis, upwards }: Sweep, index: number): number => {
      const thing = field.things[index]
      return thing === undefined ? 0 : upwards ? thing.min[axis] : -thing.max[axis]
    }
    this.#orders = new Map(
      SWEEPS.map((sweep) => [sweep, field.things.map((_, k) => k).sort((a, b) => reach(sweep, a) - reach(sweep, b))]),
    )
  }

  /**
   * Sets of at most `most` windows that show all things; `fixed` ones are in each set. From all sides, or only from the
   * one with a number.
   */
  covers(fixed: readonly Window[], most: number, width: number, side?: number): (readonly Window[])[] {
    const start = this.#stateOf(fixed)
    if (start.count === this.#field.things.length) return fixed.length <= most ? [fixed] : []
    const sweeps = side === undefined ? SWEEPS : SWEEPS.filter((_, k) => k === side % SWEEPS.length)
    return sweeps.flatMap((sweep) => this.#swept(sweep, start, most, width))
  }

  #stateOf(windows: readonly Window[]): State {
    const { things } = this.#field
    const shown = new Uint32Array(Math.ceil(things.length / 32))
    things.forEach((thing, k) => {
      if (windows.some((window) => contains(window, thing))) mark(shown, k)
    })
    return { shown, count: counted(shown), windows }
  }

  #swept(sweep: Sweep, start: State, most: number, width: number): (readonly Window[])[] {
    const all = this.#field.things.length
    let states: readonly State[] = [start]
    while (states.length > 0 && (states[0]?.windows.length ?? most) < most) {
      const steps = states.flatMap((state) => this.#steps(sweep, state))
      steps.sort((a, b) => b.count - a.count)
      states = taken(steps, width)
      const done = states.filter(({ count }) => count === all)
      if (done.length > 0) return done.map(({ windows }) => windows)
    }
    return []
  }

  #steps(sweep: Sweep, state: State): Step[] {
    const first = this.#orders.get(sweep)?.find((index) => !isMarked(state.shown, index))
    if (first === undefined) return []
    return this.#shotsOf(sweep, first).map((shot) => ({ state, shot, count: countedOfBoth(state.shown, shot.shows) }))
  }

  /** The windows that begin with a thing and of which none shows less than another. */
  #shotsOf(sweep: Sweep, index: number): readonly Shot[] {
    const known = this.#shots.get(sweep)
    const found = known?.get(index)
    if (found !== undefined) return found
    const thing = this.#field.things[index]
    const shots = thing === undefined ? [] : foremost(shotsFrom(this.#field, sweep, thing))
    known?.set(index, shots)
    return shots
  }
}

function shotsFrom(field: Field, { axis, upwards }: Sweep, thing: Rect): Shot[] {
  const across = other(axis)
  return field.rooms.flatMap((room) => {
    if (thing.max[axis] - thing.min[axis] > room.size[axis] + NOISE_MM) return []
    const begin = upwards ? thing.min[axis] : thing.max[axis] - room.size[axis]
    const strip = windowAt(field, room, pointOf(axis, begin, thing.min[across]))
    const [from, to] = [strip.min[axis] - NOISE_MM, strip.max[axis] + NOISE_MM]
    const inStrip = field.things
      .map((other, k) => ({ other, k }))
      .filter(({ other }) => other.min[axis] >= from && other.max[axis] <= to)
    const starts = inStrip
      .map(({ other }) => other.min[across])
      .filter((start) => start <= thing.min[across] && start + room.size[across] >= thing.max[across] - NOISE_MM)
    return [...new Set(starts)].map((start): Shot => {
      const window = windowAt(field, room, pointOf(axis, begin, start))
      const shows = new Uint32Array(Math.ceil(field.things.length / 32))
      for (const { other, k } of inStrip) if (contains(window, other)) mark(shows, k)
      return { window, shows }
    })
  })
}

/** Without the windows that show no more than another one does. */
function foremost(shots: readonly Shot[]): Shot[] {
  const kept: Shot[] = []
  for (const shot of [...shots].sort((a, b) => counted(b.shows) - counted(a.shows)))
    if (!kept.some((one) => holds(one.shows, shot.shows))) kept.push(shot)
  return kept
}

/** The states that the first steps lead to, `most` at most, of which no two show the same. */
function taken(steps: readonly Step[], most: number): State[] {
  const kept: State[] = []
  for (const { state, shot, count } of steps) {
    if (kept.length === most) break
    const shown = union(state.shown, shot.shows)
    if (kept.some((one) => one.count === count && holds(one.shown, shown))) continue
    kept.push({ shown, count, windows: [...state.windows, shot.window] })
  }
  return kept
}

const mark = (mask: Mask, index: number): void => {
  const word = index >> 5
  mask[word] = ((mask[word] ?? 0) | (1 << (index & 31))) >>> 0
}
const isMarked = (mask: Mask, index: number): boolean => (((mask[index >> 5] ?? 0) >>> (index & 31)) & 1) === 1
const union = (a: Mask, b: Mask): Mask => a.map((word, k) => word | (b[k] ?? 0))

function holds(a: Mask, b: Mask): boolean {
  for (let k = 0; k < b.length; k++) if (((b[k] ?? 0) & ~(a[k] ?? 0)) !== 0) return false
  return true
}

function counted(mask: Mask): number {
  let sum = 0
  for (let k = 0; k < mask.length; k++) sum += bitsOf(mask[k] ?? 0)
  return sum
}

function countedOfBoth(a: Mask, b: Mask): number {
  let sum = 0
  for (let k = 0; k < a.length; k++) sum += bitsOf((a[k] ?? 0) | (b[k] ?? 0))
  return sum
}

/** How many bits of a word are set: by pairs, fours and bytes. */
function bitsOf(word: number): number {
  const pairs = word - ((word >>> 1) & 0x55555555)
  const fours = (pairs & 0x33333333) + ((pairs >>> 2) & 0x33333333)
  return Math.imul((fours + (fours >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24
}
