import type { RuleCase } from './case.ts'
import { cutoutCases } from './cutouts.ts'
import { definitionCases } from './definition.ts'
import { floorCases } from './floor.ts'
import { inPlaceCases } from './in-place.ts'
import { namedPanelCases } from './named-panels.ts'
import { printingCases } from './printing.ts'
import { shopCases } from './shop.ts'
import { stockCases } from './stock.ts'
import { woodCases } from './wood.ts'

/** Cases of all rules, a file for each family of the rulebook. */
export const ruleCases: readonly RuleCase[] = [
  ...cutoutCases,
  ...definitionCases,
  ...floorCases,
  ...inPlaceCases,
  ...namedPanelCases,
  ...printingCases,
  ...shopCases,
  ...stockCases,
  ...woodCases,
]
