import type { JointScrew, LevellingScrew } from '../../hardware/index.ts'
import type { JointSpec } from './carcase.ts'
import type { DefinitionPath, Stock } from './stock.ts'

/** How far a worktop stands out, seen from above with the front toward you, mm. */
export interface Overhang {
  readonly left: number
  readonly right: number
  /** Beyond the module's front plane, fronts included. */
  readonly front: number
  readonly back: number
}

/** `from below`: screws through the carcase's top or rails; `pockets`: pocket screws through the inner faces of the sides. */
export type TopFix =
  | {
      readonly kind: 'from below'
      /** The screws to choose from: the longest that does not come out is taken. */
      readonly screws: readonly JointScrew[]
      readonly endDistance: number
      readonly spacing: number
    }
  | { readonly kind: 'pockets'; readonly joint: JointSpec }

/** One board on the carcase of a module, or over a row of them. */
export interface WorktopSpec {
  readonly stock: Stock
  readonly overhang: Overhang
  readonly fix: TopFix | undefined
  readonly at: DefinitionPath
}

/** A worktop over a whole row; a thing of its own beside the modules. */
export interface RowWorktopSpec extends WorktopSpec {
  /** Safe as a file name, and no module's. */
  readonly key: string
  readonly name: string
}

/** A distance from an edge, or the middle. */
export type FromEdge = number | 'centred'

/** A plate let into a machine top. Lengths in mm. */
export interface InsertSpec {
  /** Of the plate, left to right and front to back. */
  readonly width: number
  readonly depth: number
  readonly cornerRadius: number
  /** From the front and left edge of the top to the near edge of the plate. */
  readonly fromFront: FromEdge
  readonly fromLeft: FromEdge
  /** Space between the plate and the wall of its recess, each side. */
  readonly play: number
  /** The shelf of wood that the plate lies on; as deep as the plate is thick. */
  readonly ledge: { readonly width: number; readonly depth: number }
  readonly levelling: LevellingScrew | undefined
  readonly at: DefinitionPath
}

/** A groove in the upper face of a machine top. Lengths in mm. */
export interface SlotSpec {
  readonly kind: 'fence' | 'track'
  readonly along: 'width' | 'depth'
  readonly width: number
  readonly depth: number
  /** From the edge beside which it runs (front or left) to its near wall. */
  readonly offset: number
  /** From the edge where it begins (left or front), and how long it is; `undefined`: to the far edge. */
  readonly start: number
  readonly length: number | undefined
  readonly at: DefinitionPath
}

export interface PortSpec {
  readonly diameter: number
  /** From the inside of the left side and from the chamber's floor to its centre. */
  readonly fromLeft: FromEdge
  readonly fromBottom: FromEdge
  readonly at: DefinitionPath
}

export interface ChamberSpec {
  /** From the carcase's upper side down to the chamber's floor. */
  readonly height: number
  readonly port: PortSpec | undefined
  readonly at: DefinitionPath
}

export interface MachineTopSpec extends WorktopSpec {
  readonly insert: InsertSpec | undefined
  readonly slots: readonly SlotSpec[]
  readonly chamber: ChamberSpec | undefined
}
