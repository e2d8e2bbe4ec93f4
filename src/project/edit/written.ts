import { isAlias, isMap, isPair, isScalar, isSeq, type Node, type Pair, parse } from 'yaml'
import { printableKey } from './keys.ts'
import type { EditValue } from './types.ts'

/** A value in the words that it is to be written in: a plain value, a list, or a group of keys. */
export type Written =
  | string
  | { readonly items: readonly Written[] }
  | { readonly pairs: readonly (readonly [key: string, value: Written])[] }

export type Quotes = 'double' | 'single' | 'none'

/** A value written anew; `json` quotes every text and key. */
export function writtenOf(value: EditValue, json: boolean): Written {
  if (Array.isArray(value)) return { items: value.map((item) => writtenOf(item, json)) }
  if (typeof value === 'object') {
    return { pairs: Object.entries(value).map(([key, one]) => [keyText(key, json), writtenOf(one, json)] as const) }
  }
  return scalarText(value as string | number | boolean, { quotes: json ? 'double' : 'none', flow: true })
}

/** What a node says, in its own words as far as they can stand anywhere; without anchors, and with its aliases. */
export function writtenAs(node: Node | null | undefined, json: boolean): Written {
  if (isAlias(node)) return `*${node.source}`
  if (isMap(node)) return { pairs: node.items.map((pair) => pairAs(pair, json)) }
  if (isSeq(node)) {
    return {
      items: node.items.map((item) => (isPair(item) ? { pairs: [pairAs(item, json)] } : writtenAs(item as Node, json))),
    }
  }
  if (!isScalar(node) || node.value === null || node.value === undefined) return 'null'
  const { value, source, type } = node
  if (typeof value !== 'string') return source ?? String(value)
  const quotes = json || type === 'QUOTE_DOUBLE' ? 'double' : type === 'QUOTE_SINGLE' ? 'single' : 'none'
  return scalarText(value, { quotes, flow: true })
}

const pairAs = (pair: Pair, json: boolean): readonly [string, Written] => [
  keyText(printableKey(pair.key), json),
  writtenAs(pair.value as Node | null, json),
]

/**
 * A plain value as YAML. A text keeps the quotes that are asked for where they can hold it, and gets double ones where
 * it would be read as something else; `flow`: it may stand in brackets, where commas need quotes, too.
 */
export function scalarText(
  value: string | number | boolean,
  how: { readonly quotes: Quotes; readonly flow: boolean },
): string {
  if (typeof value !== 'string') return numberText(value)
  if (how.quotes === 'single' && PRINTABLE.test(value)) return `'${value.replaceAll("'", "''")}'`
  if (how.quotes === 'none' && isPlain(value, how.flow)) return value
  return doubleQuoted(value)
}

/** A key as YAML that is read as these very letters. */
export function keyText(key: string, json: boolean): string {
  return json || !isPlainKey(key) ? doubleQuoted(key) : key
}

function numberText(value: number | boolean): string {
  return Object.is(value, -0) ? '0' : String(value)
}

/** Letters that stand for themselves in any style: no control characters, line ends or halves of characters. */
const PRINTABLE =
  /^(?:[\u0020-\u007e\u00a0-\u2027\u202a-\ud7ff\ue000-\ufefe\uff00-\ufffd]|[\ud800-\udbff][\udc00-\udfff])*$/
/** Words and lengths of every day, which need no closer look: not a number, and none of the words that mean a value. */
const EVERYDAY = /^(?!(?:true|false|null)$)[a-z][\w/]*(?: [\w/.]+)*$/i

function isPlain(value: string, flow: boolean): boolean {
  if (EVERYDAY.test(value)) return !/^(?:true|false|null)$/i.test(value)
  if (!PRINTABLE.test(value) || value === '' || value.trim() !== value || /^[&*!|>%@`]/.test(value)) return false
  return readAs(flow ? `[${value}]` : `k: ${value}`, (data) =>
    flow ? Array.isArray(data) && data.length === 1 && data[0] === value : isGroupOf(data, 'k', value),
  )
}

function isPlainKey(key: string): boolean {
  if (EVERYDAY.test(key)) return true
  if (!PRINTABLE.test(key) || key === '' || key.trim() !== key || /^[&*!|>%@`?"'<=~-]/.test(key)) return false
  return readAs(`{${key}: 1}`, (data) => isGroupOf(data, key, 1))
}

const isGroupOf = (data: unknown, key: string, value: unknown): boolean =>
  typeof data === 'object' &&
  data !== null &&
  Object.keys(data).length === 1 &&
  Object.hasOwn(data, key) &&
  (data as Record<string, unknown>)[key] === value

function readAs(text: string, fits: (data: unknown) => boolean): boolean {
  try {
    return fits(parse(text, { logLevel: 'silent' }))
  } catch {
    return false
  }
}

/** JSON's own form, which is YAML's too, with all escaped that an editor might take for a line end or lose. */
function doubleQuoted(value: string): string {
  return JSON.stringify(value).replace(
    /[\u007f-\u009f\u2028\u2029\ufeff\ufffe\uffff]/g,
    (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`,
  )
}
