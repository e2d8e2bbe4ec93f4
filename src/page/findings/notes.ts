import type { Severity } from '../../rulebook/index.ts'
import type { FindingPlace, PageFinding } from '../protocol.ts'

/** One numbered note of Judge: a finding, with those that are equal to it. */
export interface Note {
  readonly first: PageFinding
  readonly number: number
  readonly severity: Severity
  /** The keys of all of them: a flag in the drawing may be that of any. */
  readonly keys: readonly string[]
  /** Further places on the same panel. */
  readonly alsoAt: readonly FindingPlace[]
  /** Further panels of which the same is to be said, each with its first place. */
  readonly alsoOn: readonly {
    readonly name: string
    readonly panel: string
    readonly place: FindingPlace | undefined
  }[]
}

/** The notes of findings that stand in the order of their numbers; silenced ones, which have none, are left out. */
export function notesOf(findings: readonly PageFinding[]): Note[] {
  const byNumber = new Map<number, [PageFinding, ...PageFinding[]]>()
  for (const finding of findings) {
    if (finding.number === undefined) continue
    const members = byNumber.get(finding.number)
    if (members === undefined) byNumber.set(finding.number, [finding])
    else members.push(finding)
  }
  return [...byNumber].map(([number, [first, ...others]]) => {
    const own = first.panels[0]
    const elsewhere = new Map<string, Note['alsoOn'][number]>()
    for (const { panels, panelName, places } of others) {
      const panel = panels[0]
      if (panel === undefined || panel === own || elsewhere.has(panel)) continue
      elsewhere.set(panel, { name: panelName ?? panel, panel, place: places[0] })
    }
    const here = others.filter(({ panels }) => panels[0] === own)
    return {
      first,
      number,
      severity: first.severity,
      keys: [first, ...others].map(({ key }) => key),
      alsoAt: here.flatMap(({ places }) => places.slice(0, 1)),
      alsoOn: [...elsewhere.values()],
    }
  })
}
