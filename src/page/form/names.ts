import { catalogue, type ItemKind, itemsOfKind } from '../../hardware/index.ts'
import { type Data, dataAt, dataNames } from '../../project/index.ts'
import type { Control } from './control.ts'

/** Names to choose from, under what they are. */
export interface NameGroup {
  readonly title: string
  readonly names: readonly string[]
}

/** What a choice can name: stocks and modules of the definition, its own hardware and that of the catalogue. */
export function namesFor(data: Data | undefined, { namings }: Extract<Control, { kind: 'choice' }>): NameGroup[] {
  const groups = namings.flatMap(({ of, kinds }): NameGroup[] => {
    if (of === 'stock') return [{ title: 'stock', names: dataNames(data, 'stock') }]
    if (of === 'module') return [{ title: 'modules', names: dataNames(data, 'modules') }]
    return hardwareOf(data, kinds)
  })
  return groups.filter(({ names }) => names.length > 0)
}

function hardwareOf(data: Data | undefined, kinds: readonly ItemKind[]): NameGroup[] {
  const asked = kinds.length > 0 ? kinds : [...new Set(catalogue.map(({ kind }) => kind))]
  const catalogued = new Map(catalogue.map(({ id, kind }) => [id, kind]))
  const own = dataNames(data, 'hardware').filter((name) => !catalogued.has(name))
  const suits = (name: string): boolean => {
    const kind = kindOf(data, name, catalogued)
    return kind === undefined || asked.includes(kind)
  }
  return [
    { title: 'of this project', names: own.filter(suits) },
    ...asked.map((kind) => ({ title: kind, names: itemsOfKind(kind).map(({ id }) => id) })),
  ]
}

/** The kind of a piece of the project's own hardware: that of the one in the catalogue that it is like, in the end. */
function kindOf(data: Data | undefined, name: string, catalogued: ReadonlyMap<string, ItemKind>): ItemKind | undefined {
  const seen = new Set<string>()
  for (let here = name; !seen.has(here); ) {
    const kind = catalogued.get(here)
    if (kind !== undefined) return kind
    seen.add(here)
    const like = dataAt(data, ['hardware', here, 'like'])
    if (typeof like !== 'string') return undefined
    here = like
  }
  return undefined
}
