import type { PathVertex } from '../../geometry/index.ts'
import type { Area } from '../areas.ts'
import type { Target } from '../labels.ts'
import type { ClosedPath, Line, Pen, Point } from '../types.ts'

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

/** What a line leaves in a window's corner may be shorter than any printer shows, mm. */
const SHORTEST = 0.005

/** The line inside an area as drawn entities: one, or none where it only grazes the area. */
export function strokeIn(area: Area, from: Point, to: Point, pen: Pen): Line[] {
  const piece = clippedLine(from, to, area)
  if (piece === undefined) return []
  const [start, end] = piece
  if (Math.hypot(end[0] - start[0], end[1] - start[1]) < SHORTEST) return []
  return [{ kind: 'line', from: start, to: end, pen }]
}

/** Lines without what lies inside the discs. */
export function outsideDiscs(lines: readonly Line[], discs: readonly Target[]): Line[] {
  return lines.flatMap((line) =>
    discs.reduce((pieces, disc) => pieces.flatMap((piece) => outside(piece, disc)), [line]),
  )
}

/** The pieces of a line before and after a disc. */
function outside(line: Line, { at, radius }: Target): Line[] {
  const [dx, dy] = [line.to[0] - line.from[0], line.to[1] - line.from[1]]
  const long = Math.hypot(dx, dy)
  const [ux, uy] = [dx / long, dy / long]
  const along = (at[0] - line.from[0]) * ux + (at[1] - line.from[1]) * uy
  const off = (at[0] - line.from[0]) * uy - (at[1] - line.from[1]) * ux
  if (Math.abs(off) >= radius) return [line]
  const half = Math.sqrt(radius * radius - off * off)
  const [enter, leave] = [Math.min(along - half, long), Math.max(along + half, 0)]
  const on = (t: number): Point => [line.from[0] + ux * t, line.from[1] + uy * t]
  return [
    ...(enter > SHORTEST ? [{ ...line, to: on(enter) }] : []),
    ...(leave < long - SHORTEST ? [{ ...line, from: on(leave) }] : []),
  ]
}

/** Lines without what lies inside an area. */
export function outsideArea(lines: readonly Line[], area: Area): Line[] {
  return lines.flatMap((line) => {
    const inside = clippedLine(line.from, line.to, area)
    if (inside === undefined) return [line]
    return [
      { ...line, to: inside[0] },
      { ...line, from: inside[1] },
    ].filter(({ from, to }) => Math.hypot(to[0] - from[0], to[1] - from[1]) > SHORTEST)
  })
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

/** Corners of a closed path, its arcs in chords as fine as those of a rim. */
export function chordsOf(vertices: readonly PathVertex[]): Point[] {
  return vertices.flatMap(({ at, bulge }, k) => {
    const to = vertices[(k + 1) % vertices.length]?.at ?? at
    if (bulge === 0) return [at]
    // The arc turns by 4 atan(bulge); its centre lies to the left of the chord for less than a half turn.
    const turn = 4 * Math.atan(bulge)
    const [dx, dy] = [to[0] - at[0], to[1] - at[1]]
    const off = (1 - bulge * bulge) / (4 * bulge)
    const centre: Point = [(at[0] + to[0]) / 2 - dy * off, (at[1] + to[1]) / 2 + dx * off]
    const count = Math.max(1, Math.ceil((CHORDS * Math.abs(turn)) / (2 * Math.PI)))
    const [rx, ry] = [at[0] - centre[0], at[1] - centre[1]]
    return Array.from({ length: count }, (_, step): Point => {
      const angle = (turn * step) / count
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
      return [centre[0] + rx * cos - ry * sin, centre[1] + rx * sin + ry * cos]
    })
  })
}

/** The piece of a straight line inside a convex shape, its corners counter-clockwise. Cyrus and Beck, from memory. */
export function clippedToShape(from: Point, to: Point, corners: readonly Point[]): readonly [Point, Point] | undefined {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  let enter = 0
  let leave = 1
  corners.forEach((corner, k) => {
    const next = corners[(k + 1) % corners.length] ?? corner
    const [ex, ey] = [next[0] - corner[0], next[1] - corner[1]]
    const inside = ex * (from[1] - corner[1]) - ey * (from[0] - corner[0])
    const speed = ex * dy - ey * dx
    if (speed > 0) enter = Math.max(enter, -inside / speed)
    else if (speed < 0) leave = Math.min(leave, -inside / speed)
    else if (inside < 0) leave = Number.NEGATIVE_INFINITY
  })
  if (enter >= leave) return undefined
  const at = (t: number): Point => [from[0] + dx * t, from[1] + dy * t]
  return [at(enter), at(leave)]
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
