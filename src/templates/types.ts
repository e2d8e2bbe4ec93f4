import type { Size } from './paper.ts'

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

/** A crossed circle at one point of the panel, printed on the two pages that meet there. */
export interface RegistrationMark {
  /** `A1-A2-1` */
  readonly id: string
  /** On the face, mm. */
  readonly at: FacePoint
  /** Labels of the two pages. */
  readonly pages: readonly [first: string, second: string]
}

/** Labels of the pages that share a seam with a page. */
export interface Neighbours {
  readonly left?: string
  readonly right?: string
  readonly above?: string
  readonly below?: string
}

/**
 * One sheet of a full-size template. Face frame: the face as you look at it, origin at its lower left corner, x right,
 * y up, mm. A page to the right or below lies on top of its neighbour when the pages are taped in order.
 */
export interface TemplatePage {
  /** From the top, 0 first. */
  readonly row: number
  /** From the left, 0 first. */
  readonly column: number
  /** Row as a letter, column as a number from 1: `A1` is the top left page. */
  readonly label: string
  /** What of the face the page shows. */
  readonly window: Rect
  /** The sheet as it is printed, turned if need be. */
  readonly paper: Size
  /** Where `window.min` lies on the sheet, from its lower left corner. */
  readonly at: FacePoint
  readonly marks: readonly RegistrationMark[]
  readonly neighbours: Neighbours
}
