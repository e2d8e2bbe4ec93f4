import type { BitSpec } from './bits.ts'
import type { FindingSpec } from './findings.ts'
import type { RowSpec } from './floor.ts'
import type { ModuleSpec } from './module.ts'
import type { OutputSpec } from './outputs.ts'
import type { DefinitionPath, Stock } from './stock.ts'

/** Sizes that are to be as large as the sheets on hand allow; all that say so get the same length. Lengths in mm. */
export interface FitSpec {
  /** Width of a saw cut. */
  readonly kerf: number
  /** Sizes are whole multiples of it. */
  readonly step: number
  readonly atMost: number
  /** Every place that says so. */
  readonly at: readonly DefinitionPath[]
  /** The size that this project has been worked out for; nothing before it is found. */
  readonly size: number | undefined
}

/** A definition, read, checked and complete: every default filled in, every length in mm. */
export interface Project {
  readonly title: string
  readonly units: 'mm' | 'in'
  readonly stocks: readonly Stock[]
  readonly modules: readonly ModuleSpec[]
  readonly rows: readonly RowSpec[]
  /** Width of a saw cut, mm. */
  readonly kerf: number
  readonly fit: FitSpec | undefined
  readonly findings: FindingSpec
  /** What is in the shop; empty when the definition does not say. */
  readonly bits: readonly BitSpec[]
  readonly outputs: OutputSpec
}
