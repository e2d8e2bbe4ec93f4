import type { RuleId } from '../../rulebook/index.ts'
import type { DefinitionPath } from './stock.ts'

/** Findings of a rule that the definition answers with a reason; they are listed with it and stop nothing. */
export interface Silence {
  readonly rule: RuleId
  readonly reason: string
  /** Keys of the modules that it holds for; nothing: for all. */
  readonly modules?: readonly string[]
  readonly at: DefinitionPath
}

/** What a definition says about findings. */
export interface FindingSpec {
  /** Limits that differ from those of the rulebook, by rule and name, in the limit's unit. */
  readonly limits: Readonly<Partial<Record<RuleId, Readonly<Record<string, number>>>>>
  readonly silences: readonly Silence[]
}
