import { MM_PER_INCH } from '../length/index.ts'
import type { BarReadings, OutputSpec, PaperName } from './spec/outputs.ts'

/** Length of both check bars of a full-size page, mm: the longest that each direction of every paper holds by default. */
export const BAR_MM = 180

/**
 * Longest page that is cut from a roll, mm: a PDF page may be 14 400 units of 1/72 in long (ISO 32000-1, annex C.2), 5080 mm,
 * and readers show a longer one blank.
 */
export const LONGEST_CUT_MM = 5000

/** Width and height of a sheet held upright, mm. */
export interface UprightSize {
  readonly width: number
  readonly height: number
  /** A roll: as wide as it says; pages are cut from it as long as they need, at most `height`. */
  readonly roll?: true
}

const roll = (width: number): UprightSize => ({ width, height: LONGEST_CUT_MM, roll: true })

/** A4 and A3: ISO 216. Letter and Tabloid: sizes A and B of ASME Y14.1; Legal 8.5 × 14 in. Inches are exact. */
const PAPERS: Readonly<Record<PaperName, UprightSize>> = {
  A4: { width: 210, height: 297 },
  A3: { width: 297, height: 420 },
  Letter: { width: 8.5 * MM_PER_INCH, height: 11 * MM_PER_INCH },
  Legal: { width: 8.5 * MM_PER_INCH, height: 14 * MM_PER_INCH },
  Tabloid: { width: 11 * MM_PER_INCH, height: 17 * MM_PER_INCH },
  'roll 610': roll(610),
  'roll 914': roll(914),
  'roll 24 in': roll(24 * MM_PER_INCH),
  'roll 36 in': roll(36 * MM_PER_INCH),
}

/** The sheet upright (portrait), or the width of the roll and the longest page that is cut from it, mm. */
export function paperSize(name: PaperName): UprightSize {
  return PAPERS[name]
}

/** The larger paper of the same make, which holds the bars within the widest margins that a definition may ask for. */
export function largerPaper(name: PaperName): PaperName {
  if (paperSize(name).roll === true) return name
  return name === 'A4' || name === 'A3' ? 'A3' : 'Tabloid'
}

/** `A3`, or of `roll 24 in`: `a roll 24 in wide`. */
export function paperWords(name: PaperName): string {
  return paperSize(name).roll === true
    ? `a roll ${/\D$/.test(name) ? name.slice(5) : `${name.slice(5)} mm`} wide`
    : name
}

/** `1 sheet of A3`, `12 sheets from a roll 610 mm wide`. */
export function sheetWords(count: number, name: PaperName): string {
  const sheets = count === 1 ? '1 sheet' : `${count} sheets`
  return `${sheets} ${paperSize(name).roll === true ? 'from' : 'of'} ${paperWords(name)}`
}

/** By how much pages are drawn larger along the short and the long side of the sheet; 1: as it is. */
export interface Correction {
  readonly across: number
  readonly down: number
}

/** A reading further off than this is a slip, not a printer: pages are then left as they are. Own choice. */
const MOST_CORRECTION = 0.1

/**
 * The correction that makes the bars come out at their length: true / measured, a factor for each direction, since
 * printers err along the two sides differently (S71). None where no readings are given, or where one is past belief.
 */
export function correctionOf({ bars }: Pick<OutputSpec, 'bars'>): Correction | undefined {
  if (bars === undefined || !believable(bars)) return undefined
  return { across: BAR_MM / bars.across, down: BAR_MM / bars.down }
}

/** Whether both readings could be those of the bars. */
export function believable({ across, down }: BarReadings): boolean {
  return [across, down].every((reading) => Math.abs(reading / BAR_MM - 1) <= MOST_CORRECTION)
}
