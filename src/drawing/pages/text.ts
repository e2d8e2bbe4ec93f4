import { type Area, LINE_HEIGHT } from '../areas.ts'
import { isOn, type LabelRequest, type Obstacle, type Placed, placeLabels, type Side, type Target } from '../labels.ts'
import { TEXT_ASCENT, textWidth } from '../text-width.ts'
import type { Entity, Point, Text } from '../types.ts'

/** Words that belong to something on the page; the first target is what a leader points at. */
export interface Words {
  /** The lines, in the ways that they may be broken or shortened; the best first. */
  readonly ways: readonly (readonly string[])[]
  /** What they say, in one line, for a sheet that has room for a tag only. */
  readonly full: string
  readonly targets: LabelRequest['targets']
  /** What belongs to other words. */
  readonly rivals?: readonly Target[]
  readonly oneThing?: boolean
  readonly sides?: readonly Side[]
  /** The first line bold: what to set on the tool. */
  readonly lead?: boolean
  /** Longest leader, mm. */
  readonly reach?: number
}

/** Font sizes that a label may take, mm, the best first: about 9.6, 7.9 and 6.2 points. */
const SIZES = [3.4, 2.8, 2.2] as const
const GAP = 1
const SIDES: readonly Side[] = [
  'right',
  'left',
  'above right',
  'below right',
  'above left',
  'below left',
  'above',
  'below',
]

export interface Worded {
  readonly entities: readonly Entity[]
  /** What later words must keep clear of. */
  readonly obstacles: readonly Obstacle[]
  readonly unplaced: readonly Words[]
}

/** How often words without a place get another try. */
const TRIES = 5

/**
 * Places words in an area, clear of the obstacles and of each other, with leaders where they stand away. Where some
 * find no place, all are placed anew with those first and set narrower: one that has few places to go must not be
 * walled in by another, nor wall in the others.
 */
export function placeWords(words: readonly Words[], obstacles: readonly Obstacle[], area: Area): Worded {
  let best = placedInOrder(words, obstacles, area)
  let order = words
  let stuck = best.unplaced
  for (let round = 1; round < TRIES && stuck.length > 0; round++) {
    const first = stuck
    order = [...first.map(narrower), ...order.filter((some) => !first.includes(some))]
    const next = placedInOrder(order, obstacles, area)
    stuck = next.unplaced
    if (stuck.length < best.unplaced.length) best = next
  }
  return best
}

function narrower(words: Words): Words {
  return words.ways.length === 1 ? words : { ...words, ways: words.ways.slice(1) }
}

function placedInOrder(words: readonly Words[], obstacles: readonly Obstacle[], area: Area): Worded {
  const placed = placeLabels(words.map(requestOf), obstacles, area)
  const byKey = new Map(placed.map((label) => [label.key, label]))
  const entities: Entity[] = []
  const taken: Obstacle[] = []
  const unplaced: Words[] = []
  words.forEach((some, index) => {
    const label = byKey.get(String(index))
    if (label === undefined) unplaced.push(some)
    else {
      entities.push(...drawn(some, label))
      taken.push({ kind: 'area', area: label.area })
      if (label.leader !== undefined) taken.push({ kind: 'line', ...label.leader })
    }
  })
  return { entities, obstacles: taken, unplaced }
}

/** Each way of setting the words, in each size. */
function formsOf({ ways }: Words): { lines: readonly string[]; size: number }[] {
  return ways.flatMap((lines) => SIZES.map((size) => ({ lines, size })))
}

function requestOf(words: Words, index: number): LabelRequest {
  const { lead = false, targets, rivals = [], oneThing = false, sides = SIDES, reach = 60 } = words
  const forms = formsOf(words).map(({ lines, size }) => ({
    width: Math.max(...lines.map((line, k) => textWidth(line, size, lead && k === 0))),
    height: lines.length * size * LINE_HEIGHT,
  }))
  return { key: String(index), forms, targets, rivals, oneThing, sides, gap: GAP, reach }
}

function drawn(words: Words, { form, area, leader }: Placed): Entity[] {
  const chosen = formsOf(words)[form]
  if (chosen === undefined) throw new RangeError(`a label took form ${form}, which it does not have`)
  const { lines, size } = chosen
  const texts = lines.map((text, index): Text => {
    const baseline = area.max[1] - (TEXT_ASCENT + index * LINE_HEIGHT) * size
    const bold = words.lead === true && index === 0
    return { kind: 'text', at: [area.min[0], baseline], height: size, anchor: 'start', text, bold }
  })
  return leader === undefined ? texts : [...texts, { kind: 'line', ...leader, pen: 'hair' }]
}

/** True when an area meets none of the obstacles. */
export function isClear(area: Area, obstacles: readonly Obstacle[]): boolean {
  return obstacles.every((obstacle) => !isOn(obstacle, area))
}

/** The largest size from `most` down to `least` at which a line fits in a width; beyond that it is cut and ends in …. */
export function fitted(text: string, width: number, most: number, least: number, bold = false): [string, number] {
  const height = Math.min(most, (most * width) / Math.max(textWidth(text, most, bold), Number.MIN_VALUE))
  if (height >= least) return [text, height]
  const letters = [...text]
  while (letters.length > 0 && textWidth(`${letters.join('')}…`, least, bold) > width) letters.pop()
  return [`${letters.join('')}…`, least]
}

/** A line of text at a point, for short. */
export function textAt(at: Point, height: number, text: string, more: Partial<Omit<Text, 'kind' | 'at'>> = {}): Text {
  return { kind: 'text', at, height, anchor: 'start', text, ...more }
}
