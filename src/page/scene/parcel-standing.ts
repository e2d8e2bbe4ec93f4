import type { Pose, Vec3 } from '../../geometry/index.ts'
import { Names } from './names.ts'
import type { BoardPlace, GroupHole, HoleGroup, HoleShape, Rim } from './types.ts'

/** Shapes of holes as columns; each a few numbers a hole. */
export interface ShapeColumns {
  readonly panels: readonly string[]
  /** How many holes each has. */
  readonly counts: Uint32Array
  readonly operations: readonly string[]
  /** Ids and rims, one after another. */
  readonly text: string
  /** Operation, length of the id, of the rim and of the rim of the sink (0: it has none), hidden or not. */
  readonly places: Uint32Array
  /** Where it is drawn, its place, radius; of both rims start and reach. */
  readonly numbers: Float64Array
}

const PLACES = 5
const NUMBERS = 12

export function shapeColumns(shapes: readonly HoleShape[]): ShapeColumns {
  const operations = new Names()
  const words: string[] = []
  const count = shapes.reduce((sum, { holes }) => sum + holes.length, 0)
  const places = new Uint32Array(count * PLACES)
  const numbers = new Float64Array(count * NUMBERS)
  let [p, n] = [0, 0]
  for (const { holes } of shapes) {
    for (const { id, operation, drawn, onFloor, rims, radius, hidden } of holes) {
      const [rim, mouth] = rims
      words.push(id, rim.rest, mouth?.rest ?? '')
      places.set(
        [operations.placeOf(operation), id.length, rim.rest.length, mouth?.rest.length ?? 0, hidden ? 1 : 0],
        p,
      )
      numbers.set([...drawn, ...onFloor, radius, ...figuresOf(rim), ...(mouth ? figuresOf(mouth) : [])], n)
      p += PLACES
      n += NUMBERS
    }
  }
  return {
    panels: shapes.map(({ panel }) => panel),
    counts: Uint32Array.from(shapes, ({ holes }) => holes.length),
    operations: operations.list,
    text: words.join(''),
    places,
    numbers,
  }
}

const figuresOf = ({ start, reach }: Rim): readonly number[] => [...start, reach]

export function shapesOfColumns({ panels, counts, operations, text, places, numbers }: ShapeColumns): HoleShape[] {
  let [p, n, read] = [0, 0, 0]
  const next = (length: number): string => {
    read += length
    return text.slice(read - length, read)
  }
  const place = (k: number): number => places[p + k] ?? 0
  const number = (k: number): number => numbers[n + k] ?? 0
  const rimAt = (k: number, rest: string): Rim => ({ start: [number(k), number(k + 1)], rest, reach: number(k + 2) })
  const hole = (): GroupHole => {
    const id = next(place(1))
    const [rim, mouth] = [rimAt(6, next(place(2))), rimAt(9, next(place(3)))]
    const made: GroupHole = {
      id,
      operation: operations[place(0)] ?? '',
      drawn: [number(0), number(1)],
      onFloor: [number(2), number(3), number(4)],
      rims: place(3) === 0 ? [rim] : [rim, mouth],
      radius: number(5),
      hidden: place(4) === 1,
    }
    p += PLACES
    n += NUMBERS
    return made
  }
  return panels.map((panel, k) => ({ panel, holes: Array.from({ length: counts[k] ?? 0 }, hole) }))
}

const GROUP = 5

/** Where each group stands: on the drawing and on the floor. */
export const groupNumbers = (groups: readonly HoleGroup[]): Float64Array =>
  inRows(groups, GROUP, ({ at, place }) => [...at, ...place])

export const groupsOf = (shapes: readonly HoleShape[], numbers: Float64Array): HoleGroup[] =>
  shapes.map((shape, k) => {
    const [x = 0, y = 0, a = 0, b = 0, c = 0] = numbers.subarray(GROUP * k, GROUP * (k + 1))
    return { shape, at: [x, y], place: [a, b, c] }
  })

const BOARD = 27

export const boardNumbers = (boards: readonly BoardPlace[]): Float64Array =>
  inRows(boards, BOARD, ({ size, floorFromPanel, eyeFromPanel }) => [
    ...size,
    ...poseNumbers(floorFromPanel),
    ...poseNumbers(eyeFromPanel),
  ])

export const boardsOf = (numbers: Float64Array): BoardPlace[] =>
  Array.from({ length: numbers.length / BOARD }, (_, k) => {
    const point = (n: number): Vec3 => {
      const from = BOARD * k + 3 * n
      return [numbers[from] ?? 0, numbers[from + 1] ?? 0, numbers[from + 2] ?? 0]
    }
    const pose = (n: number): Pose => ({ x: point(n), y: point(n + 1), z: point(n + 2), origin: point(n + 3) })
    return { size: point(0), floorFromPanel: pose(1), eyeFromPanel: pose(5) }
  })

const poseNumbers = ({ x, y, z, origin }: Pose): readonly number[] => [...x, ...y, ...z, ...origin]

function inRows<T>(items: readonly T[], width: number, numbersOf: (item: T) => readonly number[]): Float64Array {
  const numbers = new Float64Array(items.length * width)
  items.forEach((item, k) => {
    numbers.set(numbersOf(item), k * width)
  })
  return numbers
}
