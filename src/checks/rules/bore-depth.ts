import { NOISE_MM } from '../../geometry/index.ts'
import type { Bore, Panel } from '../../panel/index.ts'
import { limitOf } from '../../project/index.ts'
import type { RuleId } from '../../rulebook/index.ts'
import { isScrewTip } from '../space/screw-line.ts'
import type { Finding, Rule, Subject } from '../types.ts'
import { boreWords, mm, panelWords } from '../words.ts'

/** From this diameter on, 1/2 in, holes are bored with Forstner bits, whose point stands out: S60. */
const POINTED_FROM_MM = 12.7

/**
 * Blind bores that come out of the far side, or leave too thin a skin there. The skin counts to the floor of the bore;
 * the point of a large bit stands deeper, and must not come out either. What is cut into the far face is seen where
 * grooves, cutouts and bores lie beside each other. Where a screw is too long, `screw-through` says so.
 */
export const boreDepth: Rule = {
  ids: ['bore-far-side', 'bore-skin'],
  check: (subject) =>
    subject.panels.flatMap((panel) =>
      panel.bores
        .filter((bore) => !bore.through && !isScrewTip(bore))
        .flatMap((bore) => checkBore(subject, panel, bore)),
    ),
}

function checkBore({ project }: Subject, panel: Panel, bore: Bore): Finding[] {
  const good = limitOf(project, 'bore-skin', 'warn')
  const skin = woodOnAxis(panel, bore) - bore.depth
  if (skin >= good - NOISE_MM) return []
  const deepest = Math.floor((bore.depth + skin - good) * 10 + NOISE_MM) / 10
  const finding = (rule: RuleId, severity: Finding['severity'], what: string): Finding => ({
    rule,
    severity,
    panels: [panel.id],
    places: [{ panel: panel.id, surface: bore.surface, at: bore.at }],
    message: `${panelWords(panel)}: the ${boreWords(panel, bore)} ${what}`,
    ...(deepest > 0 && { fix: `bore no deeper than ${mm(deepest)} mm, or take a thicker board` }),
    at: panel.at,
  })
  if (skin <= NOISE_MM)
    return [finding('bore-far-side', 'stop', `comes out of the far side by ${mm(Math.max(0, -skin))} mm`)]
  const thin = skin < limitOf(project, 'bore-skin', 'stop') - NOISE_MM
  const point = limitOf(project, 'bore-skin', 'point')
  const out = bore.diameter >= POINTED_FROM_MM - NOISE_MM && skin < point - NOISE_MM
  const leaves = `leaves only ${mm(skin)} mm of wood behind it`
  const what = out ? `${leaves}, and the point of its bit stands up to ${mm(point)} mm deeper` : leaves
  return [finding('bore-skin', thin || out ? 'stop' : 'warn', what)]
}

/** Length of wood from where a bore enters to where its axis leaves the blank, mm. */
function woodOnAxis(panel: Panel, bore: Bore): number {
  const min = [0, 0, -panel.thickness] as const
  const max = [panel.length, panel.width, 0] as const
  let length = Number.POSITIVE_INFINITY
  for (const axis of [0, 1, 2] as const) {
    const way = bore.axis[axis]
    if (Math.abs(way) < NOISE_MM) continue
    length = Math.min(length, ((way > 0 ? max[axis] : min[axis]) - bore.at[axis]) / way)
  }
  return length
}
