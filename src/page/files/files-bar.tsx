import './files.css'
import type { JSX } from 'preact'
import { useEffect } from 'preact/hooks'
import { Popover } from '../look/popover.tsx'
import { SAMPLES } from '../sample.ts'
import { usePage } from '../state/page.ts'
import { type Bench, openFiles, openNew, openSample, save } from './actions.ts'
import { shut, useBench } from './bench.ts'
import { guardLeaving, useDesk } from './desk.ts'
import { watchDrops } from './drops.ts'
import { Earlier } from './earlier.tsx'
import { stateWords } from './work.ts'

/** The definition's file: what it is called, whether it is saved, open and save. */
export function FilesBar(): JSX.Element {
  const bench = useBench()
  useEffect(() => watchKeys(bench), [bench])
  useEffect(() => watchDrops(bench), [bench])
  useEffect(() => guardLeaving(bench.desk), [bench])
  return (
    <div class="files-bar">
      <FileState />
      <div class="presses">
        <button type="button" class="only-wide" aria-keyshortcuts="Control+O" onClick={() => openFiles(bench)}>
          Open…
        </button>
        <button type="button" aria-keyshortcuts="Control+S" onClick={() => save(bench)}>
          Save
        </button>
        <Popover label="More files" side="start">
          <MoreFiles />
        </Popover>
      </div>
    </div>
  )
}

/** Name and state; the mark is a filled disc where something would be lost, else a ring. */
function FileState(): JSX.Element {
  const { document } = usePage()
  const { work } = useDesk()
  const unsaved = work.unsaved.value
  const file = document.file.value

  return (
    <p class="file-state">
      <svg class="file-mark" viewBox="0 0 16 16" aria-hidden="true">
        <circle cx="8" cy="8" r="5.5" class={unsaved ? 'filled' : ''} />
      </svg>
      <span class="unseen">Definition: </span>
      <b class="file-name" title={file}>
        {file}
      </b>
      <span class="file-words">{stateWords(work.origin.value, unsaved)}</span>
    </p>
  )
}

function MoreFiles(): JSX.Element {
  const bench = useBench()
  return (
    <div class="more-files">
      <button type="button" class="only-narrow" onClick={(event) => shut(event, () => openFiles(bench))}>
        Open a definition…
      </button>
      <button type="button" onClick={(event) => shut(event, () => save(bench, true))}>
        Save under another name…
      </button>
      <button type="button" onClick={(event) => shut(event, () => openNew(bench))}>
        New, with words that explain it
      </button>
      <h2>Samples</h2>
      {SAMPLES.map(([words, sample]) => (
        <button key={words} type="button" onClick={(event) => shut(event, () => openSample(bench, sample))}>
          {words}
        </button>
      ))}
      <Earlier />
    </div>
  )
}

/** Save and open by key; the browser's own, which are about the page itself, would not help here. */
function watchKeys(bench: Bench): () => void {
  const press = (event: KeyboardEvent): void => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return
    const key = event.key.toLowerCase()
    if (key === 's') void save(bench, event.shiftKey)
    else if (key === 'o' && !event.shiftKey) void openFiles(bench)
    else return
    event.preventDefault()
  }
  document.addEventListener('keydown', press)
  return () => document.removeEventListener('keydown', press)
}
