import { type Document, isAlias, isMap, isPair, isScalar, isSeq, type Node, type Pair } from 'yaml'
import { Places, type Span } from './places.ts'
import { cutText, printable } from './problem.ts'
import type { DefinitionPath } from './types.ts'

/** Plain data of a definition: text, numbers, true and false, null, lists, and groups without a prototype. */
export type Data = string | number | boolean | null | readonly Data[] | { readonly [key: string]: Data }

/** A mistake that stands at offsets of the text. */
export interface Mistake {
  readonly span: Span
  readonly path: DefinitionPath
  readonly message: string
  readonly expected: string
}

/**
 * Before each name of stock, hardware and modules in the data. Names are free words: with the mark, `__proto__` and
 * `constructor` are keys like any other, and `10` and `2` stay in the file's order, which bare keys of an object
 * would not.
 */
export const NAME_MARK = '='

/** Nodes that may be reached through aliases before it is called a bomb. */
const MOST_REPEATED = 100_000
/** Values in a text; 2,000 modules with everything said take less than half of it. */
export const MOST_VALUES = 500_000

export interface Converted {
  readonly data: Data
  readonly places: Places
  readonly mistakes: readonly Mistake[]
  /** How many values there are. */
  readonly values: number
  /** Every value is said, and none by an anchor or an alias: what it says does not depend on the text around it. */
  readonly alone: boolean
  /** Too many values, or aliases that repeat too many; the data is not complete then. */
  readonly bomb: Mistake | undefined
}

/** A path as a key of a map: no two paths share one. */
export const pathKey = (path: DefinitionPath): string => JSON.stringify(path)

/** Keys of the root whose own keys are names. */
const NAMED_GROUPS: readonly unknown[] = ['stock', 'hardware', 'modules']

/** True for the path of a group whose keys are names. */
export const holdsNames = (path: readonly unknown[]): boolean => path.length === 1 && NAMED_GROUPS.includes(path[0])

/**
 * Plain data of a YAML document, with the place of each value. Follows aliases, each to the nearest anchor before it;
 * repeated keys, keys that are no words, unknown aliases and aliases without end are mistakes, and are left out.
 */
export function toData(document: Document.Parsed, text: string): Converted {
  const converter = new Converter(text)
  const data = converter.convert(document.contents, [], undefined, converter.places)
  const { places, mistakes, values, bomb } = converter
  return { data: data ?? null, places, mistakes, values, alone: converter.alone, bomb }
}

class Converter {
  readonly places = new Places()
  readonly mistakes: Mistake[] = []
  private readonly anchors = new Map<string, Node>()
  private readonly open = new Set<Node>()
  private repeated = 0
  values = 0
  alone = true
  private inAlias = 0
  /** The alias in the text that the values being repeated come from. */
  private outerAlias: Mistake | undefined
  bomb: Mistake | undefined

  constructor(private readonly text: string) {}

  convert(node: Node | null, path: DefinitionPath, key: Node | undefined, here: Places): Data | undefined {
    if (this.bomb !== undefined) return undefined
    if (++this.values > MOST_VALUES) return this.stop(tooManyValues(node))
    if (this.inAlias > 0 && ++this.repeated > MOST_REPEATED) return this.stop(this.outerAlias)
    if (node === null) {
      this.alone = false
      this.note(here, key, undefined)
      return null
    }
    if (isAlias(node)) return this.alias(node.source, node, path, key, here)
    if (here.place === undefined) this.note(here, key, node)
    if ('anchor' in node && typeof node.anchor === 'string') {
      this.alone = false
      this.anchors.set(node.anchor, node)
    }
    if (isScalar(node)) return this.scalar(node.value)
    this.open.add(node)
    const data = isMap(node)
      ? this.pairs(node.items, path, here)
      : isSeq(node)
        ? this.list(node.items, path, here)
        : undefined
    this.open.delete(node)
    return data
  }

  private scalar(value: unknown): Data {
    if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean') return value
    if (value !== null && value !== undefined) return String(value)
    this.alone = false
    return null
  }

  private list(items: readonly unknown[], path: DefinitionPath, here: Places): Data {
    // A pair in a list, [a: 1], is a group of one key.
    return items.map((item, i) => {
      const at = [...path, i]
      if (isPair(item)) return this.pairs([item], at, here.further(i))
      return this.convert((item ?? null) as Node | null, at, undefined, here.further(i)) ?? null
    })
  }

  private pairs(pairs: readonly Pair[], path: DefinitionPath, here: Places): Data {
    const group = Object.create(null) as Record<string, Data>
    const mark = holdsNames(path) ? NAME_MARK : ''
    const seen = new Set<string>()
    for (const pair of pairs) {
      const keyNode = pair.key as Node | null
      const name = this.keyText(keyNode, path)
      if (name === undefined) continue
      if (seen.has(name)) {
        const message = `the key "${cutText(printable(name), 40)}" stands here twice`
        this.mistake(keyNode, path, message, 'each key once; take one of the two out')
        continue
      }
      seen.add(name)
      const value = this.convert(pair.value as Node | null, [...path, name], keyNode ?? undefined, here.further(name))
      if (value !== undefined) group[mark + name] = value
    }
    return group
  }

  /** The key as it was written: `01` and `1` are two names. */
  private keyText(key: Node | null, path: DefinitionPath): string | undefined {
    if (isScalar(key)) {
      if (typeof key.value === 'string') return key.value
      if (key.source !== undefined && key.source !== '') return key.source
    }
    this.mistake(key, path, 'this key is not a word', 'a key of one or more words, then a colon')
    return undefined
  }

  private alias(name: string, node: Node, path: DefinitionPath, key: Node | undefined, here: Places): Data | undefined {
    this.alone = false
    this.note(here, key, node)
    const target = this.anchors.get(name)
    if (target === undefined) {
      this.mistake(node, path, `"*${name}" points at nothing`, `an anchor &${name} further up in the file`)
      return undefined
    }
    if (this.open.has(target)) {
      this.mistake(node, path, `"*${name}" lies inside what it points at`, 'an alias that stands outside its anchor')
      return undefined
    }
    if (this.inAlias === 0) {
      const message = `aliases repeat more than ${MOST_REPEATED} values`
      const expected = 'fewer aliases, or none: common and the defaults save the typing'
      this.outerAlias = { span: spanOf(node) ?? [0, 1], path, message, expected }
    }
    this.inAlias++
    const data = this.convert(target, path, key, here)
    this.inAlias--
    return data
  }

  private stop(mistake: Mistake | undefined): undefined {
    this.bomb = mistake
    return undefined
  }

  private mistake(node: Node | null, path: DefinitionPath, message: string, expected: string): void {
    this.mistakes.push({ span: spanOf(node) ?? [0, 1], path, message, expected })
  }

  private note(here: Places, key: Node | undefined, node: Node | undefined): void {
    const keySpan = spanOf(key ?? null)
    const end = keySpan?.[1] ?? 0
    const value = spanOf(node ?? null) ?? [end, end + 1]
    here.place = {
      key: keySpan,
      value,
      written: node !== undefined && (isScalar(node) || isAlias(node)) ? this.text.slice(...value) : undefined,
      comment: isScalar(node) ? (node.comment ?? undefined) : undefined,
      below: (isMap(node) || isSeq(node)) && !('flow' in node && node.flow === true),
    }
  }
}

function tooManyValues(node: Node | null): Mistake {
  const message = `the file holds more than ${MOST_VALUES} values`
  return { span: spanOf(node) ?? [0, 1], path: [], message, expected: 'a smaller definition, or several' }
}

function spanOf(node: Node | null): Span | undefined {
  const range = node?.range
  return range ? [range[0], Math.max(range[1], range[0] + 1)] : undefined
}
