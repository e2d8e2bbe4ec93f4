import type { HardwarePiece, PieceEdge } from '../../templates/index.ts'
import type { Area } from '../areas.ts'
import type { Point } from '../types.ts'
import type { Sheet } from './sheet.ts'
import { OUTWARD } from './view.ts'
import type { Sketch } from './window.ts'

/** A piece for one pattern as it lies on its sheet of paper. */
export interface Sheeted {
  readonly piece: HardwarePiece
  readonly sheet: Sheet
  readonly label: string
  /** From the piece's frame to the sheet of paper. */
  readonly on: (p: Point) => Point
  /** Its cut outline, on the sheet. */
  readonly paper: Area
  readonly sketch: Sketch
}

/** Ends of a line across the paper, square to a side, `mm` from the reference point. */
export function across({ piece: { paper }, on }: Sheeted, side: PieceEdge, mm: number): readonly [Point, Point] {
  const [dx, dy] = OUTWARD[side]
  return dx === 0
    ? [on([paper.min[0], dy * mm]), on([paper.max[0], dy * mm])]
    : [on([dx * mm, paper.min[1]]), on([dx * mm, paper.max[1]])]
}
