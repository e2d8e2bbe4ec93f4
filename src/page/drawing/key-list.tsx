import type { JSX } from 'preact'
import { Popover } from '../look/popover.tsx'
import { KEYS } from './keys.ts'

/** What the keys do on the drawing. */
export function KeyList(): JSX.Element {
  return (
    <div class="key-list">
      <Popover label="Keys">
        <p>While the drawing has the focus:</p>
        <dl class="facts">
          {KEYS.map(([key, does]) => (
            <div key={key} class="key-row">
              <dt>
                <kbd>{key}</kbd>
              </dt>
              <dd>{does}</dd>
            </div>
          ))}
        </dl>
      </Popover>
    </div>
  )
}
