import { NOISE_MM } from '../../geometry/index.ts'
import type { Bore, Panel } from '../../panel/index.ts'
import type { RuleId } from '../../rulebook/index.ts'
import type { Finding, Rule } from '../types.ts'
import { boreWords, mm, panelWords } from '../words.ts'

/** Wood that must be left beyond a blind bore, mm; common practice. */
const SKIN_STOP_MM = 2
const SKIN_WARN_MM = 3

/** Blind bores that come out of the far side, or leave too thin a skin there. */
export const boreDepth: Rule = {
  ids: ['bore-far-side', 'bore-skin'],
  check: ({ panels }) =>
    panels.flatMap((panel) => panel.bores.filter((bore) => !bore.through).flatMap((bore) => checkBore(panel, bore))),
}

function checkBore(panel: Panel, bore: Bore): Finding[] {
  const skin = woodOnAxis(panel, bore) - bore.depth
  if (skin >= SKIN_WARN_MM - NOISE_MM) return []
  const deepest = Math.floor((bore.depth + skin - SKIN_WARN_MM) * 10 + NOISE_MM) / 10
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
  return [
    finding(
      'bore-skin',
      skin < SKIN_STOP_MM - NOISE_MM ? 'stop' : 'warn',
      `leaves only ${mm(skin)} mm of wood behind it`,
    ),
  ]
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
