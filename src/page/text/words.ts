/** A part of a text. */
export interface Range {
  readonly from: number
  readonly to: number
}

/** Offset behind a text in quotes that begins at an offset; the end of the text where they are not closed. */
export function quotedEnd(text: string, from: number): number {
  const quote = text[from]
  for (let at = from + 1; at < text.length; at += 1) {
    if (quote === '"' && text[at] === '\\') at += 1
    else if (text[at] === quote) {
      if (quote === "'" && text[at + 1] === "'") at += 1
      else return at + 1
    }
  }
  return text.length
}

export const isQuote = (unit: string | undefined): boolean => unit === '"' || unit === "'"
export const isBlank = (unit: string | undefined): boolean => unit === ' ' || unit === '\t' || unit === '\r'

/** A name without its quotes. */
export function unquoted(word: string): string {
  const [quote] = word
  if (!isQuote(quote)) return word
  const inner = word.slice(1, word.length > 1 && word.endsWith(quote ?? '') ? -1 : undefined)
  return quote === "'" ? inner.replaceAll("''", "'") : inner.replace(/\\(["\\/])/g, '$1')
}

/** Offset behind the spaces that begin at an offset. */
export function afterBlanks(text: string, from: number, end: number): number {
  let at = from
  while (at < end && isBlank(text[at])) at += 1
  return at
}

/** Offset before the spaces that end at an offset. */
export function beforeBlanks(text: string, from: number, end: number): number {
  let at = end
  while (at > from && isBlank(text[at - 1])) at -= 1
  return at
}

/**
 * Where a plain word on a line ends, from an offset: at a comment, at a colon with a space or the line's end behind it,
 * in brackets at their marks too.
 */
export function plainEnd(text: string, from: number, end: number, flow: boolean): number {
  let at = from
  while (at < end && !stopsWord(text, at, from, flow)) at += 1
  return beforeBlanks(text, from, at)
}

function stopsWord(text: string, at: number, from: number, flow: boolean): boolean {
  const unit = text[at]
  if (unit === '#') return at > from ? isBlank(text[at - 1]) : true
  if (unit === ':') return isColon(text, at, flow)
  return flow && (unit === ',' || unit === '[' || unit === ']' || unit === '{' || unit === '}')
}

/** True for a colon that ends a key. */
export function isColon(text: string, at: number, flow: boolean): boolean {
  if (text[at] !== ':') return false
  const next = text[at + 1]
  return next === undefined || next === '\n' || isBlank(next) || (flow && /[,[\]{}]/.test(next))
}

/** True for a dash that begins an item of a list. */
export const isDash = (text: string, at: number): boolean =>
  text[at] === '-' && (at + 1 >= text.length || text[at + 1] === '\n' || isBlank(text[at + 1]))

/** Offset of the end of the line that an offset stands in. */
export function lineEnd(text: string, from: number): number {
  const at = text.indexOf('\n', from)
  return at === -1 ? text.length : at
}

/** A key on a line, and where its colon stands. */
export interface Key extends Range {
  readonly name: string
  readonly colon: number
}

/** The key that stands at an offset of a line, where a colon follows. */
export function keyAt(text: string, from: number, end: number): Key | undefined {
  let start = from
  if (text[start] === '&') {
    while (start < end && !isBlank(text[start])) start += 1
    start = afterBlanks(text, start, end)
  }
  if (/[[{|>#]/.test(text[start] ?? '#')) return undefined
  const to = isQuote(text[start]) ? quotedEnd(text, start) : plainEnd(text, start, end, false)
  if (to > end) return undefined
  const colon = afterBlanks(text, to, end)
  if (!isColon(text, colon, false)) return undefined
  return { from: start, to: beforeBlanks(text, start, to), name: unquoted(text.slice(start, to)), colon }
}
