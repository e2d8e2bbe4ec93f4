import { type Accepted, acceptedAt, type DefinitionPath, type Naming } from '../../project/index.ts'

/** How a place of the definition is filled in. */
export type Control =
  /** A length as people write it, or one of some words. */
  | { readonly kind: 'length'; readonly words: readonly string[]; readonly negative: boolean }
  /** One of some words, or the name of something. */
  | { readonly kind: 'choice'; readonly words: readonly string[]; readonly namings: readonly Naming[] }
  /** A number, or one of some words; `units`: one that may carry a unit, such as 40 kg. */
  | { readonly kind: 'number'; readonly words: readonly string[]; readonly units: boolean }
  | { readonly kind: 'text' }
  /** Several of the same in one line, with commas between; `single`: one alone is written without a list. */
  | { readonly kind: 'list'; readonly of: Control; readonly words: readonly string[]; readonly single: boolean }

/** A place of the definition as the form has it. */
export interface Field {
  /** How a plain value is filled in; nothing where only keys can stand. */
  readonly control: Control | undefined
  /** Keys that it may have in place of a plain value. */
  readonly keys: readonly string[]
  /** Groups that stand in a list. */
  readonly items: boolean
  /** The sentence of the schema. */
  readonly about: string
  /** What stands there, in the words of messages. */
  readonly expected: string
  readonly required: readonly string[]
}

/** Lengths that may be less than 0, by their key. */
const MAY_BE_NEGATIVE: readonly unknown[] = ['shift']

/** Reads a field's kind off the schema; what it finds is kept for paths that differ only by names and places in lists. */
export function fieldReader(): (path: DefinitionPath) => Field | undefined {
  const known = new Map<string, Field | undefined>()
  return (path) => {
    const general = generalOf(path)
    const key = JSON.stringify(general)
    if (!known.has(key)) known.set(key, fieldAt(general))
    return known.get(key)
  }
}

const SPLITS: readonly unknown[] = ['side by side', 'stacked']

/** The same place of the schema: all bays are alike, and so are all names and all items of a list. */
function generalOf(path: DefinitionPath): DefinitionPath {
  const general: (string | number)[] = []
  for (const [depth, step] of path.entries()) {
    if (typeof step === 'number' && SPLITS.includes(general.at(-1)) && path[0] === 'modules') general.pop()
    else general.push(typeof step === 'number' ? 0 : depth === 1 && path.length > 1 && isNamed(path[0]) ? 'a' : step)
  }
  return general
}

const isNamed = (group: string | number | undefined): boolean =>
  group === 'stock' || group === 'modules' || group === 'hardware'

function fieldAt(path: DefinitionPath): Field | undefined {
  const accepted = acceptedAt(path)
  if (accepted === undefined) return undefined
  const item = accepted.list ? acceptedAt([...path, 0]) : undefined
  const items = item !== undefined && item.keys.length > 0
  return {
    control: items ? itemsControl(accepted) : controlOf(path, accepted, item),
    keys: accepted.keys.map(({ key }) => key),
    items,
    about: accepted.about,
    expected: accepted.expected,
    required: accepted.keys.filter(({ required }) => required).map(({ key }) => key),
  }
}

/** A stack of drawers may be a number instead of a list; other lists of groups have no plain form. */
const itemsControl = ({ expected }: Accepted): Control | undefined =>
  NUMBER.test(expected) ? { kind: 'number', words: [], units: false } : undefined

const LENGTH = /a length such as/
const LENGTHS = /length and width|two lengths/
const NUMBER = /a (whole )?number|kilograms|degrees|modulus/
const WITH_UNIT = /or 40 kg|kg\/m2/

function controlOf(path: DefinitionPath, accepted: Accepted, item: Accepted | undefined): Control | undefined {
  const { expected, words, namings, keys } = accepted
  if (item !== undefined) {
    const of = controlOf([...path, 0], item, undefined) ?? { kind: 'text' }
    const single = LENGTH.test(expected) || NUMBER.test(expected)
    return { kind: 'list', of, words, single }
  }
  const plain = keys.length === 0
  if (LENGTH.test(expected) || LENGTHS.test(expected)) {
    return { kind: 'length', words, negative: MAY_BE_NEGATIVE.includes(path.at(-1)) }
  }
  if (namings.length > 0) return { kind: 'choice', words, namings }
  if (NUMBER.test(expected)) return { kind: 'number', words, units: WITH_UNIT.test(expected) }
  if (words.length > 0) return { kind: 'choice', words, namings: [] }
  return plain ? { kind: 'text' } : undefined
}
