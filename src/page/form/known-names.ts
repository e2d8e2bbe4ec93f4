import { effect, type ReadonlySignal, type Signal } from '@preact/signals'
import { type Data, type DefinitionPath, dataNames } from '../../project/index.ts'

/** The one name that has become another in its place, as a rename, its undo or the text does it; nothing where more has changed. */
export function renamedBetween(
  before: readonly string[],
  after: readonly string[],
): { readonly from: string; readonly to: string } | undefined {
  if (before.length !== after.length) return undefined
  const places = before.flatMap((name, k) => (name === after[k] ? [] : [k]))
  const [place] = places
  if (place === undefined || places.length > 1) return undefined
  const [from, to] = [before[place], after[place]]
  return from === undefined || to === undefined ? undefined : { from, to }
}

/** The path under the name that its module or stock now has. */
export function renamedPath(path: DefinitionPath, group: string, from: string, to: string): DefinitionPath {
  return path[0] === group && path[1] === from ? [group, to, ...path.slice(2)] : path
}

export interface NamedState {
  readonly data: ReadonlySignal<Data | undefined>
  readonly moduleShown: Signal<string | undefined>
  readonly bay: Signal<DefinitionPath | undefined>
  readonly folds: Signal<ReadonlyMap<string, boolean>>
}

const GROUPS = ['modules', 'stock'] as const

/**
 * Follows modules and stocks through renames, whoever makes or undoes them, so that what is chosen and open stays so; where
 * the module that was shown has gone, the one shown before it comes back. What it gives tells one place of the
 * definition from all others, under whatever name its module or stock goes.
 */
export function followNames({ data, moduleShown, bay, folds }: NamedState): (path: DefinitionPath) => string {
  const numbers = new Map<string, number>()
  let counted = 0
  const before = { modules: [], stock: [] } as Record<(typeof GROUPS)[number], readonly string[]>
  const rename = (group: (typeof GROUPS)[number], from: string, to: string): void => {
    const own = numbers.get(JSON.stringify([group, from]))
    numbers.delete(JSON.stringify([group, from]))
    if (own !== undefined) numbers.set(JSON.stringify([group, to]), own)
    const renamed = (key: string): string =>
      JSON.stringify(renamedPath(JSON.parse(key) as DefinitionPath, group, from, to))
    folds.value = new Map([...folds.peek()].map(([key, open]) => [renamed(key), open]))
    if (group !== 'modules') return
    shownBefore = shownBefore.map((name) => (name === from ? to : name))
    if (moduleShown.peek() === from) moduleShown.value = to
    const chosen = bay.peek()
    if (chosen !== undefined) bay.value = renamedPath(chosen, group, from, to)
  }
  /** Each module once, the last one that was shown at the end. */
  let shownBefore: readonly string[] = []
  effect(() => {
    for (const group of GROUPS) {
      const names = dataNames(data.value, group)
      const renamed = renamedBetween(before[group], names)
      before[group] = names
      if (renamed !== undefined) rename(group, renamed.from, renamed.to)
    }
    const names = before.modules
    const wanted = moduleShown.value
    const shown =
      wanted !== undefined && names.includes(wanted)
        ? wanted
        : (shownBefore.findLast((name) => names.includes(name)) ?? names[0])
    if (shown === undefined) return
    shownBefore = [...shownBefore.filter((name) => name !== shown), shown]
    // What is chosen before the data has it is left to come.
    if (wanted !== undefined && !names.includes(wanted) && shownBefore.includes(wanted)) moduleShown.value = shown
  })
  return (path) => {
    const named = path.length > 1 && GROUPS.some((group) => group === path[0])
    if (!named) return JSON.stringify(path)
    const key = JSON.stringify(path.slice(0, 2))
    const number = numbers.get(key) ?? ++counted
    numbers.set(key, number)
    return JSON.stringify([path[0], number, ...path.slice(2)])
  }
}
