import { countLine, type Finding, type Place, renderFindings } from '../checks/index.ts'
import { roundMm } from '../geometry/index.ts'
import { fromDatum, type Panel } from '../panel/index.ts'
import type { DefinitionPath } from '../project/index.ts'
import type { Built } from './build.ts'

/** Where findings lie in the output folder. */
export const FINDINGS_JSON = 'findings.json'
export const FINDINGS_TEXT = 'findings.txt'
/** Raised when a reader of the last version could misread the file. */
export const FINDINGS_VERSION = 1

/** The text that a project was read from. */
export interface DefinitionText {
  /** Its file's name, without folders, so that the same definition gives the same bytes wherever it lies. */
  readonly file: string
  /** Line and column of a place, 1-based; and the option of the command that stands in its place. */
  readonly locate: (path: DefinitionPath) => {
    readonly line: number
    readonly column: number
    readonly option?: string
  }
}

/** The findings as they are printed, with a head that says what they are. */
export function findingsText(
  { project, panels, findings }: Built,
  { file, locate }: DefinitionText,
  stamp?: string,
): string {
  const title = project.title === '' ? file : `${project.title} (${file})`
  const warning = stamp === undefined ? '' : `${stamp}\n\n`
  return `${warning}Findings on ${title}\n\n${GUIDE}\n${renderFindings({ project, panels, findings, locate, file })}`
}

const GUIDE = `A stop would spoil wood: nothing is drawn until it is mended, or drawn with a warning on every sheet. A warning wants a
look before you drill. Figures for loads, casters, slides and hinges are guides, no proof: the data sheet of the hardware
in your hand comes first, and local codes and a licensed professional decide where they apply.
`

/** The text of findings.json: two spaces, keys in a fixed order, one final line end. Lengths in mm, rounded to 0.001. */
export function findingsJson(
  { project, panels, findings }: Built,
  { file, locate }: DefinitionText,
  stamp?: string,
): string {
  const byId = new Map(panels.map((panel) => [panel.id, panel]))
  const content = {
    format: 'storyrod findings',
    version: FINDINGS_VERSION,
    title: project.title,
    definition: file,
    units: 'mm',
    ...(stamp !== undefined && { warning: stamp }),
    counts: countLine(findings),
    findings: findings.map((finding) => recordOf(finding, byId, locate)),
  }
  return `${JSON.stringify(content, null, 2)}\n`
}

function recordOf(finding: Finding, panels: ReadonlyMap<string, Panel>, locate: DefinitionText['locate']) {
  const { rule, severity, message, fix, change, silenced } = finding
  const { line, column, option } = locate(finding.at)
  return {
    rule,
    severity,
    message,
    ...(fix !== undefined && { fix }),
    ...(change !== undefined && {
      change: change.map((edit) =>
        'value' in edit && edit.value === undefined ? { path: edit.path, takeOut: true } : edit,
      ),
    }),
    ...(silenced !== undefined && { silenced }),
    panels: finding.panels,
    places: finding.places.flatMap((place) => placeOf(place, panels.get(place.panel))),
    definition: { path: finding.at, line, column, ...(option !== undefined && { option }) },
  }
}

/** A place with its distances from the two edges that a person measures from. */
function placeOf({ panel: id, surface, at }: Place, panel: Panel | undefined) {
  if (panel === undefined) return []
  const { x, y } = fromDatum(panel, at)
  return [
    {
      panel: id,
      surface: surface === 'A' || surface === 'B' ? `face ${surface}` : `edge ${panel.edges[surface]}`,
      x: roundMm(at[0]),
      y: roundMm(at[1]),
      z: roundMm(at[2]),
      from: { [y.edge]: roundMm(y.mm), [x.edge]: roundMm(x.mm) },
    },
  ]
}
