import { Names } from './names.ts'
import type { SceneHole } from './types.ts'

/** Holes as columns; each a few numbers a hole. */
export interface HoleColumns {
  readonly panels: readonly string[]
  readonly operations: readonly string[]
  /** Ids and rims, one after another. */
  readonly text: string
  /** Panel, operation, length of the id, length of the rim, hidden or not. */
  readonly places: Uint32Array
  /** Middle, place, radius; mm. */
  readonly numbers: Float64Array
}

const PLACES = 5
const NUMBERS = 6

export function holeColumns(holes: readonly SceneHole[]): HoleColumns {
  const panels = new Names()
  const operations = new Names()
  const words: string[] = []
  const places = new Uint32Array(holes.length * PLACES)
  const numbers = new Float64Array(holes.length * NUMBERS)
  holes.forEach(({ id, panel, operation, at, place, d, radius, hidden }, k) => {
    words.push(id, d)
    const p = k * PLACES
    places[p] = panels.placeOf(panel)
    places[p + 1] = operations.placeOf(operation)
    places[p + 2] = id.length
    places[p + 3] = d.length
    places[p + 4] = hidden ? 1 : 0
    const n = k * NUMBERS
    numbers[n] = at[0]
    numbers[n + 1] = at[1]
    numbers[n + 2] = place[0]
    numbers[n + 3] = place[1]
    numbers[n + 4] = place[2]
    numbers[n + 5] = radius
  })
  return { panels: panels.list, operations: operations.list, text: words.join(''), places, numbers }
}

export function holesOfColumns({ panels, operations, text, places, numbers }: HoleColumns): SceneHole[] {
  const holes: SceneHole[] = []
  let read = 0
  const next = (length: number): string => {
    read += length
    return text.slice(read - length, read)
  }
  const place = (k: number): number => places[k] ?? 0
  const number = (k: number): number => numbers[k] ?? 0
  for (let p = 0, n = 0; p < places.length; p += PLACES, n += NUMBERS) {
    holes.push({
      id: next(place(p + 2)),
      panel: panels[place(p)] ?? '',
      operation: operations[place(p + 1)] ?? '',
      at: [number(n), number(n + 1)],
      place: [number(n + 2), number(n + 3), number(n + 4)],
      d: next(place(p + 3)),
      radius: number(n + 5),
      hidden: places[p + 4] === 1,
    })
  }
  return holes
}
