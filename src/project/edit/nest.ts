import { isMap, isPair, isScalar, isSeq, type Node, type Pair, type YAMLMap } from 'yaml'
import type { DefinitionPath } from '../types.ts'
import { type Extent, pairExtent, partsOf } from './extent.ts'
import { printableKey } from './keys.ts'
import { isFlow, type Parsed, pairOf } from './parsed.ts'
import type { Splice } from './splice.ts'
import type { Edit, EditValue, LiftEdit, LowerEdit } from './types.ts'
import { keyText } from './written.ts'

/** How an edit is made: in the words of the text, or, where they cannot stay, by edits that write the values anew. */
export type Plan = { readonly splices: readonly Splice[] } | { readonly edits: readonly Edit[] }

/** Anchors and aliases stand for something elsewhere: words that may hold them are written anew. */
const SHARED = /[&*]/

/** What an item of a list says, in the place of the key that has the list: lines, comments and quotes stay. */
export function lifted(parsed: Parsed, { path, lift }: LiftEdit): Plan {
  const list = path.slice(0, -1)
  const above = path.slice(0, -2)
  const holder = parsed.spot(list)?.holder
  const item = parsed.opened(parsed.spot(path)?.node)
  if (holder === undefined || !('group' in holder)) throw new Error(`there is no list at ${list.join(' › ')}`)
  const { group, pair } = holder
  const left = isMap(item) ? item.items.filter(({ key }) => !lift.includes(printableKey(key))) : []
  const taken = left.some(({ key }) => {
    const name = printableKey(key)
    return name !== printableKey(pair.key) && pairOf(group, name) !== undefined
  })
  const region = pairExtent(parsed, pair)
  const end = isFlow(group) ? region.to : parsed.lineEnd(region.to)
  const words =
    left.length === 0 || taken || SHARED.test(parsed.text.slice(region.from, end)) || !isMap(item)
      ? undefined
      : wordsOf(parsed, { group, item, left, column: parsed.column(region.from), place: Number(path.at(-1)), pair })
  if (words !== undefined) return { splices: [{ from: region.from, to: end, insert: words }] }
  return { edits: [{ path: list, value: undefined }, ...valuesOf(parsed, left).map(at(above))] }
}

const at =
  (path: DefinitionPath) =>
  ([key, value]: readonly [string, EditValue]): Edit => ({ path: [...path, key], value })

/** What some pairs of a group say; nothing of those that say nothing. Keys stay as they are written: `01` is not `1`. */
function valuesOf(parsed: Parsed, pairs: readonly Pair[]): (readonly [string, EditValue])[] {
  return pairs.flatMap(({ key, value }) => {
    const said = sayingOf(parsed, value as Node | null)
    return said === undefined ? [] : [[printableKey(key), said] as const]
  })
}

function sayingOf(parsed: Parsed, one: Node | null | undefined): EditValue | undefined {
  const node = parsed.opened(one ?? undefined)
  if (isMap(node)) return Object.fromEntries(valuesOf(parsed, node.items))
  if (isSeq(node)) {
    return node.items.map((item) =>
      isPair(item) ? Object.fromEntries(valuesOf(parsed, [item])) : (sayingOf(parsed, item as Node | null) ?? {}),
    )
  }
  return isScalar(node) && node.value !== null ? (node.value as EditValue | undefined) : undefined
}

interface Lifting {
  /** The group that the item's keys come into, and its pair that goes. */
  readonly group: YAMLMap
  readonly pair: Pair
  readonly item: YAMLMap
  readonly left: readonly Pair[]
  /** Of the keys of the group. */
  readonly column: number
  /** Of the item in its list. */
  readonly place: number
}

/** The item's pairs as they stand, moved to the column of the group; nothing where they cannot be. */
function wordsOf(parsed: Parsed, lifting: Lifting): string | undefined {
  const { group, item, left, column, pair } = lifting
  const slices = left.map((one) => sliceOf(parsed, pairExtent(parsed, one)))
  if (isFlow(group)) return slices.join(', ')
  if (!isSeq(pair.value) || isFlow(pair.value)) return slices.join(parsed.style.eol + ' '.repeat(column))
  const own = partsOf(parsed, pair.value)[lifting.place]
  if (own === undefined) return undefined
  const lines = isFlow(item) ? undefined : blockLinesOf(parsed, lifting)
  const margin = ' '.repeat(column)
  const behind = parsed.text.slice(own.to, parsed.lineEnd(own.to)).trim()
  const flow = [...(behind.startsWith('#') ? [behind] : []), ...slices].map((line) => margin + line)
  const words = lines === undefined ? flow : shifted(lines, column - parsed.column(partsOf(parsed, item)[0]?.from ?? 0))
  const comments = commentsAbove(parsed, own.from).map((line) => margin + line)
  // The first line stands where the key stood.
  return words && [...comments, ...words].join(parsed.style.eol).trimStart()
}

const sliceOf = ({ text }: Parsed, { from, to }: Extent): string => text.slice(from, to)

/** All lines of an item in block style but those of the pairs that go. */
function blockLinesOf(parsed: Parsed, { item, left }: Lifting): string[] {
  const { text } = parsed
  const parts = partsOf(parsed, item)
  const lines: string[] = []
  item.items.forEach((pair, k) => {
    const part = parts[k]
    if (part === undefined) return
    const before =
      k === 0 ? '' : text.slice(parsed.afterBreak(parsed.lineEnd(parts[k - 1]?.to ?? 0)), parsed.lineStart(part.from))
    if (before !== '') lines.push(...before.split(/\r\n|\n|\r/).slice(0, -1))
    if (!left.includes(pair)) return
    const own = ' '.repeat(parsed.column(part.from)) + text.slice(part.from, parsed.lineEnd(part.to))
    lines.push(...own.split(/\r\n|\n|\r/))
  })
  return lines
}

/** Lines moved so many columns to the left; nothing where one that says something has no room for that. */
function shifted(lines: readonly string[], by: number): string[] | undefined {
  const out: string[] = []
  for (const line of lines) {
    const indent = line.search(/\S|$/)
    if (indent < -by && line.trim() !== '' && !line.trimStart().startsWith('#')) return undefined
    out.push(line.slice(Math.min(indent, -by)))
  }
  return out
}

/** The comments right above the dash of an item, without their indent. */
function commentsAbove(parsed: Parsed, dash: number): string[] {
  const found: string[] = []
  for (let start = parsed.lineStart(dash); start > 0; ) {
    const end = parsed.text.slice(0, start).replace(/(?:\r\n|\n|\r)$/, '').length
    const line = parsed.text.slice(parsed.lineStart(end), end).trim()
    if (!line.startsWith('#')) break
    found.unshift(line)
    start = parsed.lineStart(end)
  }
  return found
}

/** Some keys of a group put into the first item of a new list in it: lines, comments and quotes stay. */
export function lowered(parsed: Parsed, { path, lower, into, items }: LowerEdit): Plan {
  const node = parsed.opened(parsed.spot(path)?.node)
  const pairs = isMap(node) ? node.items.filter(({ key }) => lower.includes(printableKey(key))) : []
  const [pair] = pairs
  const rest = Array.from({ length: Math.max(0, items - 1) }, () => ({}))
  const first = valuesOf(parsed, pairs)
  const anew: Plan = {
    edits: [
      ...pairs.map(({ key }): Edit => ({ path: [...path, printableKey(key)], value: undefined })),
      { path: [...path, into], value: [Object.fromEntries(first), ...rest] },
    ],
  }
  if (pair === undefined || pairs.length > 1 || first.length === 0 || !isMap(node)) return anew
  const part = pairExtent(parsed, pair)
  const { eol, step, json } = parsed.style
  const key = keyText(into, json)
  if (SHARED.test(parsed.text.slice(part.from, parsed.lineEnd(part.to)))) return anew
  if (isFlow(node)) {
    const all = [`{ ${sliceOf(parsed, part)} }`, ...rest.map(() => '{}')].join(', ')
    return { splices: [{ ...part, insert: `${key}: [${all}]` }] }
  }
  const end = parsed.lineEnd(part.to)
  const words = parsed.text.slice(part.from, end)
  // What is short and says nothing beside itself stands on one line.
  if (!/[#\r\n'"]/.test(words)) return anew
  const margin = ' '.repeat(parsed.column(part.from) + step)
  const own = words.replace(/(\r\n|\n|\r)(?=[^\r\n])/g, `$1${' '.repeat(step + 2)}`)
  const lines = [`${key}:`, `${margin}- ${own}`, ...rest.map(() => `${margin}- {}`)]
  return { splices: [{ from: part.from, to: end, insert: lines.join(eol) }] }
}
