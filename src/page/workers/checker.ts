import { cautionWords } from '../../drawing/index.ts'
import { checked, filesOutline, layoutKeeper } from '../../outputs/index.ts'
import { filesNamed } from '../../project/index.ts'
import { pageFindings } from '../findings/page-findings.ts'
import type { CheckerAnswer, CheckerAsk } from '../protocol.ts'

/** What the checking worker does, apart from the worker. A definition that cannot be laid out has no findings: it has problems. */
export function checker(): (ask: CheckerAsk) => CheckerAnswer {
  const layOut = layoutKeeper()
  return ({ number, source }) => {
    const opened = layOut(source.text, source.file, new Map(source.files), source.print)
    const named = filesNamed(source.text)
    if (!opened.ok) return { kind: 'checked', number, findings: undefined, named }
    const built = checked(opened.laid)
    return {
      kind: 'checked',
      number,
      findings: pageFindings(built, opened.locate),
      cautions: cautionWords(built.project),
      files: filesOutline(built),
      named,
    }
  }
}
