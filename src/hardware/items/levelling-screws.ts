import type { Item } from '../types.ts'

const levellingScrew = (id: string, title: string, diameter: number, length: number): Item => ({
  kind: 'levelling screw',
  id,
  title,
  source: 'bore and length of the threaded insert: common practice, no source',
  length,
  parts: {
    ledge: [
      // Right through, so that the screw is turned from below and no depth has to be set from the floor of a recess.
      {
        key: 'hole',
        x: 0,
        y: 0,
        enter: 'contact',
        diameter,
        depth: 'through',
        edgeWall: 3,
        purpose: 'levelling screw',
      },
    ],
  },
  mates: [],
})

/** Grub screws in threaded inserts, under an insert plate. */
export const levellingScrews: readonly Item[] = [
  levellingScrew('levelling screw M5', 'M5 grub screw in a threaded insert', 7, 10),
  levellingScrew('levelling screw M6', 'M6 grub screw in a threaded insert', 8, 12),
  levellingScrew('levelling screw #10-24', '#10-24 grub screw in a threaded insert', 7.938, 12.7),
]
