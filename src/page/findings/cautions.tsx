import type { JSX } from 'preact'
import { usePage } from '../state/page.ts'

/** What to mind, always in sight in short, in full when it is asked for. */
export function Cautions(): JSX.Element {
  const { cautions } = usePage().workshop
  return (
    <section class="cautions" aria-labelledby="cautions">
      <h3 id="cautions">Cautions</h3>
      <p>
        Loads, tipping and machines: these figures are a guide, no proof. The data sheet of the hardware in your hand
        comes first; local codes and a licensed professional decide where they apply.
      </p>
      {cautions.value.length > 0 && (
        <details class="fold">
          <summary>All {cautions.value.length} cautions for this project</summary>
          <ul class="rows">
            {cautions.value.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </details>
      )}
    </section>
  )
}
