import type { ShelfPin } from '../../hardware/index.ts'
import type { DefinitionPath, Stock } from './stock.ts'

export interface PinRowSpec {
  readonly item: ShelfPin
  readonly pitch: number
  /** Height of hole 0 above the lower end of the module's sides; holes stand at datum + k × pitch. */
  readonly datum: number
  /** From the front of the opening to the front column. */
  readonly frontSetback: number
  /** From the inside of the back to the rear column. */
  readonly rearSetback: number
  /** No hole nearer than this to the fixed panel above or below. */
  readonly keepClear: number
  /** On the two faces of a partition, where both depths meet: one shared through hole, or rows half a pitch apart. */
  readonly bothFaces: 'share' | 'stagger'
}

export interface LooseShelvesSpec {
  readonly count: number
  readonly stock: Stock
  /** Space at each end. */
  readonly clearance: number
  /** From the front of the opening to the shelf's front edge. */
  readonly frontSetback: number
  readonly rearGap: number
  readonly pins: PinRowSpec
  /** On each of them, kg; by the module's loads where it is not said. */
  readonly load: number | undefined
  readonly at: DefinitionPath
}
