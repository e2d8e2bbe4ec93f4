/** A point or a direction in three dimensions; mm for points, unitless for directions. */
export type Vec3 = readonly [x: number, y: number, z: number]

export const add = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
export const sub = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
export const scale = (a: Vec3, k: number): Vec3 => [a[0] * k, a[1] * k, a[2] * k]
export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
export const norm = (a: Vec3): number => Math.hypot(a[0], a[1], a[2])
export const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]

/** The six directions along the axes, exact, so that quarter turns never go through sine and cosine. */
export const X: Vec3 = [1, 0, 0]
export const Y: Vec3 = [0, 1, 0]
export const Z: Vec3 = [0, 0, 1]
export const MINUS_X: Vec3 = [-1, 0, 0]
export const MINUS_Y: Vec3 = [0, -1, 0]
export const MINUS_Z: Vec3 = [0, 0, -1]
