import { MM_PER_INCH } from '../length/index.ts'
import type { PaperName } from '../project/index.ts'

/** A width and a height, mm. */
export interface Size {
  readonly width: number
  readonly height: number
}

/** A4 and A3: ISO 216. Letter and Tabloid: sizes A and B of ASME Y14.1; Legal 8.5 × 14 in. Inches are exact. */
const PAPERS: Readonly<Record<PaperName, Size>> = {
  A4: { width: 210, height: 297 },
  A3: { width: 297, height: 420 },
  Letter: { width: 8.5 * MM_PER_INCH, height: 11 * MM_PER_INCH },
  Legal: { width: 8.5 * MM_PER_INCH, height: 14 * MM_PER_INCH },
  Tabloid: { width: 11 * MM_PER_INCH, height: 17 * MM_PER_INCH },
}

/** The sheet upright (portrait), mm. */
export function paperSize(name: PaperName): Size {
  return PAPERS[name]
}
