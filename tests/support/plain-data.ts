import { type Document, isAlias, isMap, isPair, isScalar, isSeq, type Node, type Pair, parseDocument } from 'yaml'
import type { DefinitionPath, Edit, EditValue, LiftEdit, LowerEdit } from '../../src/project/index.ts'

/** Data of a text as plain code has it: keys in their order, as they were written. */
export type Plain = string | number | boolean | null | Plain[] | { keys: [string, Plain][] }

/** The data of a YAML text, aliases followed; fails the test where it is no YAML. */
export function dataOf(text: string): Plain {
  const document = parseDocument(text.replace(/\r(?!\n)/g, '\n'), { uniqueKeys: false })
  if (document.errors.length > 0)
    throw new Error(`${document.errors.map(({ message }) => message).join('\n')}\n${text}`)
  return plain(document, document.contents)
}

function plain(document: Document, node: Node | null | undefined): Plain {
  if (isAlias(node)) return plain(document, node.resolve(document))
  if (isMap(node)) return { keys: node.items.map((pair) => pairData(document, pair)) }
  if (isSeq(node)) {
    return node.items.map((item) =>
      isPair(item) ? { keys: [pairData(document, item)] } : plain(document, item as Node),
    )
  }
  return isScalar(node) ? ((node.value ?? null) as Plain) : null
}

const pairData = (document: Document, { key, value }: Pair): [string, Plain] => [
  isScalar(key) ? (typeof key.value === 'string' ? key.value : (key.source ?? '')) : String(key),
  plain(document, value as Node | null),
]

export const isGroupData = (data: Plain | undefined): data is { keys: [string, Plain][] } =>
  typeof data === 'object' && data !== null && !Array.isArray(data)

/** Every path of the data, groups before what is in them. */
export function pathsOf(data: Plain, path: DefinitionPath = []): DefinitionPath[] {
  const inner = Array.isArray(data)
    ? data.flatMap((one, i) => pathsOf(one, [...path, i]))
    : isGroupData(data)
      ? data.keys.flatMap(([key, one]) => pathsOf(one, [...path, key]))
      : []
  return [path, ...inner]
}

export function dataAt(data: Plain, path: DefinitionPath): Plain | undefined {
  return path.reduce<Plain | undefined>((one, step) => {
    if (Array.isArray(one)) return one[Number(step)]
    return isGroupData(one) ? one.keys.find(([key]) => key === step)?.[1] : undefined
  }, data)
}

export function plainOf(value: EditValue): Plain {
  if (Array.isArray(value)) return value.map(plainOf)
  if (typeof value === 'object') return { keys: Object.entries(value).map(([key, one]) => [key, plainOf(one)]) }
  return value as string | number | boolean
}

/** An item lifted into the place of its list, or keys lowered into the first item of a new one; as for the order, at the end. */
function nested(data: Plain, edit: LiftEdit | LowerEdit): void {
  const group = dataAt(data, 'lift' in edit ? edit.path.slice(0, -2) : edit.path)
  if (!isGroupData(group)) throw new Error('no group has it')
  if ('lower' in edit) {
    const first = group.keys.filter(([key]) => edit.lower.includes(key))
    const rest = Array.from({ length: edit.items - 1 }, (): Plain => ({ keys: [] }))
    group.keys = group.keys.filter(([key]) => !edit.lower.includes(key))
    group.keys.push([edit.into, [{ keys: first }, ...rest]])
    return
  }
  const item = dataAt(data, edit.path)
  const lifted = isGroupData(item) ? item.keys.filter(([key]) => !edit.lift.includes(key)) : []
  const over = [edit.path.at(-2), ...lifted.filter(([, value]) => value !== null).map(([key]) => key)]
  group.keys = [...group.keys.filter(([key]) => !over.includes(key)), ...lifted]
}

/** The same data whatever the order of keys; a key without a value says nothing, and an item without one has no keys. */
export function unordered(data: Plain): Plain {
  if (Array.isArray(data)) return data.map((one) => (one === null ? { keys: [] } : unordered(one)))
  if (!isGroupData(data)) return data
  const keys = data.keys
    .filter(([, value]) => value !== null)
    .map(([key, value]): [string, Plain] => [key, unordered(value)])
  return { keys: keys.sort(([a], [b]) => (a < b ? -1 : 1)) }
}

/** The data with an edit made by plain code: the meaning of an edit, without a text. */
export function edited(data: Plain, edit: Edit): Plain {
  if ('units' in edit) throw new Error('a change of units has tests of its own')
  const copy = structuredClone(data)
  if ('lift' in edit || 'lower' in edit) {
    nested(copy, edit)
    return copy
  }
  const holder = dataAt(copy, edit.path.slice(0, -1))
  const last = edit.path.at(-1) ?? ''
  const list: unknown[] | undefined = Array.isArray(holder) ? holder : isGroupData(holder) ? holder.keys : undefined
  if (list === undefined) throw new Error('nothing holds it')
  const at = isGroupData(holder) ? holder.keys.findIndex(([key]) => key === last) : Number(last)
  if ('rename' in edit) {
    const pair = isGroupData(holder) ? holder.keys[at] : undefined
    if (pair !== undefined) pair[0] = edit.rename
  } else if ('move' in edit) list.splice(edit.move, 0, ...list.splice(at, 1))
  else if ('insert' in edit) list.splice(at, 0, plainOf(edit.insert))
  else if (edit.value === undefined) list.splice(at, 1)
  else if (isGroupData(holder)) holder.keys[at === -1 ? holder.keys.length : at] = [String(last), plainOf(edit.value)]
  else list[at] = plainOf(edit.value)
  return copy
}
