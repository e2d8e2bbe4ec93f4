import type { Caster, CupHinge, Item, JoiningBolt, Pull, ShelfPin } from '../hardware/index.ts'

/** Where something stands in the definition: keys and list indexes from the root. */
export type DefinitionPath = readonly (string | number)[]

/** A sheet good. Lengths in mm. */
export interface Stock {
  readonly name: string
  /** What the callipers read, at one or several points of the sheet. */
  readonly readings: readonly number[]
  /** Mean of the readings: panels are sized with it. */
  readonly thickness: number
  /** Largest reading: grooves and rebates are sized with it. */
  readonly thickest: number
  readonly sheet: { readonly length: number; readonly width: number }
  readonly grain: 'along length' | 'none'
  /** Taken off each factory edge before use. */
  readonly edgeTrim: number
  /** kg/m³ */
  readonly density: number
  /** Modulus of elasticity, N/mm². */
  readonly stiffness: number
  readonly at: DefinitionPath
}

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

export interface CarcaseSpec {
  /** Over the ends of the sides, or between them. */
  readonly top: Lap
  readonly bottom: Lap
  readonly back: BackSpec
  readonly joint: JointSpec
}

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
  readonly at: DefinitionPath
}

/** A value for each edge of a front, seen from in front of the module. */
export interface FourEdges<T> {
  readonly left: T
  readonly right: T
  readonly top: T
  readonly bottom: T
}

/** `auto`: full over an outside panel, half over a shared one. */
export type Cover = 'auto' | 'full' | 'half'

export interface PullSpec {
  readonly item: Pull
  /** From the edge away from the hinges to the line of the holes. */
  readonly edgeDistance: number
  /** Which end of the door the near hole is measured from; `middle` centres the pull. */
  readonly end: 'top' | 'bottom' | 'middle'
  readonly endDistance: number
}

export interface FrontSpec {
  readonly kind: 'door' | 'pair'
  /** Which edge of a single door has the hinges. */
  readonly hang: 'left' | 'right'
  readonly lay: 'overlay' | 'inset'
  readonly cover: FourEdges<Cover>
  readonly stock: Stock
  /** Overlay: left free at the outside of the module, each edge. */
  readonly reveal: FourEdges<number>
  /** Between two doors of a pair, and between fronts over a shared panel. */
  readonly gap: number
  /** Inset: all round. */
  readonly insetGap: number
  /** One item for all hinges, or chosen by the overlay that is wanted. */
  readonly hinge: CupHinge | 'auto'
  /** Hinges a door: a number, heights of the cup centres above the door's lower end, or by rule. */
  readonly hinges: number | readonly number[] | 'auto'
  /** From the door's ends to the outermost cup centres, at most. */
  readonly hingeEnd: number
  readonly pull: PullSpec | undefined
  readonly at: DefinitionPath
}

/** An opening of the carcase: split again, or a leaf; with or without a front. */
export interface Bay {
  /** Clear size along the direction of the split that it belongs to; `undefined`: a share of what remains. */
  readonly size: number | undefined
  readonly share: number
  readonly split: Split | undefined
  readonly looseShelves: LooseShelvesSpec | undefined
  readonly front: FrontSpec | undefined
  readonly at: DefinitionPath
}

/** `side by side`: partitions between, bays listed from the left; `stacked`: fixed shelves between, from the top. */
export interface Split {
  readonly direction: 'side by side' | 'stacked'
  readonly bays: readonly Bay[]
  readonly stock: Stock
  readonly joint: JointSpec
}

export type BaseSpec =
  | { readonly kind: 'none' }
  | {
      readonly kind: 'casters'
      readonly item: Caster
      /** From the footprint's edges to the king pin; `auto`: swivel radius + `footprintGap`. */
      readonly inset: number | 'auto'
      /** Kept between the swivel circle and the edge of the footprint. */
      readonly footprintGap: number
      readonly at: DefinitionPath
    }

export interface ModuleSpec {
  /** Safe as a file name and unique: `glaze-store`. */
  readonly key: string
  readonly name: string
  readonly width: number
  /** The whole footprint, front to back: fronts and back included. */
  readonly depth: number
  /** Of the carcase alone, or of its upper side above the floor. */
  readonly height: { readonly of: 'carcase' | 'working'; readonly mm: number }
  readonly stock: Stock
  readonly carcase: CarcaseSpec
  /** Between the hidden face of an overlay front and the carcase's front edges. */
  readonly frontGap: number
  readonly inside: Bay
  readonly base: BaseSpec
  readonly at: DefinitionPath
}

export interface JoinSpec {
  readonly item: JoiningBolt
  /** From the upper and lower edge of the shared rectangle to the bolts. */
  readonly endInset: number
  /** From its front and rear edge. */
  readonly sideInset: number
}

/** Modules, by their keys, that stand side by side, from the left, fronts flush. */
export interface RowSpec {
  readonly modules: readonly string[]
  readonly join: JoinSpec | undefined
  readonly at: DefinitionPath
}

export type PaperName = 'A4' | 'A3' | 'Letter' | 'Legal' | 'Tabloid'

export interface OutputSpec {
  readonly paper: PaperName
  readonly dxf: {
    readonly units: 'mm' | 'in'
    /** AC1021, or AC1015 for older importers. */
    readonly version: '2007' | '2000'
    /** Closed polylines with bulges, or lines and arcs for importers that know no bulges. */
    readonly contours: 'bulges' | 'lines and arcs'
    readonly notes: boolean
    /** Patterns for layer names; `{diameter}`, `{depth}`, `{width}`, `{angle}` are filled in. */
    readonly layers: LayerPatterns
  }
}

export interface LayerPatterns {
  readonly outline: string
  readonly bore: string
  readonly boreThrough: string
  readonly countersink: string
  readonly groove: string
  readonly rebate: string
  readonly mark: string
  readonly note: string
}

/** A definition, read, checked and complete: every default filled in, every length in mm. */
export interface Project {
  readonly title: string
  readonly units: 'mm' | 'in'
  readonly stocks: readonly Stock[]
  readonly modules: readonly ModuleSpec[]
  readonly rows: readonly RowSpec[]
  readonly outputs: OutputSpec
}
