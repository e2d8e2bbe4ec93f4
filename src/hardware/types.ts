import type { DrawerSlide } from './kinds/drawer-slide.ts'
import type { FlapStay } from './kinds/flap-stay.ts'
import type { LevellingFoot } from './kinds/levelling-foot.ts'
import type { LevellingScrew } from './kinds/levelling-screw.ts'

export type { DrawerSlide } from './kinds/drawer-slide.ts'
export type { FlapStay } from './kinds/flap-stay.ts'

/**
 * One hole that a piece of hardware wants in one of the boards it touches.
 *
 * Frame of a drilling: the station's frame. Its origin lies on the contact plane (where the hardware or the other
 * board touches this board), z points along the hardware's axis. For a board that lies `ahead` the wood is at z > 0,
 * for one `behind` at z < 0. Lengths in mm, unrounded.
 */
export interface Drilling {
  /** Unique within the part, for example `cup` or `screw-1`. */
  readonly key: string
  /** Where the axis crosses the contact plane. */
  readonly x: number
  readonly y: number
  /** The surface the bit enters by: the contact plane, or the surface opposite. */
  readonly enter: 'contact' | 'far'
  /** Finished diameter, mm. */
  readonly diameter: number
  /** Depth of the full diameter, drill point excluded. */
  readonly depth: Depth
  /** Widening where the bit enters. */
  readonly sink?: Sink
  /** The bit leans toward the station's +x: degrees between its axis and the surface. Absent when square. */
  readonly leanDeg?: number
  /** Least wall from the bore to an edge of the board, mm, where the hardware's own figure is less than the general limit. */
  readonly edgeWall?: number
  /** What the hole is for, in the words of the drawing: `shelf pin`. */
  readonly purpose: string
}

/**
 * A fixed depth in mm; right through the board; a depth reached from the far surface of another part's board
 * (`reach` mm in all, that board's thickness taken off); or a setting that the placing works out (pocket screws).
 */
export type Depth =
  | number
  | 'through'
  | { readonly reach: number; readonly from: string }
  | { readonly setting: string }

/** A cone (countersink, included angle in degrees) or a flat-bottomed widening (counterbore, depth in mm). */
export type Sink =
  | { readonly shape: 'cone'; readonly diameter: number; readonly angleDeg: number }
  | { readonly shape: 'counterbore'; readonly diameter: number; readonly depth: number }

/**
 * What must agree between two parts of one piece of hardware.
 * `coaxial`: the two bores share an axis. `level`: the middles of all bores of the two parts have the same
 * coordinate along the y axis of the first part's station (a cup and its plate). `crossing`: the two axes meet at a
 * right angle (the bolt and the housing of a cam fitting).
 */
export type Mate =
  | {
      readonly relation: 'coaxial' | 'crossing'
      readonly a: readonly [part: string, drilling: string]
      readonly b: readonly [part: string, drilling: string]
    }
  | { readonly relation: 'level'; readonly a: string; readonly b: string }

export interface ItemBase {
  /** The word a definition uses. */
  readonly id: string
  /** A generic description; no makers. */
  readonly title: string
  /** Where the figures come from: a published source by its number in the list of DEVELOPERS.md, or `common practice`. */
  readonly source: string
  /** Holes by part; a part is a board that the hardware grips or joins. */
  readonly parts: Readonly<Record<string, readonly Drilling[]>>
  readonly mates: readonly Mate[]
  /** What the builder of its kind made it of, see kinds/; nothing where the kind has no builder. */
  readonly figures?: Figures
}

/** One figure of an item: a number (mm, kg or degrees), a word, a list of lengths, a size or a range, mm. */
export type Figure =
  | number
  | string
  | readonly number[]
  | { readonly x: number; readonly y: number }
  | { readonly min: number; readonly max: number; readonly usual?: number }

/** Figures of an item by field. */
export type Figures = { readonly [field: string]: Figure }

/** Parts `left` and `right`: one level of a pin row, both sides of the opening. */
export interface ShelfPin extends ItemBase {
  readonly kind: 'shelf pin'
}

/** Parts `cup` (x away from the door's edge, y along it) and `plate` (x into the carcase, y along the door's edge). */
export interface CupHinge extends ItemBase {
  readonly kind: 'cup hinge'
  readonly lay: 'full' | 'half' | 'inset'
  readonly cupDiameter: number
  readonly cupDepth: number
  /** How far the cup's edge overlaps the side on a plate of height 0 with a cup distance of 0, mm (K). */
  readonly base: number
  /** Permitted distance from the door's edge to the near edge of the cup, mm (C). */
  readonly cupDistance: { readonly min: number; readonly max: number; readonly usual: number }
  /** Heights of the plates that are sold for it, mm (H). */
  readonly plateHeights: readonly number[]
  /** Setback of the plate line from the front of the side (overlay), mm. */
  readonly plateLine: number
  /** Added to the plate line, with the door's thickness, for an inset door, mm. */
  readonly insetExtra: number
  /** How far the open hinge, arm and plate, stands into the opening from the wall that it is screwed to, mm. */
  readonly standsIn: number
  /** Opens so far, degrees. */
  readonly openingDeg: number
  /** A word for what clips together: it takes hinge plates of the same system. */
  readonly system: string
  /** Widest door that it is made for, mm; absent where the table of weights and heights alone decides. */
  readonly doorWidthMax?: number
}

/** Part `plate`, as of a cup hinge; a front names one to fix the height and the line of its hinges' plates. */
export interface HingePlate extends ItemBase {
  readonly kind: 'hinge plate'
  /** H, mm. */
  readonly height: number
  /** Setback of the holes from the front of the side (overlay), mm. */
  readonly plateLine: number
  readonly system: string
}

/** Parts `head` (the board the screw passes) and `tip` (the board it holds in). */
export interface JointScrew extends ItemBase {
  readonly kind: 'through screw' | 'one-piece screw'
  readonly length: number
}

/** Parts `face` and `edge`. */
export interface Dowel extends ItemBase {
  readonly kind: 'dowel'
  readonly length: number
}

/**
 * Parts `face` (the board whose face takes the bolt), `edge` (the bolt's bore in the other board's edge) and `cam` (the
 * housing's bore in that board's face). The edge bore lies at a fixed depth under the face that takes the cam.
 */
export interface CamFitting extends ItemBase {
  readonly kind: 'cam fitting'
  /** Boards it suits, mm. */
  readonly board: { readonly min: number; readonly max: number }
  /** From the joint to the middle of the cam, mm. */
  readonly camDistance: number
  /** From the face that takes the cam to the axis of the bolt, mm. */
  readonly boltAxis: number
}

/** Parts `pocket` (the board whose face takes the slanted bore) and `tip` (no hole: the screw cuts its own). */
export interface PocketScrew extends ItemBase {
  readonly kind: 'pocket screw'
  readonly length: number
  /** Boards it suits, mm. */
  readonly board: { readonly min: number; readonly max: number }
}

/** Parts `head` (clearance) and `nut`. */
export interface JoiningBolt extends ItemBase {
  readonly kind: 'joining bolt'
  readonly headDiameter: number
  readonly nutDiameter: number
  /** Of the nut, below its flange, mm; the board that takes it must be no thinner. */
  readonly barrelLength: number
}

/** Part `plate`: x across the module, y from front to back, about the king pin. */
export interface Caster extends ItemBase {
  readonly kind: 'caster'
  readonly overallHeight: number
  readonly swivelRadius: number
  /** Size of the top plate across (x) and front to back (y), mm. */
  readonly plate: { readonly x: number; readonly y: number }
  readonly loadKg: number
  /** Swivel where it is not said. A fixed one rolls along y; a levelling one swivels, and has a foot that lifts it. */
  readonly turning?: 'swivel' | 'fixed' | 'levelling'
  /** The wheel of a fixed one, under the middle of its plate: along y, and across (x), mm. */
  readonly wheel?: { readonly diameter: number; readonly width: number }
  /** How far the foot of a levelling one lifts it, at most, mm. */
  readonly lift?: number
}

/** Part `front`: y along the pull; part `box front`: the same holes in the front of a drawer box behind it. */
export interface Pull extends ItemBase {
  readonly kind: 'pull'
  /** Distance between the holes; 0 for a knob. */
  readonly centres: number
}

/** Parts `left` and `right`: the sides that a flip-over platform's axle passes. The platform lies about it, unbored. */
export interface Axle extends ItemBase {
  readonly kind: 'axle'
  readonly diameter: number
  /** Width of the channel between the core boards, mm; the boards of the core must be `coreLeast` thick or more. */
  readonly channel: number
  readonly coreLeast: number
}

/**
 * Parts `side` (the side it is put through), `core` (the end of the core board that it enters as drawn) and `turned`
 * (the end that it enters when the platform lies turned over).
 */
export interface LockingBolt extends ItemBase {
  readonly kind: 'locking bolt'
  /** Depth of its hole in the core's end, mm. */
  readonly coreDepth: number
}

export type Item =
  | ShelfPin
  | CupHinge
  | HingePlate
  | FlapStay
  | JointScrew
  | Dowel
  | CamFitting
  | PocketScrew
  | JoiningBolt
  | Caster
  | LevellingFoot
  | Pull
  | Axle
  | LockingBolt
  | DrawerSlide
  | LevellingScrew
export type ItemKind = Item['kind']

/** The items of some kinds. Screws of two kinds share a type, so `Extract` would miss them. */
export type ItemOf<K extends ItemKind, I = Item> = I extends { readonly kind: infer J }
  ? K extends J
    ? I
    : never
  : never
