import type { Area } from '../areas.ts'
import { grown } from '../areas.ts'
import type { Point } from '../types.ts'
import { onSheet, type Sheet } from './sheet.ts'
import { arrowHead, strokeIn } from './strokes.ts'
import { type EdgeBore, OUTWARD } from './view.ts'
import { nearWindow, type Sketch } from './window.ts'

/** A bore at the shoulder of a rebate is ticked this far outside the edge and inside it, mm. */
export const TICK = { outside: 6, inside: 6 } as const

/** Where a bore stands that no flap can show: an arrow across the edge, which a square carries on into the rebate. */
export function drawTick(sketch: Sketch, sheet: Sheet, item: EdgeBore): void {
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
