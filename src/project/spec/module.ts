import type { BaseSpec } from './base.ts'
import type { Bay } from './bay.ts'
import type { CarcaseSpec } from './carcase.ts'
import type { OpeningSpec } from './openings.ts'
import type { DefinitionPath, Stock } from './stock.ts'

export interface ModuleSpec {
  /** Safe as a file name and unique: `glaze-store`. */
  readonly key: string
  readonly name: string
  readonly width: number
  /** The whole footprint, front to back: fronts and back included. */
  readonly depth: number
  /** Of the carcase alone, or of its upper side above the floor. */
  readonly height: { readonly of: 'carcase' | 'working'; readonly mm: number }
  readonly stock: Stock
  readonly carcase: CarcaseSpec
  /** Between the hidden face of an overlay front and the carcase's front edges. */
  readonly frontGap: number
  readonly inside: Bay
  readonly base: BaseSpec
  readonly openings: readonly OpeningSpec[]
  readonly at: DefinitionPath
}
