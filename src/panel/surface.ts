import type { EdgeSide, PlacedPanel } from '../assembly/index.ts'
import { NOISE_MM, turn, type Vec3, X, Y } from '../geometry/index.ts'
import type { EdgeName, Surface } from './types.ts'

/** Outward directions of the four edges in the panel frame. */
const OUTWARD: Record<EdgeSide, Vec3> = { x0: [-1, 0, 0], x1: X, y0: [0, -1, 0], y1: Y }

/** The edges of a panel by the way they look in the module: −y is front, +z top, and so on. */
export function edgeNames(panel: PlacedPanel): Record<EdgeSide, EdgeName> {
  const name = (side: EdgeSide): EdgeName => {
    const [x, y, z] = turn(panel.moduleFromPanel, OUTWARD[side])
    if (Math.abs(x) > 0.5) return x > 0 ? 'right' : 'left'
    if (Math.abs(y) > 0.5) return y > 0 ? 'back' : 'front'
    return z > 0 ? 'top' : 'bottom'
  }
  return { x0: name('x0'), x1: name('x1'), y0: name('y0'), y1: name('y1') }
}

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
