import type { Problem } from '../../project/index.ts'
import type { PageDocument } from '../state/document.ts'

/**
 * The definition with the nearest known name in place of the one that is written; nothing where no name is near, or where
 * the text has changed since and the line reads differently. Quotes about the written name stay.
 */
export function withNearest(text: PageDocument['state']['value']['doc'], problem: Problem): string | undefined {
  const { nearest, line, column, lineText, span } = problem
  if (nearest === undefined || line > text.lines) return undefined
  const there = text.line(line)
  if (there.text !== lineText) return undefined
  const written = lineText.slice(column - 1, column - 1 + span)
  const quote = /^(["']).*\1$/.exec(written)?.[1]
  const name = quote === undefined ? plain(nearest) : `${quote}${nearest.replaceAll(quote, escaped(quote))}${quote}`
  const from = there.from + column - 1
  return `${text.sliceString(0, from)}${name}${text.sliceString(from + span)}`
}

const escaped = (quote: string): string => (quote === "'" ? "''" : '\\"')

/** Names of modules and stocks may hold what YAML reads as its own; such a one is quoted. */
const plain = (name: string): string =>
  /^[\p{L}][\p{L}\p{N} ._/()-]*$/u.test(name) && !/\s$/.test(name) && !/^(true|false|null|yes|no|on|off)$/i.test(name)
    ? name
    : JSON.stringify(name)
