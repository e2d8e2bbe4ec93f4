import type { PanelId } from '../assembly/index.ts'
import type { Stock } from '../project/index.ts'

/** One part to be cut: sizes of the blank as it leaves the saw, mm; its length lies along the grain. */
export interface Part {
  readonly panel: PanelId
  readonly length: number
  readonly width: number
}

/** A part in its place on a trimmed sheet: lower left corner, mm, x along the sheet's length. */
export interface LaidPart extends Part {
  readonly x: number
  readonly y: number
  /** Its length lies across the sheet; only where the stock has no grain. */
  readonly turned: boolean
}

/** The parts of one stock on its sheets, each sheet one list. Every layout can be cut by straight cuts from edge to edge. */
export interface Layout {
  readonly stock: Stock
  readonly sheets: readonly (readonly LaidPart[])[]
}
