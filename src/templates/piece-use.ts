import type { EdgeWord, HardwarePiece } from './hardware-types.ts'
import type { FacePoint } from './types.ts'

/** An edge of a face as it is seen: left, right, below, above. */
export type PieceEdge = 'x0' | 'x1' | 'y0' | 'y1'

/**
 * A way in which a cut-out piece is laid on its face: it is moved so that its `origin` comes to lie at `at`, and stays as it
 * is drawn or is turned half round there. Then each of its bores lies on a bore of the panel.
 */
export interface PiecePlace {
  /** Where the piece's origin comes to lie, face frame, mm. */
  readonly at: FacePoint
  /** Turned half round about its origin. */
  readonly turned: boolean
  /** Turned so many quarter turns to the left instead. */
  readonly quarter?: 1 | 3
  /**
   * Edges of the face that the piece is folded over (or laid against) there: across those nothing is measured. Along an axis
   * without such an edge the origin is measured from the datum edge.
   */
  readonly folds: readonly PieceEdge[]
}

/** A piece that is shorter than its row: moved on along the row, its first hole on the last one marked. */
export interface PieceRepeat {
  /** Holes on the piece. */
  readonly holes: number
  /** From hole to hole, mm. */
  readonly step: number
  /** How many holes further the piece goes each time; one less than it has. */
  readonly pitches: number
  /** The same on the face, mm: along the row, away from where it begins. */
  readonly move: FacePoint
  /** How often it is moved. */
  readonly times: number
  /** How many of its holes are marked the last time; the others lie beyond the end of the row. */
  readonly last: number
}

/** The panel of the other hand that a piece serves too. */
export interface PieceHand {
  /** The other panel's name. */
  readonly other: string
  /** Whether the piece is turned half round there; else it lies the same way up and is folded over at its other side. */
  readonly turned: boolean
  /** Name of the edge there that the second fold line is folded over, where the piece lies the same way up. */
  readonly edge?: EdgeWord
}

/** What a person must know to lay a cut-out piece on the panel. Absent on pages of the whole face. */
export interface PieceUse {
  /** `shelf pins, row at 37 from front`, `hinge cup 35`. */
  readonly name: string
  /** Ids of the bores that the piece draws: what else lies in its window is marked with other pieces. */
  readonly bores: readonly string[]
  /** Ids of grooves and cutouts that it draws. */
  readonly cuts: readonly string[]
  /** The point of the piece that is measured to, face frame as drawn, mm: a hole, or the middle of a pattern. */
  readonly origin: FacePoint
  /** The first is the piece as it is drawn. */
  readonly places: readonly [PiecePlace, ...PiecePlace[]]
  /** The row of holes runs along this axis: its hairline goes from end to end of the piece, to be laid on a pencil line. */
  readonly along?: 0 | 1
  /** Of a row: whether its other holes follow the origin toward higher (1) or lower (-1) places along it. */
  readonly ahead?: 1 | -1
  /** A fold line at the other side of the row, for the other hand or the opposite edge: where it crosses its axis as drawn, mm. */
  readonly secondFold?: { readonly axis: 0 | 1; readonly at: number }
  readonly repeat?: PieceRepeat
  readonly hand?: PieceHand
  /** Of a piece for one piece of hardware: its pattern and its places in full. */
  readonly hardware?: HardwarePiece
}
