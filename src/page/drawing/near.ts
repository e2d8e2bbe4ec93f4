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
  let bestDistance = reach + SAME_SPOT_MM
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

/** The one that reading would begin with: the uppermost, and of these the leftmost. */
export function firstRead<T extends Placed>(things: readonly T[]): T | undefined {
  return things.reduce<T | undefined>((first, thing) => {
    if (first === undefined) return thing
    const down = thing.at[1] - first.at[1]
    return down < -SAME_SPOT_MM || (Math.abs(down) <= SAME_SPOT_MM && thing.at[0] < first.at[0]) ? thing : first
  }, undefined)
}
