import type * as z from 'zod'
import { definitionSchema } from './schema/definition.ts'
import { KINDS, type Kind, LENGTH } from './schema/kinds.ts'
import { NAMINGS, type Naming } from './schema/parts.ts'
import type { DefinitionPath } from './types.ts'

/** A key that a group may have. */
export interface AcceptedKey {
  readonly key: string
  /** What it means and what its default is, in a sentence or two. */
  readonly about: string
  readonly required: boolean
}

/** What a definition may hold at one of its places. */
export interface Accepted {
  /** What the key of this place means; empty for items of lists and for names. */
  readonly about: string
  /** What stands there, in the words of messages: `a length such as 600, 600 mm, 23 7/16 in`. */
  readonly expected: string
  /** Keys of a group. */
  readonly keys: readonly AcceptedKey[]
  /** True where each key of the group is a name of one's choice. */
  readonly freeKeys: boolean
  /** True where a list may stand. */
  readonly list: boolean
  /** True where that list may have no item. */
  readonly emptyList: boolean
  /** True where a plain value may stand: a length, a number, a word. */
  readonly plain: boolean
  /** True where a plain number is a length in the project's units. */
  readonly length: boolean
  /** Words and numbers that a plain value may be, where some are known. */
  readonly words: readonly string[]
  /** What a plain value names. */
  readonly namings: readonly Naming[]
}

export type { Naming } from './schema/parts.ts'

type Schema = z.core.$ZodType
/** The parts of zod's own definitions that are looked at. */
interface Def {
  readonly type: string
  readonly innerType?: Schema
  readonly options?: readonly Schema[]
  readonly shape?: Readonly<Record<string, Schema>>
  readonly catchall?: Schema
  readonly valueType?: Schema
  readonly element?: Schema
  readonly getter?: () => Schema
  readonly entries?: Readonly<Record<string, string | number>>
  readonly values?: readonly unknown[]
  readonly checks?: readonly {
    readonly _zod: { readonly def: { readonly check: string; readonly minimum?: number } }
  }[]
  readonly error?: (issue: { readonly code: string }) => unknown
}
const defOf = (schema: Schema): Def => schema._zod.def as unknown as Def

/** Schemas of groups and lists. */
const HOLDERS: readonly string[] = ['object', 'record', 'array']

/** What may stand at a path, whatever the definition says now; nothing where no definition has such a path. */
export function acceptedAt(path: DefinitionPath): Accepted | undefined {
  let schemas: readonly Schema[] = [definitionSchema]
  for (const step of path) {
    schemas = schemas.flatMap(alternatives).flatMap((schema) => inside(defOf(schema), step))
    if (schemas.length === 0) return undefined
  }
  return describe(schemas)
}

/** What a plain value at a path names: the name of a stock, of a module, of a piece of hardware. */
export const namingAt = (path: DefinitionPath): readonly Naming[] => acceptedAt(path)?.namings ?? []

/** A schema's branches, each without what only wraps it. */
function alternatives(schema: Schema): readonly Schema[] {
  const { innerType, options, getter } = defOf(schema)
  if (innerType !== undefined) return alternatives(innerType)
  if (getter !== undefined) return alternatives(getter())
  return options === undefined || NAMINGS.get(schema as never) !== undefined ? [schema] : options.flatMap(alternatives)
}

function inside({ type, shape, catchall, valueType, element }: Def, step: string | number): readonly Schema[] {
  if (type === 'array') return typeof step === 'number' && element !== undefined ? [element] : []
  if (typeof step !== 'string') return []
  if (type === 'record') return valueType === undefined ? [] : [valueType]
  const own = shape !== undefined && Object.hasOwn(shape, step) ? shape[step] : undefined
  if (own !== undefined) return [own]
  return type === 'object' && catchall !== undefined && defOf(catchall).type !== 'never' ? [catchall] : []
}

function describe(schemas: readonly Schema[]): Accepted {
  const branches = schemas.flatMap(alternatives)
  const defs = branches.map(defOf)
  const kinds = [...schemas, ...branches].flatMap(kindOf)
  const namings = branches.flatMap((schema) => NAMINGS.get(schema as never) ?? [])
  const lists = defs.filter(({ type }) => type === 'array')
  return {
    about: schemas.map((schema) => descriptionOf(schema)).find((about) => about !== '') ?? '',
    expected: kinds[0]?.expected ?? '',
    keys: defs.flatMap(({ shape }) => keysOf(shape ?? {})),
    freeKeys: defs.some(({ type }) => type === 'record'),
    list: lists.length > 0,
    plain: branches.some((schema) => !HOLDERS.includes(defOf(schema).type)),
    length: kinds.some(({ expected }) => expected.includes(LENGTH)),
    emptyList: lists.some(({ checks = [] }) => checks.every(({ _zod: { def } }) => (def.minimum ?? 0) === 0)),
    words: [
      ...new Set([
        ...defs.flatMap(wordsOf),
        ...kinds.flatMap(({ words }) => words ?? []),
        ...namings.flatMap(({ words }) => words),
      ]),
    ],
    namings,
  }
}

function keysOf(shape: Readonly<Record<string, Schema>>): AcceptedKey[] {
  return Object.entries(shape).map(([key, schema]) => ({
    key,
    about: descriptionOf(schema),
    required: defOf(schema).type !== 'optional',
  }))
}

const wordsOf = ({ type, entries, values }: Def): string[] => {
  if (entries !== undefined) return Object.values(entries).map(String)
  if (values !== undefined) return values.map(String)
  return type === 'boolean' ? ['true', 'false'] : []
}

const descriptionOf = (schema: Schema): string => (schema as { readonly description?: string }).description ?? ''

/** The kind that a schema names in its error text, through what only wraps it. */
function kindOf(schema: Schema): Kind[] {
  const def = defOf(schema)
  if (def.innerType !== undefined) return kindOf(def.innerType)
  const text = def.error?.({ code: 'invalid_type' })
  return typeof text === 'string' && Object.hasOwn(KINDS, text) ? [KINDS[text as keyof typeof KINDS]] : []
}
