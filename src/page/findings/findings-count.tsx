import type { JSX } from 'preact'
import { usePage } from '../state/page.ts'
import { countWords } from './counts.ts'

/** Beside the heading of Judge: how much there is, and whether that is of the text as it stands. */
export function FindingsCount(): JSX.Element {
  const { problems, findings, checking, judged } = usePage().workshop
  const known = judged.value || problems.value.length > 0
  return (
    <p class="findings-count" data-looking={checking.value ? 'yes' : 'no'}>
      {known ? countWords(problems.value, findings.value) : 'looking at every hole'}
      <span class={`looking-again quiet${known && checking.value ? ' shown' : ''}`}>looking again</span>
    </p>
  )
}
