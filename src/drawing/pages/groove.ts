import { closedPathsOf, grooveModel, same } from '../../geometry/index.ts'
import { type Area, common } from '../areas.ts'
import type { Obstacle } from '../labels.ts'
import type { Line, Point } from '../types.ts'
import { onSheet, type Sheet } from './sheet.ts'
import { chordsOf, clippedToShape, strokeIn } from './strokes.ts'
import type { FaceGroove } from './view.ts'

const HATCH_STEP = 4

/** The outline of a groove, round where the cutter stops inside the panel; hatched, as far as the window shows it. */
export function sketchGroove(
  sketch: { readonly grooves: Line[]; readonly obstacles: Obstacle[] },
  sheet: Sheet,
  item: FaceGroove,
): void {
  const whole: Area = { min: onSheet(sheet, item.min), max: onSheet(sheet, item.max) }
  const shown = common(whole, sheet.window)
  if (shown === undefined) return
  const rim = rimOf(sheet, item)
  rim.forEach((corner, index) => {
    const next = rim[(index + 1) % rim.length] ?? corner
    sketch.grooves.push(...strokeIn(sheet.window, corner, next, 'thin'))
  })
  sketch.grooves.push(...hatch(shown, whole, rim))
  sketch.obstacles.push({ kind: 'area', area: shown, open: true })
}

/** Corners of the groove on the sheet, counter-clockwise, its round ends in short chords. */
function rimOf(sheet: Sheet, { groove, min, max }: FaceGroove): Point[] {
  const along = max[0] - min[0] >= max[1] - min[1] ? 'x' : 'y'
  const axis = along === 'x' ? 0 : 1
  const long = along === 'x' ? sheet.view.width : sheet.view.height
  const round = {
    start: groove.roundEnds && min[axis] > 0 && !same(min[axis], 0),
    end: groove.roundEnds && max[axis] < long && !same(max[axis], long),
  }
  return closedPathsOf(grooveModel(min, max, { along, round }))
    .flatMap(chordsOf)
    .map((at) => onSheet(sheet, at))
}

/** Slanted hairlines over a convex shape; they start from a corner of the whole of it, so that they run on over seams. */
export function hatch(shown: Area, whole: Area, rim: readonly Point[]): Line[] {
  const height = shown.max[1] - shown.min[1]
  const width = shown.max[0] - shown.min[0]
  const origin = whole.min[0] - whole.min[1]
  const first = Math.ceil((shown.min[0] - shown.max[1] - origin) / HATCH_STEP)
  const count = Math.ceil((width + height) / HATCH_STEP) + 1
  return Array.from({ length: count }, (_, index) => {
    const x = origin + (first + index) * HATCH_STEP + shown.min[1]
    const piece = clippedToShape([x, shown.min[1]], [x + height, shown.max[1]], rim)
    return piece === undefined ? [] : strokeIn(shown, ...piece, 'hair')
  }).flat()
}
