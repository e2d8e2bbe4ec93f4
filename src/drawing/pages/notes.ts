import type { EdgeSide } from '../../assembly/index.ts'
import { type Bore, isUneven, type Run, runsOf } from '../../panel/index.ts'
import { type Area, grown } from '../areas.ts'
import type { Obstacle, Target } from '../labels.ts'
import type { Entity, Line, Point } from '../types.ts'
import { cutoutWords } from './cutout.ts'
import { TICK } from './edge-bores.ts'
import { edgeName } from './edge-names.ts'
import { seamWords } from './seams.ts'
import { isWhole, onSheet, type Sheet, speaksFor } from './sheet.ts'
import { strokeIn } from './strokes.ts'
import { placeWords, type Words } from './text.ts'
import { datumPoint, type EdgeBore, type FaceBore, OUTWARD } from './view.ts'
import { CROSS_ARM, nearWindow, SIDES, type Sketch } from './window.ts'
import { alongEdge, edgePlace, figures, fromDatum, grooveFigures } from './words.ts'

export interface Notes {
  readonly entities: readonly Entity[]
  /** Labels for which there was room for a tag only, `[1]`; the furniture says what the tag means. */
  readonly tagged: readonly string[]
  /** Labels of bores and grooves for which the sheet has no room at all. */
  readonly left: number
}

/** All words inside the window of a sheet: no word lies across a hole, a mark, an edge or another word. */
export function notesOf(sheet: Sheet, sketch: Sketch, runs: readonly Run[]): Notes {
  const entities: Entity[] = []
  const taken: Obstacle[] = [...sketch.obstacles]
  const add = (words: readonly Words[], area: Area): readonly Words[] => {
    const worded = placeWords(words, taken, area)
    entities.push(...worded.entities)
    taken.push(...worded.obstacles)
    return worded.unplaced
  }
  for (const side of SIDES) {
    const name = edgeName(sheet, side, taken)
    entities.push(...name.entities)
    taken.push(...name.obstacles)
  }
  entities.push(...runLines(sheet, runs))
  taken.push(...runLines(sheet, runs).map(({ from, to }): Obstacle => ({ kind: 'line', from, to, open: true })))
  const open = grown(sheet.open, -1)
  const window = grown(sheet.window, -0.5)
  const work = [...grooveWords(sheet), ...cutoutWords(sheet), ...runs.flatMap((run) => runWords(sheet, run))]
  // First where no later sheet covers them; else anywhere in the window.
  const crowded = add(add(work, open), window)
  const tags = crowded.map((words, index): Words => ({ ...words, ways: [[`[${index + 1}]`]] }))
  const left = add(tags, window).length
  const tagged = crowded.map(({ full }, index) => `[${index + 1}] ${full}`)
  add(add(seamWords(sheet), open), window)
  add(datumWords(sheet), open)
  return { entities, tagged, left }
}

/** All runs of a face with those of the edges, in the panel's own frame. */
export function runsOn(sheet: Sheet['view']): Run[] {
  return runsOf([...sheet.bores, ...sheet.edgeBores].map(({ bore }) => bore))
}

interface Member {
  readonly bore: Bore
  readonly at: Point
  readonly radius: number
  readonly speaks: boolean
}

/** The bores of a run that the sheet shows whole, the one nearest to the datum corner first. */
function shownMembers(sheet: Sheet, run: Run): { members: Member[]; edgeBore: EdgeBore | undefined } {
  const { view } = sheet
  const faceBores = view.bores.filter(({ bore }) => run.bores.includes(bore))
  const edgeBores = view.edgeBores.filter(({ bore }) => run.bores.includes(bore))
  const places = [
    ...faceBores.map(({ bore, at, reach }) => ({ bore, at, radius: reach })),
    ...edgeBores.map(({ bore, at }) => ({ bore, at, radius: 0 })),
  ]
  const [x, y] = datumPoint(view)
  const away = ({ at }: { at: Point }): number => Math.abs(at[0] - x) + Math.abs(at[1] - y)
  const members = places
    .filter((place) => isWhole(sheet, place))
    .sort((a, b) => away(a) - away(b))
    .map((place) => ({ ...place, speaks: speaksFor(sheet, place) }))
  return { members, edgeBore: edgeBores[0] }
}

/** Nothing when another sheet, which lies on top, speaks for all of the run that this one shows. */
function runWords(sheet: Sheet, run: Run): Words[] {
  const { units, view } = sheet
  const { members, edgeBore } = shownMembers(sheet, run)
  const side = edgeBore?.side
  const [first] = members
  const speakers = members.filter((member) => member.speaks)
  if (first === undefined || speakers.length === 0) return []
  const lead = members.length === 1 ? '' : members.length === run.bores.length ? 'first ' : 'first here '
  const inOrder = run.bores.filter((bore) => members.some((member) => member.bore === bore))
  const what = figures(view.panel, run, [inOrder[0] ?? first.bore, ...inOrder.slice(1)], units)
  const where = edgeBore === undefined ? [] : [edgePlace(edgeBore, units).join(', ')]
  const place = lead + (side === undefined ? fromDatum(view, first.at, units) : alongEdge(view, first.at, side, units))
  const full = [what, ...where].join(', ')
  const ways = [
    [full, `${run.purpose}: ${place}`],
    [what, ...where, `${run.purpose}: ${place}`],
    [...full.split(', '), `${run.purpose}:`, ...place.split(', ')],
    full.split(', '),
  ]
  const targets = speakers.map(({ at, radius }) => targetOf(sheet, at, radius, side))
  const [target, ...others] = targets
  return target === undefined
    ? []
    : [{ ways, full, targets: [target, ...others], rivals: rivalsOf(sheet, run), reach: 90 }]
}

/** The bores of all other runs. */
function rivalsOf(sheet: Sheet, run: Run): Target[] {
  const { bores, edgeBores } = sheet.view
  return [
    ...bores
      .filter(({ bore }) => !run.bores.includes(bore))
      .map(({ at, reach }) => targetOf(sheet, at, reach, undefined)),
    ...edgeBores.filter(({ bore }) => !run.bores.includes(bore)).map(({ at, side }) => targetOf(sheet, at, 0, side)),
  ]
}

/** The rim of a bore's cross; of a bore in an edge, the inner end of its tick. */
function targetOf(sheet: Sheet, at: Point, radius: number, side: EdgeSide | undefined): Target {
  if (side === undefined) return { at: onSheet(sheet, at), radius: radius + CROSS_ARM }
  const [dx, dy] = OUTWARD[side]
  const inner: Point = [at[0] - dx * (TICK.inside + 1), at[1] - dy * (TICK.inside + 1)]
  return { at: onSheet(sheet, inner), radius: 0 }
}

/** Wider apart than this, mm, bores are too far from each other for a line between them to help the eye. */
const CLOSE = 100

/** A hairline through the bores of a close run, as far as the sheet shows it. */
function runLines(sheet: Sheet, runs: readonly Run[]): Line[] {
  const placeOf = new Map(sheet.view.bores.map((item: FaceBore) => [item.bore, onSheet(sheet, item.at)]))
  return runs.flatMap((run) => {
    if (run.step > CLOSE || isUneven(run)) return []
    const places = run.bores.map((bore) => placeOf.get(bore)).filter((at) => at !== undefined)
    const [from, to] = [places[0], places.at(-1)]
    if (from === undefined || to === undefined || from === to) return []
    return strokeIn(sheet.window, from, to, 'hair')
  })
}

function grooveWords(sheet: Sheet): Words[] {
  return sheet.view.grooves.flatMap((item): Words[] => {
    const min = onSheet(sheet, item.min)
    const max = onSheet(sheet, item.max)
    const shown: Area = {
      min: [Math.max(min[0], sheet.open.min[0]), Math.max(min[1], sheet.open.min[1])],
      max: [Math.min(max[0], sheet.open.max[0]), Math.min(max[1], sheet.open.max[1])],
    }
    const wide = shown.max[0] - shown.min[0]
    const high = shown.max[1] - shown.min[1]
    if (wide <= 0 || high <= 0) return []
    const across = Math.min(wide, high) / 2
    const along = (share: number): Point =>
      wide >= high
        ? [shown.min[0] + wide * share, shown.min[1] + across]
        : [shown.min[0] + across, shown.min[1] + high * share]
    const target = (share: number) => ({ at: along(share), radius: across })
    const [what = '', ...places] = grooveFigures(sheet.view, item, sheet.units)
    const full = [what, ...places].join(', ')
    const ways = [[full], [what, places.join(', ')], [what, ...places], full.split(', ')]
    const targets = [target(0.5), target(0.3), target(0.7), target(0.1), target(0.9)] as const
    return [{ ways, full, targets, oneThing: true }]
  })
}

function datumWords(sheet: Sheet): Words[] {
  const at = onSheet(sheet, datumPoint(sheet.view))
  if (!nearWindow(sheet.window, at, 0)) return []
  const words = 'distances are from this corner'
  return [{ ways: [[words]], full: words, targets: [{ at, radius: 2 }], reach: 20 }]
}
