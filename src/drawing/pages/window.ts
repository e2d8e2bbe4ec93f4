import type { EdgeSide } from '../../assembly/index.ts'
import type { Bore } from '../../panel/index.ts'
import type { Area } from '../areas.ts'
import { grown } from '../areas.ts'
import type { Obstacle } from '../labels.ts'
import type { Circle, ClosedPath, Entity, Line, Point } from '../types.ts'
import { boreTitle } from '../words.ts'
import { sketchCutout } from './cutout.ts'
import { drawEdgeBore } from './edge-bores.ts'
import { drawEdges } from './edges.ts'
import { sketchGroove } from './groove.ts'
import { drawSeams } from './seams.ts'
import { isWhole, onSheet, type Sheet } from './sheet.ts'
import { arrowHead, clippedLine, dot, rimIn, strokeIn } from './strokes.ts'
import { datumPoint, type FaceBore } from './view.ts'

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
const LEAN_ARROW = 16

/** Everything of the panel that the sheet's window shows, at true size. */
export function sketchOf(sheet: Sheet): Sketch {
  const sketch: Sketch = { edges: [], bores: [], countersinks: [], grooves: [], cutouts: [], marks: [], obstacles: [] }
  drawEdges(sketch, sheet)
  for (const groove of sheet.view.grooves) sketchGroove(sketch, sheet, groove)
  for (const cutout of sheet.view.cutouts) sketchCutout(sketch, sheet, cutout)
  for (const bore of sheet.view.bores) drawBore(sketch, sheet, bore)
  for (const bore of sheet.view.edgeBores) drawEdgeBore(sketch, sheet, bore)
  drawSeams(sketch, sheet)
  drawDatum(sketch, sheet)
  return sketch
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

/** A heavy dot on the corner that distances are measured from. */
function drawDatum(sketch: Sketch, sheet: Sheet): void {
  const at = onSheet(sheet, datumPoint(sheet.view))
  if (nearWindow(sheet.window, at, 0)) sketch.marks.push(dot(at, 1.2))
}

/** True when a disc reaches into the window; with a negative radius, when the point lies that deep in it. */
export function nearWindow({ min, max }: Area, [x, y]: Point, radius: number): boolean {
  return x > min[0] - radius && x < max[0] + radius && y > min[1] - radius && y < max[1] + radius
}
