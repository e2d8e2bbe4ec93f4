import { NOISE_MM } from '../../geometry/index.ts'
import type { Bore, BoreUse, Panel } from '../../panel/index.ts'
import type { Finding, Rule } from '../types.ts'
import { boreWords, mm, panelWords } from '../words.ts'

/**
 * Two fasteners driven into one through hole from both faces of a panel. Shelf pins do not count: they are short, and
 * a hole that a plate has taken is simply not used for a pin.
 */
export const sharedHoles: Rule = {
  ids: {
    'fasteners-meet': {
      meaning: 'two fasteners share a hole from both faces and would meet in it',
      source: 'own arithmetic',
    },
  },
  check: ({ panels }) => panels.flatMap((panel) => panel.bores.flatMap((bore) => checkBore(panel, bore))),
}

function checkBore(panel: Panel, bore: Bore): Finding[] {
  const deepest = (surface: 'A' | 'B'): BoreUse | undefined =>
    bore.uses
      .filter((use) => use.surface === surface && use.purpose !== 'shelf pin')
      .sort((a, b) => b.depth - a.depth)[0]
  const a = deepest('A')
  const b = deepest('B')
  if (a === undefined || b === undefined || a.depth + b.depth <= panel.thickness - NOISE_MM) return []
  return [
    {
      rule: 'fasteners-meet',
      severity: 'stop',
      panels: [panel.id],
      places: [{ panel: panel.id, surface: bore.surface, at: bore.at }],
      message: `${panelWords(panel)}: in the ${boreWords(panel, bore)}, a ${a.purpose} ${mm(a.depth)} deep from face A and a ${b.purpose} ${mm(b.depth)} deep from face B would meet in ${mm(panel.thickness)} mm`,
      fix: 'give one of the two doors hinges at other heights (`hinges: [ … ]`)',
      at: panel.at,
    },
  ]
}
