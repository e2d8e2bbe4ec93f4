import { NOISE_MM } from '../../geometry/index.ts'
import type { PieceUse } from '../../templates/index.ts'
import { grown } from '../areas.ts'
import type { Line, Point } from '../types.ts'
import { crossesOn } from './holes.ts'
import { onSheet, type Sheet } from './sheet.ts'
import { clippedLine, rectangle, strokeIn } from './strokes.ts'
import type { FaceView } from './view.ts'
import type { Sketch } from './window.ts'

/** Words and holes of a piece keep this far from the line that it is cut out along, mm. */
const FROM_CUT = 0.8

/** The line to cut a piece out along. */
export function drawCutLine(sketch: Sketch, { window }: Sheet): void {
  sketch.marks.push(rectangle(window, 'thin'))
  const { min, max } = window
  const corners: Point[] = [min, [max[0], min[1]], max, [min[0], max[1]]]
  corners.forEach((from, k) => {
    sketch.obstacles.push({ kind: 'line', from, to: corners[(k + 1) % 4] ?? from })
  })
}

/**
 * The lines by which a strip is laid: the hairline of its row from end to end, broken at the holes so that their centres stay clear;
 * where its first hole is measured, a hairline through that; and the fold line at the other side of the row.
 */
export function drawStripLines(sketch: Sketch, sheet: Sheet, use: PieceUse): void {
  const { along } = use
  if (along === undefined) return
  const across = along === 0 ? 1 : 0
  hairline(sketch, sheet, along, use.origin[across])
  if (isMeasuredAlong(sheet.view, use)) hairline(sketch, sheet, across, use.origin[along])
  if (use.secondFold === undefined) return
  for (const line of lineAcross(sheet, use.secondFold.axis, use.secondFold.at, 'bold')) {
    sketch.edges.push(line)
    sketch.obstacles.push({ kind: 'line', from: line.from, to: line.to })
  }
}

/** Whether at some place no end of the panel stops the strip, so that its first hole is measured. */
export function isMeasuredAlong(view: FaceView, use: PieceUse): boolean {
  return use.places.some(({ folds }) => !folds.some((edge) => endsAxis(edge) === use.along)) && view.width > 0
}

/** The axis that an edge ends: left and right edges end the level one. */
export const endsAxis = (edge: 'x0' | 'x1' | 'y0' | 'y1'): 0 | 1 => (edge === 'x0' || edge === 'x1' ? 0 : 1)

/** The line of the face on which a coordinate along `axis` is `at`, as far as the window shows it. */
function lineAcross(sheet: Sheet, axis: 0 | 1, at: number, pen: 'bold' | 'hair'): Line[] {
  const { min, max } = sheet.page.window
  const point = (other: number): Point => onSheet(sheet, axis === 0 ? [at, other] : [other, at])
  const other = axis === 0 ? 1 : 0
  return strokeIn(sheet.window, point(min[other]), point(max[other]), pen)
}

/** A hairline along an axis over the whole window, left out where holes are. */
function hairline(sketch: Sketch, sheet: Sheet, along: 0 | 1, at: number): void {
  const across = along === 0 ? 1 : 0
  const [line] = lineAcross(sheet, across, at, 'hair')
  if (line === undefined) return
  sketch.obstacles.push({ kind: 'line', from: line.from, to: line.to, open: true })
  const holes = crossesOn(sheet)
    .map(({ at: middle, radius }) => ({ at: middle, reach: radius }))
    .filter((hole) => Math.abs(hole.at[across] - line.from[across]) < hole.reach)
    .sort((a, b) => a.at[along] - b.at[along])
  const set = (value: number): Point => (along === 0 ? [value, line.from[1]] : [line.from[0], value])
  let from = line.from[along]
  for (const hole of holes) {
    const to = hole.at[along] - hole.reach
    if (to - from > NOISE_MM) pushInside(sketch, sheet, set(from), set(to))
    from = Math.max(from, hole.at[along] + hole.reach)
  }
  if (line.to[along] - from > NOISE_MM) pushInside(sketch, sheet, set(from), set(line.to[along]))
}

function pushInside(sketch: Sketch, sheet: Sheet, from: Point, to: Point): void {
  const piece = clippedLine(from, to, grown(sheet.window, 0))
  if (piece !== undefined) sketch.marks.push({ kind: 'line', from: piece[0], to: piece[1], pen: 'hair' })
}

/** Where words of a piece may stand: on the panel and clear of the cut line. */
export function wordRoom(sheet: Sheet): Sheet['open'] {
  const { min, max } = grown(sheet.window, -FROM_CUT)
  const { open } = sheet
  return {
    min: [Math.max(min[0], open.min[0]), Math.max(min[1], open.min[1])],
    max: [Math.min(max[0], open.max[0]), Math.min(max[1], open.max[1])],
  }
}
