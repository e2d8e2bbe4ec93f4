import type { BoardKind } from '../boards.ts'

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
  /** Whole sheets that there are; nothing when it is not said. */
  readonly onHand?: number
  /** What it is made of, where that is said. */
  readonly board?: BoardKind
  /** kg/m³ */
  readonly density: number
  /** Modulus of elasticity, N/mm². */
  readonly stiffness: number
  readonly at: DefinitionPath
}
