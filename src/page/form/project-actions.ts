import type { Units } from '../../length/index.ts'
import {
  type Data,
  type DefinitionPath,
  dataAt,
  dataNames,
  type Edit,
  type EditValue,
  namingAt,
} from '../../project/index.ts'
import { copied, isGroup, itemsOf, keysOf } from './copied.ts'

const PLAN = 'floor plan'

/** A name that is not taken yet: the wanted one, or with a number behind it. */
export function freeName(wanted: string, taken: readonly string[]): string {
  const base = wanted.replace(/ \d+$/, '')
  let name = wanted
  for (let n = 2; taken.includes(name); n += 1) name = `${base} ${n}`
  return name
}

/** Why a name cannot be given; nothing where it can. */
export function nameFault(name: string, taken: readonly string[]): string | undefined {
  if (name.trim() === '') return 'a name'
  return taken.includes(name.trim()) ? 'a name that no other has' : undefined
}

/** Sizes of a new module where `common` says none, as people would write them: a small workshop cabinet. */
const NEW_MODULE: Readonly<Record<Units, Readonly<Record<string, number>>>> = {
  mm: { width: 600, depth: 500, 'carcase height': 720 },
  in: { width: 24, depth: 20, 'carcase height': 28 },
}

/** A new module behind all others, with the sizes that it does not have from common. */
export function addModule(data: Data | undefined, name: string, units: Units): Edit[] {
  const shared = (key: string): boolean => dataAt(data, ['common', key]) !== undefined
  const sizes = Object.entries(NEW_MODULE[units]).filter(
    ([key]) => !shared(key) && !(key === 'carcase height' && shared('working height')),
  )
  const [stock] = dataNames(data, 'stock')
  const value: EditValue = {
    ...Object.fromEntries(sizes),
    ...(!shared('stock') && stock !== undefined && { stock }),
  }
  return [{ path: ['modules', name], value: Object.keys(value).length > 0 ? value : { inside: {} } }]
}

/** The same module once more, behind all others, so that the comments between them stay where they belong. */
export function duplicateModule(data: Data | undefined, name: string, copy: string): Edit[] {
  return [{ path: ['modules', copy], value: copied(dataAt(data, ['modules', name])) ?? {} }]
}

/**
 * A module taken out, of the floor plan too; rows that stood against it stand by themselves. What needs two modules goes
 * where one is left alone.
 */
export function removeModule(data: Data | undefined, name: string): Edit[] {
  const rows = itemsOf(dataAt(data, [PLAN]))
  const edits = rows.flatMap((row, k): Edit[] => {
    const names = itemsOf(dataAt(row, ['row']))
    if (names.length > 0 && names.every((one) => String(one) === name)) return [{ path: [PLAN, k], value: undefined }]
    const loses = String(dataAt(row, ['stands', 'against']) ?? '') === name
    const stands: Edit[] = loses ? [{ path: [PLAN, k, 'stands'], value: undefined }] : []
    const out = names.flatMap((one, i) => (String(one) === name ? outOfRow(k, i) : [])).reverse()
    const changes = loses || out.length > 0
    return [...out, ...stands, ...(changes ? ofTwo(row, k, { modules: names.length - out.length, loses }) : [])]
  })
  // From the last row back, so that the places of those before stay what they are.
  return [...inReverse(edits), { path: ['modules', name], value: undefined }]
}

/** Keys of a row taken out that have no meaning for one module, unless it stands against another. */
function ofTwo(row: Data, place: number, left: { readonly modules: number; readonly loses: boolean }): Edit[] {
  if (left.modules > 1) return []
  const stands = left.loses ? undefined : dataAt(row, ['stands'])
  const gap = dataAt(row, ['stands', 'gap'])
  const touches = stands !== undefined && (gap === undefined || Number.parseFloat(String(gap)) === 0)
  const says = (key: string, idle: string): boolean => ![undefined, idle].includes(dataAt(row, [key]) as string)
  return [
    ...(!touches && says('join', 'none') ? [{ path: [PLAN, place, 'join'], value: undefined }] : []),
    ...(stands === undefined && says('level', 'floors') ? [{ path: [PLAN, place, 'level'], value: undefined }] : []),
  ]
}

const outOfRow = (row: number, place: number): Edit[] => [{ path: [PLAN, row, 'row', place], value: undefined }]

function inReverse(edits: readonly Edit[]): Edit[] {
  return edits.toSorted((a, b) => Number(b.path[1]) - Number(a.path[1]))
}

/** A new row at the end of the floor plan. */
export function addRow(data: Data | undefined, module: string): Edit[] {
  const rows = itemsOf(dataAt(data, [PLAN]))
  return [{ path: [PLAN, rows.length], insert: { row: [module] } }]
}

/** A module at the right end of a row. */
export function addToRow(data: Data | undefined, row: number, module: string): Edit[] {
  const places = itemsOf(dataAt(data, [PLAN, row, 'row']))
  return [{ path: [PLAN, row, 'row', places.length], insert: module }]
}

/** A module taken out of its row, with what needs two; with the last one goes the row. */
export function removeFromRow(data: Data | undefined, row: number, place: number): Edit[] {
  const said = dataAt(data, [PLAN, row])
  const count = itemsOf(dataAt(said, ['row'])).length
  if (count < 2 || said === undefined) return [{ path: [PLAN, row], value: undefined }]
  return [...outOfRow(row, place), ...ofTwo(said, row, { modules: count - 1, loses: false })]
}

/** Modules that stand in no row, in the order of the definition. */
export function looseModules(data: Data | undefined): string[] {
  const placed = new Set(
    itemsOf(dataAt(data, [PLAN])).flatMap((row) => itemsOf(dataAt(row, ['row'])).map((name) => String(name))),
  )
  return dataNames(data, 'modules').filter((name) => !placed.has(name))
}

/** A new sheet good, a little thinner than its nominal name, as boards are. */
export function addStock(name: string, units: Units): Edit[] {
  return [{ path: ['stock', name], value: { thickness: units === 'mm' ? 17.8 : 0.7 } }]
}

/** Where a stock is named, in the order of the definition. */
export function usesOfStock(data: Data | undefined, name: string): DefinitionPath[] {
  const found: DefinitionPath[] = []
  const look = (one: Data | undefined, path: DefinitionPath): void => {
    if (isGroup(one)) for (const key of keysOf(one)) look(dataAt(one, [key]), [...path, key])
    else if (Array.isArray(one)) for (const [k, item] of itemsOf(one).entries()) look(item, [...path, k])
    else if (String(one) === name && namingAt(path).some(({ of }) => of === 'stock')) found.push(path)
  }
  for (const key of keysOf(data)) {
    // Names of stock, modules and hardware are read with care: any word may be one.
    const names = key === 'modules' || key === 'hardware' ? dataNames(data, key) : undefined
    if (names === undefined) look(dataAt(data, [key]), [key])
    else for (const one of names) look(dataAt(data, [key, one]), [key, one])
  }
  return found
}
