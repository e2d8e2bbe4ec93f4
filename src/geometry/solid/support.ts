import type { Box } from '../box.ts'
import { arcHas, type Curve, circleArcOf } from '../curve.ts'
import type { Vec2 } from '../path.ts'
import { place, turnBack } from '../pose.ts'
import { add, dot, norm, scale, type Vec3 } from '../vec.ts'
import {
  type BoxSolid,
  type Capsule,
  type ConvexPrism,
  type Cylinder,
  discAcross,
  type Ellipse,
  type Solid,
  type Taper,
} from './types.ts'

/** A point of a solid that lies furthest in a direction (any length, not 0). */
export function furthest(solid: Solid, way: Vec3): Vec3 {
  switch (solid.kind) {
    case 'cylinder':
      return ofCylinder(solid, way)
    case 'taper':
      return ofTaper(solid, way)
    case 'box':
      return ofBox(solid, way)
    case 'prism':
      return ofPrism(solid, way)
    case 'capsule':
      return ofCapsule(solid, way)
  }
}

/** The box along the axes around a solid, mm. */
export function boundsOfSolid(solid: Solid): Box {
  if (solid.kind === 'cylinder') return boundsOfCylinder(solid)
  const high = ([0, 1, 2] as const).map((axis) => furthest(solid, unit(axis, 1))[axis])
  const low = ([0, 1, 2] as const).map((axis) => furthest(solid, unit(axis, -1))[axis])
  const [x1 = 0, y1 = 0, z1 = 0] = high
  const [x0 = 0, y0 = 0, z0 = 0] = low
  return { min: [x0, y0, z0], max: [x1, y1, z1] }
}

/** About its two ends by the radius, less by as much as the axis turns toward a direction. */
function boundsOfCylinder({ from, axis, length, radius }: Cylinder): Box {
  const low: [number, number, number] = [0, 0, 0]
  const high: [number, number, number] = [0, 0, 0]
  for (const k of [0, 1, 2] as const) {
    const across = radius * Math.sqrt(Math.max(0, 1 - axis[k] * axis[k]))
    const end = from[k] + axis[k] * length
    low[k] = Math.min(from[k], end) - across
    high[k] = Math.max(from[k], end) + across
  }
  return { min: low, max: high }
}

const unit = (axis: 0 | 1 | 2, sign: 1 | -1): Vec3 => [
  axis === 0 ? sign : 0,
  axis === 1 ? sign : 0,
  axis === 2 ? sign : 0,
]

function ofCylinder({ from, axis, length, radius }: Cylinder, way: Vec3): Vec3 {
  const end = dot(way, axis) > 0 ? add(from, scale(axis, length)) : from
  // By two directions across, not by what is left beside the axis: nearly along it, that is all noise, and out of the end.
  return ofEllipse(discAcross(end, axis, radius), way)
}

function ofTaper({ a, b }: Taper, way: Vec3): Vec3 {
  const [p, q] = [ofEllipse(a, way), ofEllipse(b, way)]
  return dot(p, way) >= dot(q, way) ? p : q
}

/** The middle plus the half axes, each by its share in the direction (support function of an ellipse). */
function ofEllipse({ middle, u, v }: Ellipse, way: Vec3): Vec3 {
  const [alongU, alongV] = [dot(u, way), dot(v, way)]
  const off = Math.sqrt(alongU * alongU + alongV * alongV)
  return off === 0 ? middle : add(middle, add(scale(u, alongU / off), scale(v, alongV / off)))
}

function ofBox({ pose, box: { min, max } }: BoxSolid, way: Vec3): Vec3 {
  const own = turnBack(pose, way)
  const corner = (axis: 0 | 1 | 2): number => (own[axis] > 0 ? max[axis] : min[axis])
  return place(pose, [corner(0), corner(1), corner(2)])
}

function ofPrism({ pose, pieces, low, high }: ConvexPrism, way: Vec3): Vec3 {
  const [x, y, z] = turnBack(pose, way)
  let best: Vec2 = pieces[0]?.from ?? [0, 0]
  let most = Number.NEGATIVE_INFINITY
  for (const piece of pieces) {
    const at = ofCurve(piece, [x, y])
    const reach = at[0] * x + at[1] * y
    if (reach > most) {
      most = reach
      best = at
    }
  }
  return place(pose, [best[0], best[1], z > 0 ? high : low])
}

function ofCurve(piece: Curve, [x, y]: Vec2): Vec2 {
  const { from, to } = piece
  if (piece.bulge !== 0 && (x !== 0 || y !== 0)) {
    const arc = circleArcOf(piece)
    if (arcHas(arc, Math.atan2(y, x))) {
      const k = arc.radius / Math.hypot(x, y)
      return [arc.centre[0] + x * k, arc.centre[1] + y * k]
    }
  }
  return from[0] * x + from[1] * y >= to[0] * x + to[1] * y ? from : to
}

function ofCapsule({ from, to, radius }: Capsule, way: Vec3): Vec3 {
  const end = dot(from, way) >= dot(to, way) ? from : to
  return add(end, scale(way, radius / norm(way)))
}
