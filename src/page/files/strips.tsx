import './files.css'
import type { JSX } from 'preact'
import { useEffect, useRef } from 'preact/hooks'
import { usePage } from '../state/page.ts'
import { addNamed, goOn, save } from './actions.ts'
import { useBench } from './bench.ts'
import { useDesk } from './desk.ts'
import { whenWords } from './earlier.tsx'

/** What is to be known of files now, across the page; and the question before unsaved work goes. */
export function FilesStrips(): JSX.Element {
  return (
    <div class="files-strips">
      <Offer />
      <Lacking />
      <NoticeStrip />
      <NotKept />
      <AskFirst />
      <p class="drop-here" aria-hidden="true">
        Drop the definition here, and the files that it names
      </p>
    </div>
  )
}

/** Work of an earlier day, offered back. It stays kept, whatever is answered. */
function Offer(): JSX.Element | null {
  const bench = useBench()
  const { offered } = bench.desk
  const [last] = offered.value
  if (last === undefined) return null
  const others = offered.value.length - 1
  return (
    <section class="strip" aria-label="Your last work">
      <p>
        Your last work: <b>{last.file}</b> {whenWords(last.at)}
        {last.isSaved ? ', saved' : ', not saved in a file'}.{others > 0 && ` ${others} more under More files.`}
      </p>
      <button type="button" class="main" onClick={() => goOn(bench, last)}>
        Go on with it
      </button>
      <button type="button" onClick={() => (offered.value = [])}>
        Begin with the sample
      </button>
    </section>
  )
}

/** Files that the definition names and that are not here. */
function Lacking(): JSX.Element | null {
  const bench = useBench()
  const { document, workshop } = usePage()
  const lacking = workshop.named.value.filter((name) => !document.files.value.has(name))
  if (lacking.length === 0) return null
  return (
    <section class="strip warn" aria-label="Files that are lacking">
      {lacking.map((name) => (
        <p key={name}>
          <b>{name}</b> is named but not here:{' '}
          <button type="button" onClick={() => addNamed(bench, name)}>
            Add {name}…
          </button>
        </p>
      ))}
    </section>
  )
}

function NoticeStrip(): JSX.Element {
  const { notice } = useDesk()
  const said = notice.value
  return (
    <div role={said?.isTrouble === true ? 'alert' : 'status'}>
      {said !== undefined && (
        <div class={`strip${said.isTrouble ? ' warn' : ''}`}>
          <p class="notice">{said.words}</p>
          <button type="button" onClick={() => (notice.value = undefined)}>
            Put away
          </button>
        </div>
      )}
    </div>
  )
}

function NotKept(): JSX.Element | null {
  const { isKept, work } = useDesk()
  if (isKept.value !== false || !work.unsaved.value) return null
  return <p class="strip warn">This browser keeps nothing of your work when the page is closed: save it in a file.</p>
}

/** Before another definition takes the place of unsaved work. */
function AskFirst(): JSX.Element | null {
  const { question } = useDesk()
  return question.value === undefined ? null : <Question then={question.value.then} />
}

function Question({ then }: { readonly then: () => void }): JSX.Element {
  const bench = useBench()
  const { question, storage } = bench.desk
  const dialog = useRef<HTMLDialogElement>(null)
  useEffect(() => dialog.current?.showModal(), [])
  const answer = (go: boolean): void => {
    question.value = undefined
    if (go) then()
  }
  const file = bench.page.document.file.value
  return (
    <dialog
      ref={dialog}
      class="ask-first"
      aria-labelledby="ask-first-words"
      onClose={() => (question.value = undefined)}
    >
      <h2 id="ask-first-words">{file} has changes that are in no file</h2>
      {storage !== undefined && <p>They stay in this browser, under More files, until you throw them away.</p>}
      <div class="presses">
        <button
          type="button"
          class="main"
          onClick={async () => {
            if (await save(bench)) answer(true)
          }}
        >
          Save, then go on
        </button>
        <button type="button" onClick={() => answer(true)}>
          Go on without saving
        </button>
        <button type="button" onClick={() => answer(false)}>
          Stay here
        </button>
      </div>
    </dialog>
  )
}
