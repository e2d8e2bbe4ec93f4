import type { DrawerSlide, JointScrew, Pull } from '../../hardware/index.ts'
import type { JointSpec } from './carcase.ts'
import type { FrontLay } from './front.ts'
import type { DefinitionPath, Stock } from './stock.ts'

/** The drawers of a bay that is not split. Lengths in mm. */
export interface DrawersSpec {
  /** From the top. */
  readonly stack: readonly DrawerPlace[]
  /** The one that was asked for, or all among which the longest that fits is taken. */
  readonly slides: readonly DrawerSlide[]
  readonly box: DrawerBoxSpec
  /** Nothing for inner drawers. */
  readonly fronts: DrawerFrontsSpec | undefined
  /** Stock of the strips that bring the slides of inner drawers clear of hinges. */
  readonly packing: Stock | 'none'
  /** Screws through one board into the face of another: drawer fronts, packings; the longest that fits is taken. */
  readonly faceScrews: readonly JointScrew[]
  /** In each of them, kg; by the module's loads where it is not said. */
  readonly load: number | undefined
  readonly at: DefinitionPath
}

/** Height of a drawer's front, or of an inner drawer's place in the opening; `undefined`: a share of what remains. */
export interface DrawerPlace {
  readonly height: number | undefined
  readonly share: number
}

export interface DrawerBoxSpec {
  /** Of sides, box front and box back. */
  readonly stock: Stock
  readonly bottomStock: Stock
  readonly bottom: 'grooved' | 'applied'
  readonly grooveDepth: number
  /** From the lower edge of the sides to the groove. */
  readonly grooveHeight: number
  /** Groove width beyond the thickest reading of the bottom. */
  readonly groovePlay: number
  /** Space between the edge of the bottom and the wood of the groove, each side. */
  readonly edgePlay: number
  /** Of the corners: box front and back stand between the sides. */
  readonly joint: JointSpec
  /** Of an applied bottom. */
  readonly bottomJoint: JointSpec
  readonly clearanceAbove: number
  readonly clearanceBelow: number
  /** Free depth behind the slide. */
  readonly behind: number
}

export interface DrawerFrontsSpec extends FrontLay {
  readonly pull: DrawerPullSpec | undefined
}

/** A pull lies along the drawer's front, in the middle of its width. */
export interface DrawerPullSpec {
  readonly item: Pull
  /** From the upper edge of the front to the line of the holes; `middle`: half-way down. */
  readonly edgeDistance: number | 'middle'
}
