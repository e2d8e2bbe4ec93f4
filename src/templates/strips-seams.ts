import { NOISE_MM } from '../geometry/index.ts'
import { MARK_REACH } from './marks.ts'
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
  const room = (cut: number): number => Math.min(...holes.map(({ at, radius }) => Math.abs(at - cut) - radius))
  const roomAt = (end: number): number => Math.min(room(end), room(end - STRIP_OVERLAP))
  const steps = Math.floor((latest - earliest) / STEP)
  const ends = [...Array.from({ length: steps + 1 }, (_, k) => earliest + k * STEP), latest, wished]
    .filter((end) => end >= earliest && end <= latest)
    .sort((a, b) => Math.abs(a - wished) - Math.abs(b - wished))
  const free = ends.find((end) => roomAt(end) >= CLEAR)
  return free ?? ends.reduce((best, end) => (roomAt(end) > roomAt(best) ? end : best), ends[0] ?? latest)
}

/**
 * Places of the two marks in the seam of a strip that runs along an axis: at the side where the upper piece ends, as far apart
 * across the strip as they can be, clear of the `busy` rounds where that is possible.
 */
export function stripMarks(seam: Rect, along: 0 | 1, busy: readonly Round[]): FacePoint[] {
  const across = along === 0 ? 1 : 0
  // The later piece lies on top: right of, or below, the one before it.
  const line = along === 0 ? seam.min[0] + MARK_INSET : seam.max[1] - MARK_INSET
  const [from, to] = [seam.min[across] + MARK_REACH + 1, seam.max[across] - MARK_REACH - 1]
  const at = (place: number): FacePoint => (along === 0 ? [line, place] : [place, line])
  const steps = Math.max(0, Math.floor((to - from) / STEP))
  const places = Array.from({ length: steps + 1 }, (_, k) => from + k * STEP)
  const isClear = (place: number): boolean => {
    const [x, y] = at(place)
    return busy.every((round) => Math.hypot(round.at[0] - x, round.at[1] - y) > round.radius + MARK_REACH + 1)
  }
  const first = places.find(isClear) ?? from
  const far = [...places].reverse()
  const last = far.find((place) => isClear(place) && place - first > 2 * MARK_REACH) ?? to
  return [at(first), at(last)]
}
