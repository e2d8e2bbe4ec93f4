import { isAlias, isMap, isPair, isScalar, isSeq, type Node, type Pair, type YAMLMap, type YAMLSeq } from 'yaml'
import type { DefinitionPath } from '../types.ts'
import { isFlow, Parsed } from './parsed.ts'

/** One key with its value, or one item of a list, where it stands in the text; comments and line ends are not in it. */
export interface Extent {
  /** Its key or dash, or the value itself where it has neither; an anchor before that included. */
  readonly from: number
  /** Behind its last letter. */
  readonly to: number
}

/** Offset behind the last letter of a value; `otherwise` where nothing is written. */
export function contentEnd(parsed: Parsed, node: Node | null | undefined, otherwise: number): number {
  const range = node?.range
  if (!node || !range) return otherwise
  if (isScalar(node)) {
    const text = parsed.text.slice(range[0], range[1])
    // Nothing is written: the parser puts it behind the spaces.
    if (text === '') return endOfAnchor(parsed, node) ?? otherwise
    return range[0] + text.replace(/[\r\n \t]+$/, '').length
  }
  if (isAlias(node) || isFlow(node)) return range[1]
  if (isMap(node)) {
    const last = node.items.at(-1)
    return last === undefined ? range[1] : pairExtent(parsed, last).to
  }
  if (isSeq(node)) {
    const dashes = dashesOf(node)
    const last = node.items.length - 1
    return contentEnd(parsed, node.items[last] as Node | null, (dashes[last] ?? range[0]) + 1)
  }
  return range[1]
}

/** Where the anchor of a value begins; nothing where it has none. */
export function anchorStart(parsed: Parsed, node: Node): number | undefined {
  if (isAlias(node) || !('anchor' in node) || typeof node.anchor !== 'string' || !node.range) return undefined
  const at = parsed.text.lastIndexOf(`&${node.anchor}`, node.range[0])
  return at === -1 ? undefined : at
}

const endOfAnchor = (parsed: Parsed, node: Node): number | undefined => {
  const start = anchorStart(parsed, node)
  return start === undefined || !('anchor' in node) ? undefined : start + 1 + (node.anchor?.length ?? 0)
}

/** A key with its value. */
export function pairExtent(parsed: Parsed, pair: Pair): Extent {
  const key = pair.key as Node | null
  const [start, end] = key?.range ?? [0, 0]
  const props = pair.srcToken?.start.find(({ type }) => type === 'anchor' || type === 'explicit-key-ind')
  const from = Math.min(start, props?.offset ?? start)
  return { from, to: contentEnd(parsed, pair.value as Node | null, colonEnd(pair) ?? end) }
}

/** Offset behind the colon of a pair; nothing where it has none. */
export function colonEnd(pair: Pair): number | undefined {
  const colon = pair.srcToken?.sep?.find(({ type }) => type === 'map-value-ind')
  return colon && colon.offset + colon.source.length
}

/** Offsets of the dashes of a list in block style. */
export function dashesOf(list: YAMLSeq): number[] {
  const token = list.srcToken
  if (token?.type !== 'block-seq') return []
  return token.items.flatMap(({ start }) => start.find(({ type }) => type === 'seq-item-ind')?.offset ?? [])
}

/** The parts of a group or a list, in order. */
export function partsOf(parsed: Parsed, node: YAMLMap | YAMLSeq): Extent[] {
  if (isMap(node)) return node.items.map((pair) => pairExtent(parsed, pair))
  const dashes = dashesOf(node)
  return node.items.map((item, i): Extent => {
    const dash = dashes[i]
    if (isPair(item)) return pairExtent(parsed, item)
    const value = (item ?? null) as Node | null
    const own = value === null ? undefined : (anchorStart(parsed, value) ?? value.range?.[0])
    const from = dash ?? own ?? 0
    return { from, to: contentEnd(parsed, value, from + (dash === undefined ? 0 : 1)) }
  })
}

/**
 * Where a path stands in a text, its key or dash first; of a path that the text does not have, the innermost of what would
 * hold it, nothing where that is the whole text. The text may be broken: then as far as it can be read.
 */
export function placeOf(text: string, path: DefinitionPath): Extent | undefined {
  const parsed = new Parsed(text)
  for (let depth = path.length; depth > 0; depth -= 1) {
    const holder = parsed.spot(path.slice(0, depth))?.holder
    if (holder === undefined) continue
    return 'group' in holder ? pairExtent(parsed, holder.pair) : partsOf(parsed, holder.list)[holder.index]
  }
  return undefined
}
