import type { ItemBase } from '../types.ts'

/** Raises an insert plate in its ledge. Part `ledge`: a bore for a threaded insert, from the ledge down. */
export interface LevellingScrew extends ItemBase {
  readonly kind: 'levelling screw'
  /** Length of the threaded insert: wood that it needs under the ledge, mm. */
  readonly length: number
}
