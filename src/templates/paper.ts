import type { PaperName } from '../project/index.ts'

/** A width and a height, mm. */
export interface Size {
  readonly width: number
  readonly height: number
}

const INCH = 25.4

/** A4 and A3: ISO 216. Letter and Tabloid: sizes A and B of ASME Y14.1; Legal 8.5 × 14 in. Inches are exact. */
const PAPERS: Readonly<Record<PaperName, Size>> = {
  A4: { width: 210, height: 297 },
  A3: { width: 297, height: 420 },
  Letter: { width: 8.5 * INCH, height: 11 * INCH },
  Legal: { width: 8.5 * INCH, height: 14 * INCH },
  Tabloid: { width: 11 * INCH, height: 17 * INCH },
}

/** The sheet upright (portrait), mm. */
export function paperSize(name: PaperName): Size {
  return PAPERS[name]
}
