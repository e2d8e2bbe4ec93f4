import type { Assembly } from '../assembly/index.ts'
import type { Panel } from '../panel/index.ts'
import type { Project } from '../project/index.ts'
import { RULEBOOK } from '../rulebook/index.ts'
import { bits } from './rules/bits.ts'
import { boreDepth } from './rules/bore-depth.ts'
import { boreEdge } from './rules/bore-edge.ts'
import { boresMeet } from './rules/bores-meet.ts'
import { cutouts } from './rules/cutouts.ts'
import { cutters } from './rules/cutters.ts'
import { flipBalance } from './rules/flip-balance.ts'
import { flipOver } from './rules/flip-over.ts'
import { grooves } from './rules/grooves.ts'
import { inPlace } from './rules/in-place.ts'
import { letters } from './rules/letters.ts'
import { lippedEdges } from './rules/lipped-edges.ts'
import { mates } from './rules/mates.ts'
import { pieces } from './rules/pieces.ts'
import { placing } from './rules/placing.ts'
import { printing } from './rules/printing.ts'
import { sharedHoles } from './rules/shared-holes.ts'
import { sheetSize } from './rules/sheet-size.ts'
import { sheets } from './rules/sheets.ts'
import { shelfPins } from './rules/shelf-pins.ts'
import { shelfSag } from './rules/shelf-sag.ts'
import { slideLoad } from './rules/slide-load.ts'
import { slides } from './rules/slides.ts'
import { stays } from './rules/stays.ts'
import { stock } from './rules/stock.ts'
import { tipping } from './rules/tipping.ts'
import { wheelLoads } from './rules/wheel-load.ts'
import { shifter } from './shift.ts'
import { silenced } from './silence.ts'
import { space } from './space/index.ts'
import { subjectOf } from './subject.ts'
import type { Finding, Rule, Severity } from './types.ts'

/** All rules, in the order in which their findings stand beside each other. A new rule is one line here. */
export const rules: readonly Rule[] = [
  placing,
  mates,
  boreDepth,
  boresMeet,
  sharedHoles,
  boreEdge,
  grooves,
  cutouts,
  inPlace,
  flipOver,
  slides,
  space,
  lippedEdges,
  stays,
  sheetSize,
  shelfSag,
  shelfPins,
  slideLoad,
  wheelLoads,
  tipping,
  flipBalance,
  stock,
  sheets,
  pieces,
  bits,
  cutters,
  printing,
  letters,
]

const WORST_FIRST: Record<Severity, number> = { stop: 0, warn: 1, note: 2 }
const PLACE_IN_BOOK = new Map(Object.keys(RULEBOOK).map((id, k) => [id, k]))

/**
 * Everything that the rules find, worst first, then in the order of the rulebook and of the panels; equal findings once;
 * those that the definition silences at the end.
 */
export function check(project: Project, assembly: Assembly, panels: readonly Panel[]): Finding[] {
  const subject = subjectOf(project, assembly, panels, shifter(project, assembly, panels))
  const findings = rules.flatMap((rule) => rule.check(subject))
  const seen = new Set<string>()
  const once = findings.filter((finding) => {
    // Modules of one make get the same words; each has a finding of its own.
    const key = JSON.stringify([finding.rule, finding.message, finding.at, finding.panels])
    return !seen.has(key) && seen.add(key)
  })
  const rank = ({ silenced, severity, rule }: Finding): number =>
    (silenced === undefined ? 0 : 10_000) + WORST_FIRST[severity] * 1000 + (PLACE_IN_BOOK.get(rule) ?? 0)
  // Array.prototype.sort is stable: within a rule the order of the panels stays.
  return silenced(project, panels, once).sort((a, b) => rank(a) - rank(b))
}

/** Whether any finding forbids drawing. */
export function mustStop(findings: readonly Finding[]): boolean {
  return findings.some((finding) => finding.severity === 'stop' && finding.silenced === undefined)
}
