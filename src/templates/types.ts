import type { Size } from './paper.ts'
import type { PieceUse } from './piece-use.ts'

/** A point on a panel's face or on a sheet, mm; x right, y up. */
export type FacePoint = readonly [x: number, y: number]

export interface Rect {
  readonly min: FacePoint
  readonly max: FacePoint
}

/** A round place on the face, mm: a bore with the room it needs. */
export interface Round {
  readonly at: FacePoint
  readonly radius: number
}

/** A crossed circle at one point of the panel, printed on the two pieces that meet there. */
export interface RegistrationMark {
  /** Its letter, unique on the face: `a`, `b`, … `z`, `aa`. */
  readonly id: string
  /** On the face, mm. */
  readonly at: FacePoint
  /** Labels of the two pieces. */
  readonly pieces: readonly [first: string, second: string]
}

/** A seam: two pieces that show the same strip of the face and are taped together, mark on mark. */
export interface Join {
  /** Label of the other piece. */
  readonly to: string
  /** What both show, on the face. */
  readonly seam: Rect
  /** The axis that the seam follows: 0 level, 1 upright. */
  readonly along: 0 | 1
  /** Whether this piece lies on top of the other one. */
  readonly over: boolean
}

/**
 * `face`: one of the pages that together show all there is to mark on a face. `strip`: along one row of holes, with an end
 * stop. `repeated`: a strip that is shorter than its row and is moved along it. `hardware`: one pattern of holes, laid on
 * at each place where the panel has it.
 */
export type PieceKind = 'face' | 'strip' | 'repeated' | 'hardware'

/**
 * A piece of a face at true size: all that one sheet of paper shows, or one of several cut-outs that share a sheet. Face
 * frame: the face as you look at it, origin at its lower left corner, x right, y up, mm. Of two pieces that are taped
 * together, the later in the list lies on top.
 */
export interface Piece {
  readonly kind: PieceKind
  /** From the top, 0 first. */
  readonly row: number
  /** From the left, 0 first. */
  readonly column: number
  /** Row as a letter, column as a number from 1: `A1` is the top left piece. */
  readonly label: string
  /** What of the face the piece shows. */
  readonly window: Rect
  /** Which sheet of paper it is printed on, 0 first; pieces of one sheet follow each other. */
  readonly sheet: number
  /** The sheet as it is printed, turned if need be. */
  readonly paper: Size
  /** Where `window.min` lies on the sheet, from its lower left corner. */
  readonly at: FacePoint
  readonly marks: readonly RegistrationMark[]
  readonly joins: readonly Join[]
  /** How a cut-out piece is laid on the panel; absent on pages of the whole face. */
  readonly use?: PieceUse
}

/** The pieces that a face is marked with, and how well they do: counts of sheets of paper. */
export interface FacePlan {
  readonly pieces: readonly Piece[]
  readonly sheets: number
  /** A plain grid over the whole face, the better way round. */
  readonly grid: number
  /** No pages of the whole face could be fewer. */
  readonly least: number
}
