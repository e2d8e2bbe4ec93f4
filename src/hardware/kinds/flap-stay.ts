import type { ItemBase } from '../types.ts'

/**
 * What holds a flap open. Parts `carcase` (the bracket on the inner face of the side; x from front to back, y upright)
 * and `flap` (the bracket on the flap's hidden face; x across, y upright). Both patterns are the same turned about
 * x and about y, so that one record serves both hands.
 */
export interface FlapStay extends ItemBase {
  readonly kind: 'flap stay'
  /** The edge with the hinges: of a flap that it lifts, or of one that it lets down. */
  readonly hang: 'top' | 'bottom'
  /** Middle of the bracket on the side, mm: behind the flap's hidden face, and from the face that the hinge plates sit on. */
  readonly carcase: { readonly back: number; readonly fromHinges: number }
  /** Middle of the bracket on the flap, mm: from the inner face of the side, and from the face that the hinge plates sit on. */
  readonly flap: { readonly fromSide: number; readonly fromHinges: number }
  /** The brackets reach so far from their middles, along x and y of their parts, mm. */
  readonly bracket: { readonly x: number; readonly y: number }
  /** Flaps wider than this take one on either side, mm. */
  readonly bothFrom: number
}
