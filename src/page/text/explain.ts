import { type Accepted, acceptedAt } from '../../project/index.ts'
import type { Here } from './path-at.ts'

/** What a key of the definition means, for someone who points at it. */
export interface Explanation {
  readonly key: string
  /** Its meaning and its default, from the schema. */
  readonly about: string
  /** What may stand behind it; empty where that says nothing more. */
  readonly accepts: string
}

/** What the key at a place means, or the key of the value there; nothing at names of one's own choice. */
export function explanationAt(here: Here): Explanation | undefined {
  const path = here.on === 'key' ? [...here.path, here.word] : here.path
  const named = path.findLastIndex((step) => typeof step === 'string')
  const key = path[named]
  if (named === -1 || typeof key !== 'string') return undefined
  const accepted = acceptedAt(path.slice(0, named + 1))
  if (accepted === undefined || accepted.about === '') return undefined
  return { key, about: accepted.about, accepts: acceptsOf(accepted) }
}

/** The last key is enough of a list, the words of a choice otherwise. */
function acceptsOf({ expected, keys, plain }: Accepted): string {
  const inner = keys.slice(0, MOST_KEYS).map(({ key }) => key)
  const group = inner.length === 0 ? '' : `keys: ${inner.join(', ')}${keys.length > inner.length ? ', …' : ''}`
  if (!plain) return group === '' ? expected : group
  return [expected, group].filter((words) => words !== '').join('; ')
}

/** Keys of a group that are listed. */
const MOST_KEYS = 12
