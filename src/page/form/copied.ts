import type { Data, EditValue } from '../../project/index.ts'

/** What the data say, as a value to write elsewhere; nothing for an empty place. Keys that say nothing are left out. */
export function copied(data: Data | undefined): EditValue | undefined {
  if (data === undefined || data === null) return undefined
  if (typeof data !== 'object') return data
  if (Array.isArray(data)) return data.map((item: Data) => copied(item) ?? {})
  return Object.fromEntries(
    Object.entries(data).flatMap(([key, value]) => {
      const copy = copied(value)
      return copy === undefined ? [] : [[key, copy]]
    }),
  )
}

/** The keys of a group as written, in their order; none for anything else. */
export function keysOf(data: Data | undefined): string[] {
  return typeof data === 'object' && data !== null && !Array.isArray(data) ? Object.keys(data) : []
}

/** True for a group of keys. */
export const isGroup = (data: Data | undefined): boolean =>
  typeof data === 'object' && data !== null && !Array.isArray(data)

/** Items of a list as written; none for anything else. */
export const itemsOf = (data: Data | undefined): readonly Data[] => (Array.isArray(data) ? data : [])
