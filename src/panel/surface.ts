import { NOISE_MM, type Vec3 } from '../geometry/index.ts'
import type { Surface } from './types.ts'

/**
 * The surface that a bit enters when it goes along `axis` (unit, panel frame): the one that faces it squarely, or the
 * face that it is nearest to when it leans.
 */
export function surfaceEntered(axis: Vec3): Surface {
  const [x, y, z] = axis
  if (Math.abs(x) > 1 - NOISE_MM) return x > 0 ? 'x0' : 'x1'
  if (Math.abs(y) > 1 - NOISE_MM) return y > 0 ? 'y0' : 'y1'
  return z < 0 ? 'A' : 'B'
}
