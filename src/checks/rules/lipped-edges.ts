import type { EdgeSide } from '../../assembly/index.ts'
import type { Panel } from '../../panel/index.ts'
import type { Finding, Rule } from '../types.ts'
import { mm, panelWords } from '../words.ts'

const SIDES: readonly EdgeSide[] = ['x0', 'x1', 'y0', 'y1']

/** Hardware that enters an edge with a lipping: its depth counts from the finished edge. */
export const lippedEdges: Rule = {
  ids: ['edge-lipped'],
  check: ({ panels }) => panels.flatMap((panel) => SIDES.flatMap((side) => checkEdge(panel, side))),
}

function checkEdge(panel: Panel, side: EdgeSide): Finding[] {
  const thick = panel.lipping?.[side]
  const bores = panel.bores.filter((bore) => bore.surface === side)
  if (thick === undefined || bores.length === 0) return []
  const count = bores.length === 1 ? '1 bore enters' : `${bores.length} bores enter`
  return [
    {
      rule: 'edge-lipped',
      severity: 'note',
      panels: [panel.id],
      places: bores.map((bore) => ({ panel: panel.id, surface: bore.surface, at: bore.at })),
      message: `${panelWords(panel)}: ${count} the ${panel.edges[side]} edge through a lipping of ${mm(thick)} mm; depths count from the finished edge`,
      fix: `bore when the lipping is on, or ${mm(thick)} mm less deep before`,
      at: panel.at,
    },
  ]
}
