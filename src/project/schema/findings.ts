import * as z from 'zod'
import { type Limit, RULEBOOK, type RuleEntry } from '../../rulebook/index.ts'
import { group, kind, length, moduleName, optional } from './parts.ts'

const UNITS: Readonly<Record<Limit['unit'], string>> = { mm: ' mm', kg: ' kg', degrees: '°', '%': ' %', '1': '' }

const limitSchema = ({ unit, value, says }: Limit) =>
  optional(unit === 'mm' ? length : z.number(kind('limit')), `Limit: ${says}. Default ${value}${UNITS[unit]}.`)

const silencing = {
  silence: optional(
    z.string(kind('reason')).trim().min(3, kind('reason')).max(200, kind('reason')),
    'Why its findings are all right here; they are listed with this reason and stop nothing.',
  ),
  in: optional(z.array(moduleName, kind('row')).min(1, kind('row')), 'Modules that it is silenced for. Default: all.'),
}

function ruleSchema({ meaning, limits, always }: RuleEntry) {
  const keys = Object.fromEntries(Object.entries(limits).map(([key, limit]) => [key, limitSchema(limit)]))
  return optional(group({ ...keys, ...(always ? {} : silencing) }), `When ${meaning}.`)
}

/** Limits and silences by the ids of the rules. */
export const findingsSchema = group(
  Object.fromEntries(
    // Of a rule without limits that is never silenced there is nothing to say.
    Object.entries(RULEBOOK as Readonly<Record<string, RuleEntry>>)
      .filter(([, { limits, always }]) => Object.keys(limits).length > 0 || always !== true)
      .map(([id, entry]) => [id, ruleSchema(entry)]),
  ),
)

/** What is said of one rule: limits by name, and: silence, in. */
export type RawFindingRule = Readonly<Record<string, unknown>>
