import { add, cross, dot, scale, sub, type Vec3 } from '../vec.ts'

/** The corners of a simplex among which the point nearest to the origin lies, and that point. */
export interface Nearest {
  readonly corners: readonly Vec3[]
  readonly point: Vec3
}

const FACES: readonly (readonly [number, number, number])[] = [
  [0, 1, 2],
  [0, 1, 3],
  [0, 2, 3],
  [1, 2, 3],
]

/**
 * The point of a simplex (1 to 4 corners) nearest to the origin. Goes through all its corners, edges and faces and takes
 * the best, which costs a little more than finding the right one by signs, and is never led astray by float noise in
 * them. All four corners are given back where the origin lies within a tetrahedron.
 */
export function nearestToOrigin(corners: readonly Vec3[]): Nearest {
  if (corners.length === 4 && holdsOrigin(corners)) return { corners, point: [0, 0, 0] }
  let best: Nearest | undefined
  let least = Number.POSITIVE_INFINITY
  const take = (found: Nearest | undefined): void => {
    if (found === undefined) return
    const square = dot(found.point, found.point)
    if (square < least) {
      least = square
      best = found
    }
  }
  for (const corner of corners) take({ corners: [corner], point: corner })
  for (const [k, a] of corners.entries()) for (const b of corners.slice(k + 1)) take(onEdge(a, b))
  for (const face of FACES) {
    const [a, b, c] = face.map((k) => corners[k])
    if (a !== undefined && b !== undefined && c !== undefined) take(onFace(a, b, c))
  }
  if (best === undefined) throw new Error('a simplex without corners')
  return best
}

function onEdge(a: Vec3, b: Vec3): Nearest | undefined {
  const along = sub(b, a)
  const square = dot(along, along)
  const share = -dot(a, along) / square
  // Not within the edge, or no edge: then a corner is nearest.
  return share > 0 && share < 1 ? { corners: [a, b], point: add(a, scale(along, share)) } : undefined
}

function onFace(a: Vec3, b: Vec3, c: Vec3): Nearest | undefined {
  const normal = cross(sub(b, a), sub(c, a))
  const square = dot(normal, normal)
  if (!(square > 0)) return undefined
  // The origin lies over the face where it lies on the inner side of all three of its edges.
  const within = dot(cross(a, b), normal) > 0 && dot(cross(b, c), normal) > 0 && dot(cross(c, a), normal) > 0
  return within ? { corners: [a, b, c], point: scale(normal, dot(normal, a) / square) } : undefined
}

/** On the inner side of all four faces. */
function holdsOrigin([a, b, c, d]: readonly Vec3[]): boolean {
  if (a === undefined || b === undefined || c === undefined || d === undefined) return false
  return inner(a, b, c, d) && inner(a, b, d, c) && inner(a, c, d, b) && inner(b, c, d, a)
}

/** Whether the origin lies on that side of a plane on which the fourth corner does. */
function inner(a: Vec3, b: Vec3, c: Vec3, fourth: Vec3): boolean {
  const normal = cross(sub(b, a), sub(c, a))
  const own = dot(normal, sub(fourth, a))
  return own !== 0 && -dot(normal, a) * own >= 0
}
