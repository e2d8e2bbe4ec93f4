/** What an empty field says. */
export interface EmptyWords {
  /** In the field itself, where little has room. */
  readonly inside: string
  /** On a line of its own under it, which may be as long as it must. */
  readonly beneath: string
}

/** As many characters as the narrowest field of the form shows to their end. */
const INSIDE = 12

const FROM = /^(from common): (.*)$|^(default) (.*)$/s

/**
 * Splits words such as `from common: 571.3` or `default through screws`: where they come from stands in the field, and what
 * holds beneath it, where no figure is cut. Words that fit stay in the field.
 */
export function emptyField(words: string): EmptyWords {
  if (words.length <= INSIDE) return { inside: words, beneath: '' }
  const [, common, inherited, usual, meant] = FROM.exec(words) ?? []
  return { inside: common ?? usual ?? '', beneath: inherited ?? meant ?? words }
}
