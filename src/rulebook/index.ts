import { baseRules } from './base.ts'
import { cutoutRules } from './cutouts.ts'
import { definitionRules } from './definition.ts'
import { drawerRules } from './drawers.ts'
import { flipOverRules } from './flip-over.ts'
import { floorRules } from './floor.ts'
import { frontRules } from './fronts.ts'
import { jointRules } from './joints.ts'
import { loadRules } from './loads.ts'
import { panelRules } from './panels.ts'
import { printingRules } from './printing.ts'
import { shelfRules } from './shelves.ts'
import { shopRules } from './shop.ts'
import { spaceRules } from './space.ts'
import { stockRules } from './stock.ts'
import { topRules } from './tops.ts'
import type { RuleEntries, RuleEntry } from './types.ts'
import { woodRules } from './wood.ts'

export type { Limit, RuleEntry, Severity } from './types.ts'

/** Every rule by its id, which never changes; in the order in which findings of one severity stand beside each other. */
export const RULEBOOK = {
  ...jointRules,
  ...shelfRules,
  ...frontRules,
  ...drawerRules,
  ...baseRules,
  ...topRules,
  ...flipOverRules,
  ...floorRules,
  ...woodRules,
  ...cutoutRules,
  ...panelRules,
  ...spaceRules,
  ...loadRules,
  ...stockRules,
  ...shopRules,
  ...printingRules,
  ...definitionRules,
} as const satisfies RuleEntries

export type RuleId = keyof typeof RULEBOOK
/** The names of the limits of a rule. */
export type LimitName<Id extends RuleId> = keyof (typeof RULEBOOK)[Id]['limits'] & string

/** The entry of an id that may be none. */
export function ruleEntry(id: string): RuleEntry | undefined {
  return Object.hasOwn(RULEBOOK, id) ? RULEBOOK[id as RuleId] : undefined
}
