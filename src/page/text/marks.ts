import type { Action, Diagnostic } from '@codemirror/lint'
import type { Text } from '@codemirror/state'
import type { Problem } from '../../project/index.ts'
import type { PageFinding } from '../protocol.ts'
import { pathAt } from './path-at.ts'

/** Marks in the text, at most: no one reads more, and each takes its time. */
const MOST = 300

/** How grave a finding is, in the words of the editor. */
const GRAVITY = { stop: 'error', warn: 'warning', note: 'info' } as const

/** What is wrong with the text as it stands, where it stands; the right word, where there is one, can be put in. */
export function problemMarks(doc: Text, problems: readonly Problem[]): Diagnostic[] {
  return problems.slice(0, MOST).map(({ line, column, span, message, expected, nearest }) => {
    const { from, to } = rangeAt(doc, line, column, span)
    const actions = nearest === undefined ? [] : [writeInstead(nearest)]
    return {
      from,
      to,
      severity: 'error',
      source: 'Cannot be read',
      message: `${message}\nExpected: ${expected}`,
      actions,
    }
  })
}

const writeInstead = (word: string): Action => ({
  name: `Write ${word}`,
  apply: (view, from, to) => view.dispatch({ changes: { from, to, insert: word }, userEvent: 'input.complete' }),
})

/** Findings at the keys and values that they are about; `change` makes what a finding offers. */
export function findingMarks(
  doc: Text,
  findings: readonly PageFinding[],
  change: (finding: PageFinding) => void,
): Diagnostic[] {
  const text = doc.toString()
  return findings
    .filter(({ silenced }) => silenced === undefined)
    .slice(0, MOST)
    .map((finding) => {
      const { from } = rangeAt(doc, finding.line, finding.column, 1)
      const word = pathAt(text, from)
      const to = word !== undefined && word.to > from ? word.to : doc.lineAt(from).to
      return {
        from,
        to,
        severity: GRAVITY[finding.severity],
        source: finding.rule,
        message: finding.fix === undefined ? finding.message : `${finding.message}\n${sentence(finding.fix)}`,
        actions: finding.change === undefined ? [] : [{ name: 'Change it', apply: () => change(finding) }],
      }
    })
}

const sentence = (words: string): string => words.slice(0, 1).toUpperCase() + words.slice(1)

/** Offsets of a place that may belong to an earlier text: no further than the text goes. */
export function rangeAt(
  doc: Text,
  line: number,
  column: number,
  span: number,
): { readonly from: number; readonly to: number } {
  const at = doc.line(Math.max(1, Math.min(line, doc.lines)))
  const from = Math.min(at.from + Math.max(0, column - 1), at.to)
  return { from, to: Math.min(from + Math.max(1, span), at.to) }
}
