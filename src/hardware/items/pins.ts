import type { Drilling, Item, ShelfPin } from '../types.ts'

const hole = (diameter: number, depth: number): readonly Drilling[] => [
  { key: 'pin', x: 0, y: 0, enter: 'contact', diameter, depth, purpose: 'shelf pin' },
]

const pin = (id: string, title: string, source: string, diameter: number, depth: number): ShelfPin => ({
  kind: 'shelf pin',
  id,
  title,
  source,
  parts: { left: hole(diameter, depth), right: hole(diameter, depth) },
  mates: [{ relation: 'coaxial', a: ['left', 'pin'], b: ['right', 'pin'] }],
})

/** Shelf pins; the first is the default in mm, `pin 1/4 in` in inches. */
export const pins: readonly Item[] = [
  pin('pin 5', 'shelf pin, 5 mm', 'hole 5 mm: S1; depth 13: common practice', 5, 13),
  pin('pin 1/4 in', 'shelf pin, 1/4 in', 'size: S7; depth 3/8 in: common practice', 6.35, 9.525),
]
