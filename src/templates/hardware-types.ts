import type { Curve } from '../geometry/index.ts'
import type { Bore, FromEdge, Panel } from '../panel/index.ts'
import type { PieceEdge } from './piece-use.ts'
import type { FacePoint, Rect } from './types.ts'

/** Quarter turns to the left (counter-clockwise). */
export type Turns = 0 | 1 | 2 | 3

/** Name of an edge of a panel, as people say it: `front`. */
export type EdgeWord = Panel['edges'][PieceEdge]

/** Where the paper of a hole in an edge is folded: over which edge, and what that edge is. */
export interface Flap {
  readonly side: PieceEdge
  /** From the face to the hole's axis, mm: so far beyond the fold it is printed. */
  readonly fromFace: number
  /** From the face to the far arris of the edge, or to the floor of the rebate, mm: paper that reaches further is in the way. */
  readonly deep: number
  /** The fold lies at the shoulder of a rebate, which must have been cut, and not at the panel's edge. */
  readonly shoulder: boolean
}

/**
 * One hole of a pattern. `at` is flat on the paper: of a hole in an edge, beyond the fold. On a face the frame is that of
 * the face; in a piece its origin is the piece's reference point. mm.
 */
export interface PatternHole {
  readonly at: FacePoint
  /** Of the widest part, countersink included, mm. */
  readonly radius: number
  readonly bore: Bore
  /** Equal for holes that are made with the same bit to the same depth in the same way. */
  readonly tool: string
  /** Unit direction in which a leaning bit travels under the face. */
  readonly lean?: FacePoint
  readonly flap?: Flap
}

/** A stretch of the rim of a groove or of a cutout. */
export interface PatternCut {
  readonly id: string
  readonly kind: 'groove' | 'cutout'
  /** All of it, so that it can be marked without another piece. */
  readonly whole: boolean
  /** Wood taken away to this depth, mm; nothing where it goes through. */
  readonly depth: number | undefined
  /** Of a groove, mm. */
  readonly width?: number
  readonly curves: readonly Curve[]
}

/** What one piece of hardware asks of a face and its edges; or a part of that which fits on a sheet. */
export interface Pattern {
  /** What it is: `hinge cup`. */
  readonly name: string
  /** Which piece of hardware, by its word in the definition: `hinge 35 full`; nothing for grooves and cutouts. */
  readonly item?: string
  readonly holes: readonly PatternHole[]
  readonly cuts: readonly PatternCut[]
  /** The point that is measured to: the middle of the cup, of the holes, the first hole. */
  readonly reference: FacePoint
}

/** A line of a piece that comes to lie on an edge of the panel, square to `side`. */
export interface PieceFold {
  /** On which side of the piece's reference point. */
  readonly side: PieceEdge
  /** From the reference point, mm. */
  readonly mm: number
  readonly shoulder: boolean
  /** Holes in the edge lie beyond it. */
  readonly needed: boolean
}

/** One place of the panel where a piece is laid on. */
export interface HardwarePlace {
  /** Where the reference point comes to lie, face frame, mm. */
  readonly at: FacePoint
  /** How the piece is turned from the way in which it is printed. */
  readonly turns: Turns
  /** The folds that lie on an edge here, and on which: sides of the piece, then of the face. */
  readonly folds: readonly { readonly side: PieceEdge; readonly edge: PieceEdge; readonly name: EdgeWord }[]
  /** What is measured: nothing in a corner, one distance along a fold, else two. */
  readonly measured: readonly FromEdge[]
  /** To which edge of the panel the piece's arrow points. */
  readonly toward: EdgeWord
  /** The holes of the panel under those of the piece, in their order. */
  readonly bores: readonly string[]
  /** Ids of the grooves and cutouts under those of the piece. */
  readonly cuts: readonly string[]
}

/** A panel like this one, such as the other side or the other door, that the same piece serves folded over the same way. */
export interface HardwareHand {
  /** Its name: `right door`. */
  readonly name: string
  /** How the piece is turned there, seen from how it is printed. */
  readonly turns: Turns
  /** To which of its edges the arrow points. */
  readonly toward: EdgeWord
}

/**
 * A cut-out piece of paper for one pattern, with all places where it is laid on. Frame: the reference point is (0, 0), the
 * paper lies as it is printed, which is as it lies on the face at the first place; mm.
 */
export interface HardwarePiece {
  readonly panel: Panel
  readonly face: 'A' | 'B'
  readonly pattern: Pattern
  readonly folds: readonly PieceFold[]
  /** Lines through the reference point from end to end of the paper, to be laid on pencil lines: 0 level, 1 upright. */
  readonly lines: readonly (0 | 1)[]
  /** The side of the piece that its arrow points to. */
  readonly arrow: PieceEdge
  /** A single square hole without a fold: it does not matter how it is turned. */
  readonly anyTurn: boolean
  /** Panels of the other hand that the piece serves too. */
  readonly hands: readonly HardwareHand[]
  readonly places: readonly [HardwarePlace, ...HardwarePlace[]]
  /** Its cut outline. */
  readonly paper: Rect
  /** Kept free for its name and its places. */
  readonly words: Rect
  /** Which of the ways to set the words has that room. */
  readonly way: number
  /** It has room for its name only: what else there is to say stands beside the sheet's title. */
  readonly scarce: boolean
}
