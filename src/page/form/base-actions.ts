import type { Units } from '../../length/index.ts'
import { type Data, type DefinitionPath, dataAt, type Edit, type EditValue } from '../../project/index.ts'
import { isGroup, keysOf } from './copied.ts'

export type Stand = 'casters' | 'plinth' | 'feet'

/** The ways to stand on something, of which a base says one. */
export const STANDS: readonly Stand[] = ['casters', 'plinth', 'feet']

/** What can be said of a way to stand, beside its own key. */
const WITH: Readonly<Record<Stand, readonly string[]>> = {
  casters: ['fixed casters', 'fixed at', 'inset', 'footprint gap'],
  plinth: [],
  feet: ['inset'],
}

/** What each way begins with, by the units of the project. */
const FIRST: Readonly<Record<Stand, Readonly<Record<Units, EditValue>>>> = {
  casters: { mm: 'caster 75', in: 'caster 3 in' },
  plinth: { mm: { height: 100 }, in: { height: 4 } },
  feet: { mm: 'foot M8', in: 'foot M8' },
}

/** The way that a base says, the first of several; nothing where it says none of them. */
export function standOf(base: Data | undefined): Stand | 'none' | undefined {
  return base === 'none' ? 'none' : STANDS.find((stand) => dataAt(base, [stand]) !== undefined)
}

/** The keys of a base that have no field: those of the other ways, unless they are said. */
export function baseKeys(stand: Stand | 'none' | undefined, said: readonly string[]): { readonly hidden: string[] } {
  if (stand === undefined || stand === 'none') return { hidden: [] }
  const all = new Set<string>([...STANDS, ...STANDS.flatMap((one) => WITH[one])])
  return { hidden: [...all].filter((key) => key !== stand && !WITH[stand].includes(key) && !said.includes(key)) }
}

/** A way to stand in place of any other, or what holds where nothing is said; what has a meaning for both ways stays. */
export function standOn(
  data: Data | undefined,
  path: DefinitionPath,
  { wanted, units }: { readonly wanted: Stand | 'none' | undefined; readonly units: Units },
): Edit[] {
  const before = dataAt(data, path)
  if (wanted === undefined) return before === undefined ? [] : [{ path, value: undefined }]
  if (wanted === 'none') return [{ path, value: 'none' }]
  const first = FIRST[wanted][units]
  if (!isGroup(before) || keysOf(before).length === 0) return [{ path, value: { [wanted]: first } }]
  const idle = baseKeys(wanted, []).hidden.filter((key) => dataAt(before, [key]) !== undefined)
  const says = dataAt(before, [wanted]) !== undefined
  return [
    ...(says ? [] : [{ path: [...path, wanted], value: first }]),
    ...idle.map((key): Edit => ({ path: [...path, key], value: undefined })),
  ]
}
