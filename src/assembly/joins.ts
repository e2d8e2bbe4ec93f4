import { type Box, compose, NOISE_MM, placedBox, poseOf, Y, Z } from '../geometry/index.ts'
import type { JoinSpec, RowSpec } from '../project/index.ts'
import { ownBox } from './boards.ts'
import type { Parts } from './parts.ts'
import { FLOOR, type PlacedHardware, type PlacedModule, type PlacedPanel, type PlacingTrouble } from './types.ts'

/** Least distance between two rows of bolts; a rectangle with less takes one row in its middle. Common practice. */
const ROWS_APART_MM = 96

/**
 * Places of the bolts along one side of the shared rectangle, mm: an inset from both ends, or one in the middle where
 * the two would stand close together.
 */
export function boltPlaces(low: number, high: number, inset: number): number[] {
  return high - low - 2 * inset < ROWS_APART_MM - NOISE_MM ? [(low + high) / 2] : [low + inset, high - inset]
}

/** The bolts between the modules of a row, each placed once in the floor frame: clearance hole on the left, nut on the right. */
export function joinRow(row: RowSpec, modules: readonly PlacedModule[]): Pick<Parts, 'hardware' | 'troubles'> {
  const { join } = row
  if (join === undefined) return { hardware: [], troubles: [] }
  const pairs = modules.slice(1).map((right, k) => {
    const left = modules[k]
    if (left === undefined) throw new Error(`row of ${modules.length} modules has no module ${k}`)
    return joinPair(row, join, left, right)
  })
  return { hardware: pairs.flatMap((pair) => pair.hardware), troubles: pairs.flatMap((pair) => pair.troubles) }
}

function floorBox(module: PlacedModule, panel: PlacedPanel): Box {
  return placedBox(compose(module.floorFromModule, panel.moduleFromPanel), ownBox(panel))
}

function joinPair(
  row: RowSpec,
  join: JoinSpec,
  left: PlacedModule,
  right: PlacedModule,
): Pick<Parts, 'hardware' | 'troubles'> {
  const head = left.panels.find((panel) => panel.role === 'right side')
  const nut = right.panels.find((panel) => panel.role === 'left side')
  if (head === undefined || nut === undefined) throw new Error(`${left.key} or ${right.key} has no side to bolt`)
  const a = floorBox(left, head)
  const b = floorBox(right, nut)
  const y0 = Math.max(a.min[1], b.min[1])
  const y1 = Math.min(a.max[1], b.max[1])
  const z0 = Math.max(a.min[2], b.min[2])
  const z1 = Math.min(a.max[2], b.max[2])
  const least = join.item.nutDiameter
  if (y1 - y0 < least || z1 - z0 < least)
    return { hardware: [], troubles: [noOverlap(row, left, right, head, nut, Math.min(y1 - y0, z1 - z0))] }
  const series = `${left.key}+${right.key}`
  const hardware = boltPlaces(z0, z1, join.endInset).flatMap((z) =>
    boltPlaces(y0, y1, join.sideInset).map((y) => [y, z] as const),
  )
  return {
    hardware: hardware.map(([y, z], k): PlacedHardware => {
      const pose = poseOf(Y, Z, [a.max[0], y, z])
      return {
        id: `${series}/bolt/${k + 1}`,
        item: join.item,
        frame: FLOOR,
        stations: [
          { part: 'head', panel: head.id, pose, wood: 'behind' },
          { part: 'nut', panel: nut.id, pose, wood: 'ahead' },
        ],
        settings: {},
        series: `${series}/bolt`,
        at: row.at,
      }
    }),
    troubles: [],
  }
}

function noOverlap(
  row: RowSpec,
  left: PlacedModule,
  right: PlacedModule,
  head: PlacedPanel,
  nut: PlacedPanel,
  shared: number,
): PlacingTrouble {
  return {
    rule: 'join-overlap',
    severity: 'stop',
    panels: [head.id, nut.id],
    message: `${left.name} and ${right.name} are to be bolted together, but their sides share only ${Math.max(0, Math.round(shared * 10) / 10)} mm`,
    fix: 'bring their heights and depths nearer to each other, or set `join: none`',
    at: row.at,
  }
}
