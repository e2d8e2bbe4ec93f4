import type { Severity } from './engine.ts'

/** How many findings there are of a severity. */
export function countOf(severity: Severity, severities: readonly Severity[]): number {
  return severities.filter((each) => each === severity).length
}

/** `1 file`, `2 files`. */
export function plural(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`
}
