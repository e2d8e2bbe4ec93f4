import type { HoleFacts, Scene, ScenePoint } from '../scene/types.ts'
import type { ScreenPoint, SheetSize } from './camera.ts'
import { inScene } from './flags.ts'

/** Between a hole and its card, px: more than the ring about the hole. */
const GAP_PX = 30
const RIM_PX = 8

/**
 * The upper left corner of a card beside a hole, px on the sheet: near it, on the sheet, never over the hole itself, and
 * over as few of `others` (its partners, the feet of its sizes) as can be.
 */
export function cardPlace(
  [x, y]: ScreenPoint,
  others: readonly ScreenPoint[],
  card: SheetSize,
  sheet: SheetSize,
): ScreenPoint {
  const onSheet = ([left, top]: ScreenPoint): ScreenPoint => [
    Math.max(RIM_PX, Math.min(left, sheet.width - card.width - RIM_PX)),
    Math.max(RIM_PX, Math.min(top, sheet.height - card.height - RIM_PX)),
  ]
  const right = x + GAP_PX
  const left = x - GAP_PX - card.width
  const above = y - GAP_PX - card.height
  const below = y + GAP_PX
  const centredX = x - card.width / 2
  const centredY = y - card.height / 2
  const tries: readonly ScreenPoint[] = [
    [right, above],
    [left, above],
    [right, below],
    [left, below],
    [right, centredY],
    [left, centredY],
    [centredX, above],
    [centredX, below],
  ]
  const covers = ([cardX, cardY]: ScreenPoint, [px, py]: ScreenPoint, rim: number): boolean =>
    px > cardX - rim && px < cardX + card.width + rim && py > cardY - rim && py < cardY + card.height + rim
  const costs = tries.map(onSheet).map((place) => {
    const overHole = covers(place, [x, y], GAP_PX / 2) ? 1000 : 0
    return { place, cost: overHole + others.filter((other) => covers(place, other, RIM_PX)).length }
  })
  const best = costs.reduce((least, one) => (one.cost < least.cost ? one : least))
  return best.place
}

/** Where the words of a hole's sizes stand: half way from the foot of each to the hole. */
export function readingsOf(
  { from, panel }: HoleFacts,
  { frames }: Pick<Scene, 'frames'>,
  hole: ScenePoint,
): ScenePoint[] {
  const frame = frames[panel]
  if (frame === undefined) return []
  return from.flatMap(({ foot }): ScenePoint[] => {
    if (foot === undefined) return []
    const [x, y] = inScene(frame, foot)
    return [[(x + hole[0]) / 2, (y + hole[1]) / 2]]
  })
}
