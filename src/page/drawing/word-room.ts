import type { Scene, SceneWord } from '../scene/types.ts'
import { type Camera, type ScreenPoint, type SheetSize, toScreen } from './camera.ts'

/** How far letters reach over and under their line, and the width of one, as parts of their size. Rough: only for what may stand together. */
const ASCENT = 0.9
const DESCENT = 0.28
const LETTER = 0.58
/** Smaller letters cannot be read at the bench, larger ones hide the drawing, px. */
const SMALLEST_PX = 12
const LARGEST_PX = 17
/** Words beside holes are left out where they would be larger than they were given room for, by more than this. */
const TOO_LARGE = 1.2
/** A word that finds its place taken tries one line further up, then down, in parts of its size. */
const MOVES = [0, -1.25, 1.4] as const

/** Words beside a hole keep off its mark, which on the screen is larger than the hole, px. */
const BESIDE_MARK_PX = { start: 5, middle: 0, end: -5 } as const

/** What is left out first where there is no room for all. */
const ORDER: readonly SceneWord['kind'][] = ['edge', 'name', 'size', 'tag']

export interface WordBox {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** Where a word is written, px: the point of its line that its anchor says. */
export interface WrittenWord {
  readonly word: SceneWord
  readonly at: ScreenPoint
}

/** Size of the letters on the screen, px: as large as they are drawn, within what can be read. */
export const wordSize = ({ textSize }: Scene, { scale }: Camera): number =>
  Math.min(LARGEST_PX, Math.max(SMALLEST_PX, textSize * scale))

/** The room that a word takes on the screen, px. */
export function boxOf({ anchor, text, turnDeg }: SceneWord, [x, y]: ScreenPoint, size: number): WordBox {
  const length = text.length * LETTER * size
  const before = { start: 0, middle: length / 2, end: length }[anchor]
  const [up, down] = [ASCENT * size, DESCENT * size]
  // Turned counter-clockwise, what is read first lies lowest.
  return turnDeg === 90
    ? { left: x - up, right: x + down, top: y - (length - before), bottom: y + before }
    : { left: x - before, right: x + length - before, top: y - up, bottom: y + down }
}

/** A size that is cut by the rim moves in by no more than this, in parts of its size: its line stays beside it. */
const INWARD = 2

/** A point so far moved that its box lies on the sheet, by `most` at most along either axis. */
function drawnIn(
  [x, y]: ScreenPoint,
  { left, top, right, bottom }: WordBox,
  sheet: SheetSize,
  most: number,
): ScreenPoint {
  const inward = (low: number, high: number, room: number): number =>
    low < 0 ? Math.min(-low, most) : high > room ? Math.max(room - high, -most) : 0
  return [x + inward(left, right, sheet.width), y + inward(top, bottom, sheet.height)]
}

const overlap = (a: WordBox, b: WordBox): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom

/**
 * The words that can be read at this scale, and where: those that do not lie on one that counts more. A size may move by a
 * line. A word that is cut by the rim of the sheet is left out, unless it is the name of something.
 */
export function readableWords(scene: Scene, camera: Camera, sheet: SheetSize): readonly WrittenWord[] {
  const size = wordSize(scene, camera)
  const hasTags = size <= scene.textSize * camera.scale * TOO_LARGE
  const taken: WordBox[] = []
  const isFree = (box: WordBox): boolean =>
    box.left >= 0 &&
    box.top >= 0 &&
    box.right <= sheet.width &&
    box.bottom <= sheet.height &&
    !taken.some((other) => overlap(other, box))
  const write = (word: SceneWord): WrittenWord[] => {
    const [middle, y] = toScreen(camera, word.at)
    const x = middle + (word.kind === 'tag' ? BESIDE_MARK_PX[word.anchor] : 0)
    for (const move of word.kind === 'tag' ? [0] : MOVES) {
      const moved: ScreenPoint = word.turnDeg === 90 ? [x + move * size, y] : [x, y + move * size]
      const at = word.kind === 'size' ? drawnIn(moved, boxOf(word, moved, size), sheet, INWARD * size) : moved
      const box = boxOf(word, at, size)
      if (!isFree(box)) continue
      taken.push(box)
      return [{ word, at }]
    }
    return []
  }
  return ORDER.filter((kind) => kind !== 'tag' || hasTags).flatMap((kind) =>
    scene.words.filter((word) => word.kind === kind).flatMap(write),
  )
}
