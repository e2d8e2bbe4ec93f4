/** Sheets, then rolls by their width. */
export const PAPER_NAMES = [
  'A4',
  'A3',
  'Letter',
  'Legal',
  'Tabloid',
  'roll 610',
  'roll 914',
  'roll 24 in',
  'roll 36 in',
] as const

export type PaperName = (typeof PAPER_NAMES)[number]

/** What the two check bars of an uncorrected page measure, mm: along the short and the long side of the sheet, or across and along the roll. */
export interface BarReadings {
  readonly across: number
  readonly down: number
}

export interface OutputSpec {
  readonly paper: PaperName
  /** What the printer leaves blank along each side of the sheet, mm. */
  readonly margin: number
  /** What two pages that are taped together show in common, mm; more where a hole would be cut. */
  readonly overlap: number
  /** Sheets that each panel may take at most; nothing where its whole faces are printed. */
  readonly pageBudget?: number
  /** How long the check bars came out; nothing when pages are not corrected. */
  readonly bars?: BarReadings
  readonly dxf: {
    readonly units: 'mm' | 'in'
    /** AC1021, or AC1015 for older importers. */
    readonly version: '2007' | '2000'
    /** Closed polylines with bulges, or lines and arcs for importers that know no bulges. */
    readonly contours: 'bulges' | 'lines and arcs'
    readonly notes: boolean
    /** Patterns for layer names; `{diameter}`, `{depth}`, `{width}`, `{angle}` are filled in. */
    readonly layers: LayerPatterns
  }
}

export interface LayerPatterns {
  readonly outline: string
  readonly bore: string
  readonly boreThrough: string
  readonly countersink: string
  readonly groove: string
  readonly rebate: string
  readonly cutout: string
  readonly pocket: string
  readonly mark: string
  readonly note: string
}
