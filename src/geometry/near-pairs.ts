import Flatbush from 'flatbush'
import type { Box } from './box.ts'

/**
 * The pairs of boxes that come nearer than `reach` (mm) along all three axes, each once, by their places in the list: the
 * smaller first, in rising order. A tree over x and y, then the heights; so the work grows with the pairs, not with
 * the square of the boxes.
 */
export function nearPairs(boxes: readonly Box[], reach: number): (readonly [a: number, b: number])[] {
  if (boxes.length < 2) return []
  const index = new Flatbush(boxes.length)
  for (const { min, max } of boxes) index.add(min[0], min[1], max[0], max[1])
  index.finish()
  return boxes.flatMap(({ min, max }, a) => {
    const near = index.search(min[0] - reach, min[1] - reach, max[0] + reach, max[1] + reach, (b) => {
      const other = b > a ? boxes[b] : undefined
      return other !== undefined && other.min[2] <= max[2] + reach && other.max[2] >= min[2] - reach
    })
    return near.sort((one, other) => one - other).map((b) => [a, b] as const)
  })
}
