import type { RowSpec } from './floor.ts'
import type { ModuleSpec } from './module.ts'
import type { OutputSpec } from './outputs.ts'
import type { Stock } from './stock.ts'

/** A definition, read, checked and complete: every default filled in, every length in mm. */
export interface Project {
  readonly title: string
  readonly units: 'mm' | 'in'
  readonly stocks: readonly Stock[]
  readonly modules: readonly ModuleSpec[]
  readonly rows: readonly RowSpec[]
  readonly outputs: OutputSpec
}
