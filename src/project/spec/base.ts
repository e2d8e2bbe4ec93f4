import type { Caster, LevellingFoot } from '../../hardware/index.ts'
import type { JointSpec } from './carcase.ts'
import type { DefinitionPath, Stock } from './stock.ts'

export type BaseSpec = { readonly kind: 'none' } | CastersSpec | PlinthSpec | FeetSpec

export interface CastersSpec {
  readonly kind: 'casters'
  /** Swivel or levelling. */
  readonly item: Caster
  /** From the footprint's edges to the king pin; `auto`: swivel radius + `footprintGap`. */
  readonly inset: number | 'auto'
  /** Kept between the swivel circle, or the wheel and plate of a fixed caster, and the edge of the footprint. */
  readonly footprintGap: number
  /** Two fixed casters in the place of two of the four: under the left end, the right end, or along the back. */
  readonly fixed?: { readonly item: Caster; readonly end: 'left' | 'right' | 'back' }
  readonly at: DefinitionPath
}

/** A frame of four boards under the bottom: the front and back run through, the sides stand between them. */
export interface PlinthSpec {
  readonly kind: 'plinth'
  readonly height: number
  readonly stock: Stock
  /** From the front of the footprint, fronts included: the room for toes. */
  readonly frontRecess: number
  readonly sideRecess: number
  /** From the back of the footprint. */
  readonly backRecess: number
  /** Of its boards with each other. */
  readonly joint: JointSpec
  /** Through the bottom into its upper edges. */
  readonly fix: JointSpec
  readonly at: DefinitionPath
}

export interface FeetSpec {
  readonly kind: 'feet'
  readonly item: LevellingFoot
  /** From the footprint's edges to the spindle. */
  readonly inset: number
  readonly at: DefinitionPath
}
