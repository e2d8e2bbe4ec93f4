import { gridOf, leastPages } from './bounds.ts'
import { cutOff } from './cut-off.ts'
import { type Face, fieldOf, type Window } from './field.ts'
import { inRows, pageLabel } from './labels.ts'
import { type PageOptions, type Paper, sheetFor } from './paper.ts'
import { extent } from './rects.ts'
import { fewestWindows } from './search.ts'
import { settled } from './settle.ts'
import { taped } from './taped.ts'
import { joinsOf } from './ties.ts'
import type { FacePlan, Piece } from './types.ts'

/**
 * The fewest full-size pages found for a face: each thing lies whole on one, and each page lies by a corner of the
 * panel or is joined by seams to others, which together show two edges that are square to each other. Pages lie where
 * it is best, upright and lying ones mixed; of a face with nothing to mark, none. In the order of taping: from the top
 * left, each on top of those before it. Equal input gives equal pages. Throws RangeError when margin or overlap are
 * below their least, or when the sheet has no room for a window.
 */
export function planWhole(face: Face, paper: Paper, options: PageOptions): FacePlan {
  const field = fieldOf(face, paper, options)
  const least = leastPages(field)
  const slid = settled(field, fewestWindows(field, least))
  const rows = inRows(paper.roll === true ? cutOff(field, slid) : slid)
  const pieces = rows.map(({ window, row, column }, sheet) => pieceOf(window, row, column, sheet, paper, options))
  const joins = joinsOf(
    field,
    rows.map(({ window }) => window),
  )
  return {
    pieces: taped(pieces, joins, field.face, face.things),
    sheets: pieces.length,
    grid: gridOf(field, 'plain').length,
    least,
  }
}

function pieceOf(
  { min, max, turned }: Window,
  row: number,
  column: number,
  sheet: number,
  paper: Paper,
  options: PageOptions,
): Piece {
  const window = { min, max }
  const size = { width: extent(window, 0), height: extent(window, 1) }
  const printed = sheetFor(paper, turned, size, options)
  const { margin, reserve } = options
  return {
    kind: 'face',
    row,
    column,
    label: pageLabel(row, column),
    window,
    sheet,
    paper: printed,
    // Windows hang from the top margin, so that one that is less high leaves its free paper above the title.
    at: [margin + reserve.left, printed.height - margin - size.height],
    marks: [],
    joins: [],
  }
}
