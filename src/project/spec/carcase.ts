import type { Item } from '../../hardware/index.ts'
import type { DefinitionPath, Stock } from './stock.ts'

/** How two boards are fastened where the edge of one meets the face of the other. Lengths in mm. */
export interface JointSpec {
  readonly item: Item
  /** From each end of the joint to the first and last fastener. */
  readonly endDistance: number
  /** Longest distance between fasteners. */
  readonly spacing: number
}

export type Lap = 'over' | 'between' | 'none'

export type BackSpec =
  | { readonly sits: 'none' }
  | {
      readonly sits: 'applied' | 'inset' | 'grooved' | 'rebated'
      readonly stock: Stock
      /** Inset: how far the back's outer face lies in front of the carcase's rear edges. */
      readonly recess: number
      /** Grooved: depth of the groove in sides, top and bottom. */
      readonly grooveDepth: number
      /** Grooved: from the carcase's rear edges to the near wall of the groove. */
      readonly grooveSetback: number
      /** Grooved: groove width beyond the thickest reading. */
      readonly groovePlay: number
      /** Rebated: width of the rebate, across the panel's thickness. */
      readonly rebateWidth: number
      /** Grooved and rebated: space left between the back's edge and the wood, each side. */
      readonly edgePlay: number
      /** How the back is fixed; nothing for a grooved back unless asked. */
      readonly joint: JointSpec | undefined
    }

/** Two flat rails between the sides in the place of a top. */
export interface RailsSpec {
  readonly width: number
  readonly stock: Stock
  readonly joint: JointSpec
}

/** An upright strip across between the sides, at the front edges or before the inside of the back. */
export interface StretcherSpec {
  readonly end: 'front' | 'back'
  /** Of its lower edge above the underside of the carcase, or right under the top. */
  readonly height: number | 'below top'
  readonly width: number
  readonly stock: Stock
  readonly joint: JointSpec
  readonly at: DefinitionPath
}

export interface CarcaseSpec {
  /** Over the ends of the sides, or between them; or two rails. */
  readonly top: Lap | 'rails'
  readonly bottom: Lap
  readonly back: BackSpec
  readonly joint: JointSpec
  /** Where `top` asks for them. */
  readonly rails?: RailsSpec
  readonly stretchers: readonly StretcherSpec[]
}
