import type { RuleCase } from './case.ts'
import { cutoutCases } from './cutouts.ts'
import { definitionCases } from './definition.ts'
import { inPlaceCases } from './in-place.ts'
import { woodCases } from './wood.ts'

/** Cases of all rules, a file for each family of the rulebook. */
export const ruleCases: readonly RuleCase[] = [...definitionCases, ...woodCases, ...cutoutCases, ...inPlaceCases]
