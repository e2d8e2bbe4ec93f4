export type PaperName = 'A4' | 'A3' | 'Letter' | 'Legal' | 'Tabloid'

export interface OutputSpec {
  readonly paper: PaperName
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
