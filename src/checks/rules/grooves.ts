import { NOISE_MM } from '../../geometry/index.ts'
import type { Bore, Groove, Panel } from '../../panel/index.ts'
import { limitOf } from '../../project/index.ts'
import { moveWords } from '../move-words.ts'
import { typedLength } from '../typed.ts'
import type { Finding, Mend, Rule, Subject } from '../types.ts'
import { boreWords, mm, panelWords } from '../words.ts'
import { alongOf } from '../works.ts'

/** Grooves and rebates that leave too little wood, by themselves, beside each other or beside a bore. */
export const grooves: Rule = {
  ids: ['groove-wood', 'bore-in-groove'],
  check: (subject) =>
    subject.panels.flatMap((panel) => [
      ...panel.grooves.flatMap((groove) => woodOf(subject, panel, groove)),
      ...(panel.grooves.length === 0 ? [] : besides(subject, panel)),
    ]),
}

function besides(subject: Subject, panel: Panel): Finding[] {
  return subject.near(panel).flatMap(({ a, b, wall }): Finding[] => {
    if (b.kind !== 'groove') return []
    if (a.kind === 'bore') return [boreBeside(subject, panel, b.groove, a.bore, wall)]
    if (a.kind !== 'groove') return []
    return a.groove.face === b.groove.face
      ? sideBySide(subject, panel, a.groove, b.groove, wall)
      : [overEachOther(subject, panel, a.groove, b.groove, wall)]
  })
}

function findingOf(
  panel: Panel,
  groove: Groove,
  severity: Finding['severity'],
  what: string,
  mend: { readonly fix: string } | Mend,
): Finding {
  return {
    rule: 'groove-wood',
    severity,
    panels: [panel.id],
    places: [{ panel: panel.id, surface: groove.face, at: [groove.min[0], groove.min[1], 0] }],
    message: `${panelWords(panel)}: the ${groove.purpose}${what}`,
    ...mend,
    at: panel.at,
  }
}

function woodOf(subject: Subject, panel: Panel, groove: Groove): Finding[] {
  const limit = (name: 'warn' | 'stop' | 'lip warn' | 'lip stop'): number =>
    limitOf(subject.project, 'groove-wood', name)
  const across = alongOf(groove) === 0 ? 1 : 0
  const size = across === 0 ? panel.length : panel.width
  const lip = Math.min(groove.min[across], size - groove.max[across])
  const skin = panel.thickness - groove.depth
  const leaves = `, ${mm(groove.depth)} deep, leaves only`
  const found: Finding[] = []
  if (skin < limit('warn') - NOISE_MM) {
    const deepest = panel.thickness - limit('warn')
    const mend = {
      fix: `cut it no deeper than ${mm(deepest)} mm`,
      ...backChange(subject, panel, groove, 'groove depth', deepest, 'down'),
    }
    const severity = skin < limit('stop') - NOISE_MM ? 'stop' : 'warn'
    found.push(findingOf(panel, groove, severity, `${leaves} ${mm(skin)} mm of wood under it`, mend))
  }
  if (groove.kind === 'groove' && lip < limit('lip warn') - NOISE_MM) {
    const more = limit('lip warn') - lip
    const mend = {
      fix: `move it ${mm(more)} mm in from the edge`,
      ...backChange(subject, panel, groove, 'groove setback', limit('lip warn'), 'up'),
    }
    const severity = lip < limit('lip stop') - NOISE_MM ? 'stop' : 'warn'
    found.push(findingOf(panel, groove, severity, `${leaves} ${mm(lip)} mm of wood beside it`, mend))
  }
  return found
}

/** The same as an edit, where the groove takes the carcase's back: its own keys say how deep and how far in it lies. */
function backChange(
  { project }: Subject,
  panel: Panel,
  groove: Groove,
  key: 'groove depth' | 'groove setback',
  to: number,
  way: 'up' | 'down',
): Partial<Mend> {
  const module = project.modules.find((one) => one.key === panel.module)
  if (module === undefined || !groove.purpose.startsWith(BACK_GROOVE) || to <= 0) return {}
  return { change: [{ path: [...module.at, 'carcase', 'back', key], value: typedLength(to, project.units, way) }] }
}

/** So the placing begins what it says of the groove that takes a back. */
const BACK_GROOVE = 'groove for the back'

/** Grooves in the two faces of a panel: fixed shelves housed in both sides of a partition. */
function overEachOther({ project }: Subject, panel: Panel, one: Groove, two: Groove, wall: number): Finding {
  const [groove, other] = one.face === 'A' ? [one, two] : [two, one]
  const stop = wall < limitOf(project, 'groove-wood', 'stop') - NOISE_MM
  const deepest = (panel.thickness - limitOf(project, 'groove-wood', 'warn')) / 2
  return findingOf(
    panel,
    groove,
    stop ? 'stop' : 'warn',
    ` and the ${other.purpose} on the other face leave only ${mm(wall)} mm of wood between them`,
    { fix: `cut each of them no deeper than ${mm(deepest)} mm` },
  )
}

/** Grooves in one face: along each other, or one that stops short before another. */
function sideBySide({ project }: Subject, panel: Panel, groove: Groove, other: Groove, wall: number): Finding[] {
  const [good, least] = [limitOf(project, 'groove-wood', 'lip warn'), limitOf(project, 'groove-wood', 'lip stop')]
  const pair = ` and the ${other.purpose}`
  const leave = `${pair} leave only ${mm(wall)} mm of wood between them`
  if (alongOf(groove) !== alongOf(other)) {
    // Across the end of a stopped groove the wall is as short as that is wide: it may crumble, but holds nothing.
    const fix = `leave ${mm(least)} mm between them, or let the one run out into the other`
    return wall < least - NOISE_MM ? [findingOf(panel, groove, 'warn', leave, { fix })] : []
  }
  const what = wall <= NOISE_MM ? `${pair} run into each other` : leave
  const fix = `move one of them ${mm(good - wall)} mm or more`
  return [findingOf(panel, groove, wall < least - NOISE_MM ? 'stop' : 'warn', what, { fix })]
}

function boreBeside(subject: Subject, panel: Panel, groove: Groove, bore: Bore, wall: number): Finding {
  const stop = wall < limitOf(subject.project, 'bore-in-groove', 'stop') - NOISE_MM
  return {
    rule: 'bore-in-groove',
    severity: stop ? 'stop' : 'warn',
    panels: [panel.id],
    places: [{ panel: panel.id, surface: bore.surface, at: bore.at }],
    message: `${panelWords(panel)}: the ${boreWords(panel, bore)} ${wall <= NOISE_MM ? `runs into the ${groove.purpose}` : `is only ${mm(wall)} mm from the ${groove.purpose}`}`,
    ...(subject.mend(bore.uses, 'what stays') ?? { fix: `${moveWords(bore, subject.designs)}, or move the groove` }),
    at: panel.at,
  }
}
