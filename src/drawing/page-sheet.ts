import type { Units } from '../length/index.ts'
import { liesWhole, type Round, type TemplatePage } from '../templates/index.ts'
import type { Area } from './areas.ts'
import type { FaceView } from './page-view.ts'
import type { Point } from './types.ts'

/** One sheet with what it shows. Areas are on the sheet: mm, (0, 0) its lower left corner. */
export interface Sheet {
  readonly view: FaceView
  readonly page: TemplatePage
  /** Printed after this one, and taped on top of it. */
  readonly later: readonly TemplatePage[]
  readonly units: Units
  readonly window: Area
  /** The part of the window that shows the panel and that no later page covers: where words belong. */
  readonly open: Area
}

/** The sheets of a face; `pages` in the order in which they are taped. */
export function sheetsOf(view: FaceView, pages: readonly TemplatePage[], units: Units): Sheet[] {
  return pages.map((page, index) => {
    const later = pages.slice(index + 1)
    const find = (label: string | undefined) => pages.find((other) => other.label === label)
    const right = find(page.neighbours.right)
    const below = find(page.neighbours.below)
    const { min, max } = page.window
    const open: Area = {
      min: [Math.max(min[0], 0), Math.max(min[1], below?.window.max[1] ?? 0, 0)],
      max: [Math.min(max[0], right?.window.min[0] ?? view.width, view.width), Math.min(max[1], view.height)],
    }
    const move = (p: Point): Point => placedOn(page, p)
    return {
      view,
      page,
      later,
      units,
      window: { min: move(min), max: move(max) },
      open: { min: move(open.min), max: move(open.max) },
    }
  })
}

/** A point of the face, on the sheet. */
export function onSheet(sheet: Sheet, at: Point): Point {
  return placedOn(sheet.page, at)
}

function placedOn({ window, at }: TemplatePage, [x, y]: Point): Point {
  return [x - window.min[0] + at[0], y - window.min[1] + at[1]]
}

/** True when the round, in the frame of the face, is whole on the sheet. */
export function isWhole(sheet: Sheet, round: Round): boolean {
  return liesWhole(round, sheet.page.window)
}

/** True when this is the sheet that says what the round is: the last one, which is on top, that shows it whole. */
export function speaksFor(sheet: Sheet, round: Round): boolean {
  return isWhole(sheet, round) && !sheet.later.some((page) => liesWhole(round, page.window))
}
