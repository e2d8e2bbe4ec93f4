import type { ScenePoint } from '../scene/types.ts'

/** Something with a place on the drawing. */
export interface Placed {
  readonly at: ScenePoint
}

/** Ways of the arrow keys; y of the drawing runs down. */
export const WAYS = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
} as const satisfies Record<string, readonly [number, number]>
export type ArrowKey = keyof typeof WAYS

/** How much more a step aside counts than one along the way: a row is followed to its end before the next one is. */
const ASIDE = 3
/** Two places in one spot, mm. */
const SAME_SPOT_MM = 0.01

/** The nearest of `things` within `reach` (mm on the drawing), or nothing; the first of several in one spot. */
export function nearest<T extends Placed>(things: Iterable<T>, [x, y]: ScenePoint, reach: number): T | undefined {
  let best: T | undefined
  let bestDistance = reach + 2 * SAME_SPOT_MM
  for (const thing of things) {
    const distance = Math.hypot(thing.at[0] - x, thing.at[1] - y)
    if (distance >= bestDistance - SAME_SPOT_MM) continue
    best = thing
    bestDistance = distance
  }
  return best
}

/** The next of `things` from a place in the way of an arrow key; nothing where there is none. */
export function nextInWay<T extends Placed>(things: readonly T[], from: ScenePoint, key: ArrowKey): T | undefined {
  const [wayX, wayY] = WAYS[key]
  let best: T | undefined
  let bestCost = Number.POSITIVE_INFINITY
  for (const thing of things) {
    const x = thing.at[0] - from[0]
    const y = thing.at[1] - from[1]
    const along = x * wayX + y * wayY
    if (along <= SAME_SPOT_MM) continue
    const aside = Math.abs(x * wayY - y * wayX)
    // What lies more aside than ahead belongs to another arrow, unless nothing else is left.
    const cost = along + ASIDE * aside + (aside > along ? 1e6 : 0)
    if (cost >= bestCost) continue
    best = thing
    bestCost = cost
  }
  return best
}

/** As one reads: rows from the top, each from the left; what lies in one spot stays in its order. */
export function inReadingOrder<T extends Placed>(things: readonly T[]): readonly T[] {
  return [...things].sort((a, b) => {
    const down = a.at[1] - b.at[1]
    return Math.abs(down) > SAME_SPOT_MM ? down : a.at[0] - b.at[0]
  })
}

/** The one that reading would begin with. */
export function firstRead<T extends Placed>(things: readonly T[]): T | undefined {
  return inReadingOrder(things)[0]
}

/** The next of `things` as one reads, or with -1 the one before; behind the last comes the first. So every one is reached. */
export function nextRead<T extends Placed>(things: readonly T[], now: T | undefined, step: 1 | -1): T | undefined {
  const order = inReadingOrder(things)
  const index = now === undefined ? -1 : order.indexOf(now)
  if (index < 0) return order.at(step === 1 ? 0 : -1)
  return order.at((index + step) % order.length)
}
