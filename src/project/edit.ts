import { type Document, isAlias, isMap, isScalar, isSeq, type Node, Pair, parseDocument, Scalar, YAMLMap } from 'yaml'
import { printableKey } from './edit-keys.ts'
import type { DefinitionPath } from './types.ts'

/** A value as a definition writes it: lengths as text with their unit, or in the project's. */
export type EditValue = string | number | boolean | readonly EditValue[] | { readonly [key: string]: EditValue }

/** One change of a definition: a value set at a path, or what stands there taken out. */
export interface Edit {
  readonly path: DefinitionPath
  readonly value: EditValue | undefined
}

/** Groups that may be written as one plain value, by their key: what that value stands for. */
const SHORT_FORMS: Readonly<Record<string, string>> = {
  'loose shelves': 'count',
  drawers: 'stack',
  joint: 'fasten',
  fix: 'fasten',
  'locking bolts': 'item',
  back: 'sits',
}
/** Groups of a module that are merged key by key with those under `common`. */
const MERGED: readonly unknown[] = ['carcase', 'back', 'loads']

/**
 * The definition with the edits made; comments and the order of keys stay. Groups that are missing on the way are made,
 * short forms written out, and what a module has from `common` is copied into it before a part of it is changed, so that
 * no other module changes. `text` is one that `readDefinition` accepts; throws where a path leads through a plain value.
 */
export function applyEdits(text: string, edits: readonly Edit[]): string {
  const document: Document = parseDocument(text, { uniqueKeys: false })
  for (const { path, value } of edits) {
    if (value === undefined) takeOut(document, path)
    else set(document, path, value)
  }
  return document.toString({ lineWidth: 0, flowCollectionPadding: true })
}

function set(document: Document, path: DefinitionPath, value: EditValue): void {
  const last = path.at(-1)
  if (last === undefined) throw new Error('an edit needs a path')
  copyFromCommon(document, path)
  const group = groupAt(document, path.slice(0, -1))
  put(group, last, document.createNode(value) as Node)
}

function takeOut(document: Document, path: DefinitionPath): void {
  const last = path.at(-1)
  const group = nodeAt(document, path.slice(0, -1))
  if (isSeq(group) && typeof last === 'number') group.items.splice(last, 1)
  if (isMap(group)) group.items = group.items.filter((pair) => printableKey(pair.key) !== String(last))
}

/** The node at a path, aliases followed; nothing where the text has none. */
function nodeAt(document: Document, path: DefinitionPath): Node | undefined {
  let node: Node | null | undefined = document.contents
  for (const step of path) {
    const open: Node | undefined = isAlias(node) ? node.resolve(document) : (node ?? undefined)
    node = child(open, step)
  }
  return isAlias(node) ? node.resolve(document) : (node ?? undefined)
}

function child(node: Node | undefined, step: string | number): Node | undefined {
  if (isSeq(node)) return node.items[Number(step)] as Node | undefined
  if (!isMap(node)) return undefined
  return (node.items.find((pair) => printableKey(pair.key) === String(step))?.value ?? undefined) as Node | undefined
}

/** The group or list at a path, made where there is none; what is reached through an alias is copied first. */
function groupAt(document: Document, path: DefinitionPath): Node {
  let node: Node | null = document.contents
  for (const step of path) {
    if (node === null) throw new Error('the definition is empty')
    const there = child(node, step)
    const next = opened(document, there, step)
    if (next !== there) put(node, step, next)
    node = next
  }
  if (node === null) throw new Error('the definition is empty')
  return node
}

/** A node as a group or list: an alias copied, a plain value written out as the group that it stands for. */
function opened(document: Document, node: Node | undefined, key: string | number): Node {
  const own = isAlias(node) ? (node.resolve(document)?.clone() as Node | undefined) : node
  if (own !== undefined && !isScalar(own)) {
    if ('anchor' in own && isAlias(node)) delete own.anchor
    return own
  }
  const group = new YAMLMap()
  group.flow = true
  if (own === undefined || own.value === null) return group
  const meant = SHORT_FORMS[String(key)]
  if (meant === undefined) throw new Error(`a plain value stands at ${key}`)
  put(group, meant, own)
  return group
}

function put(group: Node, key: string | number, value: Node): void {
  if (isSeq(group)) {
    group.items[Number(key)] = value
  } else if (isMap(group)) {
    const pair = group.items.find((one) => printableKey(one.key) === String(key))
    if (pair === undefined) group.items.push(new Pair(new Scalar(key), value))
    else {
      keepComments(pair.value as Node | null, value)
      pair.value = value
    }
  } else throw new Error(`a plain value stands before ${key}`)
}

/** The comments about a value are about the one that takes its place, too. */
function keepComments(from: Node | null, to: Node): void {
  if (from === null || from === to) return
  if (from.comment != null) to.comment = from.comment
  if (from.commentBefore != null) to.commentBefore = from.commentBefore
  if (from.spaceBefore === true) to.spaceBefore = true
}

function copyFromCommon(document: Document, path: DefinitionPath): void {
  if (path[0] !== 'modules') return
  for (let depth = 3; depth < path.length; depth += 1) {
    const within = path.slice(2, depth)
    if (MERGED.includes(within.at(-1))) continue
    if (nodeAt(document, path.slice(0, depth)) !== undefined) return
    const shared = nodeAt(document, ['common', ...within])
    if (shared === undefined) continue
    put(groupAt(document, path.slice(0, depth - 1)), within.at(-1) ?? '', shared.clone() as Node)
    return
  }
}
