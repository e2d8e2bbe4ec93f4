import { add, type Box, type Pose, place, scale, turn } from '../geometry/index.ts'
import { type Drilled, drilledIn } from './drilled.ts'
import type { PlacedHardware, PlacedPanel } from './types.ts'

/** Wood between two holes in one board, mm; common practice, and the limit that the checks warn at. */
export const WALL_MM = 5
/** With less wood between two holes the checks stop, mm; common practice. */
export const LEAST_WALL_MM = 3

/**
 * The space that each hole of some hardware takes in a panel: a box around it, module frame, mm. Across a hole it is as
 * wide as the bore or its widening; all hardware is placed in the module's frame.
 */
export function holesIn(
  panel: PlacedPanel,
  panels: readonly PlacedPanel[],
  hardware: readonly PlacedHardware[],
): Box[] {
  const thicknessOf = (id: string): number | undefined => panels.find((one) => one.id === id)?.thickness
  const boxes: Box[] = []
  for (const piece of hardware) {
    for (const station of piece.stations) {
      if (station.panel !== panel.id) continue
      for (const hole of drilledIn(piece, station, panel, panel.moduleFromPanel, thicknessOf)) {
        boxes.push(holeBox(panel.moduleFromPanel, hole))
      }
    }
  }
  return boxes
}

function holeBox(pose: Pose, { drilling, at, axis, depth }: Drilled): Box {
  const way = turn(pose, axis)
  const from = place(pose, at)
  const to = add(from, scale(way, depth))
  const radius = Math.max(drilling.diameter, drilling.sink?.diameter ?? 0) / 2
  const beside = (k: 0 | 1 | 2): number => radius * Math.sqrt(Math.max(0, 1 - way[k] * way[k]))
  const end = (k: 0 | 1 | 2, sign: 1 | -1): number =>
    (sign > 0 ? Math.max(from[k], to[k]) : Math.min(from[k], to[k])) + sign * beside(k)
  return { min: [end(0, -1), end(1, -1), end(2, -1)], max: [end(0, 1), end(1, 1), end(2, 1)] }
}

/** Between two boxes, mm; 0 where they touch or overlap. */
export function gapBetween(a: Box, b: Box): number {
  const along = (axis: 0 | 1 | 2): number => Math.max(0, a.min[axis] - b.max[axis], b.min[axis] - a.max[axis])
  return Math.hypot(along(0), along(1), along(2))
}

/** True when between two boxes there is so much or more, mm. Most are that far apart along one axis alone. */
export function areApart(a: Box, b: Box, least: number): boolean {
  for (const axis of [0, 1, 2] as const) {
    if (a.min[axis] - b.max[axis] >= least || b.min[axis] - a.max[axis] >= least) return true
  }
  return gapBetween(a, b) >= least
}
