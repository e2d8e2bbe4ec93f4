import { isMap, type Pair, type YAMLMap, type YAMLSeq } from 'yaml'
import { type Extent, pairExtent, partsOf } from './extent.ts'
import { isFlow, type Parsed } from './parsed.ts'
import { blockLines, inline, itemLines } from './print.ts'
import type { Splice } from './splice.ts'
import { keyText, type Written } from './written.ts'

/** A key with its value behind the last one of a group. */
export function keyAdded(parsed: Parsed, group: YAMLMap, key: string, written: Written): Splice[] {
  const { style } = parsed
  const last = partsOf(parsed, group).at(-1)
  if (isFlow(group)) return addedInBrackets(parsed, group, `${key}: ${inline(written, style)}`)
  if (last === undefined) throw new Error('a group in block style has a key')
  const column = parsed.column(partsOf(parsed, group)[0]?.from ?? 0)
  return [linesBehind(parsed, last, blockLines({ pairs: [[key, written]] }, column, style))]
}

/** Keys with plain values right behind another of their group, which has a plain value too. */
export function keyBehind(
  parsed: Parsed,
  group: YAMLMap,
  pair: Pair,
  added: readonly (readonly [key: string, value: string])[],
): Splice {
  const part = pairExtent(parsed, pair)
  const words = added.map(([key, value]) => `${keyText(key, parsed.style.json)}: ${value}`)
  const margin = parsed.style.eol + ' '.repeat(parsed.column(part.from))
  if (isFlow(group)) {
    const gap = parsed.beginsLine(part.from) ? margin : ' '
    return { from: part.to, to: part.to, insert: words.map((one) => `,${gap}${one}`).join('') }
  }
  const at = parsed.lineEnd(part.to)
  return { from: at, to: at, insert: words.map((one) => margin + one).join('') }
}

function linesBehind(parsed: Parsed, part: Extent, lines: readonly string[]): Splice {
  const at = parsed.lineEnd(part.to)
  return { from: at, to: at, insert: lines.map((line) => parsed.style.eol + line).join('') }
}

/** A part behind the last one of a group or list in brackets. */
function addedInBrackets(parsed: Parsed, node: YAMLMap | YAMLSeq, words: string): Splice[] {
  const { text, style } = parsed
  const last = partsOf(parsed, node).at(-1)
  const open = (node.range?.[0] ?? 0) + 1
  const close = (node.range?.[1] ?? 0) - 1
  if (last === undefined) {
    const pad = isMap(node) ? ' ' : ''
    if (text.slice(open, close).trim() === '') return [{ from: open, to: close, insert: pad + words + pad }]
    return [{ from: open, to: open, insert: ` ${words}` }]
  }
  const comma = commaBehind(parsed, last.to, close)
  if (parsed.beginsLine(last.from) && parsed.lineEnd(last.to) < close) {
    const at = parsed.lineEnd(comma ?? last.to)
    const line = `${style.eol}${text.slice(parsed.lineStart(last.from), last.from)}${words}${comma === undefined ? '' : ','}`
    if (comma !== undefined) return [{ from: at, to: at, insert: line }]
    return at === last.to
      ? [{ from: at, to: at, insert: `,${line}` }]
      : [
          { from: last.to, to: last.to, insert: ',' },
          { from: at, to: at, insert: line },
        ]
  }
  return [{ from: last.to, to: last.to, insert: `, ${words}` }]
}

/** Offset of the comma that follows a part in brackets, comments and line ends between them left out. */
export function commaBehind({ text }: Parsed, offset: number, end: number): number | undefined {
  for (let at = offset; at < end; at += 1) {
    const unit = text[at] ?? ''
    if (unit === ',') return at
    if (unit === '#') while (at < end && !/[\r\n]/.test(text[at] ?? '\n')) at += 1
    else if (!/\s/.test(unit)) return undefined
  }
  return undefined
}

/** An item put into a list before the one with an index, or behind all. */
export function itemAdded(parsed: Parsed, list: YAMLSeq, index: number, written: Written): Splice[] {
  const parts = partsOf(parsed, list)
  const next = parts[index]
  const before = parts[index - 1]
  if (isFlow(list))
    return next === undefined
      ? addedInBrackets(parsed, list, inline(written, parsed.style))
      : [beforeInBrackets(parsed, next, inline(written, parsed.style))]
  const first = parts[0]
  if (first === undefined) throw new Error('a list in block style has an item')
  const column = parsed.column(first.from)
  const lines = itemLines(written, column, parsed.style)
  if (before !== undefined) return [linesBehind(parsed, before, lines)]
  if (!parsed.beginsLine(first.from)) {
    const insert = `${lines.join(parsed.style.eol).trimStart()}${parsed.style.eol}${' '.repeat(column)}`
    return [{ from: first.from, to: first.from, insert }]
  }
  const at = headLine(parsed, first.from)
  return [{ from: at, to: at, insert: lines.map((line) => line + parsed.style.eol).join('') }]
}

/** Beginning of the first of the lines of comments and blanks above a line. */
function headLine(parsed: Parsed, offset: number): number {
  let at = parsed.lineStart(offset)
  while (at > 0) {
    const above = parsed.lineStart(parsed.text.slice(0, at).replace(/(?:\r\n|\n|\r)$/, '').length)
    if (above >= at || !/^[ \t]*(?:#.*)?$/.test(parsed.text.slice(above, parsed.lineEnd(above)))) break
    at = above
  }
  return at
}

function beforeInBrackets(parsed: Parsed, next: Extent, words: string): Splice {
  const own = parsed.beginsLine(next.from)
  const gap = own ? parsed.style.eol + parsed.text.slice(parsed.lineStart(next.from), next.from) : ' '
  return { from: next.from, to: next.from, insert: `${words},${gap}` }
}
