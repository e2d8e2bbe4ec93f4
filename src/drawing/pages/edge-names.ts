import type { EdgeSide } from '../../assembly/index.ts'
import { type Area, grown, holds, LINE_HEIGHT } from '../areas.ts'
import { leadingEdge } from '../frame.ts'
import type { Obstacle } from '../labels.ts'
import { TEXT_ASCENT, TEXT_DESCENT, textWidth } from '../text-width.ts'
import type { Entity, Point } from '../types.ts'
import { farLine } from './flaps.ts'
import { onSheet, type Sheet } from './sheet.ts'
import { arrowHead, clippedLine } from './strokes.ts'
import { isClear, textAt } from './text.ts'
import { edgeLine, flapSides, OUTWARD } from './view.ts'

const EDGE_NAME = 3.2
/** Of the name alone, where a short piece of the edge has room for no more. */
const SHORT_NAMES = [2.6, 2.2] as const
const FAR_NAME = 2.2
const EDGE_ARROW = 4
/** Between a line and the words along it, mm. */
const OFF = 1
/** Kept from everything else, mm. */
const ROOM = 0.5

interface Placed {
  readonly entities: Entity[]
  readonly obstacles: Obstacle[]
}

/** Words along a line: how large, on which side of the line, and whether an arrow points across the edge. */
interface Along {
  readonly texts: readonly string[]
  readonly size: number
  readonly sides: readonly ('outside' | 'inside')[]
  readonly arrow: boolean
}

/**
 * `this edge to the FRONT: fold here` beside the edge with an arrow that points away from the panel: outside it, or
 * inside where holes leave no room there. On a flap, what to do with the paper beyond the edge's surface.
 */
export function edgeName(sheet: Sheet, side: EdgeSide, taken: readonly Obstacle[]): Placed {
  const [from, to] = edgeLine(sheet.view, side)
  const line = clippedLine(onSheet(sheet, from), onSheet(sheet, to), sheet.window)
  if (line === undefined) return { entities: [], obstacles: [] }
  const name = sheet.view.edges[side]
  const word = leadingEdge(sheet.view.edges) === side ? name.toUpperCase() : name
  const lipped = isLipped(sheet, side)
  const core = lipped ? '; dashed: the cut before lipping' : ''
  // Short edges have room for fewer words.
  const texts = [`this edge to the ${word}: fold here${core}`, `${word}: fold here${core}`, `${word}: fold here`, word]
  const own = [
    { texts, size: EDGE_NAME },
    ...SHORT_NAMES.map((size) => ({ texts: [`${word}: fold here`, word], size })),
  ].reduce<Placed>(
    (placed, way) =>
      placed.entities.length > 0
        ? placed
        : along(sheet, side, line, taken, { ...way, sides: ['outside', 'inside'], arrow: true }),
    { entities: [], obstacles: [] },
  )
  const far = flapSides(sheet.view).has(side) ? farLine(sheet, side)[0] : undefined
  if (far === undefined) return own
  const beyond = along(sheet, side, [far.from, far.to], [...taken, ...own.obstacles], {
    texts: [`far corner of the edge${lipped ? ', lipping on' : ''}: fold again or cut`, 'fold again or cut'],
    size: FAR_NAME,
    sides: ['inside'],
    arrow: false,
  })
  return {
    entities: [...own.entities, ...beyond.entities],
    obstacles: [...own.obstacles, ...beyond.obstacles],
  }
}

/** The first of the texts that finds a clear place along the line. */
function along(
  sheet: Sheet,
  side: EdgeSide,
  line: readonly [Point, Point],
  taken: readonly Obstacle[],
  { texts, size, sides, arrow }: Along,
): Placed {
  const upright = side === 'x0' || side === 'x1'
  const depth = size * LINE_HEIGHT
  const low = side === 'x0' || side === 'y0'
  for (const text of texts) {
    const length = textWidth(text, size, true) + (arrow ? EDGE_ARROW + 2 : 0)
    for (const where of sides) {
      const off = low === (where === 'outside') ? -OFF - depth : OFF
      for (const start of startsAlong(line, upright ? 1 : 0, length)) {
        const area: Area = upright
          ? { min: [line[0][0] + off, start], max: [line[0][0] + off + depth, start + length] }
          : { min: [start, line[0][1] + off], max: [start + length, line[0][1] + off + depth] }
        if (holds(sheet.window, area) && isClear(grown(area, ROOM), taken))
          return { entities: edgeWords(area, side, text, size, arrow), obstacles: [{ kind: 'area', area }] }
      }
    }
  }
  return { entities: [], obstacles: [] }
}

/** Whether an edge, as seen on the face of the sheet, is lipped. */
function isLipped({ view: { panel, face } }: Sheet, side: EdgeSide): boolean {
  const own = face === 'A' ? side : side === 'x0' ? 'x1' : side === 'x1' ? 'x0' : side
  return panel.lipping?.[own] !== undefined
}

/** Places for a stretch of `length` along a line: the middle first, then to both sides of it. */
function startsAlong([from, to]: readonly [Point, Point], axis: 0 | 1, length: number): number[] {
  const room = to[axis] - from[axis] - length
  if (room < 0) return []
  const middle = from[axis] + room / 2
  const steps = Math.floor(room / 2 / 4)
  return [middle, ...Array.from({ length: steps }, (_, k) => [middle + 4 * (k + 1), middle - 4 * (k + 1)]).flat()]
}

/** Turned along an upright edge; the arrow before the words. */
function edgeWords({ min, max }: Area, side: EdgeSide, text: string, size: number, arrow: boolean): Entity[] {
  const upright = side === 'x0' || side === 'x1'
  const [dx, dy] = OUTWARD[side]
  const before = arrow ? EDGE_ARROW + 1 : 0
  const middle: Point = upright
    ? [(min[0] + max[0]) / 2, min[1] + EDGE_ARROW / 2]
    : [min[0] + EDGE_ARROW / 2, (min[1] + max[1]) / 2]
  const tip: Point = [middle[0] + (dx * EDGE_ARROW) / 2, middle[1] + (dy * EDGE_ARROW) / 2]
  // The middle of what a line takes, tails and accents included, is so far above its baseline.
  const half = ((TEXT_ASCENT - TEXT_DESCENT) / 2) * size
  const at: Point = upright ? [middle[0] + half, min[1] + before] : [min[0] + before, middle[1] - half]
  return [
    ...(arrow ? [arrowHead(tip, [dx, dy], EDGE_ARROW)] : []),
    textAt(at, size, text, { bold: true, ...(upright && { turnDeg: 90 as const }) }),
  ]
}
