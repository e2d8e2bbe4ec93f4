import type { ScreenPoint } from './camera.ts'
import type { WordBox } from './word-room.ts'

/** Height of the words of a size, px (sheet.css has the same), and the width of one letter of the face of figures as a part of it. */
export const READING_PX = 14
const LETTER = 0.61
/** From the middle of a word down to the line that it is written on, as a part of its size. */
const TO_LINE = 0.34
/** A size that is shorter on the screen is not drawn, px. */
const SHORTEST_PX = 3
/** Between words and what they keep off; between words and their own line; beyond its slanted end, px. */
const CLEAR_PX = 2
const BESIDE_PX = 4
const BEYOND_PX = [8, 4] as const
/** Nearer to the line of another size, words would be read as that one's, px. */
const MISREAD_PX = 14
/** Places out on a leader lie so far apart, px. */
const GRID_PX = 8

/** A size to be drawn: from an edge to a hole, along an axis of the sheet, px, and its words. */
export interface AskedSize {
  readonly from: ScreenPoint
  readonly to: ScreenPoint
  readonly words: string
}

/** A size with the place of its words, px. */
export interface PlacedSize extends AskedSize {
  /** What the words take. */
  readonly box: WordBox
  /** The middle of the line that they are written on. */
  readonly at: ScreenPoint
  /** Read from the right, along an upright line. */
  readonly isTurned: boolean
  /** From the line to words that stand away from it. */
  readonly leader?: Line
}

export type Line = readonly [ScreenPoint, ScreenPoint]
export interface Round {
  readonly at: ScreenPoint
  readonly radius: number
}

/** What is on the sheet already, px. */
export interface Crowd {
  /** Where words can be seen. */
  readonly area: WordBox
  /** On these no word may lie: other words; holes and rings. */
  readonly words: readonly WordBox[]
  readonly rounds: readonly Round[]
  /** These are better not crossed. */
  readonly lines: readonly Line[]
}

/** A place that is tried, and how far it is from the best, whatever lies there. */
interface Try {
  readonly middle: ScreenPoint
  readonly isTurned: boolean
  readonly cost: number
  readonly isAway?: true
}

/** Of a try. Turned words want the head turned, and what stands beyond the edge or away on a leader is sought longer. */
const COST = {
  along: 0.05,
  right: 0.5,
  below: 1,
  turned: 3,
  beyond: 4,
  away: 8,
  aPx: 0.05,
  crossed: 12,
  ownLine: 7,
  misread: 20,
  taken: 1000,
}
/** Along its line, as parts of what is seen of it: a size is looked for at its middle first. */
const SHARES: readonly number[] = Array.from({ length: 17 }, (_, k) => 0.5 + (k % 2 === 0 ? k : -k - 1) * 0.025)
/** Words beyond the edge may stand so far aside, as parts of their length. */
const ASIDE = [0, -0.25, 0.25, -0.5, 0.5, -0.75, 0.75] as const

/**
 * Where the words of sizes stand: beside the middle of their line and level where that can be, else further along, turned,
 * beyond the edge that it begins at, or out on a leader; on no word, hole or ring, nor on each other, as long as there is any
 * room in the area; else where they cover least. Of a line too short to be drawn, or of which nothing is in the area, there
 * is none. In the order asked; the shorter ones choose first, since they have fewer places.
 */
export function placedSizes(asked: readonly AskedSize[], crowd: Crowd): readonly PlacedSize[] {
  const seen = asked.flatMap((size, order) => {
    const line = clipped([size.from, size.to], crowd.area)
    const isDrawn = Math.hypot(size.to[0] - size.from[0], size.to[1] - size.from[1]) >= SHORTEST_PX
    return line === undefined || !isDrawn ? [] : [{ size, order, line }]
  })
  const own = seen.map(({ line }) => line)
  const words = [...crowd.words]
  const placed = [...seen]
    .sort((a, b) => lengthOf(a.line) - lengthOf(b.line))
    .map(({ size, order, line }) => {
      const others = own.filter((other) => other !== line)
      const one = placedOne(size, line, { ...crowd, words }, others)
      words.push(one.box)
      return { order, one }
    })
  return placed.sort((a, b) => a.order - b.order).map(({ one }) => one)
}

function placedOne(size: AskedSize, line: Line, crowd: Crowd, others: readonly Line[]): PlacedSize {
  const long = size.words.length * LETTER * READING_PX
  const price = (box: WordBox, most: number): number => costOf(box, crowd, [line, ...others], most)
  const best = cheapest(near(size, line, long), long, crowd.area, price)
  // Away is looked only where it can be better.
  const found =
    best !== undefined && best.cost < COST.away
      ? best
      : cheapest([...(best === undefined ? [] : [best.one]), ...away(line, crowd.area)], long, crowd.area, price)
  const one = found?.one ?? { middle: middleOf(line, 0.5), isTurned: false, cost: 0 }
  const box = boxAbout(one, long)
  const [x, y] = one.middle
  const shift = TO_LINE * READING_PX
  const leader = one.isAway ? leaderTo(box, line) : undefined
  return {
    ...size,
    box,
    at: one.isTurned ? [x + shift, y] : [x, y + shift],
    isTurned: one.isTurned,
    ...(leader && { leader }),
  }
}

function cheapest(
  tries: readonly Try[],
  long: number,
  area: WordBox,
  price: (box: WordBox, most: number) => number,
): { readonly one: Try; readonly cost: number } | undefined {
  let best: { readonly one: Try; readonly cost: number } | undefined
  for (const one of [...tries].sort((a, b) => a.cost - b.cost)) {
    if (best !== undefined && one.cost >= best.cost) break
    const box = boxAbout(one, long)
    if (!isWithin(box, area)) continue
    const cost = one.cost + price(box, (best?.cost ?? Number.POSITIVE_INFINITY) - one.cost)
    if (best === undefined || cost < best.cost) best = { one, cost }
  }
  return best
}

/** What lies under a box, as a cost; once that is `most`, it is no longer looked at. Of `own` lines the first is the words' own. */
function costOf(box: WordBox, { words, rounds, lines }: Crowd, own: readonly Line[], most: number): number {
  let cost = 0
  for (const word of words) {
    const over = overlapOf(box, word)
    if (over > 0) cost += COST.taken + over
    if (cost >= most) return cost
  }
  for (const round of rounds) {
    if (liesOn(box, round)) cost += COST.taken + round.radius
    if (cost >= most) return cost
  }
  for (const line of lines) if (clipped(line, box) !== undefined) cost += COST.crossed
  const wide = {
    left: box.left - MISREAD_PX,
    top: box.top - MISREAD_PX,
    right: box.right + MISREAD_PX,
    bottom: box.bottom + MISREAD_PX,
  }
  own.forEach((line, k) => {
    if (clipped(line, k === 0 ? box : wide) !== undefined) cost += k === 0 ? COST.ownLine : COST.misread
  })
  return cost
}

/** Places beside the line, and beyond the edge where that is in sight. */
function near({ from }: AskedSize, line: Line, long: number): readonly Try[] {
  const [[x1, y1], [x2, y2]] = line
  const isLevel = Math.abs(x2 - x1) > Math.abs(y2 - y1)
  const high = READING_PX / 2 + BESIDE_PX
  const wide = long / 2 + BESIDE_PX
  const beside = SHARES.flatMap((share, order): Try[] => {
    const [x, y] = middleOf(line, share)
    const cost = order * COST.along
    if (isLevel)
      return [
        { middle: [x, y - high], isTurned: false, cost },
        { middle: [x, y + high], isTurned: false, cost: cost + COST.below },
      ]
    return [
      { middle: [x + wide, y], isTurned: false, cost },
      { middle: [x - wide, y], isTurned: false, cost: cost + COST.right },
      { middle: [x - high, y], isTurned: true, cost: cost + COST.turned },
      { middle: [x + high, y], isTurned: true, cost: cost + COST.turned + COST.right },
    ]
  })
  // The line itself is clipped: its first point is the edge only where that is seen.
  if (x1 !== from[0] || y1 !== from[1]) return beside
  const half = isLevel ? long / 2 : READING_PX / 2
  const way = isLevel ? Math.sign(x1 - x2) : Math.sign(y1 - y2)
  const beyond = BEYOND_PX.flatMap((gap, order) =>
    ASIDE.map((share): Try => {
      const out = way * (half + gap)
      const aside = share * (isLevel ? READING_PX * 2 : long)
      return {
        middle: isLevel ? [x1 + out, y1 + aside] : [x1 + aside, y1 + out],
        isTurned: false,
        cost: COST.beyond + order + Math.abs(share),
      }
    }),
  )
  return [...beside, ...beyond]
}

/** Places all over the area, the nearer the better. */
function away(line: Line, { left, top, right, bottom }: WordBox): readonly Try[] {
  const [x0, y0] = middleOf(line, 0.5)
  const tries: Try[] = []
  for (let y = top; y <= bottom; y += GRID_PX)
    for (let x = left; x <= right; x += GRID_PX) {
      const cost = COST.away + COST.aPx * Math.hypot(x - x0, y - y0)
      tries.push({ middle: [x, y], isTurned: false, cost, isAway: true })
    }
  return tries
}

/** From the middle of the line to the nearest of the box. */
function leaderTo(box: WordBox, line: Line): Line {
  const [x, y] = middleOf(line, 0.5)
  return [
    [x, y],
    [Math.max(box.left, Math.min(x, box.right)), Math.max(box.top, Math.min(y, box.bottom))],
  ]
}

function boxAbout({ middle: [x, y], isTurned }: Try, long: number): WordBox {
  const [across, up] = isTurned ? [READING_PX / 2, long / 2] : [long / 2, READING_PX / 2]
  return { left: x - across, right: x + across, top: y - up, bottom: y + up }
}

const lengthOf = ([[x1, y1], [x2, y2]]: Line): number => Math.hypot(x2 - x1, y2 - y1)
const middleOf = ([[x1, y1], [x2, y2]]: Line, share: number): ScreenPoint => [
  x1 + share * (x2 - x1),
  y1 + share * (y2 - y1),
]

const isWithin = (a: WordBox, b: WordBox): boolean =>
  a.left >= b.left && a.right <= b.right && a.top >= b.top && a.bottom <= b.bottom

/** What two boxes have in common with what is to be clear between them, px². */
function overlapOf(a: WordBox, b: WordBox): number {
  const across = Math.min(a.right, b.right) - Math.max(a.left, b.left) + CLEAR_PX
  const up = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) + CLEAR_PX
  return across > 0 && up > 0 ? across * up : 0
}

function liesOn({ left, top, right, bottom }: WordBox, { at: [x, y], radius }: Round): boolean {
  const across = Math.max(left - x, 0, x - right)
  const up = Math.max(top - y, 0, y - bottom)
  return Math.hypot(across, up) < radius + CLEAR_PX
}

/** The stretch of a line that lies in a box; nothing where none does (after Liang and Barsky). */
function clipped([[x1, y1], [x2, y2]]: Line, { left, top, right, bottom }: WordBox): Line | undefined {
  const [dx, dy] = [x2 - x1, y2 - y1]
  let [first, last] = [0, 1]
  for (const [step, room] of [
    [-dx, x1 - left],
    [dx, right - x1],
    [-dy, y1 - top],
    [dy, bottom - y1],
  ] as const) {
    if (step === 0 && room < 0) return undefined
    if (step < 0) first = Math.max(first, room / step)
    if (step > 0) last = Math.min(last, room / step)
  }
  if (first > last) return undefined
  const at = (share: number): ScreenPoint => [x1 + share * dx, y1 + share * dy]
  return [first === 0 ? [x1, y1] : at(first), last === 1 ? [x2, y2] : at(last)]
}
