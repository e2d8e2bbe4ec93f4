import { NOISE_MM } from '../../geometry/index.ts'
import { fineMm } from '../../length/index.ts'
import type { Bore, EdgeName, Panel } from '../../panel/index.ts'
import { DEFAULTS } from '../../project/index.ts'
import { typedLength } from '../typed.ts'
import type { Finding, Mend, Rule, Subject } from '../types.ts'
import { boreWords, mm, panelWords } from '../words.ts'
import { longerEndDistance } from './end-distance.ts'
import { thinnerScrew } from './thinner-screw.ts'

/** Bores too near an edge (bores in a face), or too near a face (bores in an edge). */
export const boreEdge: Rule = {
  ids: ['bore-breaks-out', 'bore-near-edge'],
  check: (subject) => subject.panels.flatMap((panel) => panel.bores.flatMap((bore) => checkBore(subject, panel, bore))),
}

function checkBore(subject: Subject, panel: Panel, bore: Bore): Finding[] {
  // A leaning bore comes out of an end on purpose.
  if (bore.leanDeg !== undefined) return []
  const { wall, edge } = wallBeside(panel, bore)
  const least = bore.edgeWall ?? bore.diameter / 2
  const good = bore.edgeWall ?? bore.diameter
  const sinkWall = wall - Math.max(0, (bore.sink?.diameter ?? 0) - bore.diameter) / 2
  if (wall >= good - NOISE_MM && sinkWall > NOISE_MM) return []
  const stop = wall < least - NOISE_MM
  const out = wall <= NOISE_MM
  const usual = usualPlace(subject, panel, bore, edge)
  const finding = (
    rule: 'bore-breaks-out' | 'bore-near-edge',
    severity: 'stop' | 'warn',
    what: string,
    by: number,
  ): Finding => ({
    rule,
    severity,
    panels: [panel.id],
    places: [{ panel: panel.id, surface: bore.surface, at: bore.at }],
    message: `${panelWords(panel)}: the ${boreWords(panel, bore)} ${what}`,
    ...(usual === undefined
      ? { fix: `move it ${fineMm(by)} mm inward` }
      : { ...usual, fix: `move it ${fineMm(by)} mm inward or more: ${usual.fix}` }),
    ...longerEndDistance(subject, panel, bore, { edge, by }),
    ...thinnerScrew(subject, bore),
    at: panel.at,
  })
  const by = Math.max(good - wall, good - bore.diameter / 2 - sinkWall)
  if (out) {
    const what = `breaks out of the side of the panel by ${mm(Math.max(0, -wall))} mm`
    return [finding('bore-breaks-out', 'stop', what, good - wall)]
  }
  if (sinkWall <= NOISE_MM) {
    const what = `breaks out of the side of the panel by ${mm(Math.max(0, -sinkWall))} mm with its sink`
    return [finding('bore-breaks-out', 'stop', what, by)]
  }
  const what = `has only ${fineMm(wall)} mm of wood beside it; ${fineMm(stop ? least : good)} mm ${stop ? 'must' : 'should'} remain`
  return [finding('bore-near-edge', stop ? 'stop' : 'warn', what, good - wall)]
}

/** Least wood beside a square bore, over its whole length, mm; negative where it breaks out. And where that is. */
function wallBeside(panel: Panel, bore: Bore): { readonly wall: number; readonly edge: EdgeName | undefined } {
  const { edges, length, width, thickness } = panel
  const sides = [
    { across: 0, edge: edges.x0, mm: bore.at[0] },
    { across: 0, edge: edges.x1, mm: length - bore.at[0] },
    { across: 1, edge: edges.y0, mm: bore.at[1] },
    { across: 1, edge: edges.y1, mm: width - bore.at[1] },
    { across: 2, edge: undefined, mm: thickness + bore.at[2] },
    { across: 2, edge: undefined, mm: -bore.at[2] },
  ] as const
  const beside = sides.filter(({ across }) => Math.abs(bore.axis[across]) < 0.5)
  const least = beside.reduce<{ edge: EdgeName | undefined; mm: number }>((a, b) => (b.mm < a.mm ? b : a), {
    edge: undefined,
    mm: Number.POSITIVE_INFINITY,
  })
  return { wall: least.mm - bore.diameter / 2, edge: least.edge }
}

/** A pull may as well go where it stands when nobody says, clear of what is behind its front. */
function usualPlace(subject: Subject, panel: Panel, bore: Bore, edge: EdgeName | undefined): Mend | undefined {
  const [use] = bore.uses
  const at = use === undefined ? undefined : subject.designs.hardwareAt(use.hardware)
  if (use === undefined || at === undefined || subject.designs.itemOf(use.hardware)?.kind !== 'pull') return undefined
  const found = edge === undefined ? undefined : usualDistance(subject, panel, edge)
  if (found === undefined) return undefined
  const text = typedLength(found.mm, subject.project.units, 'up')
  return {
    fix: `set \`${found.key}: ${text}\`, ${found.why}`,
    change: [{ path: [...at, 'pull', found.key], value: text }],
  }
}

interface Usual {
  readonly key: 'edge distance' | 'end distance'
  readonly mm: number
  readonly why: string
}

/** How far from an edge of its front a pull usually stands; of a drawer's, only the distance from the upper one can be said. */
function usualDistance({ project }: Subject, panel: Panel, edge: EdgeName): Usual | undefined {
  const { role, edges } = panel
  const across = (edges.x0 === edge || edges.x1 === edge ? panel.length : panel.width) / 2
  if (role === 'drawer front')
    return edge === 'top' ? { key: 'edge distance', mm: across, why: 'the middle of the front' } : undefined
  if (role !== 'door' && role !== 'flap') return undefined
  // From the free edge: of a door, left or right; of a flap, top or bottom.
  const free = (edge === 'left' || edge === 'right') === (role === 'door')
  const usual = free ? DEFAULTS.pullEdge : DEFAULTS.pullEnd
  return {
    key: free ? 'edge distance' : 'end distance',
    mm: Math.min(across, usual[project.units]),
    why: 'as is usual',
  }
}
