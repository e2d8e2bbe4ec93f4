import type { FacePoint, Rect, Round } from './types.ts'

/** Reach of a registration mark from its centre, mm: its circle and the arms of its cross. */
export const MARK_REACH = 5
/**
 * The arm of its cross that lies across the seam is longer, mm: it runs past the edge of the upper sheet, so that the
 * hairline of the lower sheet can be seen to go on in that of the upper one.
 */
export const MARK_ARM = 13

/** From the edge of the upper sheet to the middle of a mark, mm. */
const MARK_INSET = 7

/** How far along a seam the two marks stand, as shares of its length. */
const PLACES = [0.2, 0.8] as const
const STEP = 2

/**
 * Two places for registration marks in the seam (the strip that both pages show), near the edge of the page to the
 * right or below, which lies on top; clear of the `busy` rounds where that is possible: each mark starts at its share of
 * the seam's length and is moved along until it is clear. `along` is the axis that the seam follows.
 */
export function seamMarks(seam: Rect, along: 0 | 1, busy: readonly Round[]): FacePoint[] {
  const across = along === 0 ? 1 : 0
  const inset = Math.min(MARK_INSET, (seam.max[across] - seam.min[across]) / 2)
  const line = along === 0 ? seam.max[1] - inset : seam.min[0] + inset
  const [from, to] = [seam.min[along] + MARK_REACH + 1, seam.max[along] - MARK_REACH - 1]
  const places: FacePoint[] = []
  for (const share of PLACES) {
    const wanted = from + (to - from) * share
    const taken = [...busy, ...places.map((at) => ({ at, radius: MARK_REACH }))]
    places.push(clearest(candidates(wanted, from, to, line, along), taken, across))
  }
  return places
}

/** Points along the line of the marks, the nearest to the wanted one first. */
function candidates(wanted: number, from: number, to: number, line: number, along: 0 | 1): FacePoint[] {
  const steps = Math.max(0, Math.ceil((to - from) / STEP))
  const offsets = [0]
  for (let step = 1; step <= steps; step++) offsets.push(step * STEP, -step * STEP)
  return offsets
    .map((offset) => wanted + offset)
    .filter((place) => place >= from && place <= to)
    .map((place): FacePoint => (along === 0 ? [place, line] : [line, place]))
}

function clearest(places: readonly FacePoint[], taken: readonly Round[], across: 0 | 1): FacePoint {
  const [first] = places
  if (first === undefined) throw new RangeError('a seam has no room for a registration mark')
  let best = first
  let bestRoom = Number.NEGATIVE_INFINITY
  for (const place of places) {
    const room = roomAt(place, taken, across)
    if (room >= 0) return place
    if (room > bestRoom) [best, bestRoom] = [place, room]
  }
  return best
}

/** Space left between a mark and the nearest taken round, mm; negative where they overlap. */
function roomAt(place: FacePoint, taken: readonly Round[], across: 0 | 1): number {
  const along = across === 0 ? 1 : 0
  let room = Number.POSITIVE_INFINITY
  for (const { at, radius } of taken) {
    const past = Math.max(0, Math.abs(at[across] - place[across]) - (MARK_ARM - MARK_REACH))
    room = Math.min(room, Math.hypot(past, at[along] - place[along]) - radius - MARK_REACH - 1)
  }
  return room
}
