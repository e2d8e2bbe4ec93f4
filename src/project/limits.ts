import { type LimitName, RULEBOOK, type RuleEntry, type RuleId } from '../rulebook/index.ts'
import type { Project } from './types.ts'

/** What says which limits hold: a project, or one of its modules. */
export type Limits = Pick<Project, 'findings'>

/** A limit of a rule as the definition has it, or as the rulebook has it; in the limit's unit (lengths in mm). */
export function limitOf<Id extends RuleId>({ findings }: Limits, rule: Id, name: LimitName<Id>): number {
  const entry: RuleEntry = RULEBOOK[rule]
  const value = findings.limits[rule]?.[name] ?? entry.limits[name]?.value
  if (value === undefined) throw new Error(`the rule ${rule} has no limit ${name}`)
  return value
}
