import type { Drilling, ShelfPin } from '../types.ts'
import { figure, kindBuilder } from './kind.ts'

type Pin = { readonly diameter: number; readonly depth: number }

const hole = ({ diameter, depth }: Pin): readonly Drilling[] => [
  { key: 'pin', x: 0, y: 0, enter: 'contact', diameter, depth, purpose: 'shelf pin' },
]

/** Shelf pins, and pins in sleeves: the figures are those of the hole. */
export const shelfPin = kindBuilder<Pin, ShelfPin>({
  kind: 'shelf pin',
  figures: {
    'hole diameter': figure.length('diameter', 'above 0', 'Diameter of the hole, or of each hole.'),
    'hole depth': figure.length('depth', 'above 0', 'Depth of the hole, or of each hole.'),
  },
  build: (identity, pin) => ({
    ...identity,
    kind: 'shelf pin',
    parts: { left: hole(pin), right: hole(pin) },
    mates: [{ relation: 'coaxial', a: ['left', 'pin'], b: ['right', 'pin'] }],
  }),
  faults: () => [],
})
