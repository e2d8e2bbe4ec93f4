import type { ScreenPoint, SheetSize } from './camera.ts'
import type { WordBox } from './word-room.ts'

/** Between a hole and its card, px: more than the ring about the hole. */
const GAP_PX = 30
const RIM_PX = 8

/** A sheet that is less wide has no room for a card beside the hole: it lies across the head or the foot of the sheet, px. */
const ACROSS_PX = 720
export const liesAcross = ({ width }: SheetSize): boolean => width < ACROSS_PX

/** What a card should leave to be seen: middles of rings, px, and words. */
export interface Shown {
  readonly partners: readonly ScreenPoint[]
  readonly readings: readonly WordBox[]
}

/** What hiding a thing costs: the hole itself is never hidden where that can be, then its sizes, then its partners. */
const HIDES = { hole: 1000, reading: 20, partner: 1 }

/**
 * The upper left corner of a card beside a hole, px on the sheet: near it, on the sheet, never over the hole itself, and
 * over as few of its sizes, then of its partners as can be.
 */
export function cardPlace(
  [x, y]: ScreenPoint,
  { partners, readings }: Shown,
  card: SheetSize,
  sheet: SheetSize,
): ScreenPoint {
  const farX = sheet.width - card.width - RIM_PX
  const farY = sheet.height - card.height - RIM_PX
  const onSheet = ([left, top]: ScreenPoint): ScreenPoint => [
    Math.max(RIM_PX, Math.min(left, farX)),
    Math.max(RIM_PX, Math.min(top, farY)),
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
    // Away from it, in the corners of the sheet.
    [farX, RIM_PX],
    [RIM_PX, RIM_PX],
    [farX, farY],
    [RIM_PX, farY],
  ]
  const costs = tries.map(onSheet).map((place) => {
    const box = { left: place[0], top: place[1], right: place[0] + card.width, bottom: place[1] + card.height }
    const cost =
      (hasPoint(grown(box, GAP_PX / 2), [x, y]) ? HIDES.hole : 0) +
      readings.filter((reading) => meet(grown(box, RIM_PX), reading)).length * HIDES.reading +
      partners.filter((partner) => hasPoint(grown(box, GAP_PX / 2), partner)).length * HIDES.partner
    return { place, cost }
  })
  return costs.reduce((least, one) => (one.cost < least.cost ? one : least)).place
}

/** Where a card lies across the sheet. */
export type Side = 'head' | 'foot'

/** The part of the sheet that a card across it leaves, px; `below`: what lies at the foot besides. */
export function leftOf(side: Side, height: number, { width, height: all }: SheetSize, below: number): WordBox {
  return side === 'head'
    ? { left: 0, top: height, right: width, bottom: all - below }
    : { left: 0, top: 0, right: width, bottom: all - below - height }
}

/**
 * The side for a card of a height that lies across the sheet: the foot, unless the hole, or more of the points that belong
 * to it, can be seen with the card at the head.
 */
export function sideFor(
  hole: ScreenPoint,
  others: readonly ScreenPoint[],
  height: number,
  sheet: SheetSize,
  below: number,
): Side {
  const cost = (side: Side): number => {
    const free = leftOf(side, height, sheet, below)
    const hidden = ([, y]: ScreenPoint): boolean => outFromUnder(side, y, free) !== 0
    return (hidden(hole) ? HIDES.hole : 0) + others.filter(hidden).length
  }
  return cost('head') < cost('foot') ? 'head' : 'foot'
}

/** How far down a hole at a height `y` moves to come out from under a card across the sheet, px; up where negative. */
export const outFromUnder = (side: Side, y: number, { top, bottom }: WordBox): number =>
  side === 'head' ? Math.max(0, top + GAP_PX - y) : Math.min(0, bottom - GAP_PX - y)

const grown = ({ left, top, right, bottom }: WordBox, by: number): WordBox => ({
  left: left - by,
  top: top - by,
  right: right + by,
  bottom: bottom + by,
})
const hasPoint = ({ left, top, right, bottom }: WordBox, [x, y]: ScreenPoint): boolean =>
  x > left && x < right && y > top && y < bottom
const meet = (a: WordBox, b: WordBox): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom
