import { type Area, grown, holds, LINE_HEIGHT } from '../areas.ts'
import type { Obstacle } from '../labels.ts'
import { TEXT_ASCENT, textWidth } from '../text-width.ts'
import type { Entity, Point } from '../types.ts'
import type { Saying } from './strip-words.ts'
import { isClear, textAt } from './text.ts'

/** Font sizes, mm, the best first; the first saying, the piece's name, is set larger where it fits. */
const SIZES = [3, 2.6, 2.3, 2] as const
const NAME_SIZES = [4.4, 3.8, 3.2, 2.6, 2.2, 2] as const
/** How finely a free place is looked for, mm. */
const STEP = { along: 6, across: 1.5 } as const
/** Of one saying, on a piece. */
const MOST_LINES = 4
/** Kept free about each block of words, mm. */
const AIR = 1.2

export interface PieceText {
  readonly entities: readonly Entity[]
  readonly obstacles: readonly Obstacle[]
  /** What the piece has no room for. */
  readonly left: readonly Saying[]
}

/**
 * Sets each saying in the first free place of a room, in as few lines as it takes, along the longer side of a piece: level, or
 * turned where `upright`. Words never lie on an obstacle or on each other. `ofSizes`: in place of the usual sizes; `mostLines`: of
 * one saying.
 */
export function setSayings(
  sayings: readonly Saying[],
  room: Area,
  upright: boolean,
  taken: readonly Obstacle[],
  ofSizes?: readonly number[],
  mostLines = MOST_LINES,
): PieceText {
  const entities: Entity[] = []
  const obstacles: Obstacle[] = []
  const left: Saying[] = []
  sayings.forEach((saying, k) => {
    const sizes = ofSizes ?? (k === 0 ? NAME_SIZES : SIZES)
    const block = freeBlock(saying, { sizes, mostLines }, room, upright, [...taken, ...obstacles])
    if (block === undefined) left.push(saying)
    else {
      entities.push(...drawn(block, upright, saying.bold ?? false))
      obstacles.push({ kind: 'area', area: block.area })
    }
  })
  return { entities, obstacles, left }
}

interface Block {
  readonly lines: readonly string[]
  readonly size: number
  readonly area: Area
}

/** The largest size first; of one size the fewest lines. */
function freeBlock(
  { text, bold = false }: Saying,
  { sizes, mostLines }: { readonly sizes: readonly number[]; readonly mostLines: number },
  room: Area,
  upright: boolean,
  taken: readonly Obstacle[],
): Block | undefined {
  const long = upright ? room.max[1] - room.min[1] : room.max[0] - room.min[0]
  for (const size of sizes) {
    for (let count = 1; count <= mostLines; count += 1) {
      const lines = broken(text, count, size, bold)
      if (lines === undefined) continue
      const width = Math.max(...lines.map((line) => textWidth(line, size, bold)))
      if (width > long) continue
      const area = freeArea(width, lines.length * size * LINE_HEIGHT, room, upright, taken)
      if (area !== undefined) return { lines, size, area }
    }
  }
  return undefined
}

/** A text in so many lines, as equal as its words allow; nothing where it has fewer words. */
function broken(text: string, count: number, size: number, bold: boolean): string[] | undefined {
  const words = text.split(' ')
  if (words.length < count) return undefined
  let most = textWidth(text, size, bold) / count
  for (let tries = 0; tries < 12; tries += 1, most *= 1.08) {
    const lines: string[] = []
    for (const word of words) {
      const last = lines.at(-1)
      const longer = last === undefined ? word : `${last} ${word}`
      if (last !== undefined && textWidth(longer, size, bold) <= most) lines[lines.length - 1] = longer
      else lines.push(word)
    }
    if (lines.length <= count) return lines
  }
  return undefined
}

function freeArea(
  width: number,
  height: number,
  room: Area,
  upright: boolean,
  taken: readonly Obstacle[],
): Area | undefined {
  const [w, h] = upright ? [height, width] : [width, height]
  const slack: Point = [room.max[0] - room.min[0] - w, room.max[1] - room.min[1] - h]
  if (slack[0] < 0 || slack[1] < 0) return undefined
  const [along, across] = upright ? [slack[1], slack[0]] : [slack[0], slack[1]]
  const near = taken.filter((one) => !isClear(grown(room, 2 * AIR), [one]))
  for (let a = 0; a <= across + STEP.across; a += STEP.across) {
    for (let b = 0; b <= along + STEP.along; b += STEP.along) {
      const [off, down] = [Math.min(b, along), Math.min(a, across)]
      // Level words begin at the top left; turned ones read upward, their first line at the left.
      const min: Point = upright ? [room.min[0] + down, room.min[1] + off] : [room.min[0] + off, room.max[1] - down - h]
      const area: Area = { min, max: [min[0] + w, min[1] + h] }
      if (holds(room, area) && isClear(grown(area, AIR), near)) return area
    }
  }
  return undefined
}

function drawn({ lines, size, area }: Block, upright: boolean, bold: boolean): Entity[] {
  return lines.map((text, k) => {
    const base = (TEXT_ASCENT + k * LINE_HEIGHT) * size
    const at: Point = upright ? [area.min[0] + base, area.min[1]] : [area.min[0], area.max[1] - base]
    return textAt(at, size, text, { bold, ...(upright && { turnDeg: 90 as const }) })
  })
}
