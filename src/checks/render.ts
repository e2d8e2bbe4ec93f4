import type { DefinitionPath } from '../project/index.ts'
import type { Finding, Severity } from './types.ts'

/** Where a finding's cause stands in the definition, 1-based. */
export interface Position {
  readonly line: number
  readonly column: number
}

/**
 * Findings for the terminal or a text file, worst first, one paragraph each, and a last line of counts.
 * `locate` finds the place in the definition's text.
 */
export function renderFindings(
  findings: readonly Finding[],
  locate: (path: DefinitionPath) => Position,
  file: string,
): string {
  const paragraphs = findings.map((finding) => {
    const { line, column } = locate(finding.at)
    const fix = finding.fix === undefined ? '' : `\n  to mend it: ${finding.fix}`
    return `${finding.severity.padEnd(4)}  ${finding.rule}\n  ${finding.message}${fix}\n  asked for at ${file}:${line}:${column}\n`
  })
  return `${paragraphs.map((paragraph) => `${paragraph}\n`).join('')}${countLine(findings)}\n`
}

/** `2 stops, 1 warning, no notes`. */
function countLine(findings: readonly Finding[]): string {
  const count = (severity: Severity): number => findings.filter((finding) => finding.severity === severity).length
  const words = (n: number, one: string): string => (n === 0 ? `no ${one}s` : n === 1 ? `1 ${one}` : `${n} ${one}s`)
  return [words(count('stop'), 'stop'), words(count('warn'), 'warning'), words(count('note'), 'note')].join(', ')
}
