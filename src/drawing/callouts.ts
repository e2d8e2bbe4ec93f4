import type { Units } from '../length/index.ts'
import type { Cutout, Groove } from '../panel/index.ts'
import { type Run, runsOf } from '../panel/index.ts'
import { type Area, around, discMeets, grown, LINE_HEIGHT } from './areas.ts'
import { cutoutLabel, cutoutRow, cutoutTargets, seenPath } from './cutouts.ts'
import { type DrawnSide, type FaceView, grooveArea, isDrawnOn, isHandWork } from './face.ts'
import { type LabelRequest, type Obstacle, type Placed, placeLabels, type Side, type Target } from './labels.ts'
import type { Drawn, Work } from './layers.ts'
import { grooveRow, runRow, type ScheduleRow } from './schedule-words.ts'
import { TEXT_DESCENT, textWidth } from './text-width.ts'
import type { Entity, Point } from './types.ts'
import { edgeOf, grooveLabel, inDatumOrder, runLabel, tagOf } from './words.ts'
import { edgeBoreLine, seenRadius } from './work.ts'

const NOTE: Work = { kind: 'note' }

/** A run or a groove with its tag, its words on the drawing and its line in the table. */
export interface Callout {
  readonly tag: string
  readonly words: string
  readonly row: ScheduleRow
  readonly byHand: boolean
  /** Its targets are bores, not places along one groove. */
  readonly isRow: boolean
  /** A leader to any of its targets is as good as to the first. */
  readonly oneThing?: boolean
  readonly targets: readonly [Target, ...Target[]]
  readonly sides: readonly Side[]
}

/** Everything on a face that needs words: bores of the face first, then grooves and cutouts, then what is made by hand. */
export function calloutsOf(view: FaceView, units: Units, size: number): Callout[] {
  const { panel, face } = view
  const runs = runsOf(panel.bores.filter((bore) => isDrawnOn(bore, face)))
  const byHand = (run: Run): boolean => isHandWork(run.bores[0])
  const grooves = panel.grooves.filter((groove) => groove.face === face)
  const cutouts = panel.cutouts.filter((cutout) => cutout.face === face)
  const items: readonly (Run | Groove | Cutout)[] = [
    ...runs.filter((run) => !byHand(run)),
    ...grooves,
    ...cutouts,
    ...runs.filter(byHand),
  ]
  return items.map((item, k) => {
    if ('bores' in item) return runCallout(view, item, tagOf(k), units, size)
    return 'path' in item ? cutoutCallout(view, item, tagOf(k), units) : grooveCallout(view, item, tagOf(k), units)
  })
}

function runCallout(view: FaceView, run: Run, tag: string, units: Units, size: number): Callout {
  const { panel } = view
  const [first, ...rest] = inDatumOrder(panel, run)
  const edge = edgeOf(panel, first)
  const target = (bore: typeof first): Target =>
    edge
      ? { at: edgeBoreLine(view, bore, size).inner, radius: bore.diameter / 2 }
      : { at: view.toView(bore.at), radius: bore.leanDeg === undefined ? seenRadius(bore, size) : size * 0.6 }
  return {
    tag,
    words: runLabel(panel, run, units),
    row: runRow(panel, run, tag, units),
    byHand: isHandWork(first),
    isRow: true,
    targets: [target(first), ...rest.map(target)],
    sides: edge ? INWARD[view.sideOf(edge.side)] : sidesOf(view, run.along, run.bores.length),
  }
}

/** From an edge toward the middle of the panel. */
const INWARD: Readonly<Record<DrawnSide, readonly Side[]>> = {
  low: ['above right', 'above left', 'above', 'right', 'left'],
  high: ['below right', 'below left', 'below', 'right', 'left'],
  left: ['right', 'above right', 'below right'],
  right: ['left', 'above left', 'below left'],
}

/** Above and below rows along x, starting at the end that is measured from; beside rows along y. */
function sidesOf(view: FaceView, along: 'x' | 'y', count: number): readonly Side[] {
  const fromLeft = view.sideOf(view.panel.datum.x) === 'left'
  const [near, far] = fromLeft ? (['right', 'left'] as const) : (['left', 'right'] as const)
  const rows: readonly Side[] = [`above ${near}`, `below ${near}`, `above ${far}`, `below ${far}`]
  const columns: readonly Side[] = [near, far]
  return along === 'x' && count > 1 ? [...rows, ...columns, 'above', 'below'] : [...columns, ...rows, 'above', 'below']
}

function grooveCallout(view: FaceView, groove: Groove, tag: string, units: Units): Callout {
  const area = grooveArea(view, groove)
  const flat = area.max[0] - area.min[0] >= area.max[1] - area.min[1]
  const radius = (flat ? area.max[1] - area.min[1] : area.max[0] - area.min[0]) / 2
  const at = (share: number): Target => {
    const part = (axis: 0 | 1, s: number): number => area.min[axis] + (area.max[axis] - area.min[axis]) * s
    return { at: flat ? [part(0, share), part(1, 0.5)] : [part(0, 0.5), part(1, share)], radius }
  }
  return {
    tag,
    words: grooveLabel(groove, units),
    row: grooveRow(view.panel, groove, tag, units),
    byHand: false,
    isRow: false,
    targets: [at(0.5), at(0.3), at(0.7), at(0.15), at(0.85)],
    sides: flat ? ['below', 'above', 'below right', 'above right'] : ['left', 'right'],
  }
}

function cutoutCallout(view: FaceView, cutout: Cutout, tag: string, units: Units): Callout {
  return {
    tag,
    words: cutoutLabel(cutout, units),
    row: cutoutRow(view.panel, cutout, tag, units),
    byHand: false,
    isRow: false,
    oneThing: true,
    targets: cutoutTargets(seenPath(view.panel, view.face, cutout)),
    sides: ['above', 'below', 'right', 'left', 'above right', 'below right', 'above left', 'below left'],
  }
}

/** Space between a tag and its words, in text heights. */
const TAG_SPACE = 0.5
/** Space kept around labels, and the longest leaders, in text heights. */
const GAP = 0.45
const REACH_INSIDE = 14
const REACH_OUTSIDE = 30
/** How far from the panel a label may lie that found no room inside, in text heights. */
export const OUTSIDE = 16

/**
 * Labels, leaders and where they lie: with all their words on the panel where there is room, else outside it, else
 * their tag alone, which leads to the table; if need be with a leader across what leaders should not cross.
 */
export function drawCallouts(
  callouts: readonly Callout[],
  obstacles: readonly Obstacle[],
  panel: Area,
  size: number,
): { drawn: Drawn[]; taken: Obstacle[] } {
  const inside = place(callouts, obstacles, panel, size, { words: true, reach: REACH_INSIDE })
  const done = new Set(inside.map((label) => label.key))
  const left = callouts.filter((callout) => !done.has(callout.tag))
  const more = [...obstacles, ...inside.flatMap(obstaclesOf)]
  const beside = grown(panel, OUTSIDE * size)
  const rest = place(left, more, beside, size, { words: false, reach: REACH_OUTSIDE })
  const placed = [...inside, ...rest]
  const without = callouts.filter((callout) => !placed.some(({ key }) => key === callout.tag))
  const before = [...more, ...rest.flatMap(obstaclesOf)]
  const crossing = before.map((obstacle): Obstacle => ({ ...obstacle, open: true }))
  placed.push(...place(without, crossing, beside, size, { words: false, reach: REACH_OUTSIDE }))
  const near = [...obstacles, ...placed.flatMap(obstaclesOf)]
  const labels = [...placed, ...repeats(callouts, placed, near, beside, size)]
  const words = new Map(callouts.map((callout) => [callout.tag, callout.words]))
  return {
    drawn: labels.flatMap((label) => drawLabel(label, words.get(label.key) ?? '', size)),
    taken: labels.flatMap(obstaclesOf),
  }
}

function place(
  callouts: readonly Callout[],
  obstacles: readonly Obstacle[],
  area: Area,
  size: number,
  wanted: { readonly words: boolean; readonly reach: number },
): Placed[] {
  const requests = callouts.map((callout): LabelRequest => {
    const tag = textWidth(callout.tag, size, true)
    const full = tag + TAG_SPACE * size + textWidth(callout.words, size)
    const height = LINE_HEIGHT * size
    return {
      key: callout.tag,
      forms: wanted.words
        ? [{ width: full, height }]
        : [
            { width: full, height },
            { width: tag, height },
          ],
      targets: callout.targets,
      ...(callout.oneThing && { oneThing: true }),
      rivals: callout.isRow ? rivalsOf(callout, callouts) : [],
      sides: callout.sides,
      gap: GAP * size,
      reach: wanted.reach * size,
    }
  })
  return placeLabels(requests, obstacles, area)
}

/** In runs of few bores, those further apart than this, in text heights, each bear the tag; of other rows both ends. */
const FAR_APART = 4
const FEW = 6

/** Bores nearer to the label than this, in text heights, have no need of a tag of their own. */
const BESIDE_LABEL = 2

/**
 * The tag again, where there is room: at each bore of a few that stand far from each other, and at both ends of every
 * other row, unless the label is there.
 */
function repeats(
  callouts: readonly Callout[],
  labels: readonly Placed[],
  obstacles: readonly Obstacle[],
  area: Area,
  size: number,
): Placed[] {
  const labelOf = new Map(labels.map((label) => [label.key, label]))
  const requests = callouts
    .filter(({ isRow, targets }) => isRow && targets.length > 1)
    .flatMap((callout) => {
      const label = labelOf.get(callout.tag)
      return tagged(callout, size)
        .filter((target) => !label || !isBeside(target, label, BESIDE_LABEL * size))
        .map(
          (target): LabelRequest => ({
            key: callout.tag,
            forms: [{ width: textWidth(callout.tag, size, true), height: LINE_HEIGHT * size }],
            targets: [target],
            rivals: rivalsOf(callout, callouts),
            sides: callout.sides,
            gap: GAP * size,
            reach: 0,
          }),
        )
    })
  return placeLabels(requests, obstacles, area)
}

function tagged({ targets }: Callout, size: number): readonly Target[] {
  const [first] = targets
  const last = targets.at(-1) ?? first
  return targets.length <= FEW && isSpread(targets, FAR_APART * size) ? targets : [first, last]
}

/** The bores of all other rows. */
function rivalsOf(callout: Callout, callouts: readonly Callout[]): Target[] {
  return callouts.filter((other) => other !== callout && other.isRow).flatMap((other) => other.targets)
}

function isSpread(targets: readonly Target[], least: number): boolean {
  const [first, second] = targets
  return first !== undefined && second !== undefined && distance(first.at, second.at) > least
}

function isBeside(target: Target, label: Placed, near: number): boolean {
  const { leader, area } = label
  if (leader && distance(leader.from, target.at) <= target.radius + near / 2) return true
  return !leader && discMeets(area, target.at, target.radius + near)
}

const distance = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1])

function drawLabel(label: Placed, words: string, size: number): Drawn[] {
  const { area, leader, form, key } = label
  const y = area.min[1] + TEXT_DESCENT * size
  const entities: Entity[] = [
    { kind: 'text', at: [area.min[0], y], height: size, anchor: 'start', text: key, bold: true },
  ]
  // The form with its words is wider than the tag; a tag alone has them in the table.
  const tag = textWidth(key, size, true)
  if (form === 0 && area.max[0] - area.min[0] > tag + TAG_SPACE * size) {
    entities.push({
      kind: 'text',
      at: [area.min[0] + tag + TAG_SPACE * size, y],
      height: size,
      anchor: 'start',
      text: words,
    })
  }
  if (leader) entities.push({ kind: 'line', pen: 'hair', from: leader.from, to: leader.to })
  return entities.map((entity) => ({ work: NOTE, entity }))
}

function obstaclesOf(label: Placed): Obstacle[] {
  const taken: Obstacle[] = [{ kind: 'area', area: label.area }]
  if (label.leader) taken.push({ kind: 'area', area: around([label.leader.from, label.leader.to]) })
  return taken
}
