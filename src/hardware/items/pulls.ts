import type { Drilling, Item, Pull } from '../types.ts'

const through = (key: string, y: number, diameter: number): Drilling => ({
  key,
  x: 0,
  y,
  enter: 'far',
  diameter,
  depth: 'through',
  purpose: 'pull',
})

const pull = (id: string, title: string, centres: number, diameter: number): Pull => {
  const holes =
    centres === 0
      ? [through('screw', 0, diameter)]
      : [through('screw-1', -centres / 2, diameter), through('screw-2', centres / 2, diameter)]
  return {
    kind: 'pull',
    id,
    title,
    source: 'common practice, no source',
    centres,
    parts: { front: holes, 'box front': holes },
    mates: [],
  }
}

/** Pulls and knobs, held by M4 or #8-32 screws through the front. */
export const pulls: readonly Item[] = [
  pull('pull 128', 'bow pull, 128 mm centres', 128, 4.5),
  pull('pull 96', 'bow pull, 96 mm centres', 96, 4.5),
  pull('pull 3 in', 'bow pull, 3 in centres', 76.2, 4.763),
  pull('knob', 'knob, one screw', 0, 4.5),
]
