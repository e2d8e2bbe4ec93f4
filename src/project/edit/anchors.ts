import { type Alias, isAlias, isCollection, isScalar, type Node, visit } from 'yaml'
import { anchorStart } from './extent.ts'
import type { Parsed, Spot } from './parsed.ts'
import { inline } from './print.ts'
import type { Splice } from './splice.ts'
import type { Edit } from './types.ts'
import { writtenAs } from './written.ts'

/**
 * What other places of the text have from the edit's place by an alias, made their own before that place changes: the
 * first alias takes over the anchor with what stands there now. Nothing where no alias is concerned.
 */
export function keepAliases(parsed: Parsed, edit: Edit): Splice[] | undefined {
  if (!parsed.text.includes('&')) return undefined
  if ('rename' in edit) return undefined
  for (let depth = 1; depth <= edit.path.length; depth += 1) {
    const spot = parsed.spot(edit.path.slice(0, depth))
    if (spot?.node === undefined) return undefined
    const splices = handedOver(parsed, spot, spot.node)
    if (splices !== undefined) return splices
    if (depth === edit.path.length && 'value' in edit) return withinHandedOver(parsed, spot.node)
  }
  return undefined
}

/** The same for all anchors within what goes; aliases that go with it need nothing. */
function withinHandedOver(parsed: Parsed, gone: Node): Splice[] | undefined {
  let splices: Splice[] | undefined
  visit(gone, {
    Node: (_, node) => {
      if (isAlias(node) || splices !== undefined) return
      splices = handedOver(parsed, undefined, node, gone)
    },
  })
  return splices
}

function handedOver(parsed: Parsed, spot: Spot | undefined, node: Node, gone?: Node): Splice[] | undefined {
  const start = anchorStart(parsed, node)
  if (start === undefined || !(isScalar(node) || isCollection(node)) || node.anchor === undefined) return undefined
  const alias = parsed.aliasesOf(node).find((one) => gone === undefined || !lies(one, gone))
  if (alias?.range === undefined || alias.range === null) return undefined
  const end = start + 1 + node.anchor.length
  const gap = /^[ \t]*/.exec(parsed.text.slice(end))?.[0].length ?? 0
  const copy = inline(writtenAs(node, parsed.style.json), parsed.style)
  // Behind the anchor comes the value, or a line end.
  const atEnd = /^[ \t]*(?:[\r\n#]|$)/.test(parsed.text.slice(end))
  const from = atEnd && parsed.text[start - 1] === ' ' && !isEmptyItem(spot) ? start - 1 : start
  return [
    { from, to: atEnd ? end : end + gap, insert: '' },
    { from: alias.range[0], to: alias.range[1], insert: `&${node.anchor} ${copy}` },
  ]
}

const isEmptyItem = (spot: Spot | undefined): boolean => spot?.holder !== undefined && 'list' in spot.holder

const lies = (alias: Alias, within: Node): boolean =>
  (alias.range?.[0] ?? 0) >= (within.range?.[0] ?? 0) && (alias.range?.[1] ?? 0) <= (within.range?.[1] ?? 0)
