import type { Vec3 } from '../../geometry/index.ts'
import type { Surface } from '../../panel/index.ts'

/** The way that each surface looks, panel frame. */
export const OUTWARD: Readonly<Record<Surface, Vec3>> = {
  A: [0, 0, 1],
  B: [0, 0, -1],
  x0: [-1, 0, 0],
  x1: [1, 0, 0],
  y0: [0, -1, 0],
  y1: [0, 1, 0],
}
