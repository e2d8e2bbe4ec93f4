import type { Panel } from '../panel/index.ts'
import type { Project } from '../project/index.ts'
import type { Finding, Severity } from './types.ts'

/** The findings on one panel, or on a whole module (no `panel`), or on the whole project (neither). */
export interface FindingGroup {
  readonly module?: string
  readonly panel?: string
  readonly findings: readonly Finding[]
}

const WORST_FIRST: Record<Severity, number> = { stop: 0, warn: 1, note: 2 }

/**
 * Findings by module and panel, in their order: the module with the worst finding first, and in it the panel with the
 * worst; each finding once, under the first panel that it concerns. Silenced ones are left out.
 */
export function grouped(
  project: Pick<Project, 'modules'>,
  panels: readonly Panel[],
  findings: readonly Finding[],
): FindingGroup[] {
  const panelOf = new Map(panels.map((panel) => [panel.id, panel]))
  const named = new Map(project.modules.map(({ name }) => [name, name]))
  const modules = new Map<string | undefined, Map<string | undefined, Finding[]>>()
  const loud = findings.filter(({ silenced }) => silenced === undefined)
  // Stable: within one severity the order that they come in stays.
  for (const finding of [...loud].sort((a, b) => WORST_FIRST[a.severity] - WORST_FIRST[b.severity])) {
    const panel = panelOf.get(finding.panels[0] ?? '')
    const [root, name] = finding.at
    const module = panel?.moduleName ?? (root === 'modules' ? named.get(String(name)) : undefined)
    const inModule = modules.get(module) ?? new Map<string | undefined, Finding[]>()
    modules.set(module, inModule)
    const key = panel?.name
    inModule.set(key, [...(inModule.get(key) ?? []), finding])
  }
  return [...modules].flatMap(([module, byPanel]) =>
    [...byPanel].map(([panel, list]) => ({
      ...(module !== undefined && { module }),
      ...(panel !== undefined && { panel }),
      findings: list,
    })),
  )
}

/** The sentence of a finding without the module and panel that it stands under. */
export function shortMessage(finding: Finding, { module, panel }: Pick<FindingGroup, 'module' | 'panel'>): string {
  const { message } = finding
  const heads = [`${module}, ${panel}: `, `${module}: `]
  const head = module === undefined ? undefined : heads.find((one) => message.startsWith(one))
  return head === undefined ? message : message.slice(head.length)
}

/** Findings of one panel that one fix mends, such as all holes of a row. */
export interface FindingRow {
  readonly first: Finding
  readonly others: readonly Finding[]
}

/** Findings in rows: those of one rule and severity with the same fix, at the place of the first. */
export function rowsOf(findings: readonly Finding[]): FindingRow[] {
  const rows = new Map<string, { first: Finding; others: Finding[] }>()
  findings.forEach((finding, k) => {
    // What no fix joins stands alone, and what has no place: its sentence alone says what it is about.
    const joins = finding.fix !== undefined && finding.places.length > 0
    const key = JSON.stringify([finding.rule, finding.severity, joins ? finding.fix : k])
    const row = rows.get(key)
    if (row === undefined) rows.set(key, { first: finding, others: [] })
    else row.others.push(finding)
  })
  return [...rows.values()]
}

/** Groups in which equal findings on several panels of a module stand once, under the first, with the names of the others. */
export interface TwinGroup extends FindingGroup {
  /** Names of the further panels of which the same is to be said, by finding. */
  readonly alsoOn: ReadonlyMap<Finding, readonly string[]>
  /** The findings on those panels, which stand in no group. */
  readonly twins: ReadonlyMap<Finding, readonly Finding[]>
}

type Names = Map<Finding, string[]>
type Twins = Map<Finding, readonly Finding[]>

/** Equal shelves, the two sides: what is found on one is said once. Groups that are left with nothing fall away. */
export function withoutTwins(groups: readonly FindingGroup[]): TwinGroup[] {
  const first = new Map<string, { readonly finding: Finding; readonly alsoOn: Names; readonly twins: Twins }>()
  return groups.flatMap((group): TwinGroup[] => {
    const alsoOn: Names = new Map()
    const twins: Twins = new Map()
    const own = group.findings.filter((finding) => {
      if (group.panel === undefined) return true
      const { rule, severity, fix, at } = finding
      const key = JSON.stringify([group.module, rule, severity, shortMessage(finding, group), fix, at])
      const twin = first.get(key)
      if (twin === undefined) {
        first.set(key, { finding, alsoOn, twins })
        return true
      }
      const names = twin.alsoOn.get(twin.finding)
      if (names === undefined) twin.alsoOn.set(twin.finding, [group.panel])
      else if (!names.includes(group.panel)) names.push(group.panel)
      twin.twins.set(twin.finding, [...(twin.twins.get(twin.finding) ?? []), finding])
      return false
    })
    return own.length === 0 ? [] : [{ ...group, findings: own, alsoOn, twins }]
  })
}
