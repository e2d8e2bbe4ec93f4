import type { Panel } from '../panel/index.ts'
import type { Project, Silence } from '../project/index.ts'
import type { Finding } from './types.ts'

/**
 * The findings with the reasons that the definition gives against them, and a note for each reason that meets none: the
 * work has changed since it was written. A finding across modules is silenced where one of them is named.
 */
export function silenced(project: Project, panels: readonly Panel[], findings: readonly Finding[]): Finding[] {
  const { silences } = project.findings
  if (silences.length === 0) return [...findings]
  const moduleOf = new Map(panels.map(({ id, module }) => [id, module]))
  const names = new Map(project.modules.map(({ key, name }) => [name, key]))
  const modulesOf = (finding: Finding): (string | undefined)[] => {
    const [root, name] = finding.at
    const asked = root === 'modules' ? names.get(String(name)) : undefined
    return [asked, ...finding.panels.map((id) => moduleOf.get(id))]
  }
  const used = new Set<Silence>()
  const answered = findings.map((finding): Finding => {
    const reason = silences.find(
      ({ rule, modules }) =>
        rule === finding.rule &&
        (modules === undefined || modulesOf(finding).some((key) => key !== undefined && modules.includes(key))),
    )
    if (reason === undefined) return finding
    used.add(reason)
    return { ...finding, silenced: reason.reason }
  })
  return [...answered, ...silences.filter((one) => !used.has(one)).map(idle)]
}

function idle({ rule, reason, at }: Silence): Finding {
  return {
    rule: 'silence-idle',
    severity: 'note',
    panels: [],
    places: [],
    message: `there is no finding of ${rule} to silence with "${reason}"`,
    fix: 'take it out, so that it does not hide a later one',
    change: [{ path: at, value: undefined }],
    at,
  }
}
