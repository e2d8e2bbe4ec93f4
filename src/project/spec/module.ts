import type { BaseSpec } from './base.ts'
import type { Bay } from './bay.ts'
import type { CarcaseSpec } from './carcase.ts'
import type { FindingSpec } from './findings.ts'
import type { FlipSpec } from './flip.ts'
import type { LippingSpec } from './lipping.ts'
import type { LoadsSpec } from './loads.ts'
import type { OpeningSpec } from './openings.ts'
import type { DefinitionPath, Stock } from './stock.ts'
import type { MachineTopSpec, WorktopSpec } from './tops.ts'

export interface ModuleSpec {
  /** Safe as a file name and unique: `glaze-store`. */
  readonly key: string
  readonly name: string
  readonly width: number
  /** The whole footprint, front to back: fronts and back included. */
  readonly depth: number
  /** Of the carcase alone, or from the floor to its upper side, or to that of the worktop on it. */
  readonly height: { readonly of: 'carcase' | 'working'; readonly mm: number }
  /** One of its sizes is as large as the sheets on hand allow. */
  readonly fitted: boolean
  readonly stock: Stock
  readonly carcase: CarcaseSpec
  /** Between the hidden face of an overlay front and the carcase's front edges. */
  readonly frontGap: number
  readonly inside: Bay
  readonly flipOver: FlipSpec | undefined
  readonly base: BaseSpec
  /** A later one stands before an earlier one on the same edge. */
  readonly lipping: readonly LippingSpec[]
  readonly loads: LoadsSpec
  /** At most one of the two. */
  readonly worktop: WorktopSpec | undefined
  readonly machineTop: MachineTopSpec | undefined
  /** Of the board that lies on the carcase, its own or that of its row; 0 where there is none. */
  readonly worktopThickness: number
  readonly openings: readonly OpeningSpec[]
  /** The project's own, by which what is placed is judged. */
  readonly findings: FindingSpec
  readonly at: DefinitionPath
}
