import type { EdgeSide } from '../../assembly/index.ts'
import type { Area } from '../areas.ts'
import { grown } from '../areas.ts'
import type { Obstacle, Target } from '../labels.ts'
import type { Circle, ClosedPath, Entity, Line, Point } from '../types.ts'
import { sketchCutout } from './cutout.ts'
import { drawTick } from './edge-bores.ts'
import { drawEdges } from './edges.ts'
import { drawFlaps } from './flaps.ts'
import { sketchGroove } from './groove.ts'
import { CROSS_ARM, drawHole, holesOf } from './holes.ts'
import { drawSeams } from './seams.ts'
import { onSheet, type Sheet } from './sheet.ts'
import { arrowHead, clippedLine, dot, outsideDiscs, strokeIn } from './strokes.ts'
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

const LEAN_ARROW = 16

/** Everything of the panel that the sheet's window shows, at true size. */
export function sketchOf(sheet: Sheet): Sketch {
  const sketch: Sketch = { edges: [], bores: [], countersinks: [], grooves: [], cutouts: [], marks: [], obstacles: [] }
  drawEdges(sketch, sheet)
  for (const groove of sheet.view.grooves) sketchGroove(sketch, sheet, groove)
  for (const cutout of sheet.view.cutouts) sketchCutout(sketch, sheet, cutout)
  drawFlaps(sketch, sheet)
  const holes = holesOf(sheet.view)
  for (const hole of holes) drawHole(sketch, sheet, hole)
  for (const bore of sheet.view.bores) drawLean(sketch, sheet, bore)
  for (const bore of sheet.view.edgeBores) if (bore.onFlap === undefined) drawTick(sketch, sheet, bore)
  drawSeams(sketch, sheet)
  drawDatum(sketch, sheet)
  return cleared(
    sketch,
    holes.map(({ at, reach }) => ({ at: onSheet(sheet, at), radius: reach })),
  )
}

/** Hatching and dashes are left out inside the holes: there an awl has to find the dot. */
function cleared(sketch: Sketch, holes: readonly Target[]): Sketch {
  const free = (lines: readonly Line[]): Line[] =>
    lines.flatMap((line) => (line.pen === 'hair' ? outsideDiscs([line], holes) : [line]))
  const marks = sketch.marks.flatMap((mark) =>
    mark.kind === 'line' && mark.pen === 'dashed' ? outsideDiscs([mark], holes) : [mark],
  )
  return { ...sketch, grooves: free(sketch.grooves), cutouts: free(sketch.cutouts), marks }
}

/** An arrow the way a leaning bit travels. */
function drawLean(sketch: Sketch, sheet: Sheet, { at: place, reach, lean }: FaceBore): void {
  const at = onSheet(sheet, place)
  if (lean === undefined || !nearWindow(sheet.window, at, reach)) return
  const away = (by: number): Point => [at[0] + lean[0] * by, at[1] + lean[1] * by]
  const [from, tip] = [away(reach), away(reach + CROSS_ARM + LEAN_ARROW)]
  sketch.marks.push(...strokeIn(sheet.window, from, tip, 'thin'))
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
