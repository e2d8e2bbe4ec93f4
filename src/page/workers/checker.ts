import type { Finding, Place } from '../../checks/index.ts'
import { checked, filesOutline, layoutKeeper } from '../../outputs/index.ts'
import { filesNamed } from '../../project/index.ts'
import type { CheckerAnswer, CheckerAsk, PageFinding } from '../protocol.ts'
import type { Face } from '../scene/types.ts'

/** What the checking worker does, apart from the worker. A definition that cannot be laid out has no findings: it has problems. */
export function checker(): (ask: CheckerAsk) => CheckerAnswer {
  const layOut = layoutKeeper()
  return ({ number, source }) => {
    const opened = layOut(source.text, source.file, new Map(source.files), source.print)
    const named = filesNamed(source.text)
    if (!opened.ok) return { kind: 'checked', number, findings: undefined, files: undefined, named }
    const built = checked(opened.laid)
    const findings = built.findings.map((finding) => shown(finding, opened.locate(finding.at)))
    return { kind: 'checked', number, findings, files: filesOutline(built), named }
  }
}

function shown(finding: Finding, { line, column }: { line: number; column: number }): PageFinding {
  const { rule, severity, message, fix, change, silenced, panels, places, at } = finding
  return {
    key: JSON.stringify([rule, at, panels, message]),
    rule,
    severity,
    message,
    ...(fix !== undefined && { fix }),
    ...(change !== undefined && { change }),
    ...(silenced !== undefined && { silenced }),
    panels,
    places: places.map(({ panel, surface, at: point }) => ({ panel, face: faceOf(surface), at: point })),
    path: at,
    line,
    column,
  }
}

/** What is in an edge is drawn on face A. */
const faceOf = (surface: Place['surface']): Face => (surface === 'B' ? 'B' : 'A')
