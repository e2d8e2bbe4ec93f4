import './files.css'
import { useComputed, useSignal } from '@preact/signals'
import type { JSX } from 'preact'
import { stampOf } from '../../outputs/index.ts'
import { usePage } from '../state/page.ts'
import { canWriteFolders, chooseFolder } from './disk.ts'
import { PaperFields } from './paper-fields.tsx'
import { PrintPart } from './print-part.tsx'
import { SingleFiles } from './single-files.tsx'
import { type Taking, useTaking } from './use-taking.ts'

/** The files of the project, and its pages on paper. */
export function TakeAway(): JSX.Element {
  const taking = useTaking()
  const shown = useSignal(false)
  // While stops stand, the height is for Judge: nothing can be taken away, and what to do about it stands there.
  const isHeld = taking.hindrance.value === 'stops'
  return (
    <div class={isHeld && !shown.value ? 'take held' : 'take'}>
      {isHeld && !shown.value && (
        <button type="button" class="held-up" onClick={() => (shown.value = true)}>
          {standingWords(taking.stops.value)} first: show the files all the same
        </button>
      )}
      <Hindrance taking={taking} />
      <AllFiles taking={taking} />
      <How taking={taking} />
      <div>
        <details class="fold">
          <summary>Print full size</summary>
          <PrintPart taking={taking} />
        </details>
        <details class="fold">
          <summary>Paper and printer</summary>
          <PaperFields />
        </details>
        <details class="fold">
          <summary>Single files</summary>
          <SingleFiles taking={taking} />
        </details>
      </div>
    </div>
  )
}

/** Why nothing can be drawn as things stand, and what can be done about it. */
function Hindrance({ taking }: { readonly taking: Taking }): JSX.Element | null {
  const { anyway, hindrance, stops } = taking
  if (hindrance.value === 'working') return <p>Working out the files …</p>
  if (hindrance.value === 'mistakes')
    return (
      <p class="strip warn">The definition has mistakes, which Judge names. Files are made of one that has none.</p>
    )
  if (stops.value === 0) return null
  return (
    <div class="strip warn">
      <p>{standingWords(stops.value)}: wood cut from these drawings would be spoilt. Judge says what to change.</p>
      <label class="tick">
        <input
          type="checkbox"
          checked={anyway.given.value}
          onChange={({ currentTarget }) => anyway.set(currentTarget.checked)}
        />
        <span>
          Draw anyway: every sheet says <b>{stampOf(stops.value)}</b>
        </span>
      </label>
    </div>
  )
}

const standingWords = (stops: number): string => (stops === 1 ? '1 stop' : `${stops} stops`)

function AllFiles({ taking }: { readonly taking: Taking }): JSX.Element {
  const { workshop } = usePage()
  const isBusy = taking.state.value.kind === 'busy'
  const off = isBusy || taking.hindrance.value !== undefined
  const count = useComputed(() => workshop.files.value?.paths.length)
  return (
    <div class="presses">
      <button type="button" class="main" disabled={off} onClick={() => taking.zip()}>
        All {count} files in one zip
      </button>
      {canWriteFolders() && (
        <button type="button" disabled={off} onClick={() => intoFolder(taking)}>
          Into a folder…
        </button>
      )}
    </div>
  )
}

async function intoFolder(taking: Taking): Promise<void> {
  const folder = await chooseFolder()
  if (folder !== undefined) await taking.into(folder)
}

/** How far it is, or what came of it. */
function How({ taking }: { readonly taking: Taking }): JSX.Element {
  const state = taking.state.value
  return (
    <div class="take-how">
      {state.kind === 'busy' && (
        <>
          <p>{state.words}</p>
          <progress
            aria-label="How far it is"
            max={Math.max(state.of, 1)}
            {...(state.of > 0 && { value: state.done })}
          />
          <button type="button" onClick={() => taking.stop()}>
            Stop
          </button>
        </>
      )}
      {state.kind === 'over' && <p class={state.isTrouble ? 'fault' : ''}>{state.words}</p>}
    </div>
  )
}
