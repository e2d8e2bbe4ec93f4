import type { Picture } from './picture.ts'
import type { ScenePoint } from './types.ts'

/** A size drawn beside a thing: lies along x (below or above it) or y (left or right). */
export interface Dimension {
  readonly key: string
  /** The places between which it is, along the axis. */
  readonly from: number
  readonly to: number
  readonly along: 'x' | 'y'
  /** Where its line lies across the axis. */
  readonly line: number
  /** Where the thing ends, from which thin lines lead to it. */
  readonly thing: number
  readonly words: string
}

/** Draws a dimension: its line with strokes across both ends, thin lines from the thing, and the words over it. */
export function drawDimension(picture: Picture, dimension: Dimension, size: number): void {
  const { key, from, to, along, line, thing, words } = dimension
  const at = (u: number, v: number): ScenePoint => (along === 'x' ? [u, v] : [v, u])
  const away = line > thing ? 1 : -1
  const tick = TICK * size
  const ends = [from, to].flatMap((u): [ScenePoint, ScenePoint][] => [
    [at(u, thing + away * GAP * size), at(u, line + away * tick)],
    [at(u - tick, along === 'x' ? line + tick : line - tick), at(u + tick, along === 'x' ? line - tick : line + tick)],
  ])
  picture.strokes({ key, kind: 'size', filled: false }, [[at(from, line), at(to, line)], ...ends])
  const middle = (from + to) / 2
  const off = line - OVER * size
  picture.word(
    along === 'x'
      ? { key: `${key} words`, at: [middle, off], anchor: 'middle', text: words, kind: 'size' }
      : { key: `${key} words`, at: [off, middle], anchor: 'middle', text: words, kind: 'size', turnDeg: 90 },
    size,
  )
}

/** In text heights: half a stroke across an end, room beside the thing, and room under the words. */
const TICK = 0.3
const GAP = 0.25
const OVER = 0.35
