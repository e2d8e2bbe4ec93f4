import { add, type Box, NOISE_MM, place, scale } from '../../geometry/index.ts'
import type { Drilling } from '../../hardware/index.ts'
import { boardBox } from '../boards.ts'
import type { PlacedPanel, Station } from '../types.ts'
import type { OnBottom } from './base.ts'

/** A stretch of a line that is not free, mm. */
export type Stretch = readonly [from: number, to: number]

/** No fastener of a carcase goes deeper into a bottom than this, mm. */
const DEEPEST_MM = 60
/** Kept around such a fastener, mm; common practice. */
const AROUND_MM = 12

/**
 * Where a line on the bottom, along module axis `along` and at `at` on the other one, cannot take hardware that keeps
 * `room` clear around it: panels that stand on the bottom, and the fasteners that are in it already.
 */
export function blockedAlong(along: 0 | 1, at: number, bottom: PlacedPanel, on: OnBottom, room: number): Stretch[] {
  const across = along === 0 ? 1 : 0
  const top = boardBox(bottom).max[2]
  const standing = on.panels.flatMap((panel): Stretch[] => {
    const { min, max } = boardBox(panel)
    if (panel.id === bottom.id || Math.abs(min[2] - top) > NOISE_MM) return []
    if (at <= min[across] - room + NOISE_MM || at >= max[across] + room - NOISE_MM) return []
    return [[min[along] - room, max[along] + room]]
  })
  const fastened = on.hardware.flatMap(({ item, stations }) =>
    stations.flatMap((station): Stretch[] => {
      if (station.panel !== bottom.id) return []
      const { min, max } = reachOf(station, item.parts[station.part] ?? [])
      return at < min[across] || at > max[across] ? [] : [[min[along], max[along]]]
    }),
  )
  return [...standing, ...fastened]
}

/** Around the axes of a station's holes, as far as any fastener goes. */
function reachOf({ pose, wood }: Station, drillings: readonly Drilling[]): Box {
  const way = scale(pose.z, wood === 'ahead' ? DEEPEST_MM : -DEEPEST_MM)
  const ends = [pose.origin, ...drillings.map(({ x, y }) => place(pose, [x, y, 0]))].flatMap((at) => [at, add(at, way)])
  const low = (axis: 0 | 1 | 2): number => Math.min(...ends.map((end) => end[axis])) - AROUND_MM
  const high = (axis: 0 | 1 | 2): number => Math.max(...ends.map((end) => end[axis])) + AROUND_MM
  return { min: [low(0), low(1), low(2)], max: [high(0), high(1), high(2)] }
}

/**
 * Each wish moved to the nearest free place from `low` to `high` (of two as near, the one nearer the middle, so that a
 * run stays even about it), in order; one that finds none, or none that is `apart` from the one before, is left out.
 */
export function freePlaces(
  wishes: readonly number[],
  blocked: readonly Stretch[],
  [low, high]: Stretch,
  apart: number,
): number[] {
  const free = (x: number): boolean =>
    x >= low - NOISE_MM &&
    x <= high + NOISE_MM &&
    blocked.every(([from, to]) => x <= from + NOISE_MM || x >= to - NOISE_MM)
  const ends = blocked.flat().filter(free)
  const middle = (low + high) / 2
  const nearer = (wish: number, a: number, b: number): boolean => {
    const gain = Math.abs(b - wish) - Math.abs(a - wish)
    return gain > NOISE_MM || (gain > -NOISE_MM && Math.abs(a - middle) < Math.abs(b - middle) - NOISE_MM)
  }
  const places: number[] = []
  for (const wish of wishes) {
    const candidates = free(wish) ? [wish] : ends
    const [first, ...rest] = candidates
    if (first === undefined) continue
    const nearest = rest.reduce((best, x) => (nearer(wish, x, best) ? x : best), first)
    const last = places.at(-1)
    if (last === undefined || nearest - last >= apart - NOISE_MM) places.push(nearest)
  }
  return places
}
