import type { PathVertex, Vec2 } from '../geometry/index.ts'

/** Straight pieces in place of an arc: on a corner of 50 mm they lie within 0.06 mm of it, on the inside. */
const PIECES = 16

/** The path as a polygon, its arcs cut into short chords. */
function polygonOf(path: readonly PathVertex[]): Vec2[] {
  return path.flatMap(({ at, bulge }, k) => {
    const to = path[(k + 1) % path.length]?.at ?? at
    if (bulge === 0) return [at]
    // Centre of the arc: on the middle line of its chord, by the tangent of half its angle.
    const half = (1 / bulge - bulge) / 4
    const centre: Vec2 = [(at[0] + to[0]) / 2 - half * (to[1] - at[1]), (at[1] + to[1]) / 2 + half * (to[0] - at[0])]
    const step = (4 * Math.atan(bulge)) / PIECES
    return Array.from({ length: PIECES }, (_, i): Vec2 => {
      const [c, s] = [Math.cos(i * step), Math.sin(i * step)]
      const [x, y] = [at[0] - centre[0], at[1] - centre[1]]
      return [centre[0] + c * x - s * y, centre[1] + s * x + c * y]
    })
  })
}

/** Whether a disc lies whole within a closed path; all in one frame, mm. */
export function discLiesIn(path: readonly PathVertex[], [x, y]: Vec2, radius: number): boolean {
  const corners = polygonOf(path)
  let inside = false
  for (const [k, a] of corners.entries()) {
    const b = corners[(k + 1) % corners.length] ?? a
    if (distanceToPiece([x, y], a, b) < radius) return false
    if (a[1] > y !== b[1] > y && x < a[0] + ((y - a[1]) * (b[0] - a[0])) / (b[1] - a[1])) inside = !inside
  }
  return inside
}

function distanceToPiece(p: Vec2, a: Vec2, b: Vec2): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  const share = ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy || 1)
  const t = Math.min(Math.max(share, 0), 1)
  return Math.hypot(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy)
}
