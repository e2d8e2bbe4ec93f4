import type { PlacedPanel } from '../assembly/index.ts'
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

/** Extent of a blank along a direction of its own frame that is square to its faces, mm, as [from, to]. */
export function extentAlong(panel: PlacedPanel, direction: Vec3): readonly [number, number] {
  const min: Vec3 = [0, 0, -panel.thickness]
  const max: Vec3 = [panel.length, panel.width, 0]
  let from = 0
  let to = 0
  for (const axis of [0, 1, 2] as const) {
    from += direction[axis] * (direction[axis] > 0 ? min[axis] : max[axis])
    to += direction[axis] * (direction[axis] > 0 ? max[axis] : min[axis])
  }
  return [from, to]
}
