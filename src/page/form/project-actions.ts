import type { Units } from '../../length/index.ts'
import { type Data, dataAt, dataNames, type Edit, type EditValue } from '../../project/index.ts'
import { copied, itemsOf } from './copied.ts'

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

/** A module taken out, of the floor plan too; rows that stood against it stand by themselves. */
export function removeModule(data: Data | undefined, name: string): Edit[] {
  const rows = itemsOf(dataAt(data, [PLAN]))
  const edits = rows.flatMap((row, k): Edit[] => {
    const names = itemsOf(dataAt(row, ['row']))
    if (names.length > 0 && names.every((one) => String(one) === name)) return [{ path: [PLAN, k], value: undefined }]
    const stands: Edit[] =
      String(dataAt(row, ['stands', 'against']) ?? '') === name ? [{ path: [PLAN, k, 'stands'], value: undefined }] : []
    return [...names.flatMap((one, i) => (String(one) === name ? outOfRow(k, i) : [])).reverse(), ...stands]
  })
  // From the last row back, so that the places of those before stay what they are.
  return [...inReverse(edits), { path: ['modules', name], value: undefined }]
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

/** A module taken out of its row; with the last one goes the row. */
export function removeFromRow(data: Data | undefined, row: number, place: number): Edit[] {
  const alone = itemsOf(dataAt(data, [PLAN, row, 'row'])).length < 2
  return alone ? [{ path: [PLAN, row], value: undefined }] : outOfRow(row, place)
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
