import type { RowSpec, StandSpec } from '../../project/index.ts'
import { covered, type Rectangle, type Spot, spotFrom, type Turns } from './footprint.ts'

/** Space between rows that do not stand against each other, mm: room to walk, and no more than a picture. */
const ROW_SPACING_MM = 1000

interface Plan {
  readonly width: number
  readonly depth: number
}

/** Rows that stand against each other, one against the next, are one island: it moves as a whole. */
export interface Standing {
  readonly spots: ReadonlyMap<string, Spot>
  /** Keys of the modules of each island, in the order of their rows. */
  readonly islands: readonly (readonly string[])[]
}

interface Island {
  readonly keys: string[]
  readonly spots: Map<string, Spot>
  minY: number
  maxY: number
}

/**
 * Where every module stands on the floor. A row has its modules side by side from the left, fronts flush; one that
 * stands against nothing lies behind all before it, its front along x.
 */
export function spotsOf(rows: readonly RowSpec[], planOf: (key: string) => Plan): Standing {
  const islands: Island[] = []
  const islandOf = new Map<string, Island>()
  for (const row of rows) {
    const island = (row.stands && islandOf.get(row.stands.against)) ?? newIsland(islands)
    const plans = row.modules.map(planOf)
    const size: Plan = {
      width: plans.reduce((sum, plan) => sum + plan.width, 0),
      depth: Math.max(0, ...plans.map((plan) => plan.depth)),
    }
    const start = startOf(row.stands, island, size, planOf)
    let x = 0
    for (const [k, key] of row.modules.entries()) {
      island.spots.set(key, spotFrom(start, { x, y: 0, turns: 0 }))
      island.keys.push(key)
      islandOf.set(key, island)
      x += plans[k]?.width ?? 0
    }
    grow(island, covered(start, size.width, size.depth))
  }
  return { spots: apart(islands), islands: islands.map((island) => island.keys) }
}

function newIsland(islands: Island[]): Island {
  const island: Island = { keys: [], spots: new Map(), minY: Number.POSITIVE_INFINITY, maxY: Number.NEGATIVE_INFINITY }
  islands.push(island)
  return island
}

function grow(island: Island, { min, max }: Rectangle): void {
  island.minY = Math.min(island.minY, min[1])
  island.maxY = Math.max(island.maxY, max[1])
}

function startOf(stands: StandSpec | undefined, island: Island, size: Plan, planOf: (key: string) => Plan): Spot {
  if (stands === undefined) return { x: 0, y: 0, turns: 0 }
  const anchor = island.spots.get(stands.against)
  if (anchor === undefined) throw new Error(`${stands.against} does not stand yet`)
  return spotFrom(anchor, rowSpot(stands, planOf(stands.against), size))
}

/** The islands one behind the other. */
function apart(islands: readonly Island[]): Map<string, Spot> {
  const all = new Map<string, Spot>()
  let y = 0
  for (const island of islands) {
    for (const [key, spot] of island.spots) all.set(key, { ...spot, y: spot.y - island.minY + y })
    y += island.maxY - island.minY + ROW_SPACING_MM
  }
  return all
}

/** Quarter turns, counter-clockwise from above, that make the fronts of a row look so; the anchor's look toward −y. */
const TURNS: Readonly<Record<StandSpec['fronts'], Turns>> = { forward: 0, right: 1, back: 2, left: 3 }

/** The front left corner of the row in the frame of its anchor: x to its right, y to its back, mm. */
export function rowSpot(stands: StandSpec, anchor: Plan, row: Plan): Spot {
  const turns = TURNS[stands.fronts]
  const [wide, deep] = turns % 2 === 0 ? [row.width, row.depth] : [row.depth, row.width]
  const { side, lineUp, gap, shift } = stands
  const along = (length: number, own: number): number =>
    shift + (lineUp === 'middle' ? (length - own) / 2 : lineUp === 'back' || lineUp === 'right' ? length - own : 0)
  // Lower corner of the row's rectangle.
  const x = side === 'left' ? -gap - wide : side === 'right' ? anchor.width + gap : along(anchor.width, wide)
  const y = side === 'front' ? -gap - deep : side === 'back' ? anchor.depth + gap : along(anchor.depth, deep)
  // Turned to the right, the row's front left corner is the rectangle's right front one, and so on around.
  return { x: turns === 1 || turns === 2 ? x + wide : x, y: turns === 2 || turns === 3 ? y + deep : y, turns }
}
