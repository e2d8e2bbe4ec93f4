/**
 * The known name nearest to a written one by edit distance (insert, delete, replace, swap of neighbours), letter case
 * apart; `undefined` when none is near: more than a third of its letters differ, or the name is too long to be one.
 * The first of equals wins.
 */
export function nearestName(written: string, known: readonly string[]): string | undefined {
  const wanted = written.trim().toLowerCase()
  if (wanted.length > 60 || wanted === '') return undefined
  let best: string | undefined
  let least = Number.POSITIVE_INFINITY
  for (const name of known) {
    const candidate = name.toLowerCase()
    const limit = Math.max(1, Math.floor(Math.max(wanted.length, candidate.length) / 3))
    if (Math.abs(candidate.length - wanted.length) > limit) continue
    const distance = editDistance(wanted, candidate)
    if (distance <= limit && distance < least) {
      least = distance
      best = name
    }
  }
  return best
}

/** Optimal string alignment distance. */
function editDistance(a: string, b: string): number {
  let beforeLast: number[] = []
  let last = Array.from({ length: b.length + 1 }, (_, j) => j)
  for (let i = 1; i <= a.length; i++) {
    const row = [i]
    for (let j = 1; j <= b.length; j++) {
      const replaced = (last[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1)
      let cost = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, replaced)
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        cost = Math.min(cost, (beforeLast[j - 2] ?? 0) + 1)
      }
      row.push(cost)
    }
    beforeLast = last
    last = row
  }
  return last[b.length] ?? 0
}
