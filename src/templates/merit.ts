/** How good a plan is: what comes first counts; less is better. */
export type Merit = readonly number[]

/** True when the first is better. */
export function isLess(a: Merit, b: Merit): boolean {
  const first = a.findIndex((value, k) => value !== b[k])
  return first >= 0 && (a[first] ?? 0) < (b[first] ?? 0)
}
