import type { EdgeSide } from '../../assembly/index.ts'
import { type Area, holds, LINE_HEIGHT } from '../areas.ts'
import { leadingEdge } from '../frame.ts'
import type { Obstacle } from '../labels.ts'
import { textWidth } from '../text-width.ts'
import type { Entity, Point } from '../types.ts'
import { onSheet, type Sheet } from './sheet.ts'
import { arrowHead, clippedLine } from './strokes.ts'
import { isClear, textAt } from './text.ts'
import { edgeLine, OUTWARD } from './view.ts'

const EDGE_NAME = 3.2
const EDGE_ARROW = 4

/** `this edge to the front` outside the edge, with an arrow that points away from the panel. */
export function edgeName(
  sheet: Sheet,
  side: EdgeSide,
  taken: readonly Obstacle[],
): { entities: Entity[]; obstacles: Obstacle[] } {
  const [from, to] = edgeLine(sheet.view, side)
  const line = clippedLine(onSheet(sheet, from), onSheet(sheet, to), sheet.window)
  if (line === undefined) return { entities: [], obstacles: [] }
  const upright = side === 'x0' || side === 'x1'
  const name = sheet.view.edges[side]
  const leads = leadingEdge(sheet.view.edges) === side
  const core = isLipped(sheet, side) ? '; dashed: the cut before lipping' : ''
  const word = leads ? name.toUpperCase() : name
  const depth = EDGE_NAME * LINE_HEIGHT
  const low = side === 'x0' || side === 'y0' ? -1 - depth : 1
  // Short edges have room for fewer words.
  const texts = [`this edge to the ${word}: fold here${core}`, `${word}: fold here${core}`, `${word}: fold here`, word]
  for (const text of texts) {
    const length = textWidth(text, EDGE_NAME, true) + EDGE_ARROW + 2
    for (const start of startsAlong(line, upright ? 1 : 0, length)) {
      const area: Area = upright
        ? { min: [line[0][0] + low, start], max: [line[0][0] + low + depth, start + length] }
        : { min: [start, line[0][1] + low], max: [start + length, line[0][1] + low + depth] }
      if (holds(sheet.window, area) && isClear(area, taken))
        return { entities: edgeWords(area, upright, side, text), obstacles: [{ kind: 'area', area }] }
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

function edgeWords({ min, max }: Area, upright: boolean, side: EdgeSide, text: string): Entity[] {
  const out = OUTWARD[side]
  const middle: Point = upright
    ? [(min[0] + max[0]) / 2, min[1] + EDGE_ARROW / 2]
    : [min[0] + EDGE_ARROW / 2, (min[1] + max[1]) / 2]
  const tip: Point = [middle[0] + (out[0] * EDGE_ARROW) / 2, middle[1] + (out[1] * EDGE_ARROW) / 2]
  const capHalf = 0.36 * EDGE_NAME
  const at: Point = upright
    ? [middle[0] + capHalf, min[1] + EDGE_ARROW + 1]
    : [min[0] + EDGE_ARROW + 1, middle[1] - capHalf]
  return [
    arrowHead(tip, out, EDGE_ARROW),
    textAt(at, EDGE_NAME, text, { bold: true, ...(upright && { turnDeg: 90 as const }) }),
  ]
}
