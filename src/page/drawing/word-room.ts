import type { Scene, SceneWord } from '../scene/types.ts'
import { type Camera, type ScreenPoint, toScreen } from './camera.ts'

/** Height of a line and width of a letter as parts of the letters' size. Rough: only for what may stand together. */
const LINE = 1.3
const LETTER = 0.58
/** Smaller letters cannot be read at the bench, larger ones hide the drawing, px. */
const SMALLEST_PX = 12
const LARGEST_PX = 17

/** What is left out first where there is no room for all. */
const ORDER: readonly SceneWord['kind'][] = ['edge', 'name', 'size', 'tag']

export interface WordBox {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** Size of the letters on the screen, px: as large as they are drawn, within what can be read. */
export const wordSize = ({ textSize }: Scene, { scale }: Camera): number =>
  Math.min(LARGEST_PX, Math.max(SMALLEST_PX, textSize * scale))

/** The room that a word takes on the screen, px. */
export function boxOf({ anchor, text, turnDeg }: SceneWord, [x, y]: ScreenPoint, size: number): WordBox {
  const length = text.length * LETTER * size
  const before = { start: 0, middle: length / 2, end: length }[anchor]
  const half = (LINE * size) / 2
  // Turned counter-clockwise, what is read first lies lowest.
  if (turnDeg === 90) return { left: x - half, right: x + half, top: y - (length - before), bottom: y + before }
  return { left: x - before, right: x + length - before, top: y - half, bottom: y + half }
}

const overlap = (a: WordBox, b: WordBox): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom

/** Which words can be read at this scale: those that do not lie on one that counts more. */
export function readableWords(scene: Scene, camera: Camera): ReadonlySet<string> {
  const size = wordSize(scene, camera)
  const taken: WordBox[] = []
  const shown = new Set<string>()
  for (const kind of ORDER) {
    for (const word of scene.words) {
      if (word.kind !== kind) continue
      const box = boxOf(word, toScreen(camera, word.at), size)
      if (taken.some((other) => overlap(other, box))) continue
      taken.push(box)
      shown.add(word.key)
    }
  }
  return shown
}
