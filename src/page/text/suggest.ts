import { catalogue, findItem, type ItemKind } from '../../hardware/index.ts'
import { type Accepted, acceptedAt, type Naming } from '../../project/index.ts'
import type { Here } from './path-at.ts'

/** Something that can be put in at a place of the text. */
export interface Suggestion {
  readonly label: string
  /** What kind of thing it is, in a word; shown beside it. */
  readonly kind: 'key' | 'word' | 'stock' | 'module' | 'hardware'
  /** What it means, in a sentence or two; empty where the label says it all. */
  readonly about: string
  /** What is put in. Begun with a line end, it comes below the line, whose end says nothing then. */
  readonly text: string
  /** What is put in behind the cursor. */
  readonly behind?: string
}

/** The names that the definition gives. */
export type Names = Readonly<Record<Naming['of'], readonly string[]>>

/**
 * What can stand at a place, likely things first: keys that its group does not have yet, the words that a value may be,
 * names of stock, modules and hardware. `margin`: the spaces before the line's first word.
 */
export function suggestionsAt(here: Here, names: () => Names, margin: number): readonly Suggestion[] {
  const accepted = acceptedAt(here.path)
  if (accepted === undefined) return []
  const keys = here.on === 'value' ? [] : keySuggestions(here, accepted, margin)
  const values = here.on === 'key' ? [] : valueSuggestions(accepted, names)
  const holders = here.on === 'value' ? holderSuggestions(here, accepted, names, margin) : []
  return [...keys, ...values, ...holders].filter(({ label }) => label !== here.word || here.on !== 'value')
}

/** The keys of a group or the items of a list that may stand in the place of a plain value. */
function holderSuggestions(here: Here, accepted: Accepted, names: () => Names, margin: number): Suggestion[] {
  const item = accepted.list ? acceptedAt([...here.path, 0]) : undefined
  const taken = new Set<string>()
  const words = item === undefined ? [] : valueSuggestions(item, names).map(bracketed)
  return [
    ...within(here, accepted, margin, { open: '{ ', close: ' }', lead: '' }),
    ...(item === undefined
      ? []
      : within({ ...here, path: [...here.path, 0] }, item, margin, { open: '[{ ', close: ' }]', lead: '- ' })),
    ...words,
  ].filter(({ label }) => !taken.has(label) && taken.add(label))
}

/** Keys of a group that begins here: below the line, or in brackets of its own. */
function within(
  here: Here,
  accepted: Accepted,
  margin: number,
  { open, close, lead }: { readonly open: string; readonly close: string; readonly lead: string },
): Suggestion[] {
  const indent = margin + STEP + lead.length
  return keySuggestions({ ...here, colon: false, siblings: [] }, accepted, indent).map((one) =>
    here.flow
      ? { ...one, text: open + one.text, behind: close }
      : { ...one, text: `\n${' '.repeat(margin + STEP)}${lead}${one.text}` },
  )
}

const bracketed = (one: Suggestion): Suggestion => ({
  ...one,
  label: `[${one.label}]`,
  text: `[${one.text}`,
  behind: ']',
})

function keySuggestions(here: Here, { keys }: Accepted, margin: number): Suggestion[] {
  return keys
    .filter(({ key }) => !here.siblings.includes(key))
    .sort((a, b) => Number(b.required) - Number(a.required))
    .map(({ key, about }) => ({ label: key, kind: 'key', about, text: key + behindKey(here, key, margin) }))
}

/** Columns that what is put in below a key is indented. */
const STEP = 2

/** What follows a key that is put in: a colon, and below it the room for a group or list that cannot stand on its line. */
function behindKey(here: Here, key: string, margin: number): string {
  if (here.colon) return ''
  const inner = acceptedAt([...here.path, key])
  if (here.flow || inner === undefined || inner.plain) return ': '
  const indent = `\n${' '.repeat(margin + STEP)}`
  return inner.list ? `:${indent}- ` : `:${indent}`
}

function valueSuggestions({ words, namings }: Accepted, names: () => Names): Suggestion[] {
  const found: Suggestion[] = words.map((word) => ({ label: word, kind: 'word', about: '', text: plainText(word) }))
  for (const { of, kinds } of namings) {
    for (const name of names()[of]) found.push({ label: name, kind: of, about: titleOf(name), text: plainText(name) })
    if (of === 'hardware') found.push(...items(kinds))
  }
  const seen = new Set<string>()
  return found.filter(({ label }) => !seen.has(label) && seen.add(label))
}

const items = (kinds: readonly ItemKind[]): Suggestion[] =>
  catalogue
    .filter(({ kind }) => kinds.length === 0 || kinds.includes(kind))
    .map(({ id, title }) => ({ label: id, kind: 'hardware', about: title, text: plainText(id) }))

const titleOf = (name: string): string => findItem(name)?.title ?? ''

/** A word as it can stand in any place; YAML would take some for something else. */
function plainText(word: string): string {
  return /^[\p{L}\d](?:[^:#,[\]{}"'\n]|#(?<! #))*$/u.test(word) && !/\s$|^[\d.]+$/.test(word)
    ? word
    : JSON.stringify(word)
}
