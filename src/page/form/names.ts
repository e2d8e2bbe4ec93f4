import { type Caster, catalogue, findItem, type ItemKind, itemsOfKind } from '../../hardware/index.ts'
import { type Data, type DefinitionPath, dataAt, dataNames } from '../../project/index.ts'
import type { Control } from './control.ts'

/** Names to choose from, under what they are. */
export interface NameGroup {
  readonly title: string
  readonly names: readonly string[]
}

type Turning = NonNullable<Caster['turning']>

/** Which casters can stand at a key, and what they are called there. */
const TURNINGS: Readonly<Record<string, readonly Turning[]>> = {
  casters: ['swivel', 'levelling'],
  'fixed casters': ['fixed'],
}
const CASTER_TITLES: Readonly<Record<Turning, string>> = {
  swivel: 'caster',
  levelling: 'levelling caster',
  fixed: 'fixed caster',
}

/**
 * What a choice at a path can name: stocks and modules of the definition, its own hardware and that of the catalogue; of
 * casters those that can stand there.
 */
export function namesFor(
  data: Data | undefined,
  { namings }: Extract<Control, { kind: 'choice' }>,
  path: DefinitionPath,
): NameGroup[] {
  const turnings = TURNINGS[String(path.at(-1))]
  if (turnings !== undefined && namings.some(({ of }) => of === 'hardware')) return castersFor(data, turnings)
  const groups = namings.flatMap(({ of, kinds }): NameGroup[] => {
    if (of === 'stock') return [{ title: 'stock', names: dataNames(data, 'stock') }]
    if (of === 'module') return [{ title: 'modules', names: dataNames(data, 'modules') }]
    return hardwareOf(data, kinds)
  })
  return groups.filter(({ names }) => names.length > 0)
}

function castersFor(data: Data | undefined, turnings: readonly Turning[]): NameGroup[] {
  const casters = itemsOfKind('caster')
  const turningOf = new Map(casters.map(({ id, turning = 'swivel' }) => [id, turning]))
  const suits = (name: string): boolean => {
    const said = dataAt(data, ['hardware', name, 'turning'])
    const origin = originOf(data, name)
    // What is of no known caster may be one that is described here in full.
    const turning = said ?? (origin === undefined ? 'swivel' : turningOf.get(origin))
    return turnings.some((one) => one === turning)
  }
  const own = dataNames(data, 'hardware').filter((name) => !turningOf.has(name) && suits(name))
  const groups = [
    { title: 'of this project', names: own },
    ...turnings.map((turning) => ({
      title: CASTER_TITLES[turning],
      names: casters.filter(({ id }) => turningOf.get(id) === turning).map(({ id }) => id),
    })),
  ]
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
  return catalogued.get(originOf(data, name) ?? '')
}

/** What a piece of the project's own hardware is like, in the end: the name of one in the catalogue. */
function originOf(data: Data | undefined, name: string): string | undefined {
  const seen = new Set<string>()
  for (let here = name; !seen.has(here); ) {
    if (findItem(here) !== undefined) return here
    seen.add(here)
    const like = dataAt(data, ['hardware', here, 'like'])
    if (typeof like !== 'string') return undefined
    here = like
  }
  return undefined
}
