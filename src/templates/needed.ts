import { NOISE_MM } from '../geometry/index.ts'
import type { Size } from './paper.ts'
import { joined, type TilingOptions, tilePages } from './tiling.ts'
import type { Piece, Rect, Round } from './types.ts'

/** True when the round lies inside the rectangle, its rim included. */
export function liesWhole({ at, radius }: Round, { min, max }: Rect): boolean {
  return (
    at[0] - radius >= min[0] - NOISE_MM &&
    at[0] + radius <= max[0] + NOISE_MM &&
    at[1] - radius >= min[1] - NOISE_MM &&
    at[1] + radius <= max[1] + NOISE_MM
  )
}

/**
 * The pages worth printing, in the orientation that has the fewest of them. A page is printed when it shows a piece of
 * the panel's edge; or when it shows one of `things` whole that no page printed so far does; or when a page of the
 * second kind would otherwise not be joined to a page with an edge: then the blank pages of its row are printed too, to the
 * nearer side. Windows, places and labels are those of the full grid; neighbours and marks are those of printed pages.
 */
export function printedPages(
  face: Size,
  paper: Size,
  things: readonly Round[],
  options: Omit<TilingOptions, 'landscape'>,
): Piece[] {
  const [upright, lying] = [false, true].map((landscape) =>
    needed(tilePages(face, paper, { ...options, landscape }), face, things),
  )
  if (upright === undefined || lying === undefined) throw new Error('an orientation was not tiled')
  return joined(lying.length < upright.length ? lying : upright, options.keep ?? [])
}

function needed(pages: readonly Piece[], face: Size, things: readonly Round[]): Piece[] {
  const kept = new Set(pages.filter((page) => showsEdge(page, face)))
  for (const page of pages) {
    const news = things.some(
      (thing) => liesWhole(thing, page.window) && ![...kept].some((other) => liesWhole(thing, other.window)),
    )
    if (news) kept.add(page)
  }
  tieToEdges(pages, kept, face)
  return pages.filter((page) => kept.has(page))
}

function showsEdge({ window: { min, max } }: Piece, face: Size): boolean {
  return min[0] <= 0 || min[1] <= 0 || max[0] >= face.width || max[1] >= face.height
}

/** Adds to `kept` the pages that join each kept page to one that shows an edge. */
function tieToEdges(pages: readonly Piece[], kept: Set<Piece>, face: Size): void {
  const at = new Map(pages.map((page) => [`${page.row} ${page.column}`, page]))
  const columns = 1 + Math.max(...pages.map((page) => page.column))
  const tied = new Set<Piece>()
  const spread = (page: Piece | undefined): void => {
    if (page === undefined || !kept.has(page) || tied.has(page)) return
    tied.add(page)
    for (const [down, right] of [
      [0, 1],
      [0, -1],
      [1, 0],
      [-1, 0],
    ] as const)
      spread(at.get(`${page.row + down} ${page.column + right}`))
  }
  for (const page of kept) if (showsEdge(page, face)) spread(page)
  for (const page of [...kept]) {
    if (tied.has(page)) continue
    const step = page.column < columns / 2 ? -1 : 1
    for (let column = page.column; column >= 0 && column < columns; column += step) {
      const between = at.get(`${page.row} ${column}`)
      if (between !== undefined) kept.add(between)
    }
    spread(page)
  }
}
