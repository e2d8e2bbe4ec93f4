import { useSignal, useSignalEffect } from '@preact/signals'
import type { JSX } from 'preact'
import { usePage } from '../state/page.ts'
import { goOn } from './actions.ts'
import { shut, useBench } from './bench.ts'
import { useDesk } from './desk.ts'
import { forget, type KeptWork, keptWorks } from './kept.ts'

/** Work that the browser keeps, to go on with or to throw away. */
export function Earlier(): JSX.Element | null {
  const bench = useBench()
  const { document } = usePage()
  const { storage, isKept, offered } = useDesk()
  const kept = useSignal<readonly KeptWork[]>([])
  const look = (): void => {
    kept.value = keptWorks(storage)
  }
  useSignalEffect(() => {
    void [document.opened.value, isKept.value, offered.value]
    look()
  })
  if (kept.value.length === 0) return null
  return (
    <>
      <h2>Kept in this browser</h2>
      <ul class="rows">
        {kept.value.map((one) => (
          <li key={one.id} class="earlier">
            <button type="button" onClick={(event) => shut(event, () => goOn(bench, one))}>
              <b>{one.file}</b> {whenWords(one.at)}
              {one.isSaved ? '' : ', not saved'}
            </button>
            <button
              type="button"
              class="plain"
              onClick={() => {
                forget(storage, one.id)
                look()
              }}
            >
              Throw away<span class="unseen"> {`${one.file} ${whenWords(one.at)}`}</span>
            </button>
          </li>
        ))}
      </ul>
    </>
  )
}

/** `14:05` today, else with its day: `3 May, 14:05`. */
export function whenWords(at: number, now = new Date()): string {
  const then = new Date(at)
  const time = then.toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' })
  if (then.toDateString() === now.toDateString()) return `from ${time}`
  return `from ${then.toLocaleDateString('en-GB', { day: 'numeric', month: 'long' })}, ${time}`
}
