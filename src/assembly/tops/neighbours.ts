import { type Box, NOISE_MM } from '../../geometry/index.ts'
import { fineMm } from '../../length/index.ts'
import { floorBox, footprintOf, shareOf } from '../floor/index.ts'
import type { PlacedModule, PlacedPanel, PlacingTrouble } from '../types.ts'

interface Standing {
  readonly module: PlacedModule
  readonly panel: PlacedPanel
  readonly box: Box
}

const isTop = ({ role }: PlacedPanel): boolean => role === 'worktop' || role === 'machine top'

/**
 * Worktops and machine tops whose overhang reaches into another module that stands with them, one trouble for each two
 * modules. Modules whose footprints overlap are left to the floor plan. `islands`: keys of the modules whose rows stand
 * against each other; how far islands are apart is no more than a picture.
 */
export function topNeighbours(
  modules: readonly PlacedModule[],
  islands: readonly (readonly string[])[],
): PlacingTrouble[] {
  if (!modules.some(({ panels }) => panels.some(isTop))) return []
  const footing = new Map(modules.map((module) => [module.key, module]))
  const feet = (module: PlacedModule): PlacedModule[] =>
    (module.liesOver ?? [module.key]).flatMap((key) => footing.get(key) ?? [])
  const apart = (a: PlacedModule, b: PlacedModule): boolean =>
    feet(a).every((one) => feet(b).every((other) => !standIn(one, other)))
  return islands.flatMap((keys) => {
    const standing = modules.filter((module) => feet(module).some(({ key }) => keys.includes(key)))
    const boxed = standing.map((module) =>
      module.panels.map((panel) => ({ module, panel, box: floorBox(module, panel) })),
    )
    return boxed.flatMap((left, k) =>
      boxed.slice(k + 1).flatMap((right) => {
        const [one, other] = [left[0]?.module, right[0]?.module]
        return one === undefined || other === undefined || !apart(one, other) ? [] : reaching(left, right)
      }),
    )
  })
}

function standIn(a: PlacedModule, b: PlacedModule): boolean {
  const [x, y] = shareOf(footprintOf(a), footprintOf(b))
  return x > NOISE_MM && y > NOISE_MM
}

function reaching(left: readonly Standing[], right: readonly Standing[]): PlacingTrouble[] {
  const pairs = left
    .flatMap((a) =>
      right.filter((b) => isTop(a.panel) || isTop(b.panel)).map((b) => ({ a, b, shared: sharedBy(a.box, b.box) })),
    )
    .filter(({ shared }) => shared > NOISE_MM)
  const most = Math.max(...pairs.map(({ shared }) => shared))
  const worst = pairs.find(({ shared }) => shared === most)
  if (worst === undefined) return []
  const { a, b } = worst
  return [
    {
      rule: 'worktop-neighbour',
      severity: 'stop',
      panels: [...new Set(pairs.flatMap((pair) => [pair.a.panel.id, pair.b.panel.id]))],
      message: `${a.module.name}, ${a.panel.name}, and ${b.module.name}, ${b.panel.name}, overlap by ${fineMm(most)} mm`,
      fix: 'take off the overhang between them, stand them further apart, or lay one worktop over the row',
      at: (isTop(a.panel) ? a : b).panel.at,
    },
  ]
}

/** The least extent of the space that two boxes share, mm; 0 or less where there is none. */
function sharedBy(a: Box, b: Box): number {
  return Math.min(
    ...([0, 1, 2] as const).map((axis) => Math.min(a.max[axis], b.max[axis]) - Math.max(a.min[axis], b.min[axis])),
  )
}
