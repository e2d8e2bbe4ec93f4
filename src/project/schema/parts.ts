import * as z from 'zod'
import type { ItemKind } from '../../hardware/index.ts'
import type { KindKey } from './kinds.ts'

/** The error text of a schema node: the key of its kind, see KINDS. */
export const kind = (key: KindKey) => ({ error: key })

/** Between the known keys in the error text of a group; no key has one. */
export const KEY_SEPARATOR = '|'

/**
 * A group of known keys; any other is an error. The error text for unknown keys is the list of known ones, so that
 * the nearest can be offered; else it is the kind `group`, or the one that is given.
 */
export function group<S extends z.core.$ZodLooseShape>(shape: S, key: KindKey = 'group') {
  return z.strictObject(shape, {
    error: (issue) => (issue.code === 'unrecognized_keys' ? Object.keys(shape).join(KEY_SEPARATOR) : key),
  })
}

/** A key that must be there, with the words that editors show. */
export function required<T extends z.ZodType>(schema: T, description: string) {
  return schema.describe(description)
}

/** A key that may be left out, with the words that editors show. */
export function optional<T extends z.ZodType>(schema: T, description: string) {
  return schema.optional().describe(description)
}

const numberOrText = (key: KindKey) => z.union([z.number(), z.string()], kind(key))

/** A number in the project's units, or a text with its own; read by parseLength when the units are known. */
export const length = numberOrText('length')
export const lengthOrAuto = numberOrText('length or auto')
export const lengthOrFits = numberOrText('length or as large as fits')
export const lengthOrCentred = numberOrText('length or centred')
export const lengthOrSameAsWidth = numberOrText('length or same as width')
/** A free name; a name that looks like a number is one all the same. */
export const name = numberOrText('name')

/** What a plain value of a definition names. */
export interface Naming {
  readonly of: 'stock' | 'module' | 'hardware'
  /** Of hardware the kinds that may stand there; empty for any. */
  readonly kinds: readonly ItemKind[]
  /** Words that may stand there in place of a name. */
  readonly words: readonly string[]
}

/** What schemas name, for editors, and for names that are changed. */
export const NAMINGS = z.registry<Naming>()

function naming<T extends z.ZodType>(
  schema: T,
  of: Naming['of'],
  words: readonly string[],
  kinds: readonly ItemKind[],
): T {
  NAMINGS.add(schema, { of, words, kinds })
  return schema
}

export const stockName = naming(numberOrText('name'), 'stock', [], [])
export const stockNameOr = (...words: string[]) => naming(numberOrText('name'), 'stock', words, [])
export const moduleName = naming(numberOrText('name'), 'module', [], [])
/** The name of a piece of hardware of any kind. */
export const hardware = naming(z.string(kind('hardware')), 'hardware', [], [])
/** The same of one of some kinds, or a word in its place. */
export const hardwareOf = (kinds: readonly ItemKind[], words: readonly string[] = [], key: KindKey = 'hardware') =>
  naming(z.string(kind(key)), 'hardware', words, kinds)
