import { formatMm, MM_PER_INCH } from '../../length/index.ts'
import { BAR_MM } from '../../project/index.ts'
import type { Size } from '../../templates/index.ts'
import { LINE_HEIGHT } from '../areas.ts'
import { joinedInto } from '../line-breaks.ts'
import { TEXT_ASCENT, textWidth } from '../text-width.ts'
import type { Drawing, Entity, Point } from '../types.ts'
import { placeWords } from '../words.ts'
import { type Axis, scaleOn, wordsOn } from './rulers.ts'
import { correctionWords, type PageSetup, readingsExample } from './setup.ts'
import { rectangle } from './strokes.ts'
import { fitted, textAt } from './text.ts'

/** The largest office sheet is shorter than this, mm; of longer paper, a roll, only so much is cut off for this page. */
const LONGEST_SHEET = 1300
const OF_ROLL = 280

/** Long inch ticks, beside those at 0, and how many inches the bar holds. */
const INCHES = { upTo: 7, long: [0, 4, 7] } as const
const MILLIMETRES = { upTo: BAR_MM, long: [0, 100, BAR_MM] } as const
/** End ticks stand out so that a rule can be laid against them; mm. */
const TICK = { long: 6, short: 2 } as const
/** What a bar takes on both sides of its line, mm. */
const HALF = TICK.long + 0.5
/** From the inside of a bar to the words, mm. */
const OFF = 4

const SIZES = { title: 8, name: 4.4, box: 3.8, figures: 2.8, least: 2 } as const
/** Of the instructions: the largest that leaves room for the boxes. */
const WORD_SIZES = [4.6, 4.2, 3.8, 3.4, 3] as const
/** From line to line and before a paragraph, in font sizes. */
const LEADING = 1.35
const BEFORE = 0.6
/** Longer lines are hard to read, mm. */
const WIDEST = 240
const BOX: Size = { width: 38, height: 12 }

/** 0.5 mm in 100 is what people can drill by (common practice): so much on a bar, mm. */
const ALLOWED = 0.005 * BAR_MM

/**
 * The page whose only work is to be measured, before any other is printed: bars of 180 mm along both sides of the sheet,
 * what to do with their readings, and boxes to write them in. The sheet upright; of a roll its width, and a short
 * piece. Corrected as all pages are: the readings of what is printed so must be 180 mm. `title`: the project's.
 */
export function measurePage(setup: PageSetup, title: string): Drawing {
  const { margin, correction } = setup
  const { width } = setup.paper
  const roll = setup.paper.height > LONGEST_SHEET
  const paper: Size = { width, height: roll ? OF_ROLL / (correction?.down ?? 1) : setup.paper.height }
  const { level, upright } = axesOn(paper, margin)
  const left = margin + 2 * HALF + OFF
  const room = Math.min(paper.width - margin - left, WIDEST)
  const [name, size] = fitted(title, room, SIZES.name, SIZES.least)
  const top = paper.height - margin
  const nameLine = top - LINE_HEIGHT * SIZES.title - TEXT_ASCENT * SIZES.name
  const boxes = margin + 2 * HALF + OFF
  const under = nameLine - 1.5 * SIZES.name
  const words = wordsIn(paragraphs(setup, paper, roll), { width: room, height: under - boxes - 2 * BOX.height - 10 })
  const [heading, large] = fitted('Measure this page first', room, SIZES.title, SIZES.least, true)
  return {
    title: 'Measure this page first',
    view: { min: [0, 0], max: [paper.width, paper.height] },
    ...(correction !== undefined && { stretch: [correction.across, correction.down] as Point }),
    layers: [
      {
        name: 'SHEET',
        operation: 'note',
        entities: [
          textAt([left, top - TEXT_ASCENT * large], large, heading, { bold: true }),
          textAt([left, nameLine], size, name),
          ...words.map(({ text, down, size: height }) => textAt([left, under - down], height, text)),
          ...barOn(level),
          ...barOn(upright),
          ...boxOn('across', [left, boxes]),
          ...boxOn('down', [left, boxes + BOX.height + 6]),
        ],
      },
    ],
  }
}

/** The two bars, in the lower left corner; in the middle where the sheet has no room for more than a bar. */
function axesOn({ width, height }: Size, margin: number): { level: Axis; upright: Axis } {
  const zero = (wished: number, size: number): number => {
    const last = size - margin - BAR_MM
    return last < margin ? (size - BAR_MM) / 2 : Math.min(wished, last)
  }
  const begin = margin + 2 * HALF + 1
  return {
    level: { zero: [zero(begin, width), margin + HALF], along: [1, 0], across: [0, 1], turnDeg: 0 },
    upright: { zero: [margin + HALF, zero(begin, height)], along: [0, 1], across: [-1, 0], turnDeg: 90 },
  }
}

/** The figures stand before their ticks, since the last one may stand on the margin. */
function barOn(axis: Axis): Entity[] {
  const before = (along: number, across: number, text: string): Entity =>
    wordsOn(axis, [along - 1 - textWidth(text, SIZES.figures, true), across], SIZES.figures, text, true)
  return [
    ...scaleOn(axis, { length: BAR_MM, millimetres: MILLIMETRES, inches: INCHES, tick: TICK }),
    ...[100, BAR_MM].map((mm) => before(mm, 3, `${mm} mm`)),
    ...[4, 7].map((inch) => before(inch * MM_PER_INCH, -5, `${inch} in`)),
    wordsOn(axis, [1.5, 3], SIZES.figures, '0', true),
    wordsOn(axis, [1.5, -5], SIZES.figures, '0', true),
  ]
}

/** Where a reading is written. */
function boxOn(way: 'across' | 'down', [x, y]: Point): Entity[] {
  const words = `${way} reads`
  const left = x + textWidth('across reads', SIZES.box, true) + 3
  const low = y + BOX.height / 2 - 0.36 * SIZES.box
  return [
    textAt([x, low], SIZES.box, words, { bold: true }),
    rectangle({ min: [left, y], max: [left + BOX.width, y + BOX.height] }, 'thin'),
    textAt([left + BOX.width + 2, low], SIZES.box, 'mm', { bold: true }),
  ]
}

interface Line {
  readonly text: string
  readonly size: number
  /** From the upper end of the words to this baseline, mm. */
  readonly down: number
}

/** Paragraphs in the largest letters that a room holds. */
function wordsIn(texts: readonly string[], room: Size): Line[] {
  const sets = WORD_SIZES.map((size) => linesOf(texts, size, room.width))
  return sets.find((lines) => (lines.at(-1)?.down ?? 0) <= room.height) ?? sets.at(-1) ?? []
}

function linesOf(texts: readonly string[], size: number, width: number): Line[] {
  const lines: Line[] = []
  let down = TEXT_ASCENT * size
  for (const paragraph of texts) {
    for (const text of joinedInto(paragraph.split(' '), ' ', (line) => textWidth(line, size) <= width)) {
      lines.push({ text, size, down })
      down += LEADING * size
    }
    down += BEFORE * size
  }
  return lines
}

/** A reading r makes every page 180 / r times as large along its way: true / measured, a factor for each (S71). */
function paragraphs(setup: PageSetup, paper: Size, roll: boolean): string[] {
  const low = formatMm(BAR_MM - ALLOWED)
  const high = formatMm(BAR_MM + ALLOWED)
  const sheet = sheetWords(setup, paper, roll)
  const ways = roll
    ? 'Across is the width of the roll, down is along it.'
    : 'Across is the short side of the sheet, down the long one.'
  const example = readingsExample(setup.units)
  const corrected = correctionWords(setup).trim()
  return [
    `1. Print this page alone, before any other: at actual size (100 %), never “fit” or “shrink”; on the printer and the paper that all pages will be printed on: ${sheet}.`,
    `2. Lay a steel rule on each bar, from the end tick at 0 to that at ${BAR_MM} mm, and write down what it reads, to a tenth of a millimetre. ${ways}`,
    ...(corrected === ''
      ? [
          `3. Both from ${low} to ${high} mm, which is less than 0.5 mm in 100 off: print the rest.`,
          `4. If not: put both readings into the definition, under outputs ${example.key}, or draw with ${example.option}. Each page is then made larger or smaller to suit, across and down apart, and says so on its bars.`,
          `5. Then print this page anew. Both bars must now read ${BAR_MM} mm.`,
        ]
      : [
          `3. ${corrected} So both bars must now read from ${low} to ${high} mm: then print the rest.`,
          '4. If not: draw without the readings (check bars), print this page so, measure it, and put in the new readings.',
        ]),
    'Print all pages in one run. Measure both bars of every page before you drill by it; paper moves with damp, too.',
  ]
}

function sheetWords({ units, correction }: PageSetup, { width, height }: Size, roll: boolean): string {
  const across = placeWords(width * (correction?.across ?? 1), units)
  const down = placeWords(height * (correction?.down ?? 1), units)
  const unit = units === 'mm' ? ' mm' : ''
  return roll ? `the roll, ${across}${unit} wide` : `${across} × ${down}${unit}`
}
