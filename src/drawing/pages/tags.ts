import { type Area, LINE_HEIGHT } from '../areas.ts'
import type { Obstacle } from '../labels.ts'
import { TEXT_ASCENT, textWidth } from '../text-width.ts'
import type { Text } from '../types.ts'
import { isClear, textAt } from './text.ts'

const SIZE = 2.6
const STEP = 4
/** Kept free around the list, mm. */
const ROOM = 2

/**
 * What the tags of a crowded page mean, as a list on the blank paper beside what the page shows: the first clear place,
 * from the top, then from the left. Nothing where no place is large enough.
 */
export function tagList(
  tagged: readonly string[],
  paper: readonly Area[],
  taken: readonly Obstacle[],
): readonly Text[] | undefined {
  const width = Math.max(...tagged.map((line) => textWidth(line, SIZE))) + 2 * ROOM
  const height = tagged.length * SIZE * LINE_HEIGHT + 2 * ROOM
  for (const { min, max } of paper)
    for (let top = max[1]; top - height >= min[1]; top -= STEP)
      for (let left = min[0]; left + width <= max[0]; left += STEP) {
        const area: Area = { min: [left, top - height], max: [left + width, top] }
        if (isClear(area, taken)) return listAt(tagged, left + ROOM, top - ROOM)
      }
  return undefined
}

function listAt(tagged: readonly string[], left: number, top: number): Text[] {
  return tagged.map((line, k) => textAt([left, top - (TEXT_ASCENT + k * LINE_HEIGHT) * SIZE], SIZE, line))
}
