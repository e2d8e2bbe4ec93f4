import { type Alias, isAlias, isCollection, isMap, isPair, isScalar, isSeq, type Node, visit } from 'yaml'
import { anchorStart, contentEnd, dashesOf, partsOf } from './extent.ts'
import { type Holder, isFlow, type Parsed } from './parsed.ts'
import { inline } from './print.ts'
import { type Splice, spliced } from './splice.ts'
import { writtenAs } from './written.ts'

/**
 * What an alias stands for, written out in its place: in the very words of the text with their comments where those can
 * stand there, else in one line. The anchors in it stay where they are; `anchor`: the one that the copy gets.
 */
export function aliasWrittenOut(parsed: Parsed, alias: Alias, anchor?: string): Splice[] {
  const [from, to] = alias.range ?? [0, 0]
  const target = parsed.opened(alias)
  const name = anchor === undefined ? '' : `&${anchor}`
  const holder = holderOf(parsed, alias)
  const lines = target && blockCopy(parsed, target, holder)
  if (lines === undefined) {
    const words =
      (target && flowCopy(parsed, target, from)) ?? inline(writtenAs(target, parsed.style.json), parsed.style)
    return [{ from, to, insert: name === '' ? words : `${name} ${words}` }]
  }
  const { eol } = parsed.style
  const end = parsed.lineEnd(to)
  const below = lines.map((line) => eol + line).join('')
  if (name !== '')
    return [
      { from, to, insert: name },
      { from: end, to: end, insert: below },
    ]
  if (holder !== undefined && 'list' in holder) {
    // The first line stands behind the dash, unless a comment is there already.
    if (parsed.text.slice(to, end).trim() === '') return [{ from, to: end, insert: below.trimStart() }]
    return [
      { from, to, insert: '' },
      { from: end, to: end, insert: below },
    ]
  }
  const gap = parsed.text.slice(0, from).trimEnd().length
  return [
    { from: gap, to, insert: '' },
    { from: end, to: end, insert: below },
  ]
}

/** What an alias stands in. */
function holderOf(parsed: Parsed, alias: Alias): Holder {
  let holder: Holder
  visit(parsed.document, {
    Alias: (key, node, path) => {
      if (node !== alias) return undefined
      const [outer, inner] = path.slice(-2)
      if (isPair(inner) && isMap(outer)) holder = { group: outer, pair: inner }
      else if (isSeq(inner) && typeof key === 'number') holder = { list: inner, index: key }
      return visit.BREAK
    },
  })
  return holder
}

/** The lines of a group or list in block style, moved to where the holder has room for them; nothing where it has none. */
function blockCopy(parsed: Parsed, target: Node, holder: Holder): string[] | undefined {
  if (!(isMap(target) || isSeq(target)) || isFlow(target) || holder === undefined) return undefined
  const outer = 'group' in holder ? holder.group : holder.list
  const first = partsOf(parsed, target)[0]
  if (isFlow(outer) || first === undefined || !parsed.beginsLine(first.from)) return undefined
  const head = anchorStart(parsed, target) ?? first.from
  const start = parsed.afterBreak(parsed.lineEnd(head))
  const end = parsed.lineEnd(contentEnd(parsed, target, first.to))
  const lines = withoutAnchors(parsed, target, start, end).split(/\r\n|\n|\r/)
  return movedBy(lines, columnFor(parsed, holder) - parsed.column(first.from))
}

const columnFor = (parsed: Parsed, holder: Exclude<Holder, undefined>): number =>
  'group' in holder
    ? parsed.column((holder.pair.key as Node).range?.[0] ?? 0) + parsed.style.step
    : parsed.column(dashesOf(holder.list)[holder.index] ?? 0) + 2

/** A group or list in brackets as it stands; what has several lines is moved as far as the line that it begins on. */
function flowCopy(parsed: Parsed, target: Node, at: number): string | undefined {
  if (!isCollection(target) || !isFlow(target)) return undefined
  const [start, end] = target.range ?? [0, 0]
  const [first = '', ...others] = withoutAnchors(parsed, target, start, end).split(/\r\n|\n|\r/)
  const moved = movedBy(others, indentAt(parsed, at) - indentAt(parsed, start))
  return moved && [first, ...moved].join(parsed.style.eol)
}

/** Columns that the line of an offset is indented. */
const indentAt = (parsed: Parsed, offset: number): number =>
  parsed.text.slice(parsed.lineStart(offset), parsed.lineEnd(offset)).search(/\S|$/)

/** Lines moved so many columns to the right, or to the left; nothing where one that says something has no room for that. */
function movedBy(lines: readonly string[], by: number): string[] | undefined {
  const out: string[] = []
  for (const line of lines) {
    const indent = line.search(/\S|$/)
    const says = line.trim() !== '' && !line.trimStart().startsWith('#')
    if (says && indent < -by) return undefined
    out.push(by < 0 ? line.slice(Math.min(indent, -by)) : line.trim() === '' ? line : ' '.repeat(by) + line)
  }
  return out
}

/** The text between two offsets without the anchors of what is in a group or list. */
function withoutAnchors(parsed: Parsed, target: Node, from: number, to: number): string {
  const out: Splice[] = []
  visit(target, {
    Node: (_, node) => {
      if (node === target || isAlias(node) || !('anchor' in node) || node.anchor === undefined) return
      const start = anchorStart(parsed, node)
      if (start !== undefined) out.push(anchorOut(parsed, node, start, start + 1 + node.anchor.length))
    },
  })
  const moved = out.map((one) => ({ ...one, from: one.from - from, to: one.to - from }))
  return spliced(parsed.text.slice(from, to), moved)
}

/** An anchor taken out, with the space on one side of it. */
export function anchorOut({ text }: Parsed, node: Node, from: number, to: number): Splice {
  const [start, end] = node.range ?? [0, 0]
  if (isScalar(node) && start === end) return { from, to, insert: 'null' }
  const rest = text.slice(to)
  if (/^[ \t]*(?:[\r\n]|$)|^[ \t]+#/.test(rest))
    return { from: text[from - 1] === ' ' ? from - 1 : from, to, insert: '' }
  return { from, to: to + (/^[ \t]*/.exec(rest)?.[0].length ?? 0), insert: '' }
}
