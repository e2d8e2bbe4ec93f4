import type { Bore } from '../../panel/index.ts'
import type { Area } from '../areas.ts'
import type { Target } from '../labels.ts'
import type { Line, Point } from '../types.ts'
import { boreTitle } from '../words.ts'
import { isWhole, onSheet, type Sheet } from './sheet.ts'
import { dot, rimIn, strokeIn } from './strokes.ts'
import type { FaceView } from './view.ts'
import { nearWindow, type Sketch } from './window.ts'

/** The arms of a bore's cross reach this far beyond its rim, mm. */
export const CROSS_ARM = 2.5
/** In the middle a dot to set the awl on, and nothing near it: the arms end this far from the middle, mm. */
const CLEAR = 0.8
/** In a hole so small that this would leave the arms no length inside its rim, they end at this share of its radius. */
const CLEAR_SHARE = 0.6
/** Half a millimetre across: as large as the point of an awl. */
const DOT_RADIUS = 0.25

/** A hole as it is marked, its middle in the frame of the face, mm. */
export interface Hole {
  readonly bore: Bore
  readonly at: Point
  /** Of the widest part, countersink included, mm. */
  readonly reach: number
  /** A leaning bore has no round mouth. */
  readonly round: boolean
}

/** True-size rims, as far as the window shows them, and a cross whose arms stand clear of the dot in the middle. */
export function drawHole(sketch: Sketch, sheet: Sheet, { bore, at: place, reach, round }: Hole): void {
  const at = onSheet(sheet, place)
  if (!nearWindow(sheet.window, at, reach)) return
  const whole = isWhole(sheet, { at: place, radius: reach })
  if (round) drawRim(sketch, sheet, bore, at, bore.diameter / 2, whole, 'bores')
  if (bore.sink !== undefined) drawRim(sketch, sheet, bore, at, bore.sink.diameter / 2, whole, 'countersinks')
  const arm = reach + CROSS_ARM
  sketch.marks.push(...crossIn(sheet.window, at, Math.min(CLEAR, CLEAR_SHARE * reach), arm))
  if (nearWindow(sheet.window, at, -DOT_RADIUS)) sketch.marks.push(dot(at, DOT_RADIUS))
  sketch.obstacles.push({ kind: 'disc', at, radius: arm })
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
    const title = boreTitle(sheet.view.panel, bore, sheet.units)
    sketch[layer].push({ kind: 'circle', at, radius, pen: 'thin', id, title })
  } else sketch.marks.push(...rimIn(sheet.window, at, radius, 'thin'))
}

/** Four arms, each from `from` to `to` mm away from the middle. */
function crossIn(window: Area, [x, y]: Point, from: number, to: number): Line[] {
  return (
    [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
    ] as const
  ).flatMap(([dx, dy]) => strokeIn(window, [x + dx * from, y + dy * from], [x + dx * to, y + dy * to], 'hair'))
}

/** All that is bored on a page, the circles on its flaps with it: the rounds with their crosses, on the sheet. */
export function crossesOn(sheet: Sheet): Target[] {
  return holesOf(sheet.view).map(({ at, reach }) => ({ at: onSheet(sheet, at), radius: reach + CROSS_ARM }))
}

/** The holes that a page marks by a cross. */
export function holesOf({ bores, edgeBores }: FaceView): Hole[] {
  return [
    ...bores.map(({ bore, at, reach, lean }) => ({ bore, at, reach, round: lean === undefined })),
    ...edgeBores.flatMap(({ bore, onFlap, reach }) =>
      onFlap === undefined ? [] : [{ bore, at: onFlap, reach, round: true }],
    ),
  ]
}
