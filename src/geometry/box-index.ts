import Flatbush from 'flatbush'
import type { Box } from './box.ts'

/** The places, in rising order, of the boxes in a list that come within `reach` (mm) of a box along all three axes. */
export type BoxSearch = (box: Box, reach: number) => number[]

/** Looks for boxes by a tree over x and y, then by their heights: the work grows with what is found. */
export function boxIndex(boxes: readonly Box[]): BoxSearch {
  if (boxes.length === 0) return () => []
  const index = new Flatbush(boxes.length)
  for (const { min, max } of boxes) index.add(min[0], min[1], max[0], max[1])
  index.finish()
  return ({ min, max }, reach) =>
    index
      .search(min[0] - reach, min[1] - reach, max[0] + reach, max[1] + reach, (k) => {
        const other = boxes[k]
        return other !== undefined && other.min[2] <= max[2] + reach && other.max[2] >= min[2] - reach
      })
      .sort((a, b) => a - b)
}
