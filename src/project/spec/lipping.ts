import type { DefinitionPath } from './stock.ts'

export type LippedEdge = 'front' | 'back' | 'left' | 'right' | 'top' | 'bottom'

/** Strips of one thickness on some edges of some panels. The finished sizes of the panels do not change. */
export interface LippingSpec {
  readonly thickness: number
  readonly edges: readonly LippedEdge[]
  /** Names of panels, roles, or words for groups of them, see LIPPING_WORDS. */
  readonly on: readonly LippingTarget[]
  /** The module itself asks for it: then every word must meet a panel; from common it may just not apply. */
  readonly own: boolean
  readonly at: DefinitionPath
}

export interface LippingTarget {
  readonly word: string
  readonly at: DefinitionPath
}
