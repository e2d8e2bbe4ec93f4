import type { Panel } from '../panel/index.ts'
import type { DefinitionPath, Project } from '../project/index.ts'
import { type FindingGroup, grouped, shortMessage } from './grouped.ts'
import type { Finding, Severity } from './types.ts'

/** Where a finding's cause stands in the definition, 1-based. */
export interface Position {
  readonly line: number
  readonly column: number
}

/** What was checked, and where it was said. */
export interface CheckedDefinition {
  readonly project: Pick<Project, 'modules'>
  readonly panels: readonly Panel[]
  readonly findings: readonly Finding[]
  /** Finds a place in the definition's text. */
  readonly locate: (path: DefinitionPath) => Position
  /** The name of the definition's file, as it is to be shown. */
  readonly file: string
}

/**
 * Findings for the terminal or a text file: by module and panel, worst first, each with what would mend it and where the
 * definition asks for it; then those that the definition silences, with its reasons; and a last line of counts.
 */
export function renderFindings(checked: CheckedDefinition): string {
  const { project, panels, findings } = checked
  let module: string | undefined | null = null
  const blocks = grouped(project, panels, findings).map((group) => {
    const head = group.module === module ? '' : `${group.module ?? 'the whole project'}\n`
    module = group.module
    return `${head}${groupText(group, checked)}\n`
  })
  const silenced = findings.filter((finding) => finding.silenced !== undefined)
  return `${blocks.join('')}${silencedText(silenced)}${countLine(findings)}\n`
}

function groupText(group: FindingGroup, checked: CheckedDefinition): string {
  const panel = group.panel === undefined ? '' : `  ${group.panel}\n`
  const { findings } = group
  const texts = findings.map((finding, k) => {
    const next = findings[k + 1]
    // Along a row of holes one shift mends them all: it is said behind the last.
    const again = next !== undefined && next.rule === finding.rule && next.fix === finding.fix
    return findingText(finding, group, { checked, again })
  })
  return `${panel}${texts.join('')}`
}

function findingText(
  finding: Finding,
  group: FindingGroup,
  { checked, again }: { readonly checked: CheckedDefinition; readonly again: boolean },
): string {
  const { line, column } = checked.locate(finding.at)
  const fix = finding.fix === undefined || again ? '' : `      to mend it: ${finding.fix}\n`
  const asked = again ? '' : `      asked for at ${checked.file}:${line}:${column}\n`
  const head = `    ${finding.severity.padEnd(4)}  ${finding.rule}\n`
  return `${head}      ${shortMessage(finding, group)}\n${fix}${asked}`
}

function silencedText(findings: readonly Finding[]): string {
  if (findings.length === 0) return ''
  const lines = findings.map(
    ({ severity, rule, message, silenced }) =>
      `  ${severity.padEnd(4)}  ${rule}\n    ${message}\n    because: ${silenced}\n`,
  )
  return `silenced by the definition\n${lines.join('')}\n`
}

/** `2 stops, 1 warning, no notes`, and `, 1 silenced` where there is one. */
export function countLine(findings: readonly Finding[]): string {
  const loud = findings.filter(({ silenced }) => silenced === undefined)
  const count = (severity: Severity): number => loud.filter((finding) => finding.severity === severity).length
  const words = (n: number, one: string): string => (n === 0 ? `no ${one}s` : n === 1 ? `1 ${one}` : `${n} ${one}s`)
  const counts = [words(count('stop'), 'stop'), words(count('warn'), 'warning'), words(count('note'), 'note')]
  const silent = findings.length - loud.length
  return [...counts, ...(silent === 0 ? [] : [`${silent} silenced`])].join(', ')
}
