import { boundsOf, middleOf, NOISE_MM } from '../../geometry/index.ts'
import { type Cutout, fromDatum, type Panel, surfaceWords } from '../../panel/index.ts'
import { limitOf } from '../../project/index.ts'
import type { RuleId } from '../../rulebook/index.ts'
import { movedClear, movedIn, recutTo } from '../opening-edits.ts'
import type { Finding, Mend, Rule, Severity, Subject } from '../types.ts'
import { boreWords, mm, panelWords } from '../words.ts'
import type { Work } from '../works.ts'

/** Openings and recesses that leave their panel, or too little wood by themselves or beside other work. */
export const cutouts: Rule = {
  ids: ['cutout-leaves-panel', 'cutout-near-edge', 'cutout-skin', 'cutout-meets', 'cutout-near'],
  check: (subject) =>
    subject.panels.flatMap((panel) =>
      panel.cutouts.length === 0
        ? []
        : [
            ...panel.cutouts.flatMap((cutout) => [
              ...edgeOf(subject, panel, cutout),
              ...skinOf(subject, panel, cutout),
            ]),
            ...besides(subject, panel),
          ],
    ),
}

/** `cable port, 100 from bottom and 80 from front in face A (inside)`: its middle. */
export function cutoutWords(panel: Panel, cutout: Cutout): string {
  const { x, y } = fromDatum(panel, middleOf(cutout.path))
  const place = `its middle ${mm(y.mm)} from ${y.edge} and ${mm(x.mm)} from ${x.edge}`
  return cutout.through
    ? `${cutout.purpose}, ${place}`
    : `${cutout.purpose}, ${place} in ${surfaceWords(panel, cutout.face)}`
}

interface Found {
  readonly rule: RuleId
  readonly severity: Severity
  readonly what: string
  readonly mend: { readonly fix: string } | Mend
}

function findingOf({ designs }: Subject, panel: Panel, cutout: Cutout, found: Found): Finding {
  const [x, y] = middleOf(cutout.path)
  const z = cutout.face === 'A' ? 0 : -panel.thickness
  return {
    rule: found.rule,
    severity: found.severity,
    panels: [panel.id],
    places: [{ panel: panel.id, surface: cutout.face, at: [x, y, z] }],
    message: `${panelWords(panel)}: the ${cutoutWords(panel, cutout)}, ${found.what}`,
    ...found.mend,
    at: designs.cutoutAt(panel, cutout),
  }
}

function edgeOf(subject: Subject, panel: Panel, cutout: Cutout): Finding[] {
  // A notch takes a corner off on purpose.
  if (cutout.notch === true) return []
  const good = limitOf(subject.project, 'cutout-near-edge', 'warn')
  const { min, max } = boundsOf(cutout.path)
  const room = [
    { mm: min[0], across: panel.length - max[0], edge: panel.edges.x0 },
    { mm: panel.length - max[0], across: min[0], edge: panel.edges.x1 },
    { mm: min[1], across: panel.width - max[1], edge: panel.edges.y0 },
    { mm: panel.width - max[1], across: min[1], edge: panel.edges.y1 },
  ]
  const least = room.reduce((a, b) => (b.mm < a.mm ? b : a))
  if (least.mm >= good - NOISE_MM) return []
  const by = good - least.mm
  const change = least.across - by >= good ? movedIn(subject, panel, cutout, least.edge, by) : {}
  if (least.mm <= NOISE_MM) {
    const what =
      least.mm < -NOISE_MM
        ? `reaches ${mm(-least.mm)} mm over the ${least.edge} edge`
        : `touches the ${least.edge} edge`
    const mend = { fix: 'move it in or make it smaller; a notch in an edge is not made', ...change }
    return [findingOf(subject, panel, cutout, { rule: 'cutout-leaves-panel', severity: 'stop', what, mend })]
  }
  const what = `leaves only ${mm(least.mm)} mm of wood to the ${least.edge} edge`
  const mend = { fix: `move it in ${mm(by)} mm, or make it smaller`, ...change }
  return [findingOf(subject, panel, cutout, { rule: 'cutout-near-edge', severity: 'warn', what, mend })]
}

function skinOf(subject: Subject, panel: Panel, cutout: Cutout): Finding[] {
  const good = limitOf(subject.project, 'cutout-skin', 'warn')
  const skin = panel.thickness - cutout.depth
  if (cutout.through || skin >= good - NOISE_MM) return []
  const deepest = panel.thickness - good
  const fix =
    deepest > 0 ? `cut it no deeper than ${mm(deepest)} mm, or through` : 'cut it through, or take a thicker board'
  const what = skin > NOISE_MM ? `leaves only ${mm(skin)} mm of wood behind it` : 'comes out of the far face'
  const stop = skin < limitOf(subject.project, 'cutout-skin', 'stop') - NOISE_MM
  const mend = { fix, ...(deepest > 0 && recutTo(subject, panel, cutout, deepest)) }
  return [findingOf(subject, panel, cutout, { rule: 'cutout-skin', severity: stop ? 'stop' : 'warn', what, mend })]
}

/** What lies too near a cutout; of two cutouts, the second is named after the first. */
function besides(subject: Subject, panel: Panel): Finding[] {
  // A place is sought once for each cutout, however many holes it lies on.
  const places = new Map<Cutout, Mend | undefined>()
  const placeFor = (cutout: Cutout): Mend | undefined => {
    if (!places.has(cutout)) places.set(cutout, movedClear(subject, panel, cutout))
    return places.get(cutout)
  }
  return subject.near(panel).flatMap(({ a, b, wall }): Finding[] => {
    if (a.kind === 'cutout') return [beside(subject, panel, a.cutout, b, wall, placeFor)]
    return b.kind === 'cutout' ? [beside(subject, panel, b.cutout, a, wall, placeFor)] : []
  })
}

function beside(
  subject: Subject,
  panel: Panel,
  cutout: Cutout,
  other: Work,
  wall: number,
  placeFor: (cutout: Cutout) => Mend | undefined,
): Finding {
  const good = limitOf(subject.project, 'cutout-near', 'warn')
  const meets = wall <= NOISE_MM
  const stop = meets || wall < limitOf(subject.project, 'cutout-near', 'stop') - NOISE_MM
  const shifted = other.kind === 'bore' ? subject.mend(other.bore.uses, 'what stays') : undefined
  const ways = [placeFor(cutout), shifted].filter((way) => way !== undefined)
  const [first] = ways
  return findingOf(subject, panel, cutout, {
    rule: meets ? 'cutout-meets' : 'cutout-near',
    severity: stop ? 'stop' : 'warn',
    what: meets ? `runs into ${workWords(panel, other)}` : `is only ${mm(wall)} mm from ${workWords(panel, other)}`,
    mend:
      first === undefined
        ? { fix: `leave ${mm(good)} mm of wood between them: move one of them ${mm(good - wall)} mm or more` }
        : { ...first, fix: ways.map(({ fix }) => fix).join(', or ') },
  })
}

function workWords(panel: Panel, work: Work): string {
  if (work.kind === 'bore') return `the ${boreWords(panel, work.bore)}`
  return work.kind === 'groove' ? `the ${work.groove.purpose}` : `the ${cutoutWords(panel, work.cutout)}`
}
