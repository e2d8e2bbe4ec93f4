/** Whether the value of a `width` is what differs between two texts of a definition, at the first place where they part. */
export function changesWidth(before: string, after: string): boolean {
  if (before === after) return false
  const most = Math.min(before.length, after.length)
  let at = 0
  while (at < most && before.charCodeAt(at) === after.charCodeAt(at)) at += 1
  const line = before.slice(before.lastIndexOf('\n', at - 1) + 1, at)
  // Behind the key, and not yet behind its value.
  const written = /\bwidth["']?\s*:([^,{}#:]*)$/.exec(line)?.[1]
  if (written === undefined) return false
  const from = at - written.length
  return valueAt(before, from) !== valueAt(after, from)
}

/** A plain value up to what ends it: a comma, a brace, a comment, the line. */
const valueAt = (text: string, from: number): string =>
  (/^[^,}#\n]*/.exec(text.slice(from, from + 200))?.[0] ?? '').trim()
