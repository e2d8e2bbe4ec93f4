import type { Vec2 } from '../../geometry/index.ts'

/** Turns smaller than this are contact from the start, radians: a micrometre on the longest door. */
const START_RAD = 1e-6
const WHOLE_TURN = 2 * Math.PI

/**
 * The angle (radians, above 0) by which a polygon turns about the origin, counter-clockwise, until it first touches one
 * that stands still; nothing where it never does. Exact: first either a corner of one comes onto an edge of the other, and
 * corners run on circles. Both are given by their corners in order, and do not overlap at the start.
 */
export function firstTurn(moving: readonly Vec2[], still: readonly Vec2[]): number | undefined {
  const turns = [
    ...moving.flatMap((corner) =>
      edgesOf(still).flatMap((edge) => atRadius(edge, norm(corner)).map((at) => angleFrom(corner, at))),
    ),
    ...still.flatMap((corner) =>
      edgesOf(moving).flatMap((edge) => atRadius(edge, norm(corner)).map((at) => angleFrom(at, corner))),
    ),
  ].filter((turn) => turn > START_RAD && turn < WHOLE_TURN - START_RAD)
  return turns.length === 0 ? undefined : Math.min(...turns)
}

const norm = ([x, y]: Vec2): number => Math.hypot(x, y)

type Edge = readonly [from: Vec2, to: Vec2]

const edgesOf = (corners: readonly Vec2[]): Edge[] =>
  corners.map((from, k): Edge => [from, corners[(k + 1) % corners.length] ?? from])

/** The points of an edge that lie so far from the origin. */
function atRadius([from, to]: Edge, radius: number): Vec2[] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const square = dx * dx + dy * dy
  const half = (from[0] * dx + from[1] * dy) / square
  const rest = half * half - (from[0] * from[0] + from[1] * from[1] - radius * radius) / square
  if (!(rest >= 0)) return []
  const root = Math.sqrt(rest)
  return [-half - root, -half + root]
    .filter((share) => share >= 0 && share <= 1)
    .map((share): Vec2 => [from[0] + share * dx, from[1] + share * dy])
}

/** Counter-clockwise from one point to another about the origin, radians from 0 to a whole turn. */
function angleFrom(from: Vec2, to: Vec2): number {
  const turn = Math.atan2(to[1], to[0]) - Math.atan2(from[1], from[0])
  return ((turn % WHOLE_TURN) + WHOLE_TURN) % WHOLE_TURN
}
