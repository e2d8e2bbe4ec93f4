/** A rectangle over a face, panel frame, mm. */
interface Area {
  readonly min: readonly [x: number, y: number, ...rest: number[]]
  readonly max: readonly [x: number, y: number, ...rest: number[]]
}

type Point = readonly [x: number, y: number, ...rest: number[]]

/** From a point to the nearest point of a rectangle, mm; 0 within it. */
export function distanceToArea({ min, max }: Area, [x, y]: Point): number {
  return Math.hypot(Math.max(min[0] - x, 0, x - max[0]), Math.max(min[1] - y, 0, y - max[1]))
}

/** How far a disc must at least be moved along x or y to be clear of a rectangle, mm; 0 where it is. */
export function moveClear({ min, max }: Area, at: Point, radius: number): number {
  if (distanceToArea({ min, max }, at) >= radius) return 0
  const along = (axis: 0 | 1): number => {
    const other = axis === 0 ? 1 : 0
    const beside = Math.max(min[other] - at[other], 0, at[other] - max[other])
    // Beside a corner less than the whole radius is enough.
    const room = Math.sqrt(Math.max(0, radius * radius - beside * beside))
    return Math.min(at[axis] - (min[axis] - room), max[axis] + room - at[axis])
  }
  return Math.min(along(0), along(1))
}
