import { boardBox, type PanelRole } from '../../assembly/index.ts'
import { type Box, boxWithout, commonBox, extent, place, placeBack, placedBox } from '../../geometry/index.ts'
import { type Item, lyingReach } from '../../hardware/index.ts'
import type { Bore, Panel } from '../../panel/index.ts'
import type { Edit } from '../../project/index.ts'
import { frontAt } from '../bays.ts'
import { distanceToArea, moveClear } from '../clear-of.ts'
import { discLiesIn } from '../in-cutout.ts'
import type { Finding, Mend, Rule, Subject } from '../types.ts'
import { boreWords, mm, panelWords } from '../words.ts'

/** Two panels share space, or a panel lies on a mouth, beyond this, mm: more than float noise, less than a shaving. */
const SHAVING_MM = 0.05

/** What panels do to each other once they stand in their module: share space, or cover a hole that must stay open. */
export const inPlace: Rule = {
  ids: ['panels-overlap', 'hole-covered'],
  check: (subject) => {
    const grips = gripsOf(subject)
    return [...byModule(subject.panels).values()].flatMap((panels) => checkModule(subject, panels, grips))
  },
}

function byModule(panels: readonly Panel[]): Map<string, Panel[]> {
  const groups = new Map<string, Panel[]>()
  for (const panel of panels) {
    const group = groups.get(panel.module)
    if (group === undefined) groups.set(panel.module, [panel])
    else group.push(panel)
  }
  return groups
}

type Grips = ReadonlyMap<string, { readonly item: Item; readonly panels: ReadonlySet<string> }>

/** What each piece of hardware is, and the panels that it grips. */
function gripsOf(subject: Subject): Grips {
  return new Map(
    subject.assembly.hardware.map(({ id, item, stations }) => [
      id,
      { item, panels: new Set(stations.map((station) => station.panel)) },
    ]),
  )
}

function checkModule(subject: Subject, panels: readonly Panel[], grips: Grips): Finding[] {
  const boxed = panels.map((panel) => ({ panel, box: boardBox(panel) }))
  const overlaps = boxed.flatMap((a, k) =>
    boxed.slice(k + 1).flatMap((b) => overlapOf(subject, a.panel, a.box, b.panel, b.box)),
  )
  const covered = panels.flatMap((panel) =>
    boxed.flatMap((other) => (other.panel === panel ? [] : coveredHoles(panel, other.panel, other.box, grips))),
  )
  return [...overlaps, ...covered]
}

const FRONTS: readonly PanelRole[] = ['door', 'flap', 'fixed front', 'drawer front']

function overlapOf(subject: Subject, a: Panel, boxA: Box, b: Panel, boxB: Box): Finding[] {
  const both = commonBox(boxA, boxB, SHAVING_MM)
  if (both === undefined) return []
  // A panel stands in another's groove or rebate: backs, bottoms of drawers, housed shelves with their notches.
  const left = [...cutBoxes(a), ...cutBoxes(b)].reduce<Box[]>(
    (boxes, cut) => boxes.flatMap((box) => boxWithout(box, cut, SHAVING_MM)),
    [both],
  )
  const shared = Math.max(0, ...left.map((box) => Math.min(...([0, 1, 2] as const).map((axis) => extent(box, axis)))))
  if (shared <= SHAVING_MM) return []
  const fronts = [a, b].every(({ role }) => FRONTS.includes(role))
  return [
    {
      rule: 'panels-overlap',
      severity: 'stop',
      panels: [a.id, b.id],
      places: [],
      message: `${a.moduleName}: ${a.name} and ${b.name} overlap by ${mm(shared)} mm`,
      fix: fronts
        ? 'let one of them cover the panel between them by half (`cover: half`, or leave it out)'
        : 'change the size or place of one of them',
      ...(fronts && coverLess(subject, a, boxA, b, boxB)),
      at: b.at,
    },
  ]
}

/** The edits that let two fronts beside or over each other cover what they have between them as the rule has it: by half. */
function coverLess({ project }: Subject, a: Panel, boxA: Box, b: Panel, boxB: Box): Partial<Mend> {
  const middle = ({ min, max }: Box, axis: 0 | 2): number => (min[axis] + max[axis]) / 2
  const [right, up] = [middle(boxB, 0) - middle(boxA, 0), middle(boxB, 2) - middle(boxA, 2)]
  const beside = Math.abs(right) > Math.abs(up)
  const ways = beside ? (['right', 'left'] as const) : (['top', 'bottom'] as const)
  const [ofA, ofB] = (beside ? right : up) > 0 ? ways : [ways[1], ways[0]]
  const change = [
    { panel: a, side: ofA },
    { panel: b, side: ofB },
  ].flatMap(({ panel, side }): Edit[] => {
    const front = frontAt(project, panel.module, panel.at)
    if (front?.cover[side] !== 'full') return []
    const all = Object.values(front.cover).every((cover) => cover === 'full')
    return [{ path: [...front.at, 'cover', ...(all ? [] : [side])], value: 'auto' }]
  })
  return change.length === 0 ? {} : { change }
}

/** What grooves, rebates and notches have taken away of a panel, module frame. */
function cutBoxes(panel: Panel): Box[] {
  const cuts = panel.grooves.map(
    ({ face, min, max, depth }): Box => ({
      min: [min[0], min[1], face === 'A' ? -depth : -panel.thickness],
      max: [max[0], max[1], face === 'A' ? 0 : depth - panel.thickness],
    }),
  )
  const notches = panel.cutouts
    .filter((cutout) => cutout.notch)
    .map(({ path }): Box => {
      const xs = path.map((vertex) => vertex.at[0])
      const ys = path.map((vertex) => vertex.at[1])
      return {
        min: [Math.min(...xs), Math.min(...ys), -panel.thickness],
        max: [Math.max(...xs), Math.max(...ys), 0],
      }
    })
  return [...cuts, ...notches].map((box) => placedBox(panel.moduleFromPanel, box))
}

/** Holes of a panel whose mouth on a face lies under another panel that its hardware does not grip. */
function coveredHoles(panel: Panel, other: Panel, otherBox: Box, grips: Grips): Finding[] {
  const a = placeBack(panel.moduleFromPanel, otherBox.min)
  const b = placeBack(panel.moduleFromPanel, otherBox.max)
  const box: Box = {
    min: [Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.min(a[2], b[2])],
    max: [Math.max(a[0], b[0]), Math.max(a[1], b[1]), Math.max(a[2], b[2])],
  }
  const onA = Math.abs(box.min[2]) <= SHAVING_MM
  const onB = Math.abs(box.max[2] + panel.thickness) <= SHAVING_MM
  if (!onA && !onB) return []
  // A plinth comes under the bottom when all that is screwed through it from below is in.
  if (other.role.startsWith('plinth ') && !panel.role.startsWith('plinth ')) return []
  return panel.bores
    .filter((bore) => (onA ? opensOn(bore, 'A') : opensOn(bore, 'B')))
    .filter((bore) => bore.uses.every((use) => grips.get(use.hardware)?.panels.has(other.id) !== true))
    .filter((bore) => !mayLieUnder(panel, bore, other))
    .filter((bore) => distanceToArea(box, bore.at) < reachOf(bore, grips) - SHAVING_MM)
    .filter((bore) => !(liesOnTop(other) && liesFlush(bore, grips)) && !opensThrough(panel, bore, other, grips))
    .map(
      (bore): Finding => ({
        rule: 'hole-covered',
        severity: 'stop',
        panels: [panel.id, other.id],
        places: [{ panel: panel.id, surface: bore.surface, at: bore.at }],
        message: `${panelWords(panel)}: the ${boreWords(panel, bore)} lies under ${other.name}, or too near it for what is fixed there`,
        fix: `move the hardware or ${other.name} ${mm(moveClear(box, bore.at, reachOf(bore, grips)))} mm or more`,
        at: panel.at,
      }),
    )
}

/** What is fixed first and then covered: screws of a packing under its next layer, pockets behind a drawer's front. */
function mayLieUnder(panel: Panel, bore: Bore, other: Panel): boolean {
  const packed = panel.role === other.role && (panel.role === 'left packing' || panel.role === 'right packing')
  return packed || (other.role === 'drawer front' && bore.leanDeg !== undefined)
}

/** A worktop is laid on when the carcase stands: what holds the carcase together without standing out may lie under it. */
const liesOnTop = (panel: Panel): boolean => panel.role === 'worktop' || panel.role === 'machine top'

/** Sunk heads, pocket screws and cams. */
function liesFlush(bore: Bore, grips: Grips): boolean {
  if (bore.sink !== undefined || bore.leanDeg !== undefined) return true
  return bore.uses.every((use) => grips.get(use.hardware)?.item.kind === 'cam fitting')
}

/** Whether the other panel is cut through over all of a hole's mouth. */
function opensThrough(panel: Panel, bore: Bore, other: Panel, grips: Grips): boolean {
  const [x, y] = placeBack(other.moduleFromPanel, place(panel.moduleFromPanel, bore.at))
  const reach = reachOf(bore, grips) - SHAVING_MM
  return other.cutouts.some((cutout) => cutout.through && discLiesIn(cutout.path, [x, y], reach))
}

const opensOn = (bore: Bore, face: 'A' | 'B'): boolean =>
  bore.surface === face || (bore.through && (bore.surface === 'A' || bore.surface === 'B'))

/** How far around the middle of a hole its hardware lies on the face, mm. */
function reachOf(bore: Bore, grips: Grips): number {
  const reaches = bore.uses.map((use) => {
    const item = grips.get(use.hardware)?.item
    return item === undefined ? 0 : lyingReach(item, use.part)
  })
  return Math.max(bore.diameter / 2, ...reaches)
}
