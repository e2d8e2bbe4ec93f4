import { NOISE_MM } from '../geometry/index.ts'
import type { Field, Window } from './field.ts'
import { AXES, extent, hull } from './rects.ts'
import { type Span, spans } from './spans.ts'
import type { FacePoint, Rect } from './types.ts'

/**
 * A plain grid of full pages over the whole field, in rows and columns that overlap, the better way round. With `keep`,
 * rows and columns are moved so that no thing is cut. The last of a row is moved back until it is full.
 */
export function gridOf({ whole, rooms, overlap, things }: Field, keep: 'keep' | 'plain'): Window[] {
  const along = (axis: 0 | 1, size: number): Span[] =>
    spans(
      [whole.min[axis], whole.max[axis]],
      size,
      overlap,
      keep === 'keep' ? things.map((box) => [box.min[axis], box.max[axis]]) : [],
    )
  const grids = rooms.map(({ size, turned }): Window[] => {
    const columns = along(0, size[0])
    const rows = along(1, size[1])
    return rows.flatMap(([, high]) =>
      columns.map(([, right]): Window => {
        const max: FacePoint = [Math.max(right, whole.min[0] + size[0]), Math.max(high, whole.min[1] + size[1])]
        return { min: [max[0] - size[0], max[1] - size[1]], max, turned }
      }),
    )
  })
  const [first, second] = grids
  if (first === undefined) throw new Error('no way round to hold a sheet')
  return second !== undefined && second.length < first.length ? second : first
}

/**
 * No pages of the face could be fewer: things of which no two lie whole on one page, whichever way round. Sought
 * greedily in several orders; the most that are found.
 */
export function leastPages(field: Field): number {
  const { things } = field
  const fits = (a: Rect, b: Rect): boolean => {
    const both = hull(a, b)
    return field.rooms.some(({ size }) => AXES.every((axis) => extent(both, axis) <= size[axis] + NOISE_MM))
  }
  const mates = things.map((a) => things.map((b) => fits(a, b)))
  const crowd = mates.map((row) => row.filter((one) => one).length)
  const orders: ((index: number) => number)[] = [
    (k) => crowd[k] ?? 0,
    ...[
      [1, 0],
      [0, 1],
      [1, 1],
      [1, -1],
    ].flatMap(([x = 0, y = 0]) =>
      [1, -1].map((sign) => (k: number): number => {
        const box = things[k]
        return box === undefined ? 0 : sign * (x * (box.min[0] + box.max[0]) + y * (box.min[1] + box.max[1]))
      }),
    ),
  ]
  const sizes = orders.map((rank) => {
    const chosen: number[] = []
    for (const k of things.map((_, index) => index).sort((a, b) => rank(a) - rank(b)))
      if (chosen.every((one) => mates[one]?.[k] === false)) chosen.push(k)
    return chosen.length
  })
  return Math.max(0, ...sizes)
}
