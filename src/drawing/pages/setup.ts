import { NOISE_MM } from '../../geometry/index.ts'
import { formatMm, type Units } from '../../length/index.ts'
import {
  type Correction,
  correctionOf,
  DEFAULTS,
  type OutputSpec,
  type PaperName,
  paperSize,
} from '../../project/index.ts'
import type { Paper, Size } from '../../templates/index.ts'
import type { Point } from '../types.ts'

/** What the definition says of paper and printer. */
export type PrintSpec = Pick<OutputSpec, 'paper' | 'margin' | 'bars'> &
  Partial<Pick<OutputSpec, 'overlap' | 'pageBudget'>>

/** What all sheets of a face have in common. Lengths as the printer makes them, so that what is drawn comes out true. */
export interface PageSetup {
  readonly paperName: PaperName
  /** The sheet upright, mm; of a roll its width, and the longest page that is cut from it. */
  readonly paper: Paper
  /** Left free at each side of a sheet, mm. */
  readonly margin: number
  /** What pages that are taped together show in common, mm. */
  readonly overlap: number
  /** Sheets that a panel may take at most; nothing where whole faces are printed. */
  readonly pageBudget?: number
  readonly correction?: Correction
  /** A warning printed on every sheet. */
  readonly stamp?: string
  readonly units: Units
}

/**
 * A printer that makes 180 mm of 179.1 mm makes its sheet of 210 mm hold 208.955 mm of the drawing: all of a page is
 * drawn on such a smaller (or larger) sheet, and stretched to the true one as it is written.
 */
export function setupOf(sheet: PaperName | PrintSpec, units: Units, stamp: string | undefined): PageSetup {
  const spec: PrintSpec = typeof sheet === 'string' ? { paper: sheet, margin: DEFAULTS.printMargin } : sheet
  const { width, height, roll } = paperSize(spec.paper)
  const { overlap = DEFAULTS.pageOverlap, pageBudget } = spec
  const correction = correctionOf(spec)
  const { across, down } = correction ?? { across: 1, down: 1 }
  return {
    units,
    paperName: spec.paper,
    paper: { width: width / across, height: height / down, ...(roll && { roll }) },
    // One margin for all sides: the wider of the two.
    margin: spec.margin / Math.min(across, down),
    overlap,
    ...(pageBudget !== undefined && { pageBudget }),
    ...(correction !== undefined && { correction }),
    ...(stamp !== undefined && { stamp }),
  }
}

/**
 * How much larger a sheet is written than drawn, along its x and y as it lies: the correction goes with the paper's sides;
 * off a roll, `across` is the roll's width, however long the sheet.
 */
export function stretchOf({ correction, paper }: PageSetup, { width, height }: Size): Point | undefined {
  if (correction === undefined) return undefined
  const lies = paper.roll === true ? Math.abs(width - paper.width) > NOISE_MM : width > height
  return lies ? [correction.down, correction.across] : [correction.across, correction.down]
}

/** How a sheet is corrected along its x and y as it lies: `0.503 %`. */
export function stretchWords(setup: PageSetup, paper: Size): readonly [level: string, upright: string] | undefined {
  const stretch = stretchOf(setup, paper)
  return stretch && [percent(stretch[0]), percent(stretch[1])]
}

/** `Corrected 0.503 % across, −0.2 % down (sheet upright).` */
export function correctionWords({ correction }: PageSetup): string {
  if (correction === undefined) return ''
  return ` Corrected ${percent(correction.across)} across, ${percent(correction.down)} down (sheet upright).`
}

const percent = (factor: number): string => `${formatMm((factor - 1) * 100).replace('-', '−')} %`

/** How to write the readings of the check bars, in a unit that the definition takes for mm. */
export function readingsExample(units: Units): { readonly key: string; readonly option: string } {
  return units === 'mm'
    ? { key: 'check bars: [across, down]', option: '--check-bars across,down' }
    : { key: 'check bars: [across mm, down mm], each with its unit', option: '--check-bars "across mm,down mm"' }
}
