import type { PlacedHardware } from '../../assembly/index.ts'
import { boundsOf, circlePath, liesIn, middleOf, NOISE_MM } from '../../geometry/index.ts'
import { type Bore, type Cutout, fromDatum, type Panel, surfaceWords } from '../../panel/index.ts'
import type { DefinitionPath } from '../../project/index.ts'
import type { RuleId } from '../../rulebook/index.ts'
import { WALL_STOP_MM, WALL_WARN_MM } from '../clashes.ts'
import { gapBetweenPrisms, gapToPrism, groovePrism, type Prism, prismOf } from '../prisms.ts'
import { cylindersOf } from '../solids.ts'
import type { Finding, Rule, Severity, Subject } from '../types.ts'
import { boreWords, mm, panelWords } from '../words.ts'

/** Wood between a cutout and an edge of its panel, mm; common practice. */
const EDGE_WARN_MM = 10
/** Wood under a recess, mm; common practice. */
const SKIN_STOP_MM = 2
const SKIN_WARN_MM = 3

/** Openings and recesses that leave their panel, or too little wood by themselves or beside other work. */
export const cutouts: Rule = {
  ids: ['cutout-leaves-panel', 'cutout-near-edge', 'cutout-skin', 'cutout-meets', 'cutout-near'],
  check: (subject) => {
    if (subject.panels.every((panel) => panel.cutouts.length === 0)) return []
    const context = contextOf(subject)
    return subject.panels.flatMap((panel) => checkPanel(panel, context))
  },
}

/** Where the definition asks for each cutout and each piece of hardware. */
interface Context {
  readonly cutoutAt: (panel: Panel, cutout: Cutout) => DefinitionPath
  readonly hardware: ReadonlyMap<string, PlacedHardware>
}

function contextOf({ assembly }: Subject): Context {
  const placed = new Map(
    assembly.modules.flatMap((module) => module.cutouts.map((one) => [`${one.panel} ${one.key}`, one.at] as const)),
  )
  return {
    cutoutAt: (panel, cutout) => placed.get(`${panel.id} ${cutout.id}`) ?? panel.at,
    hardware: new Map(assembly.hardware.map((piece) => [piece.id, piece])),
  }
}

interface Solid {
  readonly cutout: Cutout
  readonly prism: Prism
  readonly at: DefinitionPath
}

function checkPanel(panel: Panel, context: Context): Finding[] {
  const solids = panel.cutouts.map(
    (cutout): Solid => ({ cutout, prism: prismOf(panel, cutout), at: context.cutoutAt(panel, cutout) }),
  )
  return solids.flatMap((solid, k) => [
    ...edgeOf(panel, solid),
    ...skinOf(panel, solid),
    ...panel.bores.flatMap((bore) => boreBeside(panel, solid, bore, context)),
    ...panel.grooves.flatMap((groove) =>
      beside(panel, solid, `the ${groove.purpose}`, gapBetweenPrisms(solid.prism, groovePrism(panel, groove))),
    ),
    ...solids.slice(k + 1).flatMap((other) => cutoutBeside(panel, solid, other)),
  ])
}

/** `cable port, 100 from bottom and 80 from front in face A (inside)`: its middle. */
export function cutoutWords(panel: Panel, cutout: Cutout): string {
  const { x, y } = fromDatum(panel, middleOf(cutout.path))
  const place = `its middle ${mm(y.mm)} from ${y.edge} and ${mm(x.mm)} from ${x.edge}`
  return cutout.through
    ? `${cutout.purpose}, ${place}`
    : `${cutout.purpose}, ${place} in ${surfaceWords(panel, cutout.face)}`
}

function findingOf(
  panel: Panel,
  { cutout, at }: Solid,
  found: { readonly rule: RuleId; readonly severity: Severity; readonly what: string; readonly fix: string },
): Finding {
  const [x, y] = middleOf(cutout.path)
  const z = cutout.face === 'A' ? 0 : -panel.thickness
  return {
    rule: found.rule,
    severity: found.severity,
    panels: [panel.id],
    places: [{ panel: panel.id, surface: cutout.face, at: [x, y, z] }],
    message: `${panelWords(panel)}: the ${cutoutWords(panel, cutout)}, ${found.what}`,
    fix: found.fix,
    at,
  }
}

function edgeOf(panel: Panel, solid: Solid): Finding[] {
  // A notch takes a corner off on purpose.
  if (solid.cutout.notch === true) return []
  const { min, max } = boundsOf(solid.cutout.path)
  const room = [
    { mm: min[0], edge: panel.edges.x0 },
    { mm: panel.length - max[0], edge: panel.edges.x1 },
    { mm: min[1], edge: panel.edges.y0 },
    { mm: panel.width - max[1], edge: panel.edges.y1 },
  ]
  const least = room.reduce((a, b) => (b.mm < a.mm ? b : a))
  if (least.mm >= EDGE_WARN_MM - NOISE_MM) return []
  if (least.mm <= NOISE_MM) {
    const what =
      least.mm < -NOISE_MM
        ? `reaches ${mm(-least.mm)} mm over the ${least.edge} edge`
        : `touches the ${least.edge} edge`
    const fix = 'move it in or make it smaller; a notch in an edge is not made'
    return [findingOf(panel, solid, { rule: 'cutout-leaves-panel', severity: 'stop', what, fix })]
  }
  const what = `leaves only ${mm(least.mm)} mm of wood to the ${least.edge} edge`
  const fix = `move it in ${mm(EDGE_WARN_MM - least.mm)} mm, or make it smaller`
  return [findingOf(panel, solid, { rule: 'cutout-near-edge', severity: 'warn', what, fix })]
}

function skinOf(panel: Panel, solid: Solid): Finding[] {
  const { cutout } = solid
  const skin = panel.thickness - cutout.depth
  if (cutout.through || skin >= SKIN_WARN_MM - NOISE_MM) return []
  const deepest = panel.thickness - SKIN_WARN_MM
  const fix =
    deepest > 0 ? `cut it no deeper than ${mm(deepest)} mm, or through` : 'cut it through, or take a thicker board'
  const what = skin > NOISE_MM ? `leaves only ${mm(skin)} mm of wood behind it` : 'comes out of the far face'
  return [
    findingOf(panel, solid, {
      rule: 'cutout-skin',
      severity: skin < SKIN_STOP_MM - NOISE_MM ? 'stop' : 'warn',
      what,
      fix,
    }),
  ]
}

function boreBeside(panel: Panel, solid: Solid, bore: Bore, { hardware }: Context): Finding[] {
  if (belongsIn(solid, bore, hardware)) return []
  const gap = Math.min(...cylindersOf(bore).map((cylinder) => gapToPrism(cylinder, solid.prism)))
  return beside(panel, solid, `the ${boreWords(panel, bore)}`, gap)
}

/**
 * A hole bored on through the floor of a recess, for hardware of the same part of the definition: levelling screws in the
 * ledge of a machine top. A hole of anything else would lose its depth there.
 */
function belongsIn({ cutout, at }: Solid, bore: Bore, hardware: Context['hardware']): boolean {
  if (cutout.through || Math.abs(bore.axis[2]) < 1 - NOISE_MM) return false
  if (!bore.uses.every((use) => sameDesign(at, hardware.get(use.hardware)?.at ?? []))) return false
  return liesIn(circlePath([bore.at[0], bore.at[1]], bore.diameter / 2), cutout.path)
}

/** One place lies in the other, both below their module: `modules`, its name, and the part of it. */
function sameDesign(a: DefinitionPath, b: DefinitionPath): boolean {
  const short = Math.min(a.length, b.length)
  return short > 2 && a.slice(0, short).every((step, k) => step === b[k])
}

function cutoutBeside(panel: Panel, one: Solid, other: Solid): Finding[] {
  if (isStepped(one.cutout, other.cutout) || isStepped(other.cutout, one.cutout)) return []
  return beside(panel, one, `the ${cutoutWords(panel, other.cutout)}`, gapBetweenPrisms(one.prism, other.prism))
}

/** A deeper cutout wholly inside a recess of the same face: an opening with a ledge. */
function isStepped(outer: Cutout, inner: Cutout): boolean {
  if (outer.through || !(inner.through || (inner.face === outer.face && inner.depth > outer.depth + NOISE_MM)))
    return false
  return liesIn(inner.path, outer.path)
}

function beside(panel: Panel, solid: Solid, other: string, wall: number): Finding[] {
  if (wall >= WALL_WARN_MM - NOISE_MM) return []
  const meets = wall <= NOISE_MM
  return [
    findingOf(panel, solid, {
      rule: meets ? 'cutout-meets' : 'cutout-near',
      severity: wall < WALL_STOP_MM - NOISE_MM ? 'stop' : 'warn',
      what: meets ? `runs into ${other}` : `is only ${mm(wall)} mm from ${other}`,
      fix: `leave ${WALL_WARN_MM} mm of wood between them: move one of them ${mm(WALL_WARN_MM - wall)} mm or more`,
    }),
  ]
}
