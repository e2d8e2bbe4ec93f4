import { RULEBOOK, type RuleEntry, type RuleId } from '../../rulebook/index.ts'
import { type Context, quoted } from '../context.ts'
import { isGroup } from '../layers.ts'
import type { DefinitionPath, FindingSpec, Silence } from '../types.ts'

/** A module as the floor plan knows it: the name as it was written, and its key. */
interface Named {
  readonly written: string
  readonly key: string
}

/** Limits and silences of the rules, checked against each other and against the names of the modules. */
export function resolveFindings(context: Context, raw: unknown, modules: readonly Named[]): FindingSpec {
  const limits: Partial<Record<RuleId, Readonly<Record<string, number>>>> = {}
  const silences: Silence[] = []
  if (!isGroup(raw)) return { limits, silences }
  for (const id of Object.keys(RULEBOOK) as RuleId[]) {
    const group = raw[id]
    if (!isGroup(group)) continue
    const path: DefinitionPath = ['findings', id]
    const found = limitsOf(context, RULEBOOK[id], group, path)
    if (Object.keys(found).length > 0) limits[id] = found
    silences.push(...silenceOf(context, id, group, modules))
  }
  return { limits, silences }
}

function limitsOf(
  context: Context,
  entry: RuleEntry,
  group: Readonly<Record<string, unknown>>,
  path: DefinitionPath,
): Record<string, number> {
  const found: Record<string, number> = {}
  for (const [name, { unit }] of Object.entries(entry.limits)) {
    const value = group[name]
    if (typeof value !== 'number' && typeof value !== 'string') continue
    const said = { value, path: [...path, name] }
    const limit = unit === 'mm' ? context.length(said) : Number(value)
    if (limit === undefined) continue
    if (limit < 0) {
      context.report(said.path, `${context.written(said.path, value)} is no limit`, { expected: '0 or more' })
    } else found[name] = limit
  }
  for (const [name, limit] of Object.entries(found)) checkOrder(context, entry, { name, limit, found, path })
  return found
}

/** A limit that warns lies on the near side of the one that stops: `lip warn` goes with `lip stop`. */
function checkOrder(
  context: Context,
  entry: RuleEntry,
  { name, limit, found, path }: { name: string; limit: number; found: Record<string, number>; path: DefinitionPath },
): void {
  const partner = name.endsWith('stop') ? name.replace(/stop$/, 'warn') : name.replace(/warn$/, 'stop')
  const [own, other] = [entry.limits[name], entry.limits[partner]]
  if (own === undefined || other === undefined || partner === name) return
  // Both said: the complaint stands at the first alone.
  if (partner in found && name.endsWith('stop')) return
  const against = found[partner] ?? other.value
  if (own.value > other.value ? limit >= against : limit <= against) return
  const bound = own.unit === 'mm' ? context.show(against) : String(against)
  context.report([...path, name], `lies beyond the limit "${partner}", ${bound}`, {
    expected: `${own.value > other.value ? 'at least' : 'at most'} ${bound}`,
  })
}

function silenceOf(
  context: Context,
  rule: RuleId,
  group: Readonly<Record<string, unknown>>,
  modules: readonly Named[],
): Silence[] {
  const at: DefinitionPath = ['findings', rule]
  const { silence: reason, in: where } = group
  if (typeof reason !== 'string') {
    if (where !== undefined && !context.troubled([...at, 'silence'])) {
      context.report([...at, 'in'], 'has no meaning without "silence"', { expected: 'silence: and a reason' })
    }
    return []
  }
  if (!Array.isArray(where)) return [{ rule, reason, at }]
  const keys = where.flatMap((name, k): string[] => {
    const found = modules.find(({ written }) => written === String(name))
    if (found !== undefined) return [found.key]
    const known = modules.map(({ written }) => written)
    context.report([...at, 'in', k], `there is no module ${quoted(String(name))}`, {
      expected: known.map(quoted).join(', '),
      nearest: context.nearest(String(name), known),
    })
    return []
  })
  return [{ rule, reason, modules: keys, at }]
}
