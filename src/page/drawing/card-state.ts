import { computed, type ReadonlySignal, type Signal } from '@preact/signals'
import type { Units } from '../../length/index.ts'
import type { HoleFacts, Scene, SceneHole } from '../scene/types.ts'
import { type Camera, NARROW_PX, type ScreenPoint, type SheetSize, toScreen } from './camera.ts'
import { cardPlace, leftOf, liesAcross, type Side, sideFor } from './card-place.ts'
import { type Chosen, matesOf, placedReadings, sizesOf } from './readings.ts'
import type { PlacedSize } from './size-room.ts'
import type { WordBox } from './word-room.ts'

/** What the place of a card depends on. */
interface Around {
  readonly scene: ReadonlySignal<Scene | undefined>
  readonly holes: ReadonlySignal<readonly SceneHole[]>
  readonly facts: ReadonlySignal<HoleFacts | undefined>
  readonly camera: ReadonlySignal<Camera>
  readonly size: ReadonlySignal<SheetSize>
  readonly units: ReadonlySignal<Units>
  /** Something was pressed, and a strip at the foot says what. */
  readonly hasStrip: ReadonlySignal<boolean>
}

/** The card of a hole on the sheet, and the sizes that are drawn beside it. */
export interface CardState {
  /** Its size, once it is on the sheet. */
  readonly size: Signal<SheetSize | undefined>
  /** Where it lies across the sheet; nothing where it stands beside its hole. */
  readonly side: ReadonlySignal<Side | undefined>
  /** Its upper left corner; nothing where it lies across the sheet. */
  readonly at: ReadonlySignal<ScreenPoint | undefined>
  /** The part of the sheet that it leaves; all of it, as long as it stands beside its hole. */
  readonly left: ReadonlySignal<WordBox>
  readonly readings: ReadonlySignal<readonly PlacedSize[]>
  readonly isNarrow: ReadonlySignal<boolean>
}

/** What the strip at the foot takes, px; hole-card.css has the same. */
const STRIP_PX = 56
/** Words keep off the rim of the sheet, px. */
const RIM_PX = 3

/** The state of the card, in which `size` is written by whoever draws it. */
export function cardState(
  size: Signal<SheetSize | undefined>,
  { scene, holes, facts, camera, size: sheet, units, hasStrip }: Around,
): CardState {
  const chosen = computed((): Chosen | undefined => {
    const [drawn, known] = [scene.value, facts.value]
    const hole = known && drawn?.holes.find(({ id }) => id === known.id)
    return drawn && known && hole && { scene: drawn, facts: known, hole, holes: holes.value }
  })
  const isNarrow = computed(() => sheet.value.width < NARROW_PX)
  // On a narrow sheet the strip gives way to the card.
  const below = computed(() => (hasStrip.value && !isNarrow.value ? STRIP_PX : 0))
  const partners = (of: Chosen): readonly ScreenPoint[] => {
    const { mates, fellows } = matesOf(of)
    return [...mates, ...fellows].map(({ at }) => toScreen(camera.value, at))
  }
  const side = computed((): Side | undefined => {
    if (!liesAcross(sheet.value)) return undefined
    const of = chosen.value
    if (of === undefined) return 'foot'
    const feet = sizesOf(of, camera.value, units.value).map(({ from }) => from)
    const hole = toScreen(camera.value, of.hole.at)
    return sideFor(hole, [...feet, ...partners(of)], size.value?.height ?? 0, sheet.value, below.value)
  })
  const left = computed((): WordBox => {
    const [lies, { width, height }] = [side.value, sheet.value]
    if (lies === undefined || chosen.value === undefined) return { left: 0, top: 0, right: width, bottom: height }
    return leftOf(lies, size.value?.height ?? 0, sheet.value, below.value)
  })
  const readings = computed((): readonly PlacedSize[] => {
    if (chosen.value === undefined) return []
    const { left: l, top, right, bottom } = left.value
    const area = { left: l + RIM_PX, top: top + RIM_PX, right: right - RIM_PX, bottom: bottom - RIM_PX }
    return placedReadings(chosen.value, camera.value, sheet.value, area, units.value)
  })
  const at = computed((): ScreenPoint | undefined => {
    const [of, card] = [chosen.value, size.value]
    if (of === undefined || card === undefined || side.value !== undefined) return undefined
    const shown = { partners: partners(of), readings: readings.value.map(({ box }) => box) }
    return cardPlace(toScreen(camera.value, of.hole.at), shown, card, sheet.value)
  })
  return { size, side, at, left, readings, isNarrow }
}
