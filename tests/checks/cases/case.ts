import type { Severity } from '../../../src/checks/index.ts'
import type { Built } from '../../../src/outputs/index.ts'
import type { RuleId } from '../../../src/rulebook/index.ts'

/**
 * One example of a rule: a definition that trips it, with the sentence that a person reads, and one just inside the limit
 * that does not. The numbers are worked by hand in a comment beside it. Where no definition can trip the rule, a function
 * gives a project that was tampered with.
 */
export interface RuleCase {
  readonly rule: RuleId
  /** What is special about this one, where a rule has several. */
  readonly what?: string
  readonly trips: string | (() => Built)
  readonly severity: Severity
  /** The whole sentence. */
  readonly message: string
  /** The whole fix, where one is offered. */
  readonly fix?: string
  /** Just inside the limit: no finding of this rule. */
  readonly inside: string | (() => Built)
}
