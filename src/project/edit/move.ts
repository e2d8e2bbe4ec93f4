import type { YAMLMap, YAMLSeq } from 'yaml'
import { commaBehind } from './add.ts'
import { type Extent, partsOf } from './extent.ts'
import { isFlow, type Parsed } from './parsed.ts'
import type { Splice } from './splice.ts'

/** The order of `count` things once the one at `from` has moved to `to`: for each place the index of what stands there now. */
function orderAfter(count: number, from: number, to: number): number[] {
  const order = Array.from({ length: count }, (_, i) => i)
  order.splice(to, 0, ...order.splice(from, 1))
  return order
}

/**
 * A part of a group or list moved to another place in it. Each part goes with the comment lines right above it and
 * the comment behind it; blank lines and all other comments between the parts stay where they are.
 */
export function movedTo(parsed: Parsed, node: YAMLMap | YAMLSeq, from: number, to: number): Splice[] {
  const parts = partsOf(parsed, node)
  if (!(from in parts) || !(to in parts)) throw new Error(`there is nothing to move from ${from} to ${to}`)
  const close = node.range?.[1] ?? parsed.text.length
  // Behind the dash of an outer list there is no line above the first part for its comments to move to.
  const above = parsed.beginsLine(parts[0]?.from ?? 0)
  const bodies = parts.map((part) => (isFlow(node) ? part : withComments(parsed, part, above)))
  const tails = isFlow(node) ? parts.map((part) => commentBehind(parsed, part, close)) : []
  return [bodies, tails].flatMap((extents) => permuted(parsed, extents, orderAfter(extents.length, from, to)))
}

function permuted({ text }: Parsed, extents: readonly Extent[], order: readonly number[]): Splice[] {
  if (extents.length === 0) return []
  return extents.flatMap(({ from, to }, place): Splice[] => {
    const source = order[place] ?? place
    const moved = extents[source]
    return source === place || moved === undefined ? [] : [{ from, to, insert: text.slice(moved.from, moved.to) }]
  })
}

/** A part of a block, with the comment lines right above it in its own column, and the comment behind it. */
function withComments(parsed: Parsed, part: Extent, above: boolean): Extent {
  const to = parsed.lineEnd(part.to)
  if (!above) return { from: part.from, to }
  const column = parsed.column(part.from)
  let from = part.from
  for (;;) {
    const start = parsed.lineStart(from)
    const before = parsed.lineStart(start - (parsed.text.startsWith('\r\n', start - 2) ? 2 : 1))
    const line = start === 0 ? '' : parsed.text.slice(before, parsed.lineEnd(before))
    if (before >= start || !line.slice(column).startsWith('#') || line.slice(0, column).trim() !== '')
      return { from, to }
    from = before + column
  }
}

/** The comment on the line of a part in brackets, with the spaces before it; empty where there is none or more follows. */
function commentBehind(parsed: Parsed, part: Extent, close: number): Extent {
  const comma = commaBehind(parsed, part.to, close)
  const at = comma !== undefined && comma < parsed.lineEnd(part.to) ? comma + 1 : part.to
  const end = parsed.lineEnd(at)
  return /^[ \t]*#/.test(parsed.text.slice(at, end)) ? { from: at, to: end } : { from: at, to: at }
}
