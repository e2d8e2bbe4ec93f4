import { shelfPin } from '../kinds/shelf-pin.ts'
import type { Item } from '../types.ts'

const SLEEVE = 'metal sleeve pressed into the hole, for pins of 5 mm: common practice, measure yours'

/** Shelf pins; the first is the default in mm, `pin 1/4 in` in inches. */
export const pins: readonly Item[] = [
  shelfPin.make({
    id: 'pin 5',
    title: 'shelf pin, 5 mm',
    source: 'hole 5 mm: S1; depth 13: common practice',
    diameter: 5,
    depth: 13,
  }),
  shelfPin.make({
    id: 'pin 1/4 in',
    title: 'shelf pin, 1/4 in',
    source: 'size: S7; depth 3/8 in: common practice',
    diameter: 6.35,
    depth: 9.525,
  }),
  shelfPin.make({
    id: 'pin 3',
    title: 'shelf pin, 3 mm',
    source: 'hole 3 mm, rare: S1; depth 10: common practice',
    diameter: 3,
    depth: 10,
  }),
  shelfPin.make({
    id: 'pin 3/16 in',
    title: 'shelf pin, 3/16 in',
    source: 'common practice: size, and depth 3/8 in',
    diameter: 4.7625,
    depth: 9.525,
  }),
  shelfPin.make({
    id: 'pin 5 sleeve 7',
    title: 'shelf pin, 5 mm, in a sleeve of 7 mm',
    source: SLEEVE,
    diameter: 7,
    depth: 11,
  }),
  shelfPin.make({
    id: 'pin 5 sleeve 7.5',
    title: 'shelf pin, 5 mm, in a sleeve of 7.5 mm',
    source: SLEEVE,
    diameter: 7.5,
    depth: 11,
  }),
]
