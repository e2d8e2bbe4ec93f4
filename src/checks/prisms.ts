import {
  type ClosedPath,
  distanceToContour,
  gapBetweenShapes,
  holdsPoint,
  NOISE_MM,
  rectanglePath,
  type Vec2,
  type Vec3,
} from '../geometry/index.ts'
import type { Cutout, Groove, Panel } from '../panel/index.ts'
import type { Cylinder } from './solids.ts'

/** What a cutout takes away: all that its path takes in, between two depths. Panel frame, mm. */
export interface Prism {
  readonly path: ClosedPath
  readonly low: number
  readonly high: number
}

export function prismOf(panel: Panel, { path, face, depth, through }: Cutout): Prism {
  if (through) return { path, low: -panel.thickness, high: 0 }
  return face === 'A' ? { path, low: -depth, high: 0 } : { path, low: -panel.thickness, high: depth - panel.thickness }
}

/** The box of a groove; its round ends count as square, which is never less than the truth. */
export function groovePrism(panel: Panel, { face, min, max, depth }: Groove): Prism {
  const path = rectanglePath(min, max, 0)
  return face === 'A' ? { path, low: -depth, high: 0 } : { path, low: -panel.thickness, high: depth - panel.thickness }
}

/** Least distance between two prisms, mm; 0 where they meet. Exact: both are products of a shape and a height. */
export function gapBetweenPrisms(a: Prism, b: Prism): number {
  return Math.hypot(gapBetweenShapes(a.path, b.path), heightGap(a, b.low, b.high))
}

const heightGap = ({ low, high }: Prism, from: number, to: number): number => Math.max(0, from - high, low - to)

/** Places along a leaning bore at which its distance is taken. */
const STEPS = 64

/**
 * Least distance between a solid cylinder and a prism, mm; 0 where they meet. Exact for bores square to the faces, and
 * for bores in edges beside what goes as deep as their axis; else never more than the truth, and less only about the
 * rims of the cylinder's ends and of the prism's floor.
 */
export function gapToPrism(cylinder: Cylinder, prism: Prism): number {
  const { from, axis, length, radius } = cylinder
  const end: Vec3 = [from[0] + axis[0] * length, from[1] + axis[1] * length, from[2] + axis[2] * length]
  if (Math.abs(axis[2]) > 1 - NOISE_MM) {
    const over = Math.max(0, pointGap(prism.path, [from[0], from[1]]) - radius)
    return Math.hypot(over, heightGap(prism, Math.min(from[2], end[2]), Math.max(from[2], end[2])))
  }
  if (Math.abs(axis[2]) <= NOISE_MM) return lyingGap(cylinder, end, prism)
  return leaningGap(cylinder, prism)
}

/** 0 inside a shape, else the distance to its contour. */
const pointGap = (path: ClosedPath, p: Vec2): number => (holdsPoint(path, p) ? 0 : distanceToContour(path, p))

/** A cylinder in an edge, along x or y: two bounds from below, one from its axis, one from its box; the larger holds. */
function lyingGap({ from, axis, radius }: Cylinder, end: Vec3, prism: Prism): number {
  const across: Vec2 = [Math.abs(axis[1]) * radius, Math.abs(axis[0]) * radius]
  const min: Vec2 = [Math.min(from[0], end[0]) - across[0], Math.min(from[1], end[1]) - across[1]]
  const max: Vec2 = [Math.max(from[0], end[0]) + across[0], Math.max(from[1], end[1]) + across[1]]
  const byBox = Math.hypot(
    gapBetweenShapes(rectanglePath(min, max, 0), prism.path),
    heightGap(prism, from[2] - radius, from[2] + radius),
  )
  // The axis as a strip too thin to matter: half a float noise wide.
  const thin = NOISE_MM
  const strip = rectanglePath(
    [Math.min(from[0], end[0]) - thin, Math.min(from[1], end[1]) - thin],
    [Math.max(from[0], end[0]) + thin, Math.max(from[1], end[1]) + thin],
    0,
  )
  const byAxis = Math.hypot(gapBetweenShapes(strip, prism.path), heightGap(prism, from[2], from[2])) - radius
  return Math.max(0, byBox, byAxis)
}

/** By points along the axis, less half the step between them, so that it is never more than the truth. */
function leaningGap({ from, axis, length, radius }: Cylinder, prism: Prism): number {
  const step = length / STEPS
  const gaps = Array.from({ length: STEPS + 1 }, (_, k) => {
    const at: Vec3 = [from[0] + axis[0] * step * k, from[1] + axis[1] * step * k, from[2] + axis[2] * step * k]
    return Math.hypot(pointGap(prism.path, [at[0], at[1]]), heightGap(prism, at[2], at[2]))
  })
  return Math.max(0, Math.min(...gaps) - radius - step / 2)
}
