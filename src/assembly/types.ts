import type { Box, PathVertex, Pose } from '../geometry/index.ts'
import type { Item } from '../hardware/index.ts'
import type { DefinitionPath, Edit, Stock } from '../project/index.ts'
import type { RuleId, Severity } from '../rulebook/index.ts'

export type PanelRole =
  | 'left side'
  | 'right side'
  | 'top'
  | 'bottom'
  | 'back'
  | 'partition'
  | 'fixed shelf'
  | 'loose shelf'
  | 'door'
  // Fronts besides doors.
  | 'flap'
  | 'fixed front'
  | 'drawer front'
  // Drawer boxes, named as one sees them from in front of the module.
  | 'drawer left side'
  | 'drawer right side'
  | 'drawer box front'
  | 'drawer box back'
  | 'drawer bottom'
  // Strips that bring a drawer slide clear of hinges.
  | 'left packing'
  | 'right packing'
  // Carcase parts.
  | 'top rail'
  | 'front stretcher'
  | 'rear stretcher'
  // Tops.
  | 'worktop'
  | 'machine top'
  | 'chamber floor'
  | 'platform upper skin'
  | 'platform lower skin'
  | 'platform core'
  // Bases.
  | 'plinth front'
  | 'plinth back'
  | 'plinth left side'
  | 'plinth right side'

/** The four edges of a panel in its own frame: x = 0, x = length, y = 0, y = width. */
export type EdgeSide = 'x0' | 'x1' | 'y0' | 'y1'

/** `<module key>/<panel key>`; both keys are safe as file names. */
export type PanelId = string

/**
 * A blank in its place. Panel frame: looking at face A, origin at the lower left corner of the finished blank,
 * x right along the grain (0..length), y up (0..width), z toward the eye; the wood runs from z = 0 to −thickness.
 * Lengths in mm, unrounded.
 */
export interface PlacedPanel {
  readonly id: PanelId
  /** Key of its module. */
  readonly module: string
  /** Key within the module, as in file names: `left-side`. */
  readonly key: string
  /** For people: `left side`. */
  readonly name: string
  readonly role: PanelRole
  readonly stock: Stock
  readonly length: number
  readonly width: number
  readonly thickness: number
  readonly moduleFromPanel: Pose
  /** What each face looks at: `inside`, `outside`, `top face` … */
  readonly faces: { readonly A: string; readonly B: string }
  /** Edge lipping that is thick enough to be taken off the cut size, mm by edge; length and width are finished sizes. */
  readonly lipping?: Readonly<Partial<Record<EdgeSide, number>>>
  /** The two edges that a person measures from. */
  readonly datum: { readonly x: 'x0' | 'x1'; readonly y: 'y0' | 'y1' }
  /** Where the definition asks for it. */
  readonly at: DefinitionPath
}

/** One grip of a piece of hardware on one board. */
export interface Station {
  /** The item's part, see the catalogue. */
  readonly part: string
  readonly panel: PanelId
  /** Frame of the drillings of this part, in the hardware's frame of reference; origin on the contact plane. */
  readonly pose: Pose
  /** The board lies at z > 0 of the station (`ahead`) or at z < 0 (`behind`). */
  readonly wood: 'ahead' | 'behind'
}

/** A piece of hardware, placed once; its holes in each board follow from its stations. */
export interface PlacedHardware {
  readonly id: string
  readonly item: Item
  /** Poses of the stations are in the frame of this module (its key), or in the floor frame. */
  readonly frame: string | typeof FLOOR
  readonly stations: readonly Station[]
  /** Depths that the placing worked out, by the names that the item's drillings use, mm. */
  readonly settings: Readonly<Record<string, number>>
  /** Its holes are never made one with those of another piece from the far face (staggered pin rows). */
  readonly keepsApart?: boolean
  /** Pieces of one evenly spaced run share this word, so that a drawing can label them once. */
  readonly series: string
  /** Choices made in the placing that a person must know: `plate height 3 mm, cup distance 4.3 mm`. */
  readonly note?: string
  readonly at: DefinitionPath
  /** Of a fastener: the joint in the definition, where it is said what it is, or can be. */
  readonly joint?: DefinitionPath
}

/** The floor frame in `PlacedHardware.frame`; no module key starts with a star. */
export const FLOOR = '*floor'

/** Wood taken away by a groove or a rebate: a box in the module frame, cut into one panel from one of its faces. */
export interface PlacedCut {
  readonly panel: PanelId
  readonly kind: 'groove' | 'rebate'
  readonly box: Box
  /** Ends of the box that stop inside the panel and take the round of the cutter. */
  readonly roundEnds: boolean
  readonly purpose: string
  readonly at: DefinitionPath
}

/** An opening or a recess along a closed path, cut into one panel from one of its faces. */
export interface PlacedCutout {
  readonly panel: PanelId
  /** Unique within the panel, and its id on drawings: small letters, digits and hyphens, not `outline`, `bore-1`, `groove-1`. */
  readonly key: string
  /** The panel's own frame, as seen on face A whichever face it is cut from; mm, counter-clockwise. */
  readonly path: readonly PathVertex[]
  readonly face: 'A' | 'B'
  readonly depth: number | 'through'
  /** A corner taken off, up to the panel's edges: where a board passes the stopped end of a housing. */
  readonly notch?: boolean
  readonly purpose: string
  readonly at: DefinitionPath
}

/** One module, built in its own frame (origin: front left bottom corner of the carcase's outside box). */
export interface PlacedModule {
  readonly key: string
  /** The name in the definition. */
  readonly name: string
  readonly size: { readonly width: number; readonly depth: number; readonly height: number }
  /** Its height as the definition asks for it; nothing for the worktop of a row, or where it is as large as fits. */
  readonly heightAsked?: { readonly of: 'carcase' | 'working'; readonly mm: number }
  /** Height of its base, mm; the carcase's underside lies so high above the floor, and higher by the packing. */
  readonly baseHeight: number
  /** Packed up between base and carcase so that tops are level, mm; mostly 0. */
  readonly packing: number
  readonly floorFromModule: Pose
  /** Keys of the modules that it lies over: a worktop of a row, which is no cabinet. */
  readonly liesOver?: readonly string[]
  readonly panels: readonly PlacedPanel[]
  readonly cuts: readonly PlacedCut[]
  readonly cutouts: readonly PlacedCutout[]
  readonly at: DefinitionPath
}

/** Something the placing could not do as asked; turned into a finding by the checks. */
export interface PlacingTrouble {
  readonly rule: RuleId
  readonly severity: Severity
  readonly panels: readonly PanelId[]
  readonly message: string
  readonly fix?: string
  /** The fix as edits of the definition. */
  readonly change?: readonly Edit[]
  readonly at: DefinitionPath
}

/** The whole project in three dimensions. */
export interface Assembly {
  readonly modules: readonly PlacedModule[]
  readonly hardware: readonly PlacedHardware[]
  readonly troubles: readonly PlacingTrouble[]
}
