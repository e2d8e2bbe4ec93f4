import type { Item } from '../types.ts'
import { CHIPBOARD, INCH_WOOD, throughScrew } from './connectors.ts'

const metric = (length: number): Item =>
  throughScrew({
    id: `screw 4x${length}`,
    title: `countersunk screw 4 × ${length}`,
    source: CHIPBOARD,
    clearance: 4.5,
    pilot: 2.8,
    length,
    head: 8,
    angleDeg: 90,
    wall: 3,
  })

const inch = (id: string, length: number): Item =>
  throughScrew({
    id: `screw #8x${id}`,
    title: `countersunk wood screw #8 × ${id} in`,
    source: INCH_WOOD,
    clearance: 4.366,
    pilot: 2.778,
    length,
    head: 8.731,
    angleDeg: 82,
    wall: 3,
  })

/** Screws of the lengths that hold a worktop from below. */
export const topScrews: readonly Item[] = [
  metric(30),
  metric(35),
  metric(40),
  inch('1-1/4', 31.75),
  inch('1-1/2', 38.1),
]
