import { MARK_ARM, MARK_REACH } from '../../templates/index.ts'
import type { Area } from '../areas.ts'
import type { Point } from '../types.ts'
import { onSheet, type Sheet } from './sheet.ts'
import { strokeIn } from './strokes.ts'
import type { Words } from './text.ts'
import type { Sketch } from './window.ts'

/** Registration marks, the line that the next sheet's edge is laid on, and the line to cut along. */
export function drawSeams(sketch: Sketch, sheet: Sheet): void {
  const { page, window } = sheet
  for (const mark of page.marks) {
    const at = onSheet(sheet, mark.at)
    const other = mark.pieces[0] === page.label ? mark.pieces[1] : mark.pieces[0]
    const sideways = page.joins.some((join) => join.to === other && join.along === 1)
    const [across, along] = sideways ? [MARK_ARM, MARK_REACH] : [MARK_REACH, MARK_ARM]
    sketch.marks.push({ kind: 'circle', at, radius: 3, pen: 'hair' })
    sketch.marks.push(...strokeIn(window, [at[0] - across, at[1]], [at[0] + across, at[1]], 'hair'))
    sketch.marks.push(...strokeIn(window, [at[0], at[1] - along], [at[0], at[1] + along], 'hair'))
    const arms: Area = { min: [at[0] - across, at[1] - along], max: [at[0] + across, at[1] + along] }
    sketch.obstacles.push({ kind: 'disc', at, radius: MARK_REACH }, { kind: 'area', area: arms, open: true })
  }
  for (const [from, to] of seamLines(sheet)) {
    sketch.marks.push(...strokeIn(window, from, to, 'dashed'))
    sketch.obstacles.push({ kind: 'line', from, to, open: true })
  }
}

/** Where the edges of the pieces on top will lie, and the edges of this one that are cut. */
function seamLines(sheet: Sheet): [Point, Point][] {
  const { window, page } = sheet
  return page.joins.map(({ seam, along, over }): [Point, Point] => {
    const [low, high] = [onSheet(sheet, seam.min), onSheet(sheet, seam.max)]
    const across = along === 0 ? 1 : 0
    const middle = (window.min[across] + window.max[across]) / 2
    const after = (low[across] + high[across]) / 2 > middle
    // The edge of the upper piece: of this one the seam's far side, of the other one its near side.
    const at = after === over ? high[across] : low[across]
    return along === 1
      ? [
          [at, window.min[1]],
          [at, window.max[1]],
        ]
      : [
          [window.min[0], at],
          [window.max[0], at],
        ]
  })
}

/** `meet A2 here` at the registration marks, and what to do with the lines of the seams. */
export function seamWords(sheet: Sheet): Words[] {
  const { page } = sheet
  return page.marks.map((mark): Words => {
    const other = mark.pieces[0] === page.label ? mark.pieces[1] : mark.pieces[0]
    const targets = [{ at: onSheet(sheet, mark.at), radius: 8 }] as const
    const upper = page.joins.some((join) => join.to === other && join.over)
    const meet = `meet ${other} here`
    const ways = [[meet, upper ? 'cut along the dashes' : `${other} lies up to the dashes`], [meet]]
    return { ways, full: meet, targets, reach: 30 }
  })
}
