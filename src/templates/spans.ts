import { NOISE_MM } from '../geometry/index.ts'

/** A stretch along one axis, mm. */
export type Span = readonly [from: number, to: number]

/** The last page of a row is never narrower than this, mm, so that its seam has room for two marks. */
const LEAST_SPAN = 80

/**
 * Cuts the stretch `whole` into pages of at most `size` mm, each starting at least `overlap` mm before the end of the
 * one before it. Where a stretch of `keep` would be cut by the end of a page, the next page starts early enough to
 * show it whole; one that is longer than `size` cannot be kept. Ascending; the ends of `whole` are the ends of the row.
 */
export function spans(whole: Span, size: number, overlap: number, keep: readonly Span[]): Span[] {
  const [from, to] = whole
  const pages: Span[] = []
  let start = from
  for (;;) {
    const end = Math.min(start + size, to)
    pages.push([start, end])
    if (end >= to - NOISE_MM) return pages
    start = nextStart(end, whole, size, overlap, keep)
  }
}

function nextStart(end: number, whole: Span, size: number, overlap: number, keep: readonly Span[]): number {
  let next = Math.min(end - overlap, whole[1] - Math.min(LEAST_SPAN, size))
  for (const [from, to] of keep) {
    const last = Math.min(to, whole[1])
    if (from < end && last > end + NOISE_MM && last - from <= size) next = Math.min(next, from)
  }
  return next
}
