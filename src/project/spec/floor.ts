import type { JoiningBolt } from '../../hardware/index.ts'
import type { DefinitionPath } from './stock.ts'
import type { RowWorktopSpec } from './tops.ts'

export interface JoinSpec {
  readonly item: JoiningBolt
  /** From the upper and lower edge of the shared rectangle to the bolts. */
  readonly endInset: number
  /** From its front and rear edge. */
  readonly sideInset: number
}

export type SideOfModule = 'left' | 'right' | 'front' | 'back'

/** Where a row stands; all words as seen by someone in front of the module that it stands against (the anchor). */
export interface StandSpec {
  /** Key of the anchor, a module of an earlier row. */
  readonly against: string
  /** The side of the anchor's footprint that the row's rectangle touches. */
  readonly side: SideOfModule
  /** Which way the row's own fronts look; `forward`: the way the anchor's do. */
  readonly fronts: 'forward' | 'left' | 'right' | 'back'
  /** Ends that are flush along the side: front, back or middle at its left and right, else left, right or middle. */
  readonly lineUp: SideOfModule | 'middle'
  /** From there toward the anchor's back (at its left and right) or its right, mm; may be less than 0. */
  readonly shift: number
  readonly gap: number
  readonly at: DefinitionPath
}

/** Modules, by their keys, that stand side by side, from the left, fronts flush. */
export interface RowSpec {
  readonly modules: readonly string[]
  /** Nothing: by itself, behind what stands already. */
  readonly stands: StandSpec | undefined
  /** `tops`: what is lower is packed up until the upper sides of the carcases are level. */
  readonly level: 'floors' | 'tops'
  readonly join: JoinSpec | undefined
  /** One board over all of them. */
  readonly worktop: RowWorktopSpec | undefined
  readonly at: DefinitionPath
}
