import { boundsOf, middleOf, pointsAlong } from '../../geometry/index.ts'
import type { Units } from '../../length/index.ts'
import type { Round } from '../../templates/index.ts'
import { around, common, grown, holds } from '../areas.ts'
import { cutoutLabel, cutoutPlaces } from '../cutouts.ts'
import type { Obstacle, Target } from '../labels.ts'
import type { Line, Point } from '../types.ts'
import { hatch } from './groove.ts'
import { onSheet, type Sheet } from './sheet.ts'
import { chordsOf, clippedLine, strokeIn } from './strokes.ts'
import type { Words } from './text.ts'
import type { FaceCutout, FaceView } from './view.ts'

/** Half of the cross in the middle of a cutout, mm. */
const CROSS = 4
/** Points of a contour are this far apart at most, mm. */
const STEP = 10
/** A cutout no wider than this is shown whole on one sheet, mm: larger ones may be cut by a seam. */
const WHOLE_MM = 60
/** Kept between such a cutout and the end of its sheet, mm. */
const CLEAR = 3
/** Places on a sheet where the words of a cutout may point. */
const MOST_TARGETS = 8

/** What sheets must show: the whole of the contour, as rounds that touch each other, and its middle. */
export function cutoutThings({ path }: FaceCutout): Round[] {
  return [...pointsAlong(path, STEP).map((at) => ({ at, radius: STEP / 2 })), { at: middleOf(path), radius: 0 }]
}

/** The room that a small cutout takes up, to be shown whole on one sheet. */
export function cutoutRoom({ path }: FaceCutout): Round[] {
  const { min, max } = boundsOf(path)
  const wide = Math.max(max[0] - min[0], max[1] - min[1])
  return wide > WHOLE_MM ? [] : [{ at: middleOf(path), radius: wide / 2 + CLEAR }]
}

/**
 * The contour of a cutout as far as the window shows it, and a cross in its middle, all at true size; a notch is hatched,
 * since it is cut away.
 */
export function sketchCutout(
  sketch: { readonly cutouts: Line[]; readonly obstacles: Obstacle[] },
  sheet: Sheet,
  { path, cutout }: FaceCutout,
): void {
  const points = chordsOf(path).map((at) => onSheet(sheet, at))
  points.forEach((from, k) => {
    const to = points[(k + 1) % points.length] ?? from
    sketch.cutouts.push(...strokeIn(sheet.window, from, to, 'thin'))
    const shown = clippedLine(from, to, grown(sheet.window, 1))
    if (shown !== undefined) sketch.obstacles.push({ kind: 'line', from: shown[0], to: shown[1], open: true })
  })
  if (cutout.notch === true) {
    const whole = around(points)
    const seen = common(whole, sheet.window)
    if (seen === undefined) return
    sketch.cutouts.push(...hatch(seen, whole, points))
    sketch.obstacles.push({ kind: 'area', area: seen, open: true })
    return
  }
  const [x, y] = onSheet(sheet, middleOf(path))
  // In a small one the cross stays inside, off the words beside the contour.
  const { min, max } = boundsOf(path)
  const arm = Math.min(CROSS, (max[0] - min[0]) / 4, (max[1] - min[1]) / 4)
  sketch.cutouts.push(...strokeIn(sheet.window, [x - arm, y], [x + arm, y], 'hair'))
  sketch.cutouts.push(...strokeIn(sheet.window, [x, y - arm], [x, y + arm], 'hair'))
  const inside = grown(sheet.window, CROSS)
  if (holds(inside, { min: [x, y], max: [x, y] }))
    sketch.obstacles.push({ kind: 'disc', at: [x, y], radius: arm + 0.5, open: true })
}

/** What a cutout is and where, on every sheet that shows a part of its contour and that no later one covers there. */
export function cutoutWords(sheet: Sheet): Words[] {
  return sheet.view.cutouts.flatMap((item): Words[] => {
    const shown = pointsAlong(item.path, 2)
      .map((at) => onSheet(sheet, at))
      .filter((at) => holds(sheet.open, { min: at, max: at }))
    const [target, ...others] = spread(shown)
    if (target === undefined) return []
    const [what = '', ...places] = cutoutFigures(sheet.view, item, sheet.units)
    const full = [what, ...places].join(', ')
    // The figures are many: lines one below the other stay large where one long line would have to be small.
    const ways = [[what, ...places], [what, places.join(', ')], [full], full.split(', ')]
    return [{ ways, alike: true, full, targets: [target, ...others], oneThing: true, lead: true, reach: 90 }]
  })
}

/** A few of many points, evenly. */
function spread(points: readonly Point[]): Target[] {
  const step = Math.max(1, Math.ceil(points.length / MOST_TARGETS))
  return points.filter((_, k) => k % step === 0).map((at) => ({ at, radius: 0 }))
}

function cutoutFigures({ panel }: FaceView, { cutout }: FaceCutout, units: Units): string[] {
  const { x, y } = cutoutPlaces(panel, cutout, units)
  return [
    cutoutLabel(cutout, units),
    `${y} from ${panel.edges[panel.datum.y]}`,
    `${x} from ${panel.edges[panel.datum.x]}`,
  ]
}
