import { boundsOf } from '../geometry/index.ts'
import { TEXT_ASCENT, TEXT_DESCENT, textWidth } from './text-width.ts'
import type { Entity, Point, Text } from './types.ts'

/** A rectangle along the axes, mm. */
export interface Area {
  readonly min: Point
  readonly max: Point
}

/** Height that a line of text takes, for a font size of 1. */
export const LINE_HEIGHT = TEXT_ASCENT + TEXT_DESCENT

/** All of a line of text, tails and accents included; mm. */
export function textArea(text: Text): Area {
  const width = textWidth(text.text, text.height, text.bold)
  const before = text.anchor === 'start' ? 0 : text.anchor === 'middle' ? width / 2 : width
  const [x, y] = text.at
  const [up, down] = [TEXT_ASCENT * text.height, TEXT_DESCENT * text.height]
  return text.turnDeg === 90
    ? { min: [x - up, y - before], max: [x + down, y - before + width] }
    : { min: [x - before, y - down], max: [x - before + width, y + up] }
}

/** The rectangle around an entity, mm. */
export function areaOfEntity(entity: Entity): Area {
  switch (entity.kind) {
    case 'circle':
      return grown({ min: entity.at, max: entity.at }, entity.radius)
    case 'line':
      return around([entity.from, entity.to])
    case 'path':
      return boundsOf(entity.vertices)
    case 'text':
      return textArea(entity)
    default:
      return entity satisfies never
  }
}

/** The smallest rectangle that holds all points; throws when there is none. */
export function around(points: readonly Point[]): Area {
  if (points.length === 0) throw new Error('no point to put a rectangle around')
  let [left, low, right, high] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const [x, y] of points) {
    if (x < left) left = x
    if (x > right) right = x
    if (y < low) low = y
    if (y > high) high = y
  }
  return { min: [left, low], max: [right, high] }
}

/** The smallest rectangle that holds all the areas. */
export function union(areas: readonly Area[]): Area {
  return around(areas.flatMap((area) => [area.min, area.max]))
}

/** Larger by `by` mm on each side. */
export function grown(area: Area, by: number): Area {
  return { min: [area.min[0] - by, area.min[1] - by], max: [area.max[0] + by, area.max[1] + by] }
}

/** True when two areas share more than an edge. */
export function overlaps(a: Area, b: Area): boolean {
  return a.min[0] < b.max[0] && b.min[0] < a.max[0] && a.min[1] < b.max[1] && b.min[1] < a.max[1]
}

/** What two areas share; nothing where that is no more than an edge. */
export function common(a: Area, b: Area): Area | undefined {
  if (!overlaps(a, b)) return undefined
  return {
    min: [Math.max(a.min[0], b.min[0]), Math.max(a.min[1], b.min[1])],
    max: [Math.min(a.max[0], b.max[0]), Math.min(a.max[1], b.max[1])],
  }
}

/** True when `inner` lies in `outer`, edges included. */
export function holds(outer: Area, inner: Area): boolean {
  return (
    inner.min[0] >= outer.min[0] &&
    inner.min[1] >= outer.min[1] &&
    inner.max[0] <= outer.max[0] &&
    inner.max[1] <= outer.max[1]
  )
}

/** True when a disc reaches into an area. */
export function discMeets(area: Area, at: Point, radius: number): boolean {
  const [dx, dy] = outside(area, at)
  return dx * dx + dy * dy < radius * radius
}

/** Distance of a point from an area, mm; 0 inside it. */
export function distanceTo(area: Area, at: Point): number {
  return Math.hypot(...outside(area, at))
}

/** How far a point lies outside an area along each axis, mm. */
function outside({ min, max }: Area, [x, y]: Point): Point {
  return [Math.max(min[0] - x, 0, x - max[0]), Math.max(min[1] - y, 0, y - max[1])]
}

/** True when a straight line passes through an area (Liang and Barsky's clipping, from memory). */
export function lineMeets(area: Area, from: Point, to: Point): boolean {
  let enter = 0
  let leave = 1
  for (const axis of [0, 1] as const) {
    const delta = to[axis] - from[axis]
    const low = area.min[axis] - from[axis]
    const high = area.max[axis] - from[axis]
    if (delta === 0) {
      if (low >= 0 || high <= 0) return false
    } else {
      enter = Math.max(enter, Math.min(low / delta, high / delta))
      leave = Math.min(leave, Math.max(low / delta, high / delta))
    }
  }
  return enter < leave
}

/** Distance of a point from a straight line between two points, mm. */
export function distanceToLine(at: Point, from: Point, to: Point): number {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const squared = dx * dx + dy * dy
  const along = squared === 0 ? 0 : ((at[0] - from[0]) * dx + (at[1] - from[1]) * dy) / squared
  const t = Math.min(1, Math.max(0, along))
  return Math.hypot(at[0] - from[0] - t * dx, at[1] - from[1] - t * dy)
}

/** True when two straight lines between points cross. */
export function linesCross(a: Point, b: Point, c: Point, d: Point): boolean {
  const side = (p: Point, q: Point, r: Point): number => (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0
}
