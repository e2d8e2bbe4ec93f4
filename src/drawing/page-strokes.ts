import type { Area } from './areas.ts'
import type { ClosedPath, Line, Pen, Point } from './types.ts'

/** The piece of a straight line inside an area, or nothing. Liang and Barsky's clipping, from memory. */
export function clippedLine(from: Point, to: Point, area: Area): readonly [Point, Point] | undefined {
  let enter = 0
  let leave = 1
  for (const axis of [0, 1] as const) {
    const delta = to[axis] - from[axis]
    const low = area.min[axis] - from[axis]
    const high = area.max[axis] - from[axis]
    if (delta === 0) {
      if (low > 0 || high < 0) return undefined
    } else {
      enter = Math.max(enter, Math.min(low / delta, high / delta))
      leave = Math.min(leave, Math.max(low / delta, high / delta))
    }
  }
  if (enter >= leave) return undefined
  const at = (t: number): Point => [from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t]
  return [enter === 0 ? from : at(enter), leave === 1 ? to : at(leave)]
}

/** The line inside an area as drawn entities: one, or none. */
export function strokeIn(area: Area, from: Point, to: Point, pen: Pen): Line[] {
  const piece = clippedLine(from, to, area)
  return piece === undefined ? [] : [{ kind: 'line', from: piece[0], to: piece[1], pen }]
}

/** Chords of this many to a circle stay within 0.01 mm of a rim of 20 mm radius. */
const CHORDS = 120

/** The rim of a circle that an area cuts through, in short chords inside the area. */
export function rimIn(area: Area, at: Point, radius: number, pen: Pen): Line[] {
  const on = (index: number): Point => {
    const angle = (2 * Math.PI * index) / CHORDS
    return [at[0] + radius * Math.cos(angle), at[1] + radius * Math.sin(angle)]
  }
  return Array.from({ length: CHORDS }, (_, index) => strokeIn(area, on(index), on(index + 1), pen)).flat()
}

/** An arrow head, its point at `tip`, pointing along the unit direction. */
export function arrowHead(tip: Point, [dx, dy]: Point, length = 3): ClosedPath {
  const half = length * 0.3
  const back: Point = [tip[0] - dx * length, tip[1] - dy * length]
  const corners: Point[] = [tip, [back[0] - dy * half, back[1] + dx * half], [back[0] + dy * half, back[1] - dx * half]]
  return { kind: 'path', vertices: corners.map((at) => ({ at, bulge: 0 })), filled: true }
}

/** A filled dot, as two half circles. */
export function dot([x, y]: Point, radius: number): ClosedPath {
  const vertices = [
    { at: [x - radius, y] as Point, bulge: 1 },
    { at: [x + radius, y] as Point, bulge: 1 },
  ]
  return { kind: 'path', vertices, filled: true }
}

/** A rectangle. */
export function rectangle({ min, max }: Area, pen: Pen, filled = false): ClosedPath {
  const corners: Point[] = [min, [max[0], min[1]], max, [min[0], max[1]]]
  return { kind: 'path', vertices: corners.map((at) => ({ at, bulge: 0 })), pen, ...(filled && { filled }) }
}
