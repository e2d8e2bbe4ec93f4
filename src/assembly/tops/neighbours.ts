import { type Box, NOISE_MM } from '../../geometry/index.ts'
import { fineMm } from '../../length/index.ts'
import { floorBox, footprintOf, shareOf, typed } from '../floor/index.ts'
import type { PlacedModule, PlacedPanel, PlacingTrouble } from '../types.ts'
import { lessOverhang } from './overhang.ts'

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
    const boxed = standing.map((module): Boxed => {
      const panels = module.panels.map((panel) => ({ module, panel, box: floorBox(module, panel) }))
      return { module, panels, around: boxAround(panels.map(({ box }) => box)), topped: module.panels.some(isTop) }
    })
    return boxed.flatMap((left, k) =>
      boxed.slice(k + 1).flatMap((right) => {
        // Where nothing of the one can reach anything of the other, there is no need to look at each panel.
        if (!(left.topped || right.topped) || sharedBy(left.around, right.around) <= NOISE_MM) return []
        return apart(left.module, right.module) ? reaching(left.panels, right.panels) : []
      }),
    )
  })
}

/** A module with the boxes of its panels. */
interface Boxed {
  readonly module: PlacedModule
  readonly panels: readonly Standing[]
  /** Of all its panels. */
  readonly around: Box
  readonly topped: boolean
}

/** The least box that holds all of some; turned inside out where there are none. */
function boxAround(boxes: readonly Box[]): Box {
  const least = (axis: 0 | 1 | 2): number => Math.min(...boxes.map(({ min }) => min[axis]))
  const most = (axis: 0 | 1 | 2): number => Math.max(...boxes.map(({ max }) => max[axis]))
  return { min: [least(0), least(1), least(2)], max: [most(0), most(1), most(2)] }
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
  const [top, other] = isTop(a.panel) ? [a, b] : [b, a]
  const less = lessOverhang(top.module, top.panel, sharedBox(top.box, other.box))
  return [
    {
      rule: 'worktop-neighbour',
      severity: 'stop',
      panels: [...new Set(pairs.flatMap((pair) => [pair.a.panel.id, pair.b.panel.id]))],
      message: `${a.module.name}, ${a.panel.name}, and ${b.module.name}, ${b.panel.name}, overlap by ${fineMm(most)} mm`,
      fix:
        less === undefined
          ? 'stand them further apart, or lay one worktop over the row'
          : `make the overhang of ${top.module.name} at its ${less.side} ${typed(less.overhang)}, stand them further apart, or lay one worktop over the row`,
      ...(less !== undefined && { change: less.change }),
      at: top.panel.at,
    },
  ]
}

/** The least extent of the space that two boxes share, mm; 0 or less where there is none. */
function sharedBy(a: Box, b: Box): number {
  const { min, max } = sharedBox(a, b)
  return Math.min(max[0] - min[0], max[1] - min[1], max[2] - min[2])
}

/** What two boxes share; its least is above its most where they are apart. */
function sharedBox(a: Box, b: Box): Box {
  const low = (axis: 0 | 1 | 2): number => Math.max(a.min[axis], b.min[axis])
  const high = (axis: 0 | 1 | 2): number => Math.min(a.max[axis], b.max[axis])
  return { min: [low(0), low(1), low(2)], max: [high(0), high(1), high(2)] }
}
