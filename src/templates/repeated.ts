import { NOISE_MM } from '../geometry/index.ts'
import type { PieceRepeat } from './piece-use.ts'
import type { StripHole, StripRow } from './strips-rows.ts'
import { isOneLine, type StripShape } from './strips-shape.ts'

/** A shorter row is not worth being moved along. */
const LEAST_ROW = 5
/** Of its holes a repeated piece has at least so many: the one that is matched, and two to go on with. */
const LEAST_HOLES = 3

/** From hole to hole, mm, where a row has one line, one tool and one pitch; nothing else can be moved along. */
export function pitchOf(row: StripRow): number | undefined {
  const [first, second] = row.holes
  if (second === undefined || row.holes.length < LEAST_ROW || !isOneLine(row)) return undefined
  const pitch = second.at[row.along] - first.at[row.along]
  const isEven = row.holes.every(
    ({ at, tool }, k) =>
      tool === first.tool && Math.abs(at[row.along] - first.at[row.along] - k * pitch) < NOISE_MM && pitch > NOISE_MM,
  )
  return isEven ? pitch : undefined
}

/** What a strip of a long row becomes when it has its first holes alone. */
export interface Shortened {
  readonly shape: StripShape
  readonly repeat: PieceRepeat
}

/**
 * A strip with the first `count` holes of an even row, from the end that it begins at, and how it is moved along so that
 * it marks the whole row: each time its first hole lies on the last one marked. Nothing where the row is uneven, has no more
 * than `count` holes, or `count` is less than three.
 */
export function repeatedStrip(shape: StripShape, count: number): Shortened | undefined {
  const { row, origin } = shape
  const pitch = pitchOf(row)
  const all = row.holes.length
  if (pitch === undefined || count < LEAST_HOLES || count >= all) return undefined
  const fromLow = origin === row.holes[0]
  const [first, ...rest] = fromLow ? row.holes.slice(0, count) : row.holes.slice(all - count)
  if (first === undefined) return undefined
  const holes: readonly [StripHole, ...StripHole[]] = [first, ...rest]
  const pitches = count - 1
  const times = Math.ceil((all - count) / pitches)
  const step = (fromLow ? pitch : -pitch) * pitches
  return {
    shape: { ...shape, row: { ...row, holes } },
    repeat: {
      holes: count,
      step: pitch,
      pitches,
      move: row.along === 0 ? [step, 0] : [0, step],
      times,
      last: all - times * pitches,
    },
  }
}
