import { NOISE_MM } from '../../geometry/index.ts'
import type { Edit, JoinSpec, RowSpec, SideOfModule } from '../../project/index.ts'
import type { PlacedModule } from '../types.ts'
import { footprintOf, type Rectangle, shareOf } from './footprint.ts'

/** A length as an edit writes it: fine enough that what is to be level is. */
export const typed = (mm: number): string => `${Number(mm.toFixed(6))} mm`

/** The edit that makes a module so much higher, mm; none where its height is as large as fits. */
export function heightEdit({ at, heightAsked }: Pick<PlacedModule, 'at' | 'heightAsked'>, by: number): Edit[] {
  if (heightAsked === undefined) return []
  const key = heightAsked.of === 'carcase' ? 'carcase height' : 'working height'
  return [{ path: [...at, key], value: typed(heightAsked.mm + by) }]
}

/** The join of a row written out with other figures. */
export function joinEdit(row: Pick<RowSpec, 'at'>, { item, endInset, sideInset }: JoinSpec): Edit {
  const value = { bolt: item.id, 'end inset': typed(endInset), 'side inset': typed(sideInset) }
  return { path: [...row.at, 'join'], value }
}

/** A row stood elsewhere, and the words for it. */
export interface Moved {
  readonly fix: string
  readonly change: readonly Edit[]
}

/** The way from a module to its side, its own frame. */
const SIDES: Readonly<Record<SideOfModule, readonly [x: number, y: number]>> = {
  left: [-1, 0],
  right: [1, 0],
  front: [0, -1],
  back: [0, 1],
}

/**
 * The smallest shift or gap with which a row stands clear of all others; nothing where no single one does, or where the row
 * stands by itself. `share`: how far it reaches into another now, mm along x and y of the floor.
 */
export function clearOf(
  row: RowSpec,
  modules: readonly PlacedModule[],
  others: readonly PlacedModule[],
  share: readonly [x: number, y: number],
): Moved | undefined {
  const { stands } = row
  const anchor = others.find(({ key }) => key === stands?.against)
  if (stands === undefined || anchor === undefined) return undefined
  const { x, y } = anchor.floorFromModule
  const onFloor = ([a, b]: readonly [number, number]): readonly [number, number] => [
    x[0] * a + y[0] * b,
    x[1] * a + y[1] * b,
  ]
  const out = onFloor(SIDES[stands.side])
  const along = onFloor(stands.side === 'left' || stands.side === 'right' ? [0, 1] : [1, 0])
  const reach = (way: readonly [number, number]): number => Math.abs(way[0]) * share[0] + Math.abs(way[1]) * share[1]
  const moves = [
    { key: 'shift', by: reach(along), way: along, is: stands.shift },
    { key: 'shift', by: -reach(along), way: along, is: stands.shift },
    // What is bolted leaves no gap.
    ...(row.join === undefined ? [{ key: 'gap', by: reach(out), way: out, is: stands.gap }] : []),
  ]
  const best = moves
    .filter(({ by, way }) => isClear(modules, others, [way[0] * by, way[1] * by]))
    .sort((a, b) => Math.abs(a.by) - Math.abs(b.by))[0]
  if (best === undefined) return undefined
  const value = typed(best.is + best.by)
  return {
    fix: `set its \`${best.key}\` to ${value}`,
    change: [{ path: [...row.at, 'stands', best.key], value }],
  }
}

function isClear(
  modules: readonly PlacedModule[],
  others: readonly PlacedModule[],
  [dx, dy]: readonly [number, number],
): boolean {
  return modules.every((module) => {
    const { min, max } = footprintOf(module)
    const moved: Rectangle = { min: [min[0] + dx, min[1] + dy], max: [max[0] + dx, max[1] + dy] }
    return others.every((other) => {
      const [sx, sy] = shareOf(moved, footprintOf(other))
      return sx <= NOISE_MM || sy <= NOISE_MM
    })
  })
}
