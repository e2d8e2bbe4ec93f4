import { MINUS_Y, NOISE_MM, poseOf, X } from '../../geometry/index.ts'
import type { LevellingScrew } from '../../hardware/index.ts'
import { type InsertSpec, type ModuleSpec, startOf } from '../../project/index.ts'
import { boardBox } from '../boards.ts'
import { type Parts, partsOf } from '../parts.ts'
import type { PlacedCutout, PlacedHardware, PlacedPanel } from '../types.ts'
import { carcaseTroubles, ledgeTroubles } from './insert-troubles.ts'
import type { TopWork } from './machine-top.ts'
import { type Area, areaOf, areaPath, grown } from './plan.ts'

/** A side of a plate longer than this has a levelling screw in its middle, too, mm; common practice. */
const LONG_SIDE_MM = 250
/** Two levelling screws on one side are no nearer to each other, mm; common practice. */
const APART_MM = 64

/** Where a plate lies in its top, and the two areas cut for it, seen from above, module frame. */
export interface Places {
  readonly plate: Area
  /** The plate and its play. */
  readonly recess: Area
  /** The plate less the ledge. */
  readonly opening: Area
}

export function placesOf(insert: InsertSpec, top: PlacedPanel): Places {
  const board = areaOf(top)
  const x0 = board.x0 + startOf(insert.fromLeft, insert.width, board.x1 - board.x0)
  const y0 = board.y0 + startOf(insert.fromFront, insert.depth, board.y1 - board.y0)
  const plate: Area = { x0, x1: x0 + insert.width, y0, y1: y0 + insert.depth }
  return { plate, recess: grown(plate, insert.play), opening: grown(plate, -insert.ledge.width) }
}

/** The recess and opening for a plate, and the levelling screws in its ledge. */
export function placeInsert(
  spec: ModuleSpec,
  insert: InsertSpec,
  top: PlacedPanel,
  carcase: Pick<Parts, 'panels' | 'hardware'>,
): TopWork {
  const places = placesOf(insert, top)
  const levelling = insert.levelling === undefined ? [] : levellingScrews(spec, insert, insert.levelling, top, places)
  return {
    parts: partsOf({
      cutouts: [...cutoutsOf(insert, top, places), ...throughCarcaseTop(spec, insert, places, carcase.panels)],
      hardware: levelling,
      troubles: [
        ...carcaseTroubles(spec, insert, top, places, carcase),
        ...(insert.levelling === undefined ? [] : ledgeTroubles(spec, insert, insert.levelling, top)),
      ],
    }),
    areas: [places.recess],
  }
}

/** All corners are those of the plate: the cutter that makes the recess makes the opening, and the ledge is widest there. */
function cutoutsOf(insert: InsertSpec, top: PlacedPanel, { recess, opening }: Places): PlacedCutout[] {
  const path = (area: Area) => areaPath(area, insert.cornerRadius, top.moduleFromPanel)
  const common = { panel: top.id, face: 'A', at: insert.at } as const
  return [
    {
      ...common,
      key: 'insert-recess',
      path: path(recess),
      depth: insert.ledge.depth,
      purpose: 'recess for the insert',
    },
    { ...common, key: 'insert-opening', path: path(opening), depth: 'through', purpose: 'opening under the insert' },
  ]
}

/**
 * A full top of the carcase is cut through as wide as the recess, so that the machine hangs free and the levelling
 * screws are reached from below.
 */
function throughCarcaseTop(
  spec: ModuleSpec,
  insert: InsertSpec,
  { recess }: Places,
  below: readonly PlacedPanel[],
): PlacedCutout[] {
  return below
    .filter((panel) => panel.role === 'top' && inside(recess, areaOf(panel)))
    .map((panel) => ({
      panel: panel.id,
      key: 'insert-way',
      path: areaPath(recess, insert.cornerRadius, panel.moduleFromPanel),
      face: 'B',
      depth: 'through',
      purpose: `way through for the insert of ${spec.name}`,
      at: insert.at,
    }))
}

export const inside = (a: Area, b: Area): boolean =>
  a.x0 > b.x0 + NOISE_MM && a.x1 < b.x1 - NOISE_MM && a.y0 > b.y0 + NOISE_MM && a.y1 < b.y1 - NOISE_MM

/**
 * Four at the corners, in from them by the radius so that they are clear of the round, and one in the middle of each
 * long side; on a plate that is nearly round, one in the middle of each side. All stand in the middle of the ledge.
 */
function levellingScrews(
  spec: ModuleSpec,
  insert: InsertSpec,
  item: LevellingScrew,
  top: PlacedPanel,
  { plate }: Places,
): PlacedHardware[] {
  const line = insert.ledge.width / 2
  const inset = Math.max(line, insert.cornerRadius)
  const xs = [plate.x0 + inset, plate.x1 - inset]
  const ys = [plate.y0 + line, plate.y1 - line]
  const round = insert.width - 2 * inset < APART_MM
  const midX = (plate.x0 + plate.x1) / 2
  const midY = (plate.y0 + plate.y1) / 2
  const corners = round ? [] : ys.flatMap((y) => xs.map((x) => [x, y] as const))
  const onWidth = round || insert.width > LONG_SIDE_MM ? ys.map((y) => [midX, y] as const) : []
  const onDepth =
    round || insert.depth > LONG_SIDE_MM ? [plate.x0 + line, plate.x1 - line].map((x) => [x, midY] as const) : []
  const z = boardBox(top).max[2] - insert.ledge.depth
  return [...corners, ...onWidth, ...onDepth].map(
    ([x, y], k): PlacedHardware => ({
      id: `${spec.key}/levelling/${k + 1}`,
      item,
      frame: spec.key,
      stations: [{ part: 'ledge', panel: top.id, pose: poseOf(X, MINUS_Y, [x, y, z]), wood: 'ahead' }],
      settings: {},
      series: `${spec.key}/levelling`,
      at: insert.at,
    }),
  )
}

export function boreOf(item: LevellingScrew): number {
  return Math.max(0, ...Object.values(item.parts).flatMap((drillings) => drillings.map((one) => one.diameter)))
}
