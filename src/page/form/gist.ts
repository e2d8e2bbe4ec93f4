import type { Data } from '../../project/index.ts'
import { isGroup, itemsOf, keysOf } from './copied.ts'
import { shownValue } from './written.ts'

/** Longest gist, characters: what fits beside a key. */
const LONGEST = 36

/** In few words, what stands at a place: the first plain values of a group, how many items a list has. */
export function gistOf(data: Data | undefined): string {
  const plain = shownValue(data)
  if (plain !== undefined) return cut(plain)
  if (Array.isArray(data)) return `${itemsOf(data).length}`
  if (!isGroup(data)) return ''
  const group = data as Readonly<Record<string, Data>>
  const parts = keysOf(data).map((key) => shownValue(group[key]) ?? key)
  return cut(parts.filter((part) => part !== '').join(', '))
}

const cut = (text: string): string => (text.length <= LONGEST ? text : `${text.slice(0, LONGEST - 1).trimEnd()}…`)
