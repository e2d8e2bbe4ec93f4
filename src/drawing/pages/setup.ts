import { formatMm, type Units } from '../../length/index.ts'
import { type Correction, correctionOf, type OutputSpec, type PaperName, paperSize } from '../../project/index.ts'
import type { Size } from '../../templates/index.ts'
import type { Point } from '../types.ts'

/** What the definition says of paper and printer. */
export type PrintSpec = Pick<OutputSpec, 'paper' | 'margin' | 'bars'>

/** What all sheets of a face have in common. Lengths as the printer makes them, so that what is drawn comes out true. */
export interface PageSetup {
  /** The sheet upright, mm. */
  readonly paper: Size
  /** Left free at each side of a sheet, mm. */
  readonly margin: number
  readonly correction?: Correction
  /** A warning printed on every sheet. */
  readonly stamp?: string
  readonly units: Units
}

/** Left free at each side of a sheet where nothing is said, mm: more than any office printer needs. */
const USUAL_MARGIN = 10

/**
 * A printer that makes 180 mm of 179.1 mm makes its sheet of 210 mm hold 208.955 mm of the drawing: all of a page is
 * drawn on such a smaller (or larger) sheet, and stretched to the true one as it is written.
 */
export function setupOf(sheet: PaperName | PrintSpec, units: Units, stamp: string | undefined): PageSetup {
  const spec: PrintSpec = typeof sheet === 'string' ? { paper: sheet, margin: USUAL_MARGIN } : sheet
  const { width, height } = paperSize(spec.paper)
  const correction = correctionOf(spec)
  const shared = { units, ...(stamp !== undefined && { stamp }) }
  if (correction === undefined) return { ...shared, paper: { width, height }, margin: spec.margin }
  const { across, down } = correction
  return {
    ...shared,
    paper: { width: width / across, height: height / down },
    // One margin for all sides: the wider of the two.
    margin: spec.margin / Math.min(across, down),
    correction,
  }
}

/** How much larger a sheet is written than drawn, along its x and y as it lies: the correction goes with the paper's sides. */
export function stretchOf({ correction }: PageSetup, { width, height }: Size): Point | undefined {
  if (correction === undefined) return undefined
  return width > height ? [correction.down, correction.across] : [correction.across, correction.down]
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
