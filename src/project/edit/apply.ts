import { isAlias, isMap, isScalar, isSeq, type Node, type YAMLMap, type YAMLSeq } from 'yaml'
import { acceptedAt } from '../accepted.ts'
import type { DefinitionPath } from '../types.ts'
import { itemAdded, keyAdded } from './add.ts'
import { keepAliases } from './anchors.ts'
import { aliasWrittenOut } from './copy.ts'
import { printableKey } from './keys.ts'
import { movedTo } from './move.ts'
import { nearOf } from './near.ts'
import { lifted, lowered, type Plan } from './nest.ts'
import { isNothing, Parsed, pairOf } from './parsed.ts'
import { replaced, replacedBy } from './put.ts'
import { renamed } from './rename.ts'
import { type Splice, spliced } from './splice.ts'
import { takenOut } from './take.ts'
import type { Edit, EditValue, InsertEdit, MoveEdit, ValueEdit } from './types.ts'
import { unitsChanged } from './units.ts'
import { keyText, type Written, writtenAs, writtenOf } from './written.ts'

/** Groups that may be written as one plain value, by their key: what that value stands for. */
export const SHORT_FORMS: Readonly<Record<string, string>> = {
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
 * The definition with the edits made, one after the other. Every line that an edit does not concern stays as it is, to
 * the last space; a changed value keeps its quotes where they can hold it. Groups that are missing on the way are made,
 * short forms written out, and what a module has from `common` is copied into it before a part of it is changed; what
 * stands behind an alias is copied, too, so that nothing else changes. `text` is one that `readDefinition` accepts;
 * throws where a path leads through a plain value, and where a new name is taken.
 */
export function applyEdits(text: string, edits: readonly Edit[]): string {
  return edits.reduce((done, edit) => appliedNear(done, edit), text)
}

/** An edit made with no more of the text than it needs. */
function appliedNear(text: string, edit: Edit): string {
  const near = nearOf(text, edit.path)
  if (near === undefined) return applied(text, edit)
  const { lead, from, to } = near
  const done = applied(lead + text.slice(from, to), edit)
  if (!done.startsWith(lead)) throw new Error('an edit of a module reached into what is common')
  return text.slice(0, from) + done.slice(lead.length) + text.slice(to)
}

/** The same edits made with the whole text in view, for tests: nothing may come of it that differs. */
export const applyInFullView = (text: string, edits: readonly Edit[]): string => edits.reduce(applied, text)

function applied(text: string, edit: Edit): string {
  const { path } = edit
  if (path.length === 0) throw new Error('an edit needs a path')
  if ('units' in edit) {
    const parsed = new Parsed(text)
    const { splices, edits } = unitsChanged(parsed, edit)
    return edits.reduce(applied, spliced(parsed.text, splices))
  }
  if ('lift' in edit) return done(prepared(text, edit), (parsed) => lifted(parsed, edit))
  if ('lower' in edit) {
    return done(prepared(text, { path: [...path, edit.into], value: [] }), (parsed) => lowered(parsed, edit))
  }
  const parsed = prepared(text, edit)
  const splices = 'rename' in edit ? renaming(parsed, path, edit.rename) : changing(parsed, edit)
  return spliced(parsed.text, splices)
}

function done(parsed: Parsed, planned: (parsed: Parsed) => Plan): string {
  const plan = planned(parsed)
  return 'splices' in plan ? spliced(parsed.text, plan.splices) : plan.edits.reduce(applied, parsed.text)
}

function changing(parsed: Parsed, edit: ValueEdit | InsertEdit | MoveEdit): Splice[] {
  if ('insert' in edit) return inserting(parsed, edit.path, edit.insert)
  if ('move' in edit) return moving(parsed, edit.path, edit.move)
  return edit.value === undefined ? takingOut(parsed, edit.path) : setting(parsed, edit.path, edit.value)
}

/** The text made ready: so that the edit's path leads through its own groups, and changes nothing that lies elsewhere. */
function prepared(text: string, edit: Edit): Parsed {
  let parsed = new Parsed(text)
  for (;;) {
    const splices = preparation(parsed, edit)
    if (splices === undefined) return parsed
    parsed = new Parsed(spliced(parsed.text, splices))
  }
}

function preparation(parsed: Parsed, edit: Edit): Splice[] | undefined {
  const { path } = edit
  const takesOut = 'value' in edit && edit.value === undefined
  const own = takesOut || 'rename' in edit ? undefined : copiedFromCommon(parsed, path)
  if (own !== undefined) return own
  for (let depth = 1; depth < path.length; depth += 1) {
    const spot = parsed.spot(path.slice(0, depth))
    const node = spot?.node
    if (spot === undefined) break
    if (isAlias(node)) return aliasWrittenOut(parsed, node)
    if (!isScalar(node) || isNothing(node) || takesOut) continue
    const key = String(path[depth - 1])
    const meant = SHORT_FORMS[key]
    if (meant === undefined) throw new Error(`a plain value stands at ${key}`)
    const { json } = parsed.style
    return replacedBy(parsed, spot, { pairs: [[keyText(meant, json), writtenAs(node, json)]] })
  }
  return keepAliases(parsed, edit)
}

/** What a module has from `common` copied into it, where the path leads into a part of that. */
function copiedFromCommon(parsed: Parsed, path: DefinitionPath): Splice[] | undefined {
  if (path[0] !== 'modules') return undefined
  for (let depth = 3; depth < path.length; depth += 1) {
    const within = path.slice(2, depth)
    if (MERGED.includes(within.at(-1))) continue
    if (parsed.spot(path.slice(0, depth)) !== undefined) return undefined
    const shared = parsed.spot(['common', ...within])
    if (shared === undefined) continue
    return putting(parsed, path.slice(0, depth), writtenAs(parsed.opened(shared.node), parsed.style.json))
  }
  return undefined
}

function setting(parsed: Parsed, path: DefinitionPath, value: EditValue): Splice[] {
  const spot = parsed.spot(path)
  if (spot !== undefined) return replaced(parsed, spot, value)
  return putting(parsed, path, writtenOf(value, parsed.style.json))
}

/** A value where there is none yet, in the innermost group on the way that there is. */
function putting(parsed: Parsed, path: DefinitionPath, value: Written): Splice[] {
  let depth = path.length - 1
  while (depth > 0 && parsed.spot(path.slice(0, depth)) === undefined) depth -= 1
  const holder = parsed.spot(path.slice(0, depth))
  const made = path.slice(depth + 1).reduceRight<Written>((inner, step) => wrapped(parsed, step, inner), value)
  const step = path[depth] ?? ''
  if (holder === undefined) throw new Error('the definition is empty')
  if (isSeq(holder.node)) {
    const { length } = holder.node.items
    if (length === 0 && holder.node.flow !== true) throw new Error('a list in block style has an item')
    return itemAdded(parsed, holder.node, Math.min(Number(step), length), made)
  }
  if (isMap(holder.node)) return keyAdded(parsed, holder.node, keyText(String(step), parsed.style.json), made)
  if (!isNothing(holder.node) || depth === 0) throw new Error(`a plain value stands before ${step}`)
  return replacedBy(parsed, holder, wrapped(parsed, step, made))
}

const wrapped = (parsed: Parsed, step: string | number, inner: Written): Written =>
  typeof step === 'number' ? { items: [inner] } : { pairs: [[keyText(step, parsed.style.json), inner]] }

function inserting(parsed: Parsed, path: DefinitionPath, value: EditValue): Splice[] {
  const node = parsed.spot(path.slice(0, -1))?.node
  const written = writtenOf(value, parsed.style.json)
  const index = path.at(-1)
  if (typeof index !== 'number') throw new Error(`an item is put in by its index, not by ${index}`)
  return isSeq(node) ? itemAdded(parsed, node, index, written) : putting(parsed, path, written)
}

function takingOut(parsed: Parsed, path: DefinitionPath): Splice[] {
  const above = path.slice(0, -1)
  const holder = parsed.spot(above)
  const node = holder?.node
  if (holder === undefined || !(isMap(node) || isSeq(node))) return []
  const index = indexIn(node, path.at(-1))
  if (index === undefined) return []
  // A list that must have an item is of no use without one.
  if (isSeq(node) && node.items.length === 1 && above.length > 0) {
    const accepted = acceptedAt(above)
    if (accepted?.list === true && !accepted.emptyList) return takingOut(parsed, above)
  }
  return takenOut(parsed, holder, index)
}

function moving(parsed: Parsed, path: DefinitionPath, to: number): Splice[] {
  const node = parsed.spot(path.slice(0, -1))?.node
  const index = isMap(node) || isSeq(node) ? indexIn(node, path.at(-1)) : undefined
  if (index === undefined) throw new Error(`there is nothing to move at ${path.join(' › ')}`)
  return movedTo(parsed, node as YAMLMap | YAMLSeq, index, to)
}

function renaming(parsed: Parsed, path: DefinitionPath, name: string): Splice[] {
  const node: Node | undefined = parsed.spot(path.slice(0, -1))?.node
  if (!isMap(node) || pairOf(node, String(path.at(-1))) === undefined) {
    throw new Error(`there is nothing to rename at ${path.join(' › ')}`)
  }
  return renamed(parsed, path, node, name)
}

/** The place of a key or an index among the parts of a group or list. */
function indexIn(node: YAMLMap | YAMLSeq, step: string | number | undefined): number | undefined {
  const index = isMap(node) ? node.items.findIndex((pair) => printableKey(pair.key) === String(step)) : Number(step)
  return index in node.items ? index : undefined
}
