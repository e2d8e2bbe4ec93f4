import { type Data, holdsNames, NAME_MARK } from './to-data.ts'
import type { DefinitionPath } from './types.ts'

/** What a definition's data say at a path; `undefined` where they say nothing. */
export function dataAt(data: Data | undefined, path: DefinitionPath): Data | undefined {
  let here: Data | undefined = data
  for (const [depth, step] of path.entries()) {
    if (typeof here !== 'object' || here === null) return undefined
    const key: string | number = holdsNames(path.slice(0, depth)) ? `${NAME_MARK}${step}` : step
    here = Object.hasOwn(here, key) ? (here as Readonly<Record<string | number, Data>>)[key] : undefined
  }
  return here
}

/** The names under `stock`, `hardware` or `modules`, in the order of the text. */
export function dataNames(data: Data | undefined, group: 'stock' | 'hardware' | 'modules'): string[] {
  const named = dataAt(data, [group])
  if (typeof named !== 'object' || named === null || Array.isArray(named)) return []
  return Object.keys(named).map((key) => key.slice(NAME_MARK.length))
}
