import {
  type Finding,
  grouped,
  type Place,
  placeWords,
  rowsOf,
  shortMessage,
  withoutTwins,
} from '../../checks/index.ts'
import type { Built } from '../../outputs/index.ts'
import type { Panel } from '../../panel/index.ts'
import type { DefinitionPath } from '../../project/index.ts'
import type { FindingPlace, PageFinding } from '../protocol.ts'
import type { Face } from '../scene/types.ts'
import { WORST_FIRST } from './counts.ts'

/** Where a finding stands on the page. */
type Standing = Pick<PageFinding, 'number' | 'module' | 'panelName' | 'short'>

type Locate = (path: DefinitionPath) => { readonly line: number; readonly column: number }

/**
 * All findings in the order in which the page lists them: stops of all modules, then warnings, then notes, in each by module
 * and panel, equal ones together with one number; at the end those that the definition silences.
 */
export function pageFindings(
  { project, panels, findings }: Pick<Built, 'project' | 'panels' | 'findings'>,
  locate: Locate,
): PageFinding[] {
  const byId = new Map(panels.map((panel) => [panel.id, panel]))
  const show = (finding: Finding, standing: Standing): PageFinding => {
    const limits = project.findings.limits[finding.rule]
    return { ...shown(finding, standing, byId, locate), ...(limits !== undefined && { limits }) }
  }
  let number = 0
  const loud = WORST_FIRST.flatMap((severity) => {
    const alike = findings.filter((finding) => finding.severity === severity)
    return withoutTwins(grouped(project, panels, alike)).flatMap((group) =>
      rowsOf(group.findings).flatMap(({ first, others }) => {
        number += 1
        const here = { ...(group.module !== undefined && { module: group.module }), number }
        const members = [first, ...others].flatMap((finding) => [finding, ...(group.twins.get(finding) ?? [])])
        return members.map((finding) => {
          const panelName = group.panel === undefined ? undefined : byId.get(finding.panels[0] ?? '')?.name
          const short = shortMessage(finding, { ...group, ...(panelName !== undefined && { panel: panelName }) })
          return show(finding, { ...here, ...(panelName !== undefined && { panelName }), short })
        })
      }),
    )
  })
  const silent = findings.filter(({ silenced }) => silenced !== undefined)
  return [...loud, ...silent.map((finding) => show(finding, { short: finding.message }))]
}

function shown(finding: Finding, standing: Standing, panels: ReadonlyMap<string, Panel>, locate: Locate): PageFinding {
  const { rule, severity, message, fix, change, silenced, at } = finding
  const { line, column } = locate(at)
  return {
    key: JSON.stringify([rule, at, finding.panels, message]),
    rule,
    severity,
    ...standing,
    message,
    ...(fix !== undefined && { fix }),
    ...(change !== undefined && { change }),
    ...(silenced !== undefined && { silenced }),
    panels: finding.panels,
    places: finding.places.flatMap((place) => placeOf(place, panels.get(place.panel))),
    path: at,
    line,
    column,
  }
}

/** A place on a panel that there is; what is in an edge is drawn on face A. */
function placeOf({ panel: id, surface, at }: Place, panel: Panel | undefined): FindingPlace[] {
  if (panel === undefined) return []
  const face: Face = surface === 'B' ? 'B' : 'A'
  return [{ panel: id, face, at, words: placeWords(panel, at) }]
}
