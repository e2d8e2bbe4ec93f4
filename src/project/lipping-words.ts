/** Words for groups of panels that a lipping can name. The roles that they stand for are in the assembly. */
export const LIPPING_GROUPS = [
  'all',
  'carcase',
  'sides',
  'shelves',
  'partitions',
  'doors',
  'fronts',
  'drawer boxes',
  'rails',
  'stretchers',
  'plinth',
] as const

export type LippingGroup = (typeof LIPPING_GROUPS)[number]

/** Beginnings of the names of panels, as far as they can be known before the module is built. */
const NAMES = [
  'left side',
  'right side',
  'top',
  'bottom',
  'back',
  'partition',
  'fixed shelf',
  'loose shelf',
  'shelf',
  'door',
  'flap',
  'fixed front',
  'drawer',
  'left packing',
  'right packing',
  'top rail',
  'front top rail',
  'rear top rail',
  'front stretcher',
  'rear stretcher',
  'stretcher',
  'worktop',
  'machine top',
  'chamber floor',
  'platform',
  'plinth front',
  'plinth back',
  'plinth left side',
  'plinth right side',
] as const

/** Whether a word can name a panel, a role or a group: `shelf 2`, `drawer 1 front`, `sides`. */
export function isLippingWord(word: string): boolean {
  return (
    (LIPPING_GROUPS as readonly string[]).includes(word) ||
    NAMES.some((name) => word === name || word.startsWith(`${name} `))
  )
}

/** All words, for an answer to one that is unknown. */
export const LIPPING_WORDS: readonly string[] = [...LIPPING_GROUPS, ...NAMES]
