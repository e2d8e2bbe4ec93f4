import { type Box, placeBack, type Solid, type Vec3 } from '../../src/geometry/index.ts'

/** Rounds of each search; 0.618 to this power of 100 mm is below a thousandth of float noise. */
const ROUNDS = 46

/**
 * Least distance between two convex solids in a way of its own: over all points of the one, height by height, line by
 * line, the distance to the other by its formula. Each search goes over a convex function, so that the golden section
 * finds its least value.
 */
export function nestedGap(a: Solid, b: Solid): number {
  return leastOver(0, 1, (t) => {
    const { point, wide, high } = layerOf(a, t)
    return leastOver(-1, 1, (x) => {
      const half = high(x)
      return half === 0
        ? distanceTo(point(wide * x, 0), b)
        : leastOver(-half, half, (y) => distanceTo(point(wide * x, y), b))
    })
  })
}

function leastOver(from: number, to: number, value: (at: number) => number): number {
  const golden = (Math.sqrt(5) - 1) / 2
  let [low, high] = [from, to]
  let [p, q] = [high - golden * (high - low), low + golden * (high - low)]
  let [atP, atQ] = [value(p), value(q)]
  for (let round = 0; round < ROUNDS && high - low > 1e-8; round += 1) {
    if (atP <= atQ) {
      ;[high, q, atQ] = [q, p, atP]
      p = high - golden * (high - low)
      atP = value(p)
    } else {
      ;[low, p, atP] = [p, q, atQ]
      q = low + golden * (high - low)
      atQ = value(q)
    }
  }
  return Math.min(atP, atQ)
}

interface Layer {
  readonly point: (x: number, y: number) => Vec3
  /** Half the width of the layer, mm, and half its height at a share of that. */
  readonly wide: number
  readonly high: (share: number) => number
}

/** A flat slice of a solid at a share of its length. */
function layerOf(solid: Solid, t: number): Layer {
  if (solid.kind === 'box') {
    const { min, max } = solid.box
    const [cx, cy] = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2]
    const z = min[2] + (max[2] - min[2]) * t
    const { pose } = solid
    return {
      point: (x, y) => along(pose.origin, [pose.x, cx + x], [pose.y, cy + y], [pose.z, z]),
      wide: (max[0] - min[0]) / 2,
      high: () => (max[1] - min[1]) / 2,
    }
  }
  const { from, axis, length, radius, endRadius } = roundOf(solid)
  const u = square(axis)
  const v: Vec3 = [axis[1] * u[2] - axis[2] * u[1], axis[2] * u[0] - axis[0] * u[2], axis[0] * u[1] - axis[1] * u[0]]
  const here = radius + (endRadius - radius) * t
  return {
    point: (x, y) => along(from, [axis, length * t], [u, x], [v, y]),
    wide: here,
    high: (share) => here * Math.sqrt(Math.max(0, 1 - share * share)),
  }
}

interface Round {
  readonly from: Vec3
  readonly axis: Vec3
  readonly length: number
  readonly radius: number
  readonly endRadius: number
}

/** Cylinders, and tapers between discs on one axis. */
function roundOf(solid: Solid): Round {
  if (solid.kind === 'cylinder') return { ...solid, endRadius: solid.radius }
  if (solid.kind !== 'taper') throw new Error(`no round solid: ${solid.kind}`)
  const { a, b } = solid
  const way = along(b.middle, [a.middle, -1])
  const length = Math.hypot(...way)
  const axis = along([0, 0, 0], [way, 1 / length])
  return { from: a.middle, axis, length, radius: Math.hypot(...a.u), endRadius: Math.hypot(...b.u) }
}

function square([x, y, z]: Vec3): Vec3 {
  const side: Vec3 = Math.abs(x) > 0.6 ? [y, -x, 0] : [0, z, -y]
  return along([0, 0, 0], [side, 1 / Math.hypot(...side)])
}

const along = (from: Vec3, ...parts: (readonly [Vec3, number])[]): Vec3 =>
  parts.reduce<Vec3>(([x, y, z], [way, k]) => [x + way[0] * k, y + way[1] * k, z + way[2] * k], from)

/** Distance from a point to a solid by the formula of its shape. */
export function distanceTo(p: Vec3, solid: Solid): number {
  if (solid.kind === 'box') return toBox(placeBack(solid.pose, p), solid.box)
  const { from, axis, length, radius, endRadius } = roundOf(solid)
  const rel = along(p, [from, -1])
  const t = rel[0] * axis[0] + rel[1] * axis[1] + rel[2] * axis[2]
  const off = Math.hypot(...along(rel, [axis, -t]))
  // In the half plane through the axis the solid is a trapezium: (0, 0) to (length, 0), with the slanted side above.
  if (t >= 0 && t <= length && off <= radius + ((endRadius - radius) * t) / length) return 0
  const toSegment = (ax: number, ay: number, bx: number, by: number): number => {
    const [dx, dy] = [bx - ax, by - ay]
    const k = Math.min(1, Math.max(0, ((t - ax) * dx + (off - ay) * dy) / (dx * dx + dy * dy)))
    return Math.hypot(t - ax - k * dx, off - ay - k * dy)
  }
  return Math.min(
    toSegment(0, 0, 0, radius),
    toSegment(length, 0, length, endRadius),
    toSegment(0, radius, length, endRadius),
  )
}

function toBox(p: Vec3, { min, max }: Box): number {
  const beyond = (axis: 0 | 1 | 2): number => Math.max(0, min[axis] - p[axis], p[axis] - max[axis])
  return Math.hypot(beyond(0), beyond(1), beyond(2))
}
