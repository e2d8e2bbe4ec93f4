import type { ItemBase } from '../types.ts'

/** Part `bottom`: a bore from the upper face, about the spindle; the bottom panel lies ahead. */
export interface LevellingFoot extends ItemBase {
  readonly kind: 'levelling foot'
  /** From the floor to the underside of the bottom with the spindle in the middle of its travel, mm. */
  readonly height: number
  /** The whole travel, half of it up and half down from the middle, mm. */
  readonly travel: number
  readonly padDiameter: number
  /** What lies about the bore on the upper face: the flange of a tee nut, the rim of an insert, mm. */
  readonly flangeDiameter: number
  readonly loadKg: number
}
