import type { JSX } from 'preact'
import { countWords, worstOf } from '../findings/counts.ts'
import { AREAS, usePage } from '../state/page.ts'
import { SeverityMark } from './severity-mark.tsx'

/** At the foot of a phone's screen: which area is shown, and how much there is to judge. */
export function AreaBar(): JSX.Element {
  const { area } = usePage()
  return (
    <nav class="area-bar" aria-label="Parts of the page">
      {AREAS.map((one) => (
        <button key={one} type="button" aria-current={area.value === one} onClick={() => (area.value = one)}>
          {one}
          {one === 'Judge' && <JudgeCount />}
        </button>
      ))}
    </nav>
  )
}

/** The worst there is, and how many of it. */
function JudgeCount(): JSX.Element | null {
  const { problems, findings } = usePage().workshop
  const worst = worstOf(problems.value, findings.value)
  if (worst === undefined) return null
  return (
    <>
      <SeverityMark severity={worst.severity} number={worst.count} />
      <span class="unseen"> {countWords(problems.value, findings.value)}</span>
    </>
  )
}
