import { markLetters } from './labels.ts'
import { MARK_REACH, seamMarks } from './marks.ts'
import { type Axis, shared } from './rects.ts'
import type { Join, Piece, Rect, RegistrationMark, Round } from './types.ts'

/** Two pieces that are taped together, by their places in the list; the second lies on top. */
export interface Pair {
  readonly first: number
  readonly second: number
  /** The axis that their seam follows. */
  readonly along: Axis
}

/**
 * Pieces with their joins and the registration marks of those, lettered in the order of taping. Marks keep clear of the
 * `busy` rounds and of each other, and lie on the panel (`face`).
 */
export function taped<P extends Piece>(
  pieces: readonly P[],
  pairs: readonly Pair[],
  face: Rect,
  busy: readonly Round[],
): P[] {
  const marks: RegistrationMark[] = []
  const joins = new Map<string, Join[]>(pieces.map(({ label }) => [label, []]))
  const inOrder = [...pairs].sort((a, b) => a.second - b.second || a.first - b.first)
  for (const { first, second, along } of inOrder) {
    const [lower, upper] = [pieces[first], pieces[second]]
    if (lower === undefined || upper === undefined) throw new RangeError(`no pieces ${first} and ${second} to tape`)
    const seam = shared(lower.window, upper.window)
    joins.get(lower.label)?.push({ to: upper.label, seam, along, over: false })
    joins.get(upper.label)?.push({ to: lower.label, seam, along, over: true })
    const taken = [...busy, ...marks.map(({ at }) => ({ at, radius: MARK_REACH }))]
    for (const at of seamMarks({ upper: upper.window, lower: lower.window, along }, face, taken))
      marks.push({ id: markLetters(marks.length), at, pieces: [lower.label, upper.label] })
  }
  return pieces.map((piece) => ({
    ...piece,
    marks: marks.filter(({ pieces: [a, b] }) => a === piece.label || b === piece.label),
    joins: joins.get(piece.label) ?? [],
  }))
}
