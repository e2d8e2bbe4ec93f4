import type { RuleCase } from './case.ts'
import { definitionCases } from './definition.ts'
import { spaceCases } from './space.ts'

/** Cases of all rules, a file for each family of the rulebook. */
export const ruleCases: readonly RuleCase[] = [...definitionCases, ...spaceCases]
