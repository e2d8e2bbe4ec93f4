import { isMap, type YAMLMap, type YAMLSeq } from 'yaml'
import { commaBehind } from './add.ts'
import { type Extent, partsOf } from './extent.ts'
import { isFlow, type Parsed, type Spot } from './parsed.ts'
import { linesOut, replacedBy } from './put.ts'
import type { Splice } from './splice.ts'

/** A part of a group or list taken out, with its lines and the comment behind it; an empty one is left as `{}` or `[]`. */
export function takenOut(parsed: Parsed, holder: Spot, index: number): Splice[] {
  const node = holder.node as YAMLMap | YAMLSeq
  const parts = partsOf(parsed, node)
  const part = parts[index]
  if (part === undefined) return []
  if (isFlow(node)) return outOfBrackets(parsed, node, parts, index)
  if (parts.length === 1) return replacedBy(parsed, holder, isMap(node) ? { pairs: [] } : { items: [] })
  const end = parsed.lineEnd(part.to)
  if (parsed.beginsLine(part.from)) return [linesOut(parsed, parsed.lineStart(part.from), end)]
  // It stands behind the dash of an outer list, and the next one takes its place there, unless comments lie between.
  const next = parts[index + 1]?.from ?? end
  const between = parsed.text.slice(end, next).trim() === ''
  return [{ from: part.from, to: between ? next : end, insert: '' }]
}

function outOfBrackets(parsed: Parsed, node: YAMLMap | YAMLSeq, parts: readonly Extent[], index: number): Splice[] {
  const { text } = parsed
  const part = parts[index] ?? { from: 0, to: 0 }
  const close = (node.range?.[1] ?? 0) - 1
  const comma = commaBehind(parsed, part.to, close)
  const next = parts[index + 1]
  const before = parts[index - 1]
  if (next === undefined && before === undefined) {
    const inner = text.slice((node.range?.[0] ?? 0) + 1, close)
    const rest = inner.replace(text.slice(part.from, part.to), '').replace(',', '')
    if (rest.trim() === '') return [{ from: (node.range?.[0] ?? 0) + 1, to: close, insert: '' }]
  }
  const last = comma === undefined ? part.to : comma + 1
  const end = parsed.lineEnd(last)
  const alone = parsed.beginsLine(part.from) && end < close && /^[ \t]*(?:#.*)?$/.test(text.slice(last, end))
  const own: Splice = alone
    ? linesOut(parsed, parsed.lineStart(part.from), end)
    : next !== undefined && text.slice(last, next.from).trim() === ''
      ? { from: part.from, to: next.from, insert: '' }
      : { from: part.from, to: last, insert: '' }
  if (next !== undefined || before === undefined || comma !== undefined) return [own]
  // Of the last one without a comma behind it, the comma before it goes, too.
  const lead = commaBehind(parsed, before.to, part.from)
  if (lead === undefined) return [own]
  if (!alone && text.slice(lead + 1, part.from).trim() === '') return [{ from: lead, to: part.to, insert: '' }]
  return [{ from: lead, to: lead + 1, insert: '' }, own]
}
