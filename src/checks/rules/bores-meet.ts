import { NOISE_MM } from '../../geometry/index.ts'
import type { Bore, Panel } from '../../panel/index.ts'
import { limitOf } from '../../project/index.ts'
import type { Finding, Rule, Subject } from '../types.ts'
import { boreWords, mm, panelWords } from '../words.ts'

/** Two bores of one panel that meet inside it or leave too thin a wall: from both faces, from edges, in three dimensions. */
export const boresMeet: Rule = {
  ids: ['bores-meet', 'bores-near'],
  check: (subject) =>
    subject.panels.flatMap((panel) =>
      subject
        .near(panel)
        .flatMap(({ a, b, wall }) =>
          a.kind === 'bore' && b.kind === 'bore' ? [findingOf(subject, panel, [a.bore, b.bore], wall)] : [],
        ),
    ),
}

function findingOf(subject: Subject, panel: Panel, [a, b]: readonly [Bore, Bore], wall: number): Finding {
  const meet = wall <= NOISE_MM
  const stop = meet || wall < limitOf(subject.project, 'bores-near', 'stop') - NOISE_MM
  const good = limitOf(subject.project, 'bores-near', 'warn')
  const pair = `the ${boreWords(panel, a)}, and the ${boreWords(panel, b)}`
  return {
    rule: meet ? 'bores-meet' : 'bores-near',
    severity: stop ? 'stop' : 'warn',
    panels: [panel.id],
    places: [a, b].map((bore) => ({ panel: panel.id, surface: bore.surface, at: bore.at })),
    message: `${panelWords(panel)}: ${pair}, ${meet ? 'run into each other' : `are only ${mm(wall)} mm apart`}`,
    ...(subject.mend([...a.uses, ...b.uses]) ?? {
      fix: `leave ${mm(good)} mm of wood between them: move one of them ${mm(good - wall)} mm or more`,
    }),
    at: panel.at,
  }
}
