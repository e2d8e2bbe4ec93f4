import type { JSX } from 'preact'
import { usePage } from '../state/page.ts'

/** What to mind: always in sight in short, in full when it is asked for. */
export function Cautions(): JSX.Element {
  const { cautions } = usePage().workshop
  return (
    <section class="cautions" aria-labelledby="cautions">
      <h3 id="cautions" class="unseen">
        Cautions
      </h3>
      <details class="fold" onToggle={({ currentTarget }) => currentTarget.open && currentTarget.scrollIntoView()}>
        <summary>Loads, tipping, machines: a guide, no proof. Local codes and a licensed professional decide.</summary>
        <ul class="rows">
          {cautions.value.map((words) => (
            <li key={words}>{words}</li>
          ))}
        </ul>
      </details>
    </section>
  )
}
