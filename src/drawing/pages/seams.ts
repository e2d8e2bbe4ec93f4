import { type Join, lapEdge, MARK_ARM, MARK_REACH, type Piece, type RegistrationMark } from '../../templates/index.ts'
import type { Area } from '../areas.ts'
import { textArea } from '../areas.ts'
import { TEXT_ASCENT, TEXT_DESCENT } from '../text-width.ts'
import type { Point, Text } from '../types.ts'
import { onSheet, type Sheet } from './sheet.ts'
import { strokeIn } from './strokes.ts'
import { fitted, textAt, type Words } from './text.ts'
import type { Sketch } from './window.ts'

/** The circle of a registration mark, mm. */
const RING = 3
/** From the middle of a mark to its letter: past its upright arm, past its circle; mm. */
const LETTER = { aside: 0.7, above: RING + 0.2, width: 3.6 } as const
/** Edges nearer to each other than this lie on each other, mm. */
const SAME = 0.5

/** Registration marks, where the next sheet's edges come to lie, and what to cut away. */
export function drawSeams(sketch: Sketch, sheet: Sheet): void {
  const { page, window } = sheet
  for (const mark of page.marks) {
    const at = onSheet(sheet, mark.at)
    const join = joinOf(sheet, mark)
    const [across, along] = join?.along === 1 ? [MARK_ARM, MARK_REACH] : [MARK_REACH, MARK_ARM]
    sketch.marks.push({ kind: 'circle', at, radius: RING, pen: 'hair' })
    sketch.marks.push(...strokeIn(window, [at[0] - across, at[1]], [at[0] + across, at[1]], 'hair'))
    sketch.marks.push(...strokeIn(window, [at[0], at[1] - along], [at[0], at[1] + along], 'hair'))
    const arms: Area = { min: [at[0] - across, at[1] - along], max: [at[0] + across, at[1] + along] }
    sketch.obstacles.push({ kind: 'disc', at, radius: MARK_REACH }, { kind: 'area', area: arms, open: true })
  }
  for (const letter of seamLetters(sheet)) sketch.obstacles.push({ kind: 'area', area: textArea(letter) })
  for (const [from, to] of page.joins.flatMap((join) => seamLines(sheet, join))) {
    sketch.marks.push(...strokeIn(window, from, to, 'dashed'))
    sketch.obstacles.push({ kind: 'line', from, to, open: true })
  }
}

function joinOf({ page }: Sheet, { pieces }: RegistrationMark): Join | undefined {
  const other = pieces[0] === page.label ? pieces[1] : pieces[0]
  return page.joins.find((join) => join.to === other)
}

function pieceOf({ all }: Sheet, label: string): Piece {
  const piece = all.find((one) => one.label === label)
  if (piece === undefined) throw new RangeError(`no piece ${label} to tape to`)
  return piece
}

/** The windows of a join, on the face: the one that lies on top and the other. */
function lapOf(sheet: Sheet, { to, along, over }: Join): Parameters<typeof lapEdge>[0] {
  const [mine, theirs] = [sheet.page.window, pieceOf(sheet, to).window]
  return over ? { upper: mine, lower: theirs, along } : { upper: theirs, lower: mine, along }
}

/** The letters of the registration marks: a is laid on a, b on b. */
export function seamLetters(sheet: Sheet): Text[] {
  return sheet.page.marks.map((mark) => letterOf(sheet, mark, onSheet(sheet, mark.at), joinOf(sheet, mark)))
}

/** In a quarter of the cross on the side that lies away from the upper sheet's edge, clear of all hairlines. */
function letterOf(sheet: Sheet, { id }: RegistrationMark, [x, y]: Point, join: Join | undefined): Text {
  const inward = join === undefined ? 1 : lapEdge(lapOf(sheet, join)).inward
  const [aside, above] = join?.along === 1 ? [inward, 1] : [1, inward]
  const most = (MARK_REACH - LETTER.above) / (TEXT_ASCENT + TEXT_DESCENT)
  const [text, height] = fitted(id, LETTER.width, most, most / 2, true)
  const base = above > 0 ? y + LETTER.above + TEXT_DESCENT * height : y - LETTER.above - TEXT_ASCENT * height
  const anchor = aside > 0 ? 'start' : 'end'
  return textAt([x + aside * LETTER.aside, base], height, text, { anchor, bold: true })
}

/**
 * The edges of the upper sheet that lie on the lower one. On the upper sheet they run all along its window, to be cut
 * along; on the lower one as far as the upper one reaches.
 */
function seamLines(sheet: Sheet, join: Join): [Point, Point][] {
  const { upper, lower } = lapOf(sheet, join)
  const seen = join.over ? upper : join.seam
  return ([0, 1] as const).flatMap((axis) =>
    (['min', 'max'] as const).flatMap((end): [Point, Point][] => {
      const at = upper[end][axis]
      if (at < lower.min[axis] + SAME || at > lower.max[axis] - SAME) return []
      const ends = (['min', 'max'] as const).map((which): Point => {
        const place: Point = axis === 0 ? [at, seen[which][1]] : [seen[which][0], at]
        return onSheet(sheet, place)
      })
      const [from, to] = ends
      return from === undefined || to === undefined ? [] : [[from, to]]
    }),
  )
}

/** `tape A2 to A1 here` at the registration marks of each seam, and what to do with its dashes. */
export function seamWords(sheet: Sheet): Words[] {
  const { page } = sheet
  return page.joins.flatMap(({ to, over }): Words[] => {
    const [upper, lower] = over ? [page.label, to] : [to, page.label]
    const tape = `tape ${upper} to ${lower} here`
    const dashes = over ? 'cut along the dashes' : `${upper} lies up to the dashes`
    const [target, ...others] = page.marks
      .filter(({ pieces }) => pieces.includes(to))
      .map((mark) => ({ at: onSheet(sheet, mark.at), radius: MARK_REACH + 2 }))
    if (target === undefined) return []
    const ways = [[tape, dashes], [tape]]
    return [{ ways, full: tape, targets: [target, ...others], oneThing: true, reach: 40 }]
  })
}
