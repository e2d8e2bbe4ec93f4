import type { Here } from './path-at.ts'
import type { Suggestion } from './suggest.ts'

/** Column of the first word of the line, or behind the dash that the place follows. */
export function marginOf(text: string, offset: number): number {
  const before = text.slice(text.lastIndexOf('\n', offset - 1) + 1, offset)
  return /^[\s-]*$/.test(before) ? before.length : before.search(/[^\s-]/)
}

/** True behind a key whose group or list stands on the lines below already. */
export function isFilledBelow(text: string, here: Here): boolean {
  if (here.on !== 'value' || here.flow || here.word !== '') return false
  const margin = marginOf(text, here.from)
  const next = text
    .slice(lineEnd(text, here.to) + 1)
    .split('\n')
    .find((line) => line.trim() !== '' && !line.trimStart().startsWith('#'))
  if (next === undefined) return false
  const column = next.search(/\S/)
  return column > margin || (column === margin && /^\s*-(?:\s|$)/.test(next))
}

/** What a text editor does when a suggestion is taken; offsets of changes count in the text before. */
export interface Taking {
  readonly changes: readonly { readonly from: number; readonly to: number; readonly insert: string }[]
  /** Where the cursor stands afterwards. */
  readonly cursor: number
}

/** A suggestion taken at its place: what begins a line of its own comes behind the comment of the line that it leaves. */
export function takingOf(text: string, here: Here, { text: words, behind = '' }: Suggestion): Taking {
  if (!words.startsWith('\n')) {
    const gap = text[here.from - 1] === ':' ? ' ' : ''
    const insert = gap + words
    return {
      changes: [{ from: here.from, to: here.to, insert: insert + behind }],
      cursor: here.from + insert.length,
    }
  }
  const end = lineEnd(text, here.to)
  const rest = text.slice(here.to, end)
  if (/^\s*#/.test(rest)) {
    const out = { from: here.from, to: here.to, insert: '' }
    const changes = here.to > here.from ? [out] : []
    return {
      changes: [...changes, { from: end, to: end, insert: words }],
      cursor: end - (here.to - here.from) + words.length,
    }
  }
  const from = text.slice(0, here.from).trimEnd().length
  return { changes: [{ from, to: end, insert: words }], cursor: from + words.length }
}

function lineEnd(text: string, from: number): number {
  const at = text.indexOf('\n', from)
  return at === -1 ? text.length : at
}
