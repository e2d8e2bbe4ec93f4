import { seamMarks } from './marks.ts'
import type { Size } from './paper.ts'
import { type Span, spans } from './spans.ts'
import type { Join, Piece, Rect, RegistrationMark, Round } from './types.ts'

/** No printer prints nearer to the border, mm (S68: 1.8, less what a corrected page is drawn smaller); nothing may lie in it. */
export const LEAST_MARGIN = 1.5
/** A seam narrower than this has no room for a registration mark with its arms, mm. */
export const LEAST_OVERLAP = 12

export interface TilingOptions {
  /** Left free along each side of the sheet, mm; at least `LEAST_MARGIN`. */
  readonly margin: number
  /** What neighbours show in common, mm; at least `LEAST_OVERLAP`. More where a round of `keep` needs it. */
  readonly overlap: number
  /** Shown beyond each edge of the face, mm. */
  readonly surround?: number
  /** Kept free inside the margins for rulers, title and map, mm. */
  readonly reserve?: { readonly left: number; readonly bottom: number }
  /** Each of these lies whole on at least one page, unless it is larger than a page. */
  readonly keep?: readonly Round[]
  /** Sheets upright or on their side; when absent, whichever takes fewer pages (upright when equal). */
  readonly landscape?: boolean
}

const NO_RESERVE = { left: 0, bottom: 0 }

/**
 * Full-size pages over a face, in rows from the top and columns from the left. Together the windows cover the face and
 * its surround. Paper is given upright. Throws RangeError when margin or overlap are below their least, or when the
 * sheet has no room for a window.
 */
export function tilePages(face: Size, paper: Size, options: TilingOptions): Piece[] {
  if (options.landscape !== undefined) return grid(face, turned(paper, options.landscape), options)
  const upright = grid(face, turned(paper, false), options)
  const lying = grid(face, turned(paper, true), options)
  return lying.length < upright.length ? lying : upright
}

/** The sheet upright or on its side. */
function turned(paper: Size, landscape: boolean): Size {
  const short = Math.min(paper.width, paper.height)
  const long = Math.max(paper.width, paper.height)
  return landscape ? { width: long, height: short } : { width: short, height: long }
}

function grid(face: Size, paper: Size, options: TilingOptions): Piece[] {
  const { margin, overlap, surround = 0, reserve = NO_RESERVE, keep = [] } = options
  const room: Size = {
    width: paper.width - 2 * margin - reserve.left,
    height: paper.height - 2 * margin - reserve.bottom,
  }
  checkFigures(margin, overlap, room)
  const columns = spans([0 - surround, face.width + surround], room.width, overlap, keepAlong(keep, 0))
  // Rows run from the top: the axis is turned over, cut, and turned back.
  const rows = spans([-face.height - surround, surround], room.height, overlap, keepAlong(keep, 1).map(flipped)).map(
    flipped,
  )
  const pages = rows.flatMap((y, row) =>
    columns.map(
      (x, column): Piece => ({
        kind: 'face',
        row,
        column,
        label: pageLabel(row, column),
        window: { min: [x[0], y[0]], max: [x[1], y[1]] },
        paper,
        // Windows hang from the top margin, so that a short last row leaves its free paper above the title.
        at: [margin + reserve.left, paper.height - margin - (y[1] - y[0])],
        sheet: 0,
        marks: [],
        joins: [],
      }),
    ),
  )
  return joined(pages, keep)
}

function checkFigures(margin: number, overlap: number, room: Size): void {
  if (margin < LEAST_MARGIN) throw new RangeError(`margin ${margin} mm is less than ${LEAST_MARGIN} mm`)
  if (overlap < LEAST_OVERLAP) throw new RangeError(`overlap ${overlap} mm is less than ${LEAST_OVERLAP} mm`)
  if (room.width < 4 * overlap || room.height < 4 * overlap)
    throw new RangeError(`a window of ${room.width} × ${room.height} mm is too small for an overlap of ${overlap} mm`)
}

const keepAlong = (keep: readonly Round[], axis: 0 | 1): Span[] =>
  keep.map(({ at, radius }) => [at[axis] - radius, at[axis] + radius])

const flipped = ([from, to]: Span): Span => [0 - to, 0 - from]

/** `A1` for the top left page, `B1` below it, `A2` right of it; after row Z comes AA. */
export function pageLabel(row: number, column: number): string {
  let letters = ''
  for (let left = row; left >= 0; left = Math.floor(left / 26) - 1)
    letters = String.fromCharCode(65 + (left % 26)) + letters
  return `${letters}${column + 1}`
}

/** The pages with their joins and the marks of those; `busy` is kept clear of marks. */
export function joined(pages: readonly Piece[], busy: readonly Round[]): Piece[] {
  const byPlace = new Map(pages.map((page) => [`${page.row} ${page.column}`, page]))
  const marks = new Map<string, RegistrationMark[]>(pages.map((page) => [page.label, []]))
  const joins = new Map<string, Join[]>(pages.map((page) => [page.label, []]))
  const share = (first: Piece, second: Piece | undefined, along: 0 | 1): void => {
    if (second === undefined) return
    const seam = common(first.window, second.window)
    joins.get(first.label)?.push({ to: second.label, seam, along, over: false })
    joins.get(second.label)?.push({ to: first.label, seam, along, over: true })
    seamMarks(seam, along, busy).forEach((point, index) => {
      const pair = [first.label, second.label] as const
      const mark = { id: `${pair[0]}-${pair[1]}-${index + 1}`, at: point, pieces: pair }
      for (const label of pair) marks.get(label)?.push(mark)
    })
  }
  for (const page of pages) {
    share(page, byPlace.get(`${page.row} ${page.column + 1}`), 1)
    share(page, byPlace.get(`${page.row + 1} ${page.column}`), 0)
  }
  return pages.map((page, sheet) => ({
    ...page,
    sheet,
    marks: marks.get(page.label) ?? [],
    joins: joins.get(page.label) ?? [],
  }))
}

const common = (a: Rect, b: Rect): Rect => ({
  min: [Math.max(a.min[0], b.min[0]), Math.max(a.min[1], b.min[1])],
  max: [Math.min(a.max[0], b.max[0]), Math.min(a.max[1], b.max[1])],
})
