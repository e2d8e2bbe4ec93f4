import { NOISE_MM } from '../../geometry/index.ts'
import type { Panel } from '../../panel/index.ts'
import { boardFacts, limitOf, type Project, type Stock } from '../../project/index.ts'
import { type LoadedModule, loadsAreSaid, mostOnShelf, panelBody, saidLoad } from '../loads/index.ts'
import type { Finding, Rule, Subject } from '../types.ts'
import { GUIDE, kg, mm, panelWords } from '../words.ts'

/** Every loose shelf lies on two pins at each end. */
const PINS = 4

/** Loose shelves that are too heavy for their pins, or so long that more are usual. */
export const shelfPins: Rule = {
  ids: ['shelf-pins'],
  check: (subject) =>
    subject.loaded().flatMap((module) => {
      const shelves = module.panels.filter(({ role }) => role === 'loose shelf')
      if (shelves.length === 0) return []
      const walls = wallsByPlace(subject, module)
      return shelves.flatMap((shelf) => {
        const chips = (walls.get(JSON.stringify(shelf.at)) ?? []).some(({ board, thickness }) =>
          board === undefined ? false : boardFacts(board, thickness).chips,
        )
        return checkShelf(subject.project, module, shelf, chips)
      })
    }),
}

/** The boards that hold the pins of each group of shelves, by its place in the definition. */
function wallsByPlace({ panelOf }: Subject, { hardware }: LoadedModule): Map<string, Stock[]> {
  const walls = new Map<string, Stock[]>()
  const seen = new Set<string>()
  for (const piece of hardware) {
    if (piece.item.kind !== 'shelf pin' || seen.has(piece.series)) continue
    // All pins of a column stand in the same two boards.
    seen.add(piece.series)
    const place = JSON.stringify(piece.at)
    walls.set(place, [...(walls.get(place) ?? []), ...piece.stations.map(({ panel }) => panelOf(panel).stock)])
  }
  return walls
}

function checkShelf(project: Project, { spec }: LoadedModule, shelf: Panel, chips: boolean): Finding[] {
  const load = saidLoad(spec, shelf.at) ?? mostOnShelf(spec.loads, shelf.length * shelf.width)
  const own = panelBody(shelf).mass
  const each = (load + own) / PINS
  const limit = limitOf(project, 'shelf-pins', chips ? 'warn in chips' : 'warn')
  const shared = { rule: 'shelf-pins', panels: [shelf.id], places: [], at: shelf.at } as const
  if (each > limit + NOISE_MM) {
    // Whole kg, rounded down, so that it holds.
    const most = Math.floor(PINS * limit - own)
    const board = chips ? 'particleboard or MDF' : 'plywood'
    return [
      {
        ...shared,
        // A load that nobody said is no reason for a warning.
        severity: loadsAreSaid(spec) ? 'warn' : 'note',
        message: `${panelWords(shelf)}: ${kg(load)} on it and its own ${kg(own)} make ${kg(each)} on each of ${PINS} pins; a pin in ${board} carries ${kg(limit)} ${GUIDE}`,
        fix:
          most > 0
            ? `set \`load: ${most} kg\` for these shelves and keep to it; or divide the opening`
            : 'divide the opening',
        ...(most > 0 && { change: [{ path: [...shelf.at, 'load'], value: `${most} kg` }] }),
      },
    ]
  }
  const longest = limitOf(project, 'shelf-pins', 'note')
  if (shelf.length < longest - NOISE_MM) return []
  return [
    {
      ...shared,
      severity: 'note',
      message: `${panelWords(shelf)}: it is ${mm(shelf.length)} mm long and lies on ${PINS} pins; from ${mm(longest)} mm on, 5 or 6 are usual ${GUIDE}`,
      fix: 'screw a strip to the back under the middle of its rear edge, or divide the opening',
    },
  ]
}
