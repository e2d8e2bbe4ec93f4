import type { Problem } from '../../project/index.ts'
import type { Severity } from '../../rulebook/index.ts'
import type { PageFinding } from '../protocol.ts'

/** The order in which findings stand. */
export const WORST_FIRST: readonly Severity[] = ['stop', 'warn', 'note']

/** What a finding is called, one and many. */
export const SEVERITY_WORDS: Readonly<Record<Severity, readonly [one: string, many: string]>> = {
  stop: ['stop', 'stops'],
  warn: ['warning', 'warnings'],
  note: ['note', 'notes'],
}

type Counted = Pick<PageFinding, 'severity' | 'number'>

/** `the definition has 2 mistakes`; or `1 stop, 3 warnings`, each note of Judge counted once; `nothing to mend`. */
export function countWords(problems: readonly Problem[], findings: readonly Counted[]): string {
  if (problems.length > 0)
    return `the definition has ${problems.length} ${problems.length === 1 ? 'mistake' : 'mistakes'}`
  const loud = loudNotes(findings)
  const words = WORST_FIRST.flatMap((severity) => {
    const count = loud.filter((finding) => finding.severity === severity).length
    return count === 0 ? [] : [`${count} ${SEVERITY_WORDS[severity][count === 1 ? 0 : 1]}`]
  })
  return words.length === 0 ? 'nothing to mend' : words.join(', ')
}

/** The worst severity that there is, with how many notes of Judge have it; a mistake in the definition is worst of all. */
export function worstOf(
  problems: readonly Problem[],
  findings: readonly Counted[],
): { readonly severity: Severity; readonly count: number } | undefined {
  if (problems.length > 0) return { severity: 'stop', count: problems.length }
  const loud = loudNotes(findings)
  for (const severity of WORST_FIRST) {
    const count = loud.filter((finding) => finding.severity === severity).length
    if (count > 0) return { severity, count }
  }
  return undefined
}

/** Of findings that share a number the first; silenced ones have none and are left out. */
function loudNotes<Each extends Counted>(findings: readonly Each[]): Each[] {
  const numbers = new Set<number>()
  return findings.filter(({ number }) => {
    if (number === undefined || numbers.has(number)) return false
    numbers.add(number)
    return true
  })
}
