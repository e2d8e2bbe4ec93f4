import { NOISE_MM } from '../../geometry/index.ts'
import { fineMm } from '../../length/index.ts'
import type { Bore, Panel } from '../../panel/index.ts'
import type { Finding, Rule } from '../types.ts'
import { boreWords, mm, panelWords } from '../words.ts'

/** Bores too near an edge (bores in a face), or too near a face (bores in an edge). */
export const boreEdge: Rule = {
  ids: ['bore-breaks-out', 'bore-near-edge'],
  check: ({ panels }) => panels.flatMap((panel) => panel.bores.flatMap((bore) => checkBore(panel, bore))),
}

function checkBore(panel: Panel, bore: Bore): Finding[] {
  if (bore.leanDeg !== undefined) return []
  const wall = wallBeside(panel, bore)
  const least = bore.edgeWall ?? bore.diameter / 2
  const good = bore.edgeWall ?? bore.diameter
  if (wall >= good - NOISE_MM) return []
  const stop = wall < least - NOISE_MM
  const out = wall <= NOISE_MM
  return [
    {
      rule: out ? 'bore-breaks-out' : 'bore-near-edge',
      severity: stop ? 'stop' : 'warn',
      panels: [panel.id],
      places: [{ panel: panel.id, surface: bore.surface, at: bore.at }],
      message: out
        ? `${panelWords(panel)}: the ${boreWords(panel, bore)} breaks out of the side of the panel by ${mm(Math.max(0, -wall))} mm`
        : `${panelWords(panel)}: the ${boreWords(panel, bore)} has only ${fineMm(wall)} mm of wood beside it; ${fineMm(stop ? least : good)} mm ${stop ? 'must' : 'should'} remain`,
      fix: `move it ${fineMm((stop ? least : good) - wall)} mm inward`,
      at: panel.at,
    },
  ]
}

/** Least wood beside a square bore, over its whole length, mm; negative where it breaks out. */
function wallBeside(panel: Panel, bore: Bore): number {
  const min = [0, 0, -panel.thickness] as const
  const max = [panel.length, panel.width, 0] as const
  const across = ([0, 1, 2] as const).filter((axis) => Math.abs(bore.axis[axis]) < 0.5)
  return (
    Math.min(...across.map((axis) => Math.min(bore.at[axis] - min[axis], max[axis] - bore.at[axis]))) -
    bore.diameter / 2
  )
}
