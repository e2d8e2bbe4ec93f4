import { NOISE_MM, poseOf } from '../../geometry/index.ts'
import { mm } from '../../length/index.ts'
import type { Kept } from '../../memory/index.ts'
import type { RowSpec } from '../../project/index.ts'
import type { PlacedModule, PlacingTrouble } from '../types.ts'
import { axesAfter, footprintOf, shareOf } from './footprint.ts'
import { packings } from './level.ts'
import { clearOf } from './mend.ts'
import { spotsOf } from './spots.ts'

/** A module that does not stand anywhere yet. */
export type BuiltModule = Omit<PlacedModule, 'floorFromModule' | 'packing'>

export interface Floor {
  /** In the order of the rows. */
  readonly modules: ReadonlyMap<string, PlacedModule>
  /** Keys of the modules whose rows stand against each other. */
  readonly islands: readonly (readonly string[])[]
  readonly troubles: readonly PlacingTrouble[]
}

/** Every module on its place on the floor. `kept`: each as it stood the last time. */
export function standOnFloor(
  rows: readonly RowSpec[],
  built: ReadonlyMap<string, BuiltModule>,
  kept: Kept<PlacedModule>,
): Floor {
  const moduleOf = (key: string): BuiltModule => {
    const module = built.get(key)
    if (module === undefined) throw new Error(`the row names ${key}, which is no module`)
    return module
  }
  const { spots, islands } = spotsOf(rows, (key) => moduleOf(key).size)
  const level = packings(rows, moduleOf)
  const modules = new Map<string, PlacedModule>()
  for (const [key, spot] of spots) {
    const module = moduleOf(key)
    const packing = level.packing.get(key) ?? 0
    const placed = kept.take(key, [module, packing, spot.x, spot.y, spot.turns], () => {
      const { x, y } = axesAfter(spot.turns)
      return { ...module, packing, floorFromModule: poseOf(x, y, [spot.x, spot.y, module.baseHeight + packing]) }
    })
    modules.set(key, placed)
  }
  return { modules, islands, troubles: [...level.troubles, ...overlaps(rows, islands, modules)] }
}

/** Modules of different rows that stand in the same place. */
function overlaps(
  rows: readonly RowSpec[],
  islands: readonly (readonly string[])[],
  modules: ReadonlyMap<string, PlacedModule>,
): PlacingTrouble[] {
  const rowOf = new Map(rows.flatMap((row) => row.modules.map((key) => [key, row] as const)))
  return islands.flatMap((keys) => {
    const standing = keys.flatMap((key) => {
      const module = modules.get(key)
      const row = rowOf.get(key)
      return module === undefined || row === undefined ? [] : [{ module, row, footprint: footprintOf(module) }]
    })
    return standing.flatMap((later, k) =>
      standing.slice(0, k).flatMap((earlier): PlacingTrouble[] => {
        const [x, y] = shareOf(earlier.footprint, later.footprint)
        if (earlier.row === later.row || x <= NOISE_MM || y <= NOISE_MM) return []
        const own = standing.filter(({ row }) => row === later.row).map(({ module }) => module)
        const others = standing.filter(({ row }) => row !== later.row).map(({ module }) => module)
        const moved = clearOf(later.row, own, others, [x, y])
        return [
          {
            rule: 'footprints-overlap',
            severity: 'stop',
            panels: [],
            message: `${earlier.module.name} and ${later.module.name} stand in the same place: their footprints overlap by ${mm(x)} × ${mm(y)} mm`,
            fix:
              moved === undefined
                ? 'stand one of them on another side, or change its line up, shift or gap'
                : `stand ${later.module.name} on another side, or ${moved.fix}`,
            ...(moved !== undefined && { change: moved.change }),
            at: later.row.at,
          },
        ]
      }),
    )
  })
}
