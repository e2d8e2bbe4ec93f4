import { turn, type Vec3, X, Y } from '../geometry/index.ts'
import type { EdgeSide, PlacedPanel } from './types.ts'

/** Names of edges as they look in the module. */
export type EdgeName = 'front' | 'back' | 'left' | 'right' | 'top' | 'bottom'

/** Outward directions of the four edges in the panel frame. */
const OUTWARD: Record<EdgeSide, Vec3> = { x0: [-1, 0, 0], x1: X, y0: [0, -1, 0], y1: Y }

/** The edges of a panel by the way they look in the module: −y is front, +z top, and so on. */
export function edgeNames(panel: Pick<PlacedPanel, 'moduleFromPanel'>): Record<EdgeSide, EdgeName> {
  const name = (side: EdgeSide): EdgeName => {
    const [x, y, z] = turn(panel.moduleFromPanel, OUTWARD[side])
    if (Math.abs(x) > 0.5) return x > 0 ? 'right' : 'left'
    if (Math.abs(y) > 0.5) return y > 0 ? 'back' : 'front'
    return z > 0 ? 'top' : 'bottom'
  }
  return { x0: name('x0'), x1: name('x1'), y0: name('y0'), y1: name('y1') }
}
