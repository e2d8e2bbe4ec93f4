/** What takes the place of a part of a text; offsets count in the text before. */
export interface Splice {
  readonly from: number
  readonly to: number
  readonly insert: string
}

/** The text with the splices made; they may come in any order, and none may reach into another. */
export function spliced(text: string, splices: readonly Splice[]): string {
  const sorted = [...splices].sort((a, b) => a.from - b.from || a.to - b.to)
  let done = ''
  let at = 0
  for (const { from, to, insert } of sorted) {
    if (from < at) throw new Error(`a splice at ${from} reaches into the one before it, which ends at ${at}`)
    done += text.slice(at, from) + insert
    at = to
  }
  return done + text.slice(at)
}

const isLow = (unit: number): boolean => unit >= 0xdc00 && unit <= 0xdfff

/**
 * The smallest splice that makes `after` of `before`, for editors that are told of changes: what both begin and end
 * with is left out. Neither end lies between the two halves of a character, or between CR and LF.
 */
export function changeOf(before: string, after: string): Splice {
  const most = Math.min(before.length, after.length)
  let from = 0
  while (from < most && before.charCodeAt(from) === after.charCodeAt(from)) from += 1
  while (from > 0 && (splits(before, from) || splits(after, from))) from -= 1
  let tail = 0
  while (
    tail < most - from &&
    before.charCodeAt(before.length - 1 - tail) === after.charCodeAt(after.length - 1 - tail)
  )
    tail += 1
  while (tail > 0 && (splits(before, before.length - tail) || splits(after, after.length - tail))) tail -= 1
  return { from, to: before.length - tail, insert: after.slice(from, after.length - tail) }
}

function splits(text: string, at: number): boolean {
  if (at <= 0 || at >= text.length) return false
  const unit = text.charCodeAt(at)
  return isLow(unit) || (unit === 10 && text.charCodeAt(at - 1) === 13)
}
