import type { Bore, Panel } from '../../panel/index.ts'
import { meetingInHole } from '../clashes.ts'
import type { Finding, Rule, Subject } from '../types.ts'
import { boreWords, mm, panelWords } from '../words.ts'

/** Two fasteners driven into one through hole from both faces of a panel. */
export const sharedHoles: Rule = {
  ids: ['fasteners-meet'],
  check: (subject) => subject.panels.flatMap((panel) => panel.bores.flatMap((bore) => checkBore(subject, panel, bore))),
}

function checkBore(subject: Subject, panel: Panel, bore: Bore): Finding[] {
  const meeting = meetingInHole(panel, bore)
  if (meeting === undefined) return []
  const { a, b } = meeting
  return [
    {
      rule: 'fasteners-meet',
      severity: 'stop',
      panels: [panel.id],
      places: [{ panel: panel.id, surface: bore.surface, at: bore.at }],
      message: `${panelWords(panel)}: in the ${boreWords(panel, bore)}, a ${a.purpose} ${mm(a.depth)} deep from face A and a ${b.purpose} ${mm(b.depth)} deep from face B would meet in ${mm(panel.thickness)} mm`,
      ...(subject.mend([a, b]) ?? { fix: 'give one of the two doors hinges at other heights (`hinges: [ … ]`)' }),
      at: panel.at,
    },
  ]
}
