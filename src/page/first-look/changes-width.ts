/** Whether a width is what differs between two texts of a definition: the first place where they part stands behind that key. */
export function changesWidth(before: string, after: string): boolean {
  if (before === after) return false
  let at = 0
  while (at < before.length && before.charCodeAt(at) === after.charCodeAt(at)) at += 1
  return [before, after].some((text) =>
    /\bwidth["']?\s*:[^,{}#:]*$/.test(text.slice(text.lastIndexOf('\n', at - 1) + 1, at)),
  )
}
