import type { RuleCase } from './case.ts'
import { definitionCases } from './definition.ts'
import { floorCases } from './floor.ts'
import { namedPanelCases } from './named-panels.ts'
import { printingCases } from './printing.ts'
import { shopCases } from './shop.ts'
import { stockCases } from './stock.ts'

/** Cases of all rules, a file for each family of the rulebook. */
export const ruleCases: readonly RuleCase[] = [
  ...definitionCases,
  ...floorCases,
  ...namedPanelCases,
  ...stockCases,
  ...shopCases,
  ...printingCases,
]
