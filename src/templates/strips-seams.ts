import { NOISE_MM } from '../geometry/index.ts'
import { MARK_ARM, MARK_REACH } from './marks.ts'
import type { FacePoint, Rect, Round } from './types.ts'

/** What two pieces of a strip show in common, mm: long enough for the hairline of the row to be laid on itself. */
export const STRIP_OVERLAP = 40
/** From the cut of a piece to the rim of a hole, mm. */
const CLEAR = 2
/** From the edge of the upper piece to the middle of a mark, mm. */
const MARK_INSET = 7
const STEP = 1

/**
 * Cuts a stretch into the fewest pieces of at most `most` mm, each showing the last `STRIP_OVERLAP` mm of the one before it; as
 * equal as they can be with cuts that are clear of the `holes`, where that is possible. Ascending.
 */
export function cutStrip(
  [from, to]: readonly [number, number],
  most: number,
  holes: readonly { readonly at: number; readonly radius: number }[],
): (readonly [number, number])[] {
  const count = Math.max(1, Math.ceil((to - from - STRIP_OVERLAP - NOISE_MM) / (most - STRIP_OVERLAP)))
  const pieces: (readonly [number, number])[] = []
  let start = from
  for (let left = count - 1; left > 0; left -= 1) {
    // Late enough for the pieces that remain to reach the end; early enough for this one.
    const earliest = Math.max(to - left * (most - STRIP_OVERLAP), start + 2 * STRIP_OVERLAP)
    const latest = start + most
    const wished = start + (to - start + left * STRIP_OVERLAP) / (left + 1)
    const end = clearest(earliest, latest, wished, holes)
    pieces.push([start, end])
    start = end - STRIP_OVERLAP
  }
  pieces.push([start, to])
  return pieces
}

function clearest(
  earliest: number,
  latest: number,
  wished: number,
  holes: readonly { readonly at: number; readonly radius: number }[],
): number {
  const gap = (cut: number): number => Math.min(...holes.map(({ at, radius }) => Math.abs(at - cut) - radius))
  const roomAt = (end: number): number => Math.min(gap(end), gap(end - STRIP_OVERLAP))
  const within = (end: number): boolean =>
    holes.some(({ at, radius }) => at + radius > end - STRIP_OVERLAP - MARK_ARM && at - radius < end + CLEAR)
  const steps = Math.floor((latest - earliest) / STEP)
  const ends = [...Array.from({ length: steps + 1 }, (_, k) => earliest + k * STEP), latest, wished]
    .filter((end) => end >= earliest && end <= latest)
    .sort((a, b) => Math.abs(a - wished) - Math.abs(b - wished))
  const free = ends.filter((end) => roomAt(end) >= CLEAR)
  // Best a seam without any hole: its marks have all of it to themselves.
  const best = free.find((end) => !within(end)) ?? free[0]
  return best ?? ends.reduce((some, end) => (roomAt(end) > roomAt(some) ? end : some), ends[0] ?? latest)
}

/**
 * Places of the two marks in the seam of a strip that runs along an axis: near the edge of the upper piece, as far apart across the
 * strip as they can be, clear of the `busy` rounds and off the `bold` line along the strip, where it has one. Where holes leave no room there, further along the seam.
 */
export function stripMarks(seam: Rect, along: 0 | 1, busy: readonly Round[], bold?: number): FacePoint[] {
  const across = along === 0 ? 1 : 0
  const [from, to] = [seam.min[across] + MARK_REACH + 1, seam.max[across] - MARK_REACH - 1]
  const steps = Math.max(0, Math.floor((to - from) / STEP))
  const all = [...Array.from({ length: steps + 1 }, (_, k) => from + k * STEP), to]
  const places = all.filter((place) => bold === undefined || Math.abs(place - bold) > MARK_REACH)
  let best: readonly [number, number, number] | undefined
  const most = seam.max[along] - seam.min[along] - MARK_REACH - 1
  for (let inset = MARK_INSET; inset <= most; inset += STEP) {
    // The later piece lies on top: right of, or below, the one before it.
    const line = along === 0 ? seam.min[0] + inset : seam.max[1] - inset
    const clear = places.filter((place) => isClear(along === 0 ? [line, place] : [place, line], along, busy))
    const [first, last] = [clear[0], clear.at(-1)]
    if (first === undefined || last === undefined || last - first < 2 * MARK_REACH) continue
    // A mark further from the edge must be worth it: by twice what it is further away.
    if (
      best === undefined ||
      last - first - 2 * inset > best[2] - best[1] - 2 * Math.abs(best[0] - edgeOf(seam, along))
    )
      best = [line, first, last]
  }
  const [line, first, last] = best ?? [edgeOf(seam, along) + (along === 0 ? MARK_INSET : -MARK_INSET), from, to]
  return [first, last].map((place): FacePoint => (along === 0 ? [line, place] : [place, line]))
}

/** Where the upper piece of a seam begins. */
const edgeOf = (seam: Rect, along: 0 | 1): number => (along === 0 ? seam.min[0] : seam.max[1])

/** Whether a mark, its long arms along the strip, keeps off the holes. */
function isClear([x, y]: FacePoint, along: 0 | 1, busy: readonly Round[]): boolean {
  return busy.every(({ at, radius }) => {
    const [dx, dy] = [Math.abs(at[0] - x), Math.abs(at[1] - y)]
    const [far, side] = along === 0 ? [dx, dy] : [dy, dx]
    const past = Math.max(0, far - (MARK_ARM - MARK_REACH))
    return Math.hypot(past, side) > radius + MARK_REACH + 1
  })
}
