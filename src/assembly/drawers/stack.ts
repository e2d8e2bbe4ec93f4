import { NOISE_MM } from '../../geometry/index.ts'
import type { Bay, DrawerPlace, DrawersSpec } from '../../project/index.ts'
import type { Opening } from '../carcase/index.ts'
import { overlays } from '../fronts/index.ts'

/** An extent in the module frame, mm. */
export interface Rectangle {
  readonly x0: number
  readonly x1: number
  readonly z0: number
  readonly z1: number
}

/** Where one drawer of a stack goes, module frame, mm. */
export interface StackedDrawer {
  /** Of its front; nothing for an inner drawer. */
  readonly front: Rectangle | undefined
  /** What of the opening's height is its own. */
  readonly z0: number
  readonly z1: number
}

/**
 * Heights of a stack, mm, in its order: sizes as given, the rest of `total` less the gaps by shares. Where all have a
 * height, what remains stays free. A number instead when they take more than there is: by how much.
 */
export function stackHeights(total: number, gap: number, stack: readonly DrawerPlace[]): number[] | number {
  const fixed = stack.reduce((sum, place) => sum + (place.height ?? 0), 0)
  const shares = stack.reduce((sum, place) => sum + (place.height === undefined ? place.share : 0), 0)
  const rest = total - fixed - (stack.length - 1) * gap
  if (rest < -NOISE_MM || (shares > 0 && rest <= NOISE_MM)) return -rest
  return stack.map((place) => place.height ?? (rest * place.share) / shares)
}

/**
 * The drawers of an opening from the top down. Fronts lie over the panels around the opening by the rules of fronts,
 * with the gap between two of them; the place of a drawer is what of the opening lies behind its front. Inner drawers
 * share the opening itself; what they leave stays free above them.
 */
export function stackOf(spec: DrawersSpec, bay: Bay, opening: Opening): StackedDrawer[] | { readonly excess: number } {
  const { fronts } = spec
  const lap = fronts === undefined ? undefined : overlays(fronts, bay, opening)
  const low = opening.z0 - (lap?.bottom ?? 0)
  const high = opening.z1 + (lap?.top ?? 0)
  const gap = fronts?.gap ?? 0
  const heights = stackHeights(high - low, gap, spec.stack)
  if (typeof heights === 'number') return { excess: heights }
  const taken = heights.reduce((sum, height) => sum + height, 0) + (heights.length - 1) * gap
  // Only inner drawers can leave something: they stand on each other from the bottom.
  let top = fronts === undefined ? low + taken : high
  return heights.map((height, k) => {
    // The last ends where the fronts end, so that no rounding adds up.
    const bottom = k === heights.length - 1 ? low : top - height
    const one: StackedDrawer = {
      front: lap && { x0: opening.x0 - lap.left, x1: opening.x1 + lap.right, z0: bottom, z1: top },
      z0: Math.max(bottom, opening.z0),
      z1: Math.min(top, opening.z1),
    }
    top = bottom - gap
    return one
  })
}
