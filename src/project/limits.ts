import { type LimitName, RULEBOOK, type RuleEntry, type RuleId } from '../rulebook/index.ts'
import type { Project } from './types.ts'

/** A limit of a rule as the definition has it, or as the rulebook has it; in the limit's unit (lengths in mm). */
export function limitOf<Id extends RuleId>(
  { findings }: Pick<Project, 'findings'>,
  rule: Id,
  name: LimitName<Id>,
): number {
  const entry: RuleEntry = RULEBOOK[rule]
  const value = findings.limits[rule]?.[name] ?? entry.limits[name]?.value
  if (value === undefined) throw new Error(`the rule ${rule} has no limit ${name}`)
  return value
}
