import { NOISE_MM } from '../../geometry/index.ts'
import type { Bore, Panel } from '../../panel/index.ts'
import { type Cylinder, cylindersOf, gapBetween } from '../solids.ts'
import type { Finding, Rule } from '../types.ts'
import { boreWords, mm, panelWords } from '../words.ts'

/** Wood between two bores, mm; common practice. */
const WALL_STOP_MM = 3
const WALL_WARN_MM = 5

/** Two bores of one panel that meet inside it or leave too thin a wall: from both faces, from edges, in three dimensions. */
export const boresMeet: Rule = {
  ids: {
    'bores-meet': { meaning: 'two bores run into each other inside a panel', source: 'own arithmetic' },
    'bores-near': {
      meaning: 'the wall between two bores is too thin',
      source: 'common practice: 5 mm warn, 3 mm stop',
    },
  },
  check: ({ panels }) => panels.flatMap(checkPanel),
}

interface Solid {
  readonly bore: Bore
  readonly cylinders: readonly Cylinder[]
  readonly min: number
  readonly max: number
}

function checkPanel(panel: Panel): Finding[] {
  // Sorted along the panel, so that only bores that overlap in x within the wall are ever compared.
  const solids = panel.bores.map(solidOf).sort((a, b) => a.min - b.min)
  const findings: Finding[] = []
  for (const [k, a] of solids.entries()) {
    for (let n = k + 1; n < solids.length; n += 1) {
      const b = solids[n]
      if (b === undefined || b.min > a.max + WALL_WARN_MM) break
      if (ofOnePattern(a.bore, b.bore)) continue
      const wall = Math.min(...a.cylinders.flatMap((one) => b.cylinders.map((other) => gapBetween(one, other))))
      if (wall < WALL_WARN_MM - NOISE_MM) findings.push(findingOf(panel, a.bore, b.bore, wall))
    }
  }
  return findings
}

function solidOf(bore: Bore): Solid {
  const cylinders = cylindersOf(bore)
  const ends = cylinders.flatMap((one) => {
    const across = one.radius * Math.sqrt(Math.max(0, 1 - one.axis[0] ** 2))
    const far = one.from[0] + one.axis[0] * one.length
    return [Math.min(one.from[0], far) - across, Math.max(one.from[0], far) + across]
  })
  return { bore, cylinders, min: Math.min(...ends), max: Math.max(...ends) }
}

/** Holes of one piece of hardware stand as its maker set them; the bolt of a cam runs into its housing. */
function ofOnePattern(a: Bore, b: Bore): boolean {
  return a.uses.some((use) => b.uses.some((other) => use.hardware === other.hardware))
}

function findingOf(panel: Panel, a: Bore, b: Bore, wall: number): Finding {
  const meet = wall <= NOISE_MM
  const stop = wall < WALL_STOP_MM - NOISE_MM
  const pair = `the ${boreWords(panel, a)}, and the ${boreWords(panel, b)}`
  return {
    rule: meet ? 'bores-meet' : 'bores-near',
    severity: stop ? 'stop' : 'warn',
    panels: [panel.id],
    places: [a, b].map((bore) => ({ panel: panel.id, surface: bore.surface, at: bore.at })),
    message: `${panelWords(panel)}: ${pair}, ${meet ? 'run into each other' : `are only ${mm(wall)} mm apart`}`,
    fix: `leave ${WALL_WARN_MM} mm of wood between them: move one of them ${mm(WALL_WARN_MM - wall)} mm or more`,
    at: panel.at,
  }
}
