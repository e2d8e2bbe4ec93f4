import type * as z from 'zod'
import { type Context, quoted } from './context.ts'
import { isGroup } from './layers.ts'
import { definitionSchema } from './schema/definition.ts'
import { KINDS, type KindKey } from './schema/kinds.ts'
import { KEY_SEPARATOR } from './schema/parts.ts'
import { holdsNames, NAME_MARK } from './to-data.ts'
import type { DefinitionPath } from './types.ts'

type Issue = z.core.$ZodIssue
type Marked = readonly PropertyKey[]

/**
 * The same for data of which most was looked at before: groups and lists that are known to fit are left out, since what
 * stands in one place of the schema has no say in any other. `fitting`: what is known, and what is found to fit now. False
 * where something does not fit; then `checkShape` says what.
 */
export function fitsShape(data: unknown, fitting: WeakSet<object>): boolean {
  if (!isGroup(data)) return false
  const known = (value: unknown): boolean => typeof value === 'object' && value !== null && fitting.has(value)
  const modules = isGroup(data.modules)
    ? Object.entries(data.modules).filter(([, module]) => !known(module))
    : undefined
  const rest = Object.entries(data).filter(([key, value]) => key !== 'modules' && !known(value))
  const unknown = Object.fromEntries([
    ...(known(data.stock) ? [['stock', {}] as const] : []),
    ...rest,
    ...(modules === undefined ? [] : [['modules', Object.fromEntries(modules)] as const]),
  ])
  if (!definitionSchema.safeParse(unknown).success) return false
  for (const [, value] of [...rest, ...(modules ?? [])]) {
    if (typeof value === 'object' && value !== null) fitting.add(value)
  }
  return true
}

/**
 * Checks data against the schema, reports what does not fit, and gives back the data without those parts, so that the
 * rest can be read on.
 */
export function checkShape(context: Context, data: unknown): unknown {
  const result = definitionSchema.safeParse(data)
  if (result.success) return data
  const copy = copyOf(data)
  const found = result.error.issues.flatMap((issue) => flat(issue, []))
  // Unknown keys first: one that is nearly right explains why another is missing.
  for (const { path, issue } of found) if (issue.code === 'unrecognized_keys') unknownKeys(context, copy, path, issue)
  for (const { path, issue } of found) if (issue.code !== 'unrecognized_keys') wrongValue(context, copy, path, issue)
  return copy
}

interface Found {
  readonly path: Marked
  readonly issue: Issue
}

/** An issue with its whole path; of a choice, the issues of the branch that was meant. */
function flat(issue: Issue, base: Marked): Found[] {
  const path = [...base, ...issue.path]
  const branch = issue.code === 'invalid_union' ? fittingBranch(issue.errors) : undefined
  return branch === undefined ? [{ path, issue }] : branch.flatMap((inner) => flat(inner, path))
}

/** Of a choice, the one whose own kind fits and whose parts do not: a group with a wrong key in it, for example. */
function fittingBranch(branches: readonly (readonly Issue[])[]): readonly Issue[] | undefined {
  return branches.find((issues) => issues.every((issue) => issue.path.length > 0 || issue.code === 'unrecognized_keys'))
}

function unknownKeys(
  context: Context,
  copy: unknown,
  path: Marked,
  issue: Extract<Issue, { code: 'unrecognized_keys' }>,
): void {
  const known = issue.message.split(KEY_SEPARATOR)
  const group = plain(path)
  for (const key of issue.keys) {
    const nearest = context.nearest(key, known)
    if (nearest !== undefined) context.misspelt([...group, nearest])
    const span = context.source.span([...group, key], 'key')
    context.reportAt(span, group, `there is no key ${quoted(key)} here`, { expected: known.join(', '), nearest })
    take(copy, [...path, key])
  }
}

function wrongValue(context: Context, copy: unknown, path: Marked, issue: Issue): void {
  const value = at(copy, path)
  const place = plain(path)
  const key = issue.message as KindKey
  if (!Object.hasOwn(KINDS, key)) throw new Error(`a schema node has no kind: ${place.join(' › ')}: ${issue.message}`)
  const { expected } = KINDS[key]
  if (value === undefined) context.reportMissing(place.slice(0, -1), String(place[place.length - 1]), expected)
  else if (value === null) context.report(place, 'nothing stands here', { expected, on: 'key' })
  else if (place.length === 0) context.report(place, 'this is not a definition', { expected: ROOT })
  else if (Array.isArray(value) && (issue.code === 'too_small' || issue.code === 'too_big')) {
    const what = value.length === 0 ? 'the list is empty' : `a list of ${value.length} does not do here`
    context.report(place, what, { expected })
  } else context.reportKind(place, value, key)
  take(copy, path)
}

const ROOT = 'keys, each on its own line: storyrod, stock, modules'

/** The path as it stands in the text: without the marks before names. */
function plain(path: Marked): DefinitionPath {
  return path.map((step, i) => {
    if (typeof step === 'number') return step
    return i === 1 && holdsNames(path.slice(0, 1)) ? String(step).slice(NAME_MARK.length) : String(step)
  })
}

function copyOf(data: unknown): unknown {
  if (Array.isArray(data)) return data.map(copyOf)
  if (typeof data !== 'object' || data === null) return data
  const copy = Object.create(null) as Record<string, unknown>
  for (const [key, value] of Object.entries(data)) copy[key] = copyOf(value)
  return copy
}

function at(data: unknown, path: Marked): unknown {
  let here = data
  for (const step of path) {
    if (typeof here !== 'object' || here === null) return undefined
    here = (here as Record<PropertyKey, unknown>)[step]
  }
  return here
}

/** Takes a part out; an item of a list leaves its place empty, so that the others keep theirs. */
function take(data: unknown, path: Marked): void {
  const last = path[path.length - 1]
  const holder = at(data, path.slice(0, -1))
  if (last === undefined || typeof holder !== 'object' || holder === null) return
  if (Array.isArray(holder)) holder[Number(last)] = undefined
  else delete (holder as Record<PropertyKey, unknown>)[last]
}
