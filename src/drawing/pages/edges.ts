import type { EdgeSide } from '../../assembly/index.ts'
import { around, common, grown } from '../areas.ts'
import { faceView as areaView } from '../face.ts'
import { leadingEdge } from '../frame.ts'
import { coreArea } from '../outline.ts'
import type { Point } from '../types.ts'
import { onSheet, type Sheet } from './sheet.ts'
import { clippedLine, rectangle, strokeIn } from './strokes.ts'
import { edgeLine, OUTWARD } from './view.ts'
import { SIDES, type Sketch } from './window.ts'

/** The panel's edges as far as the window shows them, the bar of the leading one, and where lipped ones are cut. */
export function drawEdges(sketch: Sketch, sheet: Sheet): void {
  for (const side of SIDES) drawEdge(sketch, sheet, side)
  drawCore(sketch, sheet)
  drawBar(sketch, sheet)
}

/** A heavy bar outside the leading edge, beyond its name or its flap: so far from the end of what is shown, mm. */
const BAR = { fromEnd: 1.7, thick: 1.2 } as const

function drawBar(sketch: Sketch, sheet: Sheet): void {
  const side = leadingEdge(sheet.view.edges)
  if (side === undefined) return
  const far = sheet.view.surround[side] - BAR.fromEnd
  const line = clippedLine(...seenLine(sheet, side), grown(sheet.window, far + BAR.thick))
  if (line === undefined) return
  const [dx, dy] = OUTWARD[side]
  const out = ([x, y]: Point, by: number): Point => [x + dx * by, y + dy * by]
  const area = common(around([out(line[0], far), out(line[1], far + BAR.thick)]), sheet.window)
  if (area === undefined) return
  sketch.edges.push(rectangle(area, 'hair', true))
  sketch.obstacles.push({ kind: 'area', area, open: true })
}

function seenLine(sheet: Sheet, side: EdgeSide): readonly [Point, Point] {
  const [from, to] = edgeLine(sheet.view, side)
  return [onSheet(sheet, from), onSheet(sheet, to)]
}

function drawEdge(sketch: Sketch, sheet: Sheet, side: EdgeSide): void {
  for (const line of strokeIn(sheet.window, ...seenLine(sheet, side), 'bold')) {
    sketch.edges.push(line)
    // Leaders may cross the fold: to the holes on a flap, and to words on the blank paper beyond.
    sketch.obstacles.push({ kind: 'line', from: line.from, to: line.to, open: true })
  }
}

/** Where the panel is cut before its edges are lipped: a fine dashed line behind each lipped edge. */
function drawCore(sketch: Sketch, sheet: Sheet): void {
  const { panel } = sheet.view
  if (panel.lipping === undefined) return
  const { min, max } = coreArea(areaView(panel, sheet.view.face))
  const corners: Point[] = [min, [max[0], min[1]], max, [min[0], max[1]]]
  const finished: Point[] = [
    [0, 0],
    [panel.length, 0],
    [panel.length, panel.width],
    [0, panel.width],
  ]
  corners.forEach((corner, k) => {
    const next = corners[(k + 1) % 4] ?? corner
    const axis = k % 2 === 0 ? 1 : 0
    if (corner[axis] === finished[k]?.[axis]) return
    const [from, to] = [onSheet(sheet, corner), onSheet(sheet, next)]
    sketch.marks.push(...strokeIn(sheet.window, from, to, 'dashed'))
    const shown = clippedLine(from, to, grown(sheet.window, 1))
    if (shown !== undefined) sketch.obstacles.push({ kind: 'line', from: shown[0], to: shown[1], open: true })
  })
}
