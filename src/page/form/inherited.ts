import { type Data, type DefinitionPath, dataAt } from '../../project/index.ts'

/** Groups of a module that are merged key by key with those under `common`; any other replaces it as a whole. */
const MERGED: readonly unknown[] = ['carcase', 'back', 'loads']
const HEIGHTS = ['carcase height', 'working height']

/** What a place of a module has from `common`; nothing where the module says it itself, or goes its own way there. */
export function inheritedAt(data: Data | undefined, path: DefinitionPath): Data | undefined {
  const [group, module, ...within] = path
  if (group !== 'modules' || module === undefined || within.length === 0) return undefined
  if (dataAt(data, path) !== undefined) return undefined
  // A module that says one of the two heights has no other from common.
  if (
    HEIGHTS.includes(String(within[0])) &&
    HEIGHTS.some((key) => dataAt(data, ['modules', module, key]) !== undefined)
  )
    return undefined
  for (let depth = 1; depth < within.length; depth += 1) {
    const above = within.slice(0, depth)
    if (!MERGED.includes(above.at(-1)) && dataAt(data, ['modules', module, ...above]) !== undefined) return undefined
  }
  const shared = dataAt(data, ['common', ...within])
  // A word that stands for a group of one key has no key of its own.
  if (shared === undefined && within.at(-1) === 'sits') {
    const back = dataAt(data, ['common', ...within.slice(0, -1)])
    return typeof back === 'string' ? back : undefined
  }
  return shared
}
