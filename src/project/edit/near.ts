import type { DefinitionPath } from '../types.ts'

/** The lines of one module, with those that an edit of it may need to see before them. */
export interface Near {
  /** `common`, and the key that the modules stand under. */
  readonly lead: string
  /** The module's own lines: from and to, as offsets in the text. */
  readonly from: number
  readonly to: number
}

/**
 * What an edit inside a module has to look at, so that a definition of hundreds need not be read as a whole; nothing where
 * that is not certain: with anchors, in brackets or quotes, and where the path leads elsewhere.
 */
export function nearOf(text: string, path: DefinitionPath): Near | undefined {
  if (path.length < 3 || path[0] !== 'modules' || text.includes('&') || /\r(?!\n)/.test(text)) return undefined
  const modules = rootLines(text, 'modules')
  if (modules === undefined || !/^modules:[ \t]*(?:#[^\n]*)?\r?\n$/.test(text.slice(modules.from, modules.head)))
    return undefined
  const own = moduleLines(text, modules.head, modules.to, String(path[1]))
  if (own === undefined) return undefined
  const common = rootLines(text, 'common')
  const shared = common === undefined ? '' : text.slice(common.from, common.to)
  const key = text.slice(modules.from, modules.head)
  return { lead: shared + (shared === '' || shared.endsWith('\n') ? '' : '\n') + key, ...own }
}

interface Lines {
  readonly from: number
  /** Behind the first line. */
  readonly head: number
  /** Behind the last line with words on it. */
  readonly to: number
}

/** The lines of a key of the root in block style. */
function rootLines(text: string, key: string): Lines | undefined {
  const found = new RegExp(`^\\ufeff?${key}:(?=\\s)`, 'm').exec(text)
  if (found === null) return undefined
  const from = found.index + (found[0].startsWith('\ufeff') ? 1 : 0)
  return { from, head: next(text, from), to: endOf(text, next(text, from), 0) }
}

const next = (text: string, from: number): number => {
  const at = text.indexOf('\n', from)
  return at === -1 ? text.length : at + 1
}

/** Behind the last line that is further right than a column, or blank or a comment before such a one. */
function endOf(text: string, from: number, column: number): number {
  let to = from
  for (let at = from; at < text.length; at = next(text, at)) {
    const indent = indentOf(text, at)
    if (indent === undefined) continue
    if (indent <= column) break
    to = next(text, at)
  }
  return to
}

/** Spaces before the first word of a line; nothing for blank lines and comments. */
function indentOf(text: string, from: number): number | undefined {
  let at = from
  while (text[at] === ' ') at += 1
  return /[\s#]/.test(text[at] ?? '\n') ? undefined : at - from
}

function moduleLines(text: string, from: number, to: number, name: string): { from: number; to: number } | undefined {
  let column: number | undefined
  for (let at = from; at < to; at = next(text, at)) {
    const indent = indentOf(text, at)
    if (indent === undefined) continue
    column ??= indent
    if (indent !== column || !text.startsWith(`${name}:`, at + indent)) continue
    // The name may be the beginning of a longer one: `a` of `a:b: {}`.
    if (!/[\s]/.test(text[at + indent + name.length + 1] ?? '\n')) continue
    return { from: at, to: endOf(text, next(text, at), column) }
  }
  return undefined
}
