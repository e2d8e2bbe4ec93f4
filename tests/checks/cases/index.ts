import { baseCases } from './base.ts'
import type { RuleCase } from './case.ts'
import { definitionCases } from './definition.ts'
import { drawerCases } from './drawers.ts'
import { flipOverCases } from './flip-over.ts'
import { frontCases } from './fronts.ts'
import { jointCases } from './joints.ts'
import { shelfCases } from './shelves.ts'
import { topCases } from './tops.ts'

/** Cases of all rules, a file for each family of the rulebook. */
export const ruleCases: readonly RuleCase[] = [
  ...definitionCases,
  ...jointCases,
  ...shelfCases,
  ...frontCases,
  ...drawerCases,
  ...baseCases,
  ...topCases,
  ...flipOverCases,
]
