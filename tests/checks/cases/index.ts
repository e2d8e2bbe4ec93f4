import { baseCases } from './base.ts'
import type { RuleCase } from './case.ts'
import { cutoutCases } from './cutouts.ts'
import { definitionCases } from './definition.ts'
import { drawerCases } from './drawers.ts'
import { flipOverCases } from './flip-over.ts'
import { floorCases } from './floor.ts'
import { frontCases } from './fronts.ts'
import { grooveCases } from './grooves.ts'
import { inPlaceCases } from './in-place.ts'
import { jointCases } from './joints.ts'
import { letterCases } from './letters.ts'
import { loadCases } from './loads.ts'
import { namedPanelCases } from './named-panels.ts'
import { printingCases } from './printing.ts'
import { shelfCases } from './shelves.ts'
import { shopCases } from './shop.ts'
import { spaceCases } from './space.ts'
import { stockCases } from './stock.ts'
import { topCases } from './tops.ts'
import { woodCases } from './wood.ts'

/** Cases of all rules, a file for each family of the rulebook. */
export const ruleCases: readonly RuleCase[] = [
  ...baseCases,
  ...cutoutCases,
  ...definitionCases,
  ...drawerCases,
  ...flipOverCases,
  ...floorCases,
  ...frontCases,
  ...grooveCases,
  ...inPlaceCases,
  ...jointCases,
  ...letterCases,
  ...loadCases,
  ...namedPanelCases,
  ...printingCases,
  ...shelfCases,
  ...shopCases,
  ...spaceCases,
  ...stockCases,
  ...topCases,
  ...woodCases,
]
