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

/** Modules, by their keys, that stand side by side, from the left, fronts flush. */
export interface RowSpec {
  readonly modules: readonly string[]
  readonly join: JoinSpec | undefined
  /** One board over all of them. */
  readonly worktop: RowWorktopSpec | undefined
  readonly at: DefinitionPath
}
