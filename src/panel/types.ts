import type { EdgeName, EdgeSide, PlacedPanel } from '../assembly/index.ts'
import type { PathVertex, Vec3 } from '../geometry/index.ts'
import type { Sink } from '../hardware/index.ts'

export type { EdgeName }

/** Where a bit enters a panel: a face, or one of its four edges. */
export type Surface = 'A' | 'B' | EdgeSide

/** The piece of hardware, part and drilling that asked for a bore. */
export interface BoreUse {
  readonly hardware: string
  readonly item: string
  readonly part: string
  readonly drilling: string
  readonly series: string
  readonly purpose: string
  /** Where this piece enters and how deep it was to go, mm: less than the hole where it shares a through hole. */
  readonly surface: Surface
  readonly depth: number
  /** Must not be made one through hole with a hole from the far face. */
  readonly keepsApart: boolean
}

/**
 * One hole in a panel. Panel frame, mm, unrounded; looking at face A, origin lower left, x along the grain, y up,
 * z = 0 on face A and −thickness on face B.
 */
export interface Bore {
  /** Unique within the panel, stable from run to run: `bore-1`. */
  readonly id: string
  readonly surface: Surface
  /** Where the axis meets the surface. */
  readonly at: Vec3
  /** Unit direction in which the bit travels. */
  readonly axis: Vec3
  readonly diameter: number
  /** Along the axis; the drill point excluded. For a through bore, the length of wood on the axis. */
  readonly depth: number
  readonly through: boolean
  readonly sink?: Sink
  /** Angle between the axis and the surface where it is not square (pocket screws), degrees. Made by hand. */
  readonly leanDeg?: number
  readonly edgeWall?: number
  readonly purpose: string
  /** Everything that uses this hole; more than one where a hinge plate sits in a pin row. */
  readonly uses: readonly BoreUse[]
}

/** A groove or rebate: a rectangle on face A or B, to a depth. Panel frame, mm, seen on face A in either case. */
export interface Groove {
  readonly id: string
  readonly kind: 'groove' | 'rebate'
  readonly face: 'A' | 'B'
  readonly min: readonly [x: number, y: number]
  readonly max: readonly [x: number, y: number]
  readonly depth: number
  /** The ends that stop inside the panel take the round of the cutter. */
  readonly roundEnds: boolean
  readonly purpose: string
}

/** An opening or a recess along a closed path. Panel frame, mm, seen on face A whichever face it is cut from. */
export interface Cutout {
  /** Unique within the panel: the key that it was placed with. */
  readonly id: string
  readonly face: 'A' | 'B'
  /** Counter-clockwise. */
  readonly path: readonly PathVertex[]
  /** The panel's thickness where it goes through. */
  readonly depth: number
  readonly through: boolean
  /** A corner taken off, up to the panel's edges. */
  readonly notch?: boolean
  readonly purpose: string
}

/** A panel with all its work. */
export interface Panel extends PlacedPanel {
  /** The module's name in the definition, for people. */
  readonly moduleName: string
  readonly edges: Readonly<Record<EdgeSide, EdgeName>>
  /** Sorted by surface, then x, then y, then diameter. */
  readonly bores: readonly Bore[]
  readonly grooves: readonly Groove[]
  readonly cutouts: readonly Cutout[]
}
