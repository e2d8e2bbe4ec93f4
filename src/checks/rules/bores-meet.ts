import { NOISE_MM } from '../../geometry/index.ts'
import type { Panel } from '../../panel/index.ts'
import { type Meeting, meetingsIn, WALL_STOP_MM, WALL_WARN_MM } from '../clashes.ts'
import type { Finding, Rule, Subject } from '../types.ts'
import { boreWords, mm, panelWords } from '../words.ts'

/** Two bores of one panel that meet inside it or leave too thin a wall: from both faces, from edges, in three dimensions. */
export const boresMeet: Rule = {
  ids: ['bores-meet', 'bores-near'],
  check: (subject) =>
    subject.panels.flatMap((panel) => meetingsIn(panel).map((meeting) => findingOf(subject, panel, meeting))),
}

function findingOf(subject: Subject, panel: Panel, { a, b, wall }: Meeting): Finding {
  const meet = wall <= NOISE_MM
  const stop = wall < WALL_STOP_MM - NOISE_MM
  const pair = `the ${boreWords(panel, a)}, and the ${boreWords(panel, b)}`
  return {
    rule: meet ? 'bores-meet' : 'bores-near',
    severity: stop ? 'stop' : 'warn',
    panels: [panel.id],
    places: [a, b].map((bore) => ({ panel: panel.id, surface: bore.surface, at: bore.at })),
    message: `${panelWords(panel)}: ${pair}, ${meet ? 'run into each other' : `are only ${mm(wall)} mm apart`}`,
    fix:
      subject.shift([...a.uses, ...b.uses]) ??
      `leave ${WALL_WARN_MM} mm of wood between them: move one of them ${mm(WALL_WARN_MM - wall)} mm or more`,
    at: panel.at,
  }
}
