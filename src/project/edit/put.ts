import { isMap, isScalar, isSeq, type Node, type Pair, type YAMLMap, type YAMLSeq } from 'yaml'
import { anchorStart, colonEnd, contentEnd, dashesOf, partsOf } from './extent.ts'
import { isFlow, type Parsed, type Spot } from './parsed.ts'
import { behind, blockLines, fits, inline } from './print.ts'
import type { Splice } from './splice.ts'
import type { EditValue } from './types.ts'
import { type Quotes, scalarText, type Written, writtenOf } from './written.ts'

/** A value in the place of another, which keeps its key, its anchor and the comment on its line. */
export function replaced(parsed: Parsed, spot: Spot, value: EditValue): Splice[] {
  const { node, holder } = spot
  const flow = inBrackets(spot)
  const plain = typeof value !== 'object'
  const written = plain
    ? scalarText(value, { quotes: parsed.style.json ? 'double' : quotesOf(node), flow })
    : writtenOf(value, parsed.style.json)
  return replacedBy(parsed, { node, holder }, written)
}

/** The same, of a value in its own words. */
export function replacedBy(parsed: Parsed, spot: Spot, written: Written): Splice[] {
  const { node } = spot
  if (node === undefined || node.range === null || node.range === undefined) return [behindKey(parsed, spot, written)]
  if ((isMap(node) || isSeq(node)) && !isFlow(node)) return blockReplaced(parsed, spot, node, written)
  const from = node.range[0]
  const to = contentEnd(parsed, node, from)
  if (to <= from) return emptyReplaced(parsed, spot, from, written)
  const lines = inBrackets(spot) ? undefined : linesFor(parsed, spot, from, written)
  if (lines === undefined) return [{ from, to, insert: inline(written, parsed.style) }]
  return [{ from: beforeSpaces(parsed, from), to, insert: '' }, linesBelow(parsed, to, lines)]
}

const quotesOf = (node: Node | undefined): Quotes => {
  if (!isScalar(node)) return 'none'
  return node.type === 'QUOTE_DOUBLE' ? 'double' : node.type === 'QUOTE_SINGLE' ? 'single' : 'none'
}

/** True where a value stands in brackets. */
export function inBrackets({ holder }: Spot): boolean {
  if (holder === undefined) return false
  return isFlow('group' in holder ? holder.group : holder.list)
}

const beforeSpaces = ({ text }: Parsed, offset: number): number => {
  let at = offset
  while (text[at - 1] === ' ' || text[at - 1] === '\t') at -= 1
  return at
}

/** The lines of a value that is too wide for the line of its key; nothing where it is not, or in a list. */
function linesFor(parsed: Parsed, { holder }: Spot, from: number, written: Written): readonly string[] | undefined {
  if (holder === undefined || !('group' in holder) || typeof written === 'string') return undefined
  const key = (holder.pair.key as Node).range?.[0] ?? from
  const rest = behind(written, parsed.column(from) - 1, parsed.column(key), parsed.style)
  return 'below' in rest ? rest.below : undefined
}

function linesBelow(parsed: Parsed, offset: number, lines: readonly string[]): Splice {
  const at = parsed.lineEnd(offset)
  return { from: at, to: at, insert: lines.map((line) => parsed.style.eol + line).join('') }
}

/** A value behind a key that stands without a colon: `{key}`. */
function behindKey(parsed: Parsed, { holder }: Spot, written: Written): Splice {
  if (holder === undefined) throw new Error('the definition is empty')
  if ('group' in holder) {
    const end = colonEnd(holder.pair)
    const at = end ?? (holder.pair.key as Node).range?.[1] ?? 0
    return { from: at, to: at, insert: `${end === undefined ? ':' : ''} ${inline(written, parsed.style)}` }
  }
  const at = (dashesOf(holder.list)[holder.index] ?? 0) + 1
  return { from: at, to: at, insert: ` ${inline(written, parsed.style)}` }
}

/** A value where there is a key and a colon, or a dash, and nothing more. */
function emptyReplaced(parsed: Parsed, spot: Spot, at: number, written: Written): Splice[] {
  const { text } = parsed
  const lines = inBrackets(spot) ? undefined : linesFor(parsed, spot, at, written)
  if (lines !== undefined) return [linesBelow(parsed, at, lines)]
  const before = /[\s[{]/.test(text[at - 1] ?? ' ') ? '' : ' '
  const after = text[at] === '#' ? ' ' : ''
  return [{ from: at, to: at, insert: before + inline(written, parsed.style) + after }]
}

/** A value in the place of a group or list in block style. */
function blockReplaced(parsed: Parsed, { holder }: Spot, node: YAMLMap | YAMLSeq, written: Written): Splice[] {
  const from = partsOf(parsed, node)[0]?.from ?? 0
  const to = parsed.lineEnd(contentEnd(parsed, node, from))
  const { style } = parsed
  const pair = holder !== undefined && 'group' in holder ? holder.pair : undefined
  const key = (pair?.key ?? null) as Node | null
  const column = parsed.column(from)
  if (typeof written !== 'string' && !fits(written, key?.range ? parsed.column(key.range[1]) + 1 : column, style)) {
    return [{ from, to, insert: blockLines(written, column, style).join(style.eol).trimStart() }]
  }
  const words = inline(written, style)
  if (pair === undefined || !parsed.beginsLine(from)) return [{ from, to, insert: words }]
  const head = headEnd(parsed, pair, node)
  return [{ from: head, to: head, insert: ` ${words}` }, linesOut(parsed, parsed.lineStart(from), to)]
}

/** Offset behind the colon of a key, and behind the anchor that follows it. */
function headEnd(parsed: Parsed, pair: Pair, node: Node): number {
  const anchor = anchorStart(parsed, node)
  if (anchor !== undefined && 'anchor' in node) return anchor + 1 + (node.anchor?.length ?? 0)
  return colonEnd(pair) ?? 0
}

/** Whole lines taken out, from the beginning of one to the end of another. */
export function linesOut(parsed: Parsed, start: number, end: number): Splice {
  const next = parsed.afterBreak(end)
  if (next > end || start === 0) return { from: start, to: next, insert: '' }
  // The text ends without a line end, and shall do so afterwards.
  const before = parsed.text.slice(0, start).replace(/(?:\r\n|\n|\r)$/, '').length
  return { from: before, to: end, insert: '' }
}
