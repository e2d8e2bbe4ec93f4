import type { EdgeSide } from '../../assembly/index.ts'
import { type Bore, isUneven, type Run, runsOf } from '../../panel/index.ts'
import { type Area, grown } from '../areas.ts'
import type { Obstacle, Target } from '../labels.ts'
import type { Entity, Line, Point } from '../types.ts'
import { cutoutWords } from './cutout.ts'
import { TICK } from './edge-bores.ts'
import { edgeName } from './edge-names.ts'
import { flapWords } from './flaps.ts'
import { CROSS_ARM, crossesOn, holesOf } from './holes.ts'
import { seamWords } from './seams.ts'
import { isWhole, onSheet, type Sheet, speaksFor } from './sheet.ts'
import { outsideDiscs, strokeIn } from './strokes.ts'
import { tagList } from './tags.ts'
import { placeWords, type Words } from './text.ts'
import { datumPoint, type EdgeBore, OUTWARD } from './view.ts'
import { nearWindow, SIDES, type Sketch } from './window.ts'
import { alongEdge, edgePlace, figures, fromDatum, grooveFigures } from './words.ts'

export interface Notes {
  readonly entities: readonly Entity[]
  /** What the tags say, `[1]`, of labels that had room for no more, where there is no blank paper to say it: the furniture does. */
  readonly tagged: readonly string[]
  /** Labels of bores and grooves for which the sheet has no room at all. */
  readonly left: number
}

/** The names of the edges that a sheet shows, each along its line, and what later words must keep clear of. */
export function edgeNames(
  sheet: Sheet,
  obstacles: readonly Obstacle[],
): { readonly entities: readonly Entity[]; readonly obstacles: readonly Obstacle[] } {
  const entities: Entity[] = []
  const taken: Obstacle[] = []
  for (const side of SIDES) {
    const name = edgeName(sheet, side, [...obstacles, ...taken])
    entities.push(...name.entities)
    taken.push(...name.obstacles)
  }
  return { entities, obstacles: taken }
}

/**
 * All words on what a sheet shows: no word lies across a hole, a mark, an edge or another word. `room`: what of the
 * paper the furniture leaves free. `names`: of the edges, where those are set already.
 */
export function notesOf(
  sheet: Sheet,
  sketch: Sketch,
  runs: readonly Run[],
  room: Area,
  names: ReturnType<typeof edgeNames> = edgeNames(sheet, sketch.obstacles),
): Notes {
  const entities: Entity[] = []
  const taken: Obstacle[] = [...sketch.obstacles, ...names.obstacles]
  const add = (words: readonly Words[], area: Area): readonly Words[] => {
    const worded = placeWords(words, taken, area)
    entities.push(...worded.entities)
    taken.push(...worded.obstacles)
    return worded.unplaced
  }
  entities.push(...flapWords(sheet), ...names.entities)
  const lines = runLines(sheet, runs)
  entities.push(...lines)
  taken.push(...lines.map(({ from, to }): Obstacle => ({ kind: 'line', from, to, open: true })))
  const open = grown(sheet.open, -1)
  const window = grown(sheet.window, -0.5)
  const blank = beyondWindow(sheet, room)
  const work = [...grooveWords(sheet), ...cutoutWords(sheet), ...runs.flatMap((run) => runWords(sheet, run))]
  // First where no later sheet covers them; else anywhere in the window; else on the blank paper beyond it.
  const crowded = add(add(add(work, open), window), blank)
  const tags = crowded.map(
    (words, index): Words => ({ ...words, ways: [[`[${index + 1}]`]], less: [`[${index + 1}]`] }),
  )
  const left = add(tags, window).length
  const tagged = crowded.map(({ full }, index) => `[${index + 1}] ${full}`)
  add(add(seamWords(sheet), open), window)
  add(datumWords(sheet), open)
  const list = tagged.length === 0 ? undefined : tagList(tagged, blanksOf(sheet.window, blank), taken)
  if (list !== undefined) entities.push(...list)
  return { entities, tagged: list === undefined ? tagged : [], left }
}

/** The window with the blank paper beside it, but not where another piece is taped to this one. */
function beyondWindow({ page, window }: Sheet, room: Area): Area {
  const taped = (axis: 0 | 1, after: boolean): boolean =>
    page.joins.some(({ seam, along }) => {
      const middle = (page.window.min[axis] + page.window.max[axis]) / 2
      return along !== axis && (seam.min[axis] + seam.max[axis]) / 2 > middle === after
    })
  const low = (axis: 0 | 1): number => (taped(axis, false) ? window.min[axis] : room.min[axis])
  const high = (axis: 0 | 1): number => (taped(axis, true) ? window.max[axis] : room.max[axis])
  return { min: [low(0), low(1)], max: [high(0), high(1)] }
}

/** The blank paper to the right of a window and below it, as far as a larger area goes. */
function blanksOf(window: Area, { min, max }: Area): Area[] {
  return [
    { min: [window.max[0], min[1]], max },
    { min, max: [max[0], window.min[1]] },
  ]
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
    ...edgeBores.map(({ bore, at, onFlap, reach }) =>
      onFlap === undefined ? { bore, at, radius: 0 } : { bore, at: onFlap, radius: reach },
    ),
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
  const where = edgeBore === undefined ? [] : [edgePlace(view, edgeBore, units).join(', ')]
  const place = lead + (side === undefined ? fromDatum(view, first.at, units) : alongEdge(view, first.at, side, units))
  const full = [what, ...where].join(', ')
  const ways = [
    [full, `${run.purpose}: ${place}`],
    [what, ...where, `${run.purpose}: ${place}`],
    [...full.split(', '), `${run.purpose}:`, ...place.split(', ')],
  ]
  const less = full.split(', ')
  const ticked = edgeBore?.onFlap === undefined ? side : undefined
  const targets = speakers.map(({ at, radius }) => targetOf(sheet, at, radius, ticked))
  const [target, ...others] = targets
  if (target === undefined) return []
  // Outside the panel there is little room beside the first: there a leader to any of them will do.
  const oneThing = side !== undefined
  const rivals = rivalsOf(sheet, run)
  return [
    {
      ways,
      less,
      alike: true,
      full,
      targets: [target, ...others],
      rivals,
      oneThing,
      lead: true,
      reach: side === undefined ? 90 : 45,
    },
  ]
}

/** The bores of all other runs. */
function rivalsOf(sheet: Sheet, run: Run): Target[] {
  const others = holesOf(sheet.view).filter(({ bore }) => !run.bores.includes(bore))
  const ticks = sheet.view.edgeBores.filter(({ bore, onFlap }) => onFlap === undefined && !run.bores.includes(bore))
  return [
    ...others.map(({ at, reach }) => targetOf(sheet, at, reach, undefined)),
    ...ticks.map(({ at, side }) => targetOf(sheet, at, 0, side)),
  ]
}

/** The rim of a bore's cross; of a bore at the shoulder of a rebate, the inner end of its tick. */
function targetOf(sheet: Sheet, at: Point, radius: number, side: EdgeSide | undefined): Target {
  if (side === undefined) return { at: onSheet(sheet, at), radius: radius + CROSS_ARM }
  const [dx, dy] = OUTWARD[side]
  const inner: Point = [at[0] - dx * (TICK.inside + 1), at[1] - dy * (TICK.inside + 1)]
  return { at: onSheet(sheet, inner), radius: 0 }
}

/** Wider apart than this, mm, bores are too far from each other for a line between them to help the eye. */
const CLOSE = 100

/** Hairlines between the bores of a close run, as far as the sheet shows them; none comes nearer to a hole than its cross. */
function runLines(sheet: Sheet, runs: readonly Run[]): Line[] {
  const placeOf = new Map(holesOf(sheet.view).map(({ bore, at }) => [bore, onSheet(sheet, at)]))
  const lines = runs.flatMap((run) => {
    if (run.step > CLOSE || isUneven(run)) return []
    const places = run.bores.map((bore) => placeOf.get(bore)).filter((at) => at !== undefined)
    const [from, to] = [places[0], places.at(-1)]
    if (from === undefined || to === undefined || from === to) return []
    return strokeIn(sheet.window, from, to, 'hair')
  })
  return outsideDiscs(lines, crossesOn(sheet))
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
    return [{ ways, alike: true, full, targets, oneThing: true, lead: true }]
  })
}

function datumWords(sheet: Sheet): Words[] {
  const at = onSheet(sheet, datumPoint(sheet.view))
  if (!nearWindow(sheet.window, at, 0)) return []
  const words = 'distances are from this corner'
  return [{ ways: [[words]], full: words, targets: [{ at, radius: 2 }], reach: 20 }]
}
