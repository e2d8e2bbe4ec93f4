import type { EdgeSide } from '../../assembly/index.ts'
import { type Area, around, common, holds } from '../areas.ts'
import { TEXT_ASCENT, TEXT_DESCENT, textWidth } from '../text-width.ts'
import type { Line, Point, Text } from '../types.ts'
import { hatch } from './groove.ts'
import { onSheet, type Sheet } from './sheet.ts'
import { outsideArea, strokeIn } from './strokes.ts'
import { textAt } from './text.ts'
import { edgeLine, type FaceView, flapSides, OUTWARD } from './view.ts'
import type { Sketch } from './window.ts'

/**
 * What is drawn of the paper that folds down over edges with bores in them: a thin line where the edge's surface ends,
 * at the far face; and the corners hatched that are cut away so that both sides of a corner can be folded. The line of
 * the edge itself, the fold, is drawn with the edges; the holes with the others.
 */
export function drawFlaps(sketch: Sketch, sheet: Sheet): void {
  const sides = flapSides(sheet.view)
  for (const side of sides) {
    for (const line of farLine(sheet, side)) {
      sketch.edges.push(line)
      sketch.obstacles.push({ kind: 'line', from: line.from, to: line.to, open: true })
    }
  }
  for (const corner of cornersOf(sheet.view, sides)) {
    const whole: Area = { min: onSheet(sheet, corner.min), max: onSheet(sheet, corner.max) }
    const shown = common(whole, sheet.window)
    if (shown === undefined) continue
    sketch.marks.push(...cutAway(sheet, whole, shown))
    sketch.obstacles.push({ kind: 'area', area: shown, open: true })
  }
}

/** Where the edge's surface ends, as far as the window shows it. */
export function farLine(sheet: Sheet, side: EdgeSide): Line[] {
  const [dx, dy] = OUTWARD[side]
  const { thickness } = sheet.view.panel
  const [from, to] = edgeLine(sheet.view, side).map(([x, y]) =>
    onSheet(sheet, [x + dx * thickness, y + dy * thickness]),
  )
  return from === undefined || to === undefined ? [] : strokeIn(sheet.window, from, to, 'thin')
}

/** The corners of the paper beside a flap, in the frame of the face. */
function cornersOf({ width, height, surround }: FaceView, flaps: ReadonlySet<EdgeSide>): Area[] {
  const across = { x0: [-surround.x0, 0], x1: [width, width + surround.x1] } as const
  const up = { y0: [-surround.y0, 0], y1: [height, height + surround.y1] } as const
  return (['x0', 'x1'] as const).flatMap((x) =>
    (['y0', 'y1'] as const)
      .filter((y) => flaps.has(x) || flaps.has(y))
      .map((y) => ({ min: [across[x][0], up[y][0]], max: [across[x][1], up[y][1]] })),
  )
}

const WORDS = 'cut away'
const SIZE = 2.2

/** Hatched, its words in the middle of the hatching. */
function cutAway(sheet: Sheet, whole: Area, shown: Area): Line[] {
  const corners: Point[] = [whole.min, [whole.max[0], whole.min[1]], whole.max, [whole.min[0], whole.max[1]]]
  const rim = corners.flatMap((from, k) => strokeIn(sheet.window, from, corners[(k + 1) % 4] ?? from, 'thin'))
  const hatching = hatch(shown, whole, corners)
  const words = cutAwayWords(shown)
  return [...rim, ...(words === undefined ? hatching : outsideArea(hatching, words.area))]
}

function cutAwayWords(shown: Area): { area: Area; text: Text } | undefined {
  const wide = textWidth(WORDS, SIZE)
  const [x, y] = [(shown.min[0] + shown.max[0]) / 2, (shown.min[1] + shown.max[1]) / 2]
  const base = y - ((TEXT_ASCENT - TEXT_DESCENT) * SIZE) / 2
  const area: Area = {
    min: [x - wide / 2 - 0.5, base - TEXT_DESCENT * SIZE],
    max: [x + wide / 2 + 0.5, base + TEXT_ASCENT * SIZE],
  }
  return holds(shown, area) ? { area, text: textAt([x, base], SIZE, WORDS, { anchor: 'middle' }) } : undefined
}

/** `cut away` in the corners that have room for it. */
export function flapWords(sheet: Sheet): Text[] {
  return cornersOf(sheet.view, flapSides(sheet.view)).flatMap((corner) => {
    const whole = around([onSheet(sheet, corner.min), onSheet(sheet, corner.max)])
    const shown = common(whole, sheet.window)
    const words = shown && cutAwayWords(shown)
    return words === undefined ? [] : [words.text]
  })
}
