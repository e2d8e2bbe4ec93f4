import type { EdgeSide } from '../assembly/index.ts'
import type { Bore } from '../panel/index.ts'
import { MARK_ARM, MARK_REACH } from '../templates/index.ts'
import type { Area } from './areas.ts'
import { around, common, grown } from './areas.ts'
import { faceView as areaView } from './face.ts'
import { leadingEdge } from './frame.ts'
import type { Obstacle } from './labels.ts'
import { coreArea } from './outline.ts'
import { sketchCutout } from './page-cutout.ts'
import { sketchGroove } from './page-groove.ts'
import { isWhole, onSheet, type Sheet } from './page-sheet.ts'
import { arrowHead, clippedLine, dot, rectangle, rimIn, strokeIn } from './page-strokes.ts'
import { datumPoint, type EdgeBore, edgeLine, type FaceBore, OUTWARD } from './page-view.ts'
import type { Circle, ClosedPath, Entity, Line, Point } from './types.ts'
import { boreTitle } from './words.ts'

/** What is drawn at true size on one sheet, sorted for its layers, and what words must keep clear of. */
export interface Sketch {
  readonly edges: (Line | ClosedPath)[]
  readonly bores: Circle[]
  readonly countersinks: Circle[]
  readonly grooves: Line[]
  readonly cutouts: Line[]
  readonly marks: Entity[]
  readonly obstacles: Obstacle[]
}

export const SIDES: readonly EdgeSide[] = ['x0', 'x1', 'y0', 'y1']

/** The arms of a bore's cross reach this far beyond its rim, mm. */
export const CROSS_ARM = 2.5
const DOT_RADIUS = 0.25
/** A bore in an edge is ticked this far outside the edge and inside it, mm. */
export const TICK = { outside: 6, inside: 6 } as const
const LEAN_ARROW = 16

/** Everything of the panel that the sheet's window shows, at true size. */
export function sketchOf(sheet: Sheet): Sketch {
  const sketch: Sketch = { edges: [], bores: [], countersinks: [], grooves: [], cutouts: [], marks: [], obstacles: [] }
  for (const side of SIDES) drawEdge(sketch, sheet, side)
  drawCore(sketch, sheet)
  drawBar(sketch, sheet)
  for (const groove of sheet.view.grooves) sketchGroove(sketch, sheet, groove)
  for (const cutout of sheet.view.cutouts) sketchCutout(sketch, sheet, cutout)
  for (const bore of sheet.view.bores) drawBore(sketch, sheet, bore)
  for (const bore of sheet.view.edgeBores) drawEdgeBore(sketch, sheet, bore)
  drawSeams(sketch, sheet)
  drawDatum(sketch, sheet)
  return sketch
}

/** A heavy bar this far outside the leading edge, mm, beyond the edge's name; as on the drawing of the panel. */
const BAR = { out: 6.3, thick: 1.2 } as const

function drawBar(sketch: Sketch, sheet: Sheet): void {
  const side = leadingEdge(sheet.view.edges)
  if (side === undefined) return
  const line = clippedLine(...seenLine(sheet, side), grown(sheet.window, BAR.out + BAR.thick))
  if (line === undefined) return
  const [dx, dy] = OUTWARD[side]
  const out = ([x, y]: Point, by: number): Point => [x + dx * by, y + dy * by]
  const area = common(around([out(line[0], BAR.out), out(line[1], BAR.out + BAR.thick)]), sheet.window)
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
    sketch.obstacles.push({ kind: 'line', from: line.from, to: line.to })
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

function drawBore(sketch: Sketch, sheet: Sheet, item: FaceBore): void {
  const { bore, reach } = item
  const at = onSheet(sheet, item.at)
  if (!nearWindow(sheet.window, at, reach)) return
  const whole = isWhole(sheet, { at: item.at, radius: reach })
  if (item.lean === undefined) drawRim(sketch, sheet, bore, at, bore.diameter / 2, whole, 'bores')
  if (bore.sink !== undefined) drawRim(sketch, sheet, bore, at, bore.sink.diameter / 2, whole, 'countersinks')
  const arm = reach + CROSS_ARM
  drawCross(sketch, sheet.window, at, arm)
  sketch.obstacles.push({ kind: 'disc', at, radius: arm })
  if (item.lean !== undefined) drawLean(sketch, sheet, at, item.lean, arm)
}

function drawRim(
  sketch: Sketch,
  sheet: Sheet,
  bore: Bore,
  at: Point,
  radius: number,
  whole: boolean,
  layer: 'bores' | 'countersinks',
): void {
  if (whole) {
    const id = layer === 'bores' ? bore.id : `${bore.id}-sink`
    sketch[layer].push({
      kind: 'circle',
      at,
      radius,
      pen: 'thin',
      id,
      title: boreTitle(sheet.view.panel, bore, sheet.units),
    })
  } else sketch.marks.push(...rimIn(sheet.window, at, radius, 'thin'))
}

function drawCross(sketch: Sketch, window: Area, [x, y]: Point, arm: number): void {
  sketch.marks.push(...strokeIn(window, [x - arm, y], [x + arm, y], 'hair'))
  sketch.marks.push(...strokeIn(window, [x, y - arm], [x, y + arm], 'hair'))
  if (nearWindow(window, [x, y], -DOT_RADIUS)) sketch.marks.push(dot([x, y], DOT_RADIUS))
}

/** An arrow the way a leaning bit travels. */
function drawLean(sketch: Sketch, sheet: Sheet, at: Point, lean: Point, arm: number): void {
  const tip: Point = [at[0] + lean[0] * (arm + LEAN_ARROW), at[1] + lean[1] * (arm + LEAN_ARROW)]
  sketch.marks.push(...strokeIn(sheet.window, at, tip, 'thin'))
  if (nearWindow(sheet.window, tip, 0)) sketch.marks.push(arrowHead(tip, lean))
  const shown = clippedLine(at, tip, grown(sheet.window, 1))
  if (shown !== undefined) sketch.obstacles.push({ kind: 'line', from: shown[0], to: shown[1], open: true })
}

function drawEdgeBore(sketch: Sketch, sheet: Sheet, item: EdgeBore): void {
  const at = onSheet(sheet, item.at)
  if (!nearWindow(sheet.window, at, 0)) return
  const out = OUTWARD[item.side]
  const outer: Point = [at[0] + out[0] * TICK.outside, at[1] + out[1] * TICK.outside]
  const inner: Point = [at[0] - out[0] * TICK.inside, at[1] - out[1] * TICK.inside]
  sketch.marks.push(...strokeIn(sheet.window, outer, inner, 'hair'))
  sketch.marks.push(arrowHead(at, [-out[0], -out[1]]))
  sketch.obstacles.push({ kind: 'area', area: grown(areaAlong(outer, inner), 1), open: true })
}

const areaAlong = (a: Point, b: Point): Area => ({
  min: [Math.min(a[0], b[0]), Math.min(a[1], b[1])],
  max: [Math.max(a[0], b[0]), Math.max(a[1], b[1])],
})

/** Registration marks, the line that the next sheet's edge is laid on, and the line to cut along. */
function drawSeams(sketch: Sketch, sheet: Sheet): void {
  const { page, later, window } = sheet
  for (const mark of page.marks) {
    const at = onSheet(sheet, mark.at)
    const other = mark.pages[0] === page.label ? mark.pages[1] : mark.pages[0]
    const sideways = other === page.neighbours.left || other === page.neighbours.right
    const [across, along] = sideways ? [MARK_ARM, MARK_REACH] : [MARK_REACH, MARK_ARM]
    sketch.marks.push({ kind: 'circle', at, radius: 3, pen: 'hair' })
    sketch.marks.push(...strokeIn(window, [at[0] - across, at[1]], [at[0] + across, at[1]], 'hair'))
    sketch.marks.push(...strokeIn(window, [at[0], at[1] - along], [at[0], at[1] + along], 'hair'))
    const arms: Area = { min: [at[0] - across, at[1] - along], max: [at[0] + across, at[1] + along] }
    sketch.obstacles.push({ kind: 'disc', at, radius: MARK_REACH }, { kind: 'area', area: arms, open: true })
  }
  for (const [from, to] of seamLines(sheet, later)) {
    sketch.marks.push(...strokeIn(window, from, to, 'dashed'))
    sketch.obstacles.push({ kind: 'line', from, to, open: true })
  }
}

/** Where the edges of the sheets to the right and below will lie, and the edges of this one that are cut. */
function seamLines(sheet: Sheet, later: Sheet['later']): [Point, Point][] {
  const { window, page } = sheet
  const { left, right, above, below } = page.neighbours
  const find = (label: string | undefined) => later.find((other) => other.label === label)
  const lines: [Point, Point][] = []
  const upright = (x: number) =>
    lines.push([
      [x, window.min[1]],
      [x, window.max[1]],
    ])
  const level = (y: number) =>
    lines.push([
      [window.min[0], y],
      [window.max[0], y],
    ])
  const [rightPage, belowPage] = [find(right), find(below)]
  if (left !== undefined) upright(window.min[0])
  if (above !== undefined) level(window.max[1])
  if (rightPage !== undefined) upright(onSheet(sheet, rightPage.window.min)[0])
  if (belowPage !== undefined) level(onSheet(sheet, belowPage.window.max)[1])
  return lines
}

/** A heavy dot on the corner that distances are measured from. */
function drawDatum(sketch: Sketch, sheet: Sheet): void {
  const at = onSheet(sheet, datumPoint(sheet.view))
  if (nearWindow(sheet.window, at, 0)) sketch.marks.push(dot(at, 1.2))
}

/** True when a disc reaches into the window; with a negative radius, when the point lies that deep in it. */
export function nearWindow({ min, max }: Area, [x, y]: Point, radius: number): boolean {
  return x > min[0] - radius && x < max[0] + radius && y > min[1] - radius && y < max[1] + radius
}
