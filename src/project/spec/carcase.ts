import type { Dowel, Item } from '../../hardware/index.ts'
import type { DefinitionPath, Stock } from './stock.ts'

/** How two boards are fastened where the edge of one meets the face of the other. Lengths in mm. */
export interface JointSpec {
  readonly item: Item
  /** From each end of the joint to the first and last fastener. */
  readonly endDistance: number
  /** Longest distance between fasteners. */
  readonly spacing: number
  /** Cam fittings: beside each, 32 mm nearer the middle of the joint, stands a dowel. */
  readonly dowel?: Dowel
}

/** The edge of one board let into a groove across the face of another, and glued. Lengths in mm. */
export interface HousingSpec {
  readonly kind: 'housing'
  /** Of the groove; the other board is as much longer there. `auto`: a third of the board that it is cut into. */
  readonly depth: number | 'auto'
  /** Width of the groove beyond the thickest reading of the board that stands in it. */
  readonly play: number
  /** Kept between the groove and the front and rear edges; 0: it runs out there. */
  readonly stopFront: number
  readonly stopRear: number
}

/** How the panels of a carcase, its partitions and its fixed shelves meet. */
export type PanelJoint = JointSpec | HousingSpec

export type Lap = 'over' | 'between' | 'none'

export type BackSpec =
  | { readonly sits: 'none' }
  | {
      /** `between sides`: between the sides and over the rear edges of a top and bottom that stand between them. */
      readonly sits: 'applied' | 'between sides' | 'inset' | 'grooved' | 'rebated'
      readonly stock: Stock
      /** Applied: kept between the back's edges and the outside of the carcase. */
      readonly margin: number
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
  readonly joint: PanelJoint
  /** The same for strips across, which are never let in: the usual joint where `joint` is a housing. */
  readonly fastening: JointSpec
  /** Where `top` asks for them. */
  readonly rails?: RailsSpec
  readonly stretchers: readonly StretcherSpec[]
}
