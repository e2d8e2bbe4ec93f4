import type { ScenePart } from '../scene/types.ts'
import type { Actions } from './actions.ts'
import { type ArrowKey, firstRead, nearest, nextInWay, nextRead, type Placed, WAYS } from './near.ts'
import type { Picked, SheetState } from './sheet-state.ts'
import { measurePoints } from './snap.ts'

/** What the keys do on the sheet, as its list of keys says it. */
export const KEYS: readonly (readonly [key: string, does: string])[] = [
  ['Arrows', 'to the next hole, or panel where modules are seen'],
  ['N, P', 'to the next, the previous, as one reads'],
  ['H', 'where modules are seen: walk holes, or panels again'],
  ['Enter', 'keep the card of the hole; go to the panel; set a point'],
  ['Escape', 'let go'],
  ['M', 'measure; arrows then step between centres and corners'],
  ['F', 'to the next finding on the drawing'],
  ['+  −  0', 'nearer, farther, all of it'],
  ['Shift and arrows', 'move the drawing'],
  ['Backspace', 'back to what was seen before'],
]

/** One press of a key moves the drawing so far, px, or zooms by this factor. */
const STEP_PX = 60
const STEP_ZOOM = 1.25

/** Nothing else is so near to a point that was stepped to, mm. */
const ON_IT_MM = 0.05

type WalkKey = ArrowKey | 'n' | 'p'

/** A panel or module with the middle of where it is drawn. */
export type PlacedPart = Placed & { readonly part: ScenePart }

/** What the sheet does with a key; false where it is none of its keys. */
export function keyHandler(
  state: SheetState,
  actions: Actions,
  parts: () => readonly PlacedPart[],
  nextFlag: () => void,
): (event: KeyboardEvent) => boolean {
  const { page, picked, measuring } = state
  let walksHoles = false

  /** From where one is among `things` in the way of the key, or the first of them. */
  const step = <T extends Placed>(things: readonly T[], now: T | undefined, key: WalkKey): T | undefined => {
    if (key === 'n' || key === 'p') return nextRead(things, now, key === 'n' ? 1 : -1)
    return now === undefined ? firstRead(things) : nextInWay(things, now.at, key)
  }

  const walk = (key: WalkKey): void => {
    const scene = page.workshop.scene.peek()
    if (scene === undefined) return
    const aim = measuring.peek()
    if (aim !== undefined) {
      const points = measurePoints(scene, state.holes.peek())
      const now = aim.aim ?? aim.to ?? aim.from
      const next =
        now === undefined || key === 'n' || key === 'p'
          ? step(points, now && nearest(points, now.at, ON_IT_MM), key)
          : nextInWay(points, now.at, key)
      if (next === undefined) return
      measuring.value = { ...(aim.to === undefined && aim.from && { from: aim.from }), aim: next }
      actions.bringIn(next.at)
      return
    }
    if (walksHoles || scene.look.kind === 'face' || scene.look.kind === 'pair') {
      const holes = state.holes.peek()
      const next = step(
        holes,
        holes.find(({ id }) => id === page.hole.peek()?.id),
        key,
      )
      if (next === undefined) return
      actions.choose(next)
      actions.bringIn(next.at)
      return
    }
    const all = parts()
    const now = picked.peek()
    const next = step(all, now && all.find(({ part }) => isPicked(part, now)), key)
    if (next === undefined || (now !== undefined && isPicked(next.part, now))) return
    state.pointAt(undefined)
    actions.pressPart(next.part)
    actions.bringIn(next.at)
  }

  const enter = (): void => {
    const aim = measuring.peek()?.aim
    if (aim !== undefined) actions.setPoint(aim)
    else if (picked.peek() !== undefined) actions.goToPicked()
    else if (page.hole.peek() !== undefined) state.pinned.value = true
  }

  const doing: Readonly<Record<string, () => void>> = {
    n: () => walk('n'),
    p: () => walk('p'),
    Enter: enter,
    '+': () => actions.zoomMiddle(STEP_ZOOM),
    '=': () => actions.zoomMiddle(STEP_ZOOM),
    '-': () => actions.zoomMiddle(1 / STEP_ZOOM),
    '−': () => actions.zoomMiddle(1 / STEP_ZOOM),
    '0': state.fit,
    m: actions.toggleMeasuring,
    h: () => {
      walksHoles = !walksHoles
      state.pick(undefined)
      state.pointAt(undefined)
    },
    f: nextFlag,
    Backspace: state.back,
  }

  return ({ key, shiftKey, ctrlKey, metaKey, altKey }) => {
    if (ctrlKey || metaKey || altKey) return false
    if (key === 'Escape') return actions.letGo()
    if (isArrow(key)) {
      const [x, y] = WAYS[key]
      if (shiftKey) actions.pan([-x * STEP_PX, -y * STEP_PX])
      else walk(key)
      return true
    }
    const act = doing[key.length === 1 ? key.toLowerCase() : key]
    act?.()
    return act !== undefined
  }
}

const isArrow = (key: string): key is ArrowKey => key in WAYS

export const isPicked = (part: ScenePart, { panel, module, opening }: Omit<Picked, 'name'>): boolean =>
  opening !== undefined
    ? part.key === opening.key
    : panel === undefined
      ? part.panel === undefined && part.module === module
      : part.panel === panel
