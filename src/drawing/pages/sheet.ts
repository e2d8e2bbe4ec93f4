import type { Units } from '../../length/index.ts'
import { type Join, liesWhole, type Piece, type Round } from '../../templates/index.ts'
import type { Area } from '../areas.ts'
import type { Point } from '../types.ts'
import type { FaceView } from './view.ts'

/** One piece with what it shows. Areas are on its sheet of paper: mm, (0, 0) the lower left corner of that. */
export interface Sheet {
  readonly view: FaceView
  readonly page: Piece
  /** All pieces of the face, in the order in which they are taped. */
  readonly all: readonly Piece[]
  /** Printed after this one and taped to it, or to others that are: they lie on top where they show the same. */
  readonly later: readonly Piece[]
  readonly units: Units
  readonly window: Area
  /** The part of the window that shows the panel and that no later page covers: where words belong. */
  readonly open: Area
}

/** The pieces of a face; `pieces` in the order in which they are taped. */
export function sheetsOf(view: FaceView, pieces: readonly Piece[], units: Units): Sheet[] {
  return pieces.map((page, index) => {
    const taped = tapedWith(page, pieces)
    const { min, max } = page.window
    const open = page.joins
      .filter((join) => !join.over)
      .reduce(uncovered, {
        min: [Math.max(min[0], 0), Math.max(min[1], 0)],
        max: [Math.min(max[0], view.width), Math.min(max[1], view.height)],
      } as Area)
    const move = (p: Point): Point => placedOn(page, p)
    return {
      view,
      page,
      all: pieces,
      later: pieces.slice(index + 1).filter(({ label }) => taped.has(label)),
      units,
      window: { min: move(min), max: move(max) },
      open: { min: move(open.min), max: move(open.max) },
    }
  })
}

/** The labels of a piece and of all that are taped to it, one by way of another. */
function tapedWith({ label }: Piece, pieces: readonly Piece[]): ReadonlySet<string> {
  const byLabel = new Map(pieces.map((piece) => [piece.label, piece]))
  const found = new Set([label])
  // A set that grows goes on with what was added.
  for (const one of found) for (const { to } of byLabel.get(one)?.joins ?? []) found.add(to)
  return found
}

/** What a piece on top leaves of an area: it is cut back to the seam, on the side where the seam lies. */
function uncovered({ min, max }: Area, { seam, along }: Join): Area {
  const across = along === 0 ? 1 : 0
  const after = seam.min[across] + seam.max[across] > min[across] + max[across]
  const low = after ? min[across] : Math.max(min[across], seam.max[across])
  const high = after ? Math.min(max[across], seam.min[across]) : max[across]
  return across === 0 ? { min: [low, min[1]], max: [high, max[1]] } : { min: [min[0], low], max: [max[0], high] }
}

/** A point of the face, on the sheet. */
export function onSheet(sheet: Sheet, at: Point): Point {
  return placedOn(sheet.page, at)
}

function placedOn({ window, at }: Piece, [x, y]: Point): Point {
  return [x - window.min[0] + at[0], y - window.min[1] + at[1]]
}

/** True when the round, in the frame of the face, is whole on the sheet. */
export function isWhole(sheet: Sheet, round: Round): boolean {
  return liesWhole(round, sheet.page.window)
}

/**
 * True when this sheet says what the round is: it shows it whole, and no sheet that is taped on top does. Of two that lie by
 * edges of their own each says it, since each is laid on and punched by itself.
 */
export function speaksFor(sheet: Sheet, round: Round): boolean {
  return isWhole(sheet, round) && !sheet.later.some((page) => liesWhole(round, page.window))
}
