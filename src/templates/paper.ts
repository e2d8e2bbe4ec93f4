/** A width and a height, mm. */
export interface Size {
  readonly width: number
  readonly height: number
}

/** A sheet held upright, mm; of a roll, its width and the longest sheet that may be cut off it. */
export interface Paper extends Size {
  readonly roll?: true
}

/** Longest sheet off a roll, mm: readers show a page with a side over 14 400 units (5080 mm) blank. */
export const LONGEST_SHEET = 5000
/** Shortest sheet off a roll, mm: the furniture of a page needs as much as an A4 sheet is wide. */
const SHORTEST_SHEET = 210

/** No printer prints nearer to the border, mm (S68: 1.8, less what a corrected page is drawn smaller); nothing may lie in it. */
export const LEAST_MARGIN = 1.5
/** A seam narrower than this has no room for a registration mark with its arms, mm. */
export const LEAST_OVERLAP = 12

/** What pages of a face have in common, mm. */
export interface PageOptions {
  /** Left free along each side of the sheet; at least `LEAST_MARGIN`. */
  readonly margin: number
  /** How wide a seam is; at least `LEAST_OVERLAP`. */
  readonly overlap: number
  /** Kept free inside the margins for rulers, title and map. */
  readonly reserve: { readonly left: number; readonly bottom: number }
}

/** The room for a window on a sheet held one way. */
export interface Room {
  /** Along x and y, mm. */
  readonly size: readonly [x: number, y: number]
  /** The sheet lies on its long side. */
  readonly turned: boolean
}

/**
 * The rooms of a sheet upright and lying. Throws RangeError when margin or overlap are below their least, or when the
 * sheet has no room for a window.
 */
export function roomsOf(paper: Paper, { margin, overlap, reserve }: PageOptions): Room[] {
  if (margin < LEAST_MARGIN) throw new RangeError(`margin ${margin} mm is less than ${LEAST_MARGIN} mm`)
  if (overlap < LEAST_OVERLAP) throw new RangeError(`overlap ${overlap} mm is less than ${LEAST_OVERLAP} mm`)
  return [false, true].map((turned): Room => {
    const sheet = heldSheet(paper, turned)
    const size = [sheet.width - 2 * margin - reserve.left, sheet.height - 2 * margin - reserve.bottom] as const
    if (Math.min(...size) < 4 * overlap)
      throw new RangeError(`a window of ${size[0]} × ${size[1]} mm is too small for an overlap of ${overlap} mm`)
    return { size, turned }
  })
}

/** The whole sheet, upright or on its side. */
function heldSheet(paper: Paper, turned: boolean): Size {
  const short = paper.roll ? paper.width : Math.min(paper.width, paper.height)
  const long = paper.roll ? Math.min(paper.height, LONGEST_SHEET) : Math.max(paper.width, paper.height)
  return turned ? { width: long, height: short } : { width: short, height: long }
}

/** The sheet for a window, mm: as it is, or off a roll as long as the window needs. */
export function sheetFor(paper: Paper, turned: boolean, window: Size, { margin, reserve }: PageOptions): Size {
  const whole = heldSheet(paper, turned)
  if (paper.roll !== true) return whole
  if (turned) return { ...whole, width: Math.max(SHORTEST_SHEET, 2 * margin + reserve.left + window.width) }
  return { ...whole, height: Math.max(SHORTEST_SHEET, 2 * margin + reserve.bottom + window.height) }
}
