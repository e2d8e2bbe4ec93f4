import { isAlias, isCollection, isScalar, type Node, visit, type YAMLMap, type YAMLSeq } from 'yaml'
import { aliasWrittenOut, anchorOut } from './copy.ts'
import { anchorStart, partsOf } from './extent.ts'
import type { Parsed } from './parsed.ts'
import type { Splice } from './splice.ts'
import type { Edit } from './types.ts'

/**
 * What other places of the text have from the edit's place by an alias, made their own before that place changes. A place
 * that is alone with that gets a copy, and the anchor stays; of several, the first takes over the anchor with what stands
 * there now, so that they go on sharing it. Nothing where no alias is concerned.
 */
export function keepAliases(parsed: Parsed, edit: Edit): Splice[] | undefined {
  if (!parsed.text.includes('&')) return undefined
  // Where it stays what it is, and is only moved, renamed or pushed along, what points at it may stay, too.
  const last = 'value' in edit ? edit.path.length : edit.path.length - 1
  for (let depth = 1; depth <= last; depth += 1) {
    const spot = parsed.spot(edit.path.slice(0, depth))
    if (spot?.node === undefined) return undefined
    const splices = handedOver(parsed, spot.node)
    if (splices !== undefined) return splices
    if (depth === edit.path.length) return withinHandedOver(parsed, spot.node)
  }
  const holder = 'move' in edit ? parsed.spot(edit.path.slice(0, -1))?.node : undefined
  return holder && partedFrom(parsed, holder)
}

/** The same for all anchors within what goes; aliases that go with it need nothing. */
function withinHandedOver(parsed: Parsed, gone: Node): Splice[] | undefined {
  let splices: Splice[] | undefined
  visit(gone, {
    Node: (_, node) => {
      if (isAlias(node) || splices !== undefined) return
      splices = handedOver(parsed, node, gone)
    },
  })
  return splices
}

function handedOver(parsed: Parsed, node: Node, gone?: Node): Splice[] | undefined {
  const start = anchorStart(parsed, node)
  if (start === undefined || !(isScalar(node) || isCollection(node)) || node.anchor === undefined) return undefined
  const [first, ...others] = parsed.aliasesOf(node).filter((one) => gone === undefined || !lies(one, gone))
  if (first === undefined) return undefined
  if (others.length === 0) return aliasWrittenOut(parsed, first)
  const end = start + 1 + node.anchor.length
  return [anchorOut(parsed, node, start, end), ...aliasWrittenOut(parsed, first, node.anchor)]
}

/** Before parts of a group or list change their order: an alias of one that stands for something in another written out. */
function partedFrom(parsed: Parsed, holder: Node): Splice[] | undefined {
  if (!isCollection(holder)) return undefined
  const parts = partsOf(parsed, holder as YAMLMap | YAMLSeq)
  const partOf = (node: Node): number => parts.findIndex(({ from, to }) => from <= start(node) && start(node) < to)
  const anchored: { readonly name: string; readonly part: number }[] = []
  const splices: Splice[] = []
  visit(holder, {
    Value: (_, node) => {
      if (node.anchor !== undefined) anchored.push({ name: node.anchor, part: partOf(node) })
    },
  })
  visit(holder, {
    Alias: (_, alias) => {
      const part = partOf(alias)
      if (!anchored.some((one) => one.name === alias.source && one.part !== part)) return undefined
      splices.push(...aliasWrittenOut(parsed, alias))
      return visit.BREAK
    },
  })
  return splices.length === 0 ? undefined : splices
}

const start = (node: Node): number => node.range?.[0] ?? 0

const lies = (node: Node, within: Node): boolean =>
  (node.range?.[0] ?? 0) >= (within.range?.[0] ?? 0) && (node.range?.[1] ?? 0) <= (within.range?.[1] ?? 0)
