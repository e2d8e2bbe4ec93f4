import type { Vec3 } from '../geometry/index.ts'
import { mm } from '../length/index.ts'
import { fromDatum, type Panel } from '../panel/index.ts'
import type { DefinitionPath, Project } from '../project/index.ts'
import { type FindingRow, grouped, rowsOf, shortMessage, type TwinGroup, withoutTwins } from './grouped.ts'
import type { Finding, Severity } from './types.ts'

/** Where a finding's cause stands in the definition, 1-based. */
export interface Position {
  readonly line: number
  readonly column: number
  /** The option of the command that stands in its place, such as `--check-bars`. */
  readonly option?: string
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
  const byId: PanelsById = new Map(panels.map((panel) => [panel.id, panel]))
  const blocks = withoutTwins(grouped(project, panels, findings)).map((group) => {
    const head = group.module === module ? '' : `${group.module ?? 'the whole project'}\n`
    module = group.module
    return `${head}${groupText(group, checked, byId)}\n`
  })
  const silenced = findings.filter((finding) => finding.silenced !== undefined)
  return `${blocks.join('')}${silencedText(silenced)}${countLine(findings)}\n`
}

type PanelsById = ReadonlyMap<string, Panel>

function groupText(group: TwinGroup, checked: CheckedDefinition, panels: PanelsById): string {
  const whole = group.module === undefined ? '' : '  as a whole\n'
  const panel = group.panel === undefined ? whole : `  ${group.panel}\n`
  return `${panel}${rowsOf(group.findings)
    .map((row) => rowText(row, { group, panels, checked }))
    .join('')}`
}

function rowText(
  { first, others }: FindingRow,
  {
    group,
    panels,
    checked,
  }: { readonly group: TwinGroup; readonly panels: PanelsById; readonly checked: CheckedDefinition },
): string {
  const { locate, file } = checked
  const { line, column, option } = locate(first.at)
  const asked = option === undefined ? `asked for at ${file}:${line}:${column}` : `asked for by ${option}`
  const twins = group.alsoOn.get(first) ?? []
  const more = [
    ...(others.length === 0 ? [] : [alsoAt(others, panels)]),
    ...(twins.length === 0 ? [] : [`the same on ${twins.join(', ')}`]),
  ]
  const fix = first.fix === undefined ? [] : [`to mend it: ${first.fix}`]
  const lines = [shortMessage(first, group), ...more, ...fix, asked]
  return `    ${first.severity.padEnd(4)}  ${first.rule}\n${lines.map((words) => `      ${words}\n`).join('')}`
}

/** Further places of a row that are named; the rest are counted. */
const MOST_PLACES = 5

/** `also 363 from front and 640 from bottom; …; and 28 more`. */
function alsoAt(others: readonly Finding[], panels: PanelsById): string {
  const places = others.slice(0, MOST_PLACES).map((finding) => {
    const [place] = finding.places
    const panel = panels.get(place?.panel ?? '')
    return place === undefined || panel === undefined ? undefined : placeWords(panel, place.at)
  })
  const named = places.filter((words) => words !== undefined)
  const rest = others.length - named.length
  const count = rest === 0 ? [] : [named.length === 0 ? `${rest} more like it` : `${rest} more`]
  return `also ${[...named, ...count].join('; ')}`
}

/** `363 from front and 640 from bottom`: a point of a panel by the two edges that one measures from, mm. */
export function placeWords(panel: Panel, at: Vec3): string {
  const { x, y } = fromDatum(panel, at)
  return `${mm(y.mm)} from ${y.edge} and ${mm(x.mm)} from ${x.edge}`
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
