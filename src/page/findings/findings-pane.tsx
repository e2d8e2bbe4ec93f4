import './findings.css'
import type { JSX } from 'preact'
import { useEffect, useMemo } from 'preact/hooks'
import { usePage } from '../state/page.ts'
import { Cautions } from './cautions.tsx'
import { SEVERITY_WORDS, WORST_FIRST } from './counts.ts'
import { type FindingsState, findingsState } from './findings-state.ts'
import { NoteItem } from './note-item.tsx'
import { notesOf } from './notes.ts'
import { Problems } from './problems.tsx'
import { TypedWords } from './typed-words.tsx'

/** What is wrong with the definition, and what the checks found in what it makes, worst first. */
export function FindingsPane(): JSX.Element {
  const page = usePage()
  const state = useMemo(() => findingsState(page), [page])
  useEffect(() => state.follow(), [state])
  return (
    <div class="findings">
      <MadeStrip state={state} />
      <Problems state={state} />
      <Notes state={state} />
      <Silenced state={state} />
      <Cautions />
    </div>
  )
}

/** What a press has just changed, with Undo beside it. */
function MadeStrip({ state }: { readonly state: FindingsState }): JSX.Element | null {
  const made = state.made.value
  if (made === undefined) return null
  return (
    <p class="strip made">
      <span>{made.words}</span>
      <button type="button" onClick={state.takeBack}>
        Undo this
      </button>
    </p>
  )
}

function Notes({ state }: { readonly state: FindingsState }): JSX.Element {
  const { findings, problems, judged } = usePage().workshop
  const notes = useMemo(() => notesOf(findings.value), [findings.value])
  const isBroken = problems.value.length > 0
  if (!judged.value) return <p class="quiet">{isBroken ? '' : 'Every hole is looked at …'}</p>
  return (
    <>
      {isBroken && <p class="strip">Of the last good drawing:</p>}
      {notes.length === 0 && <p>Nothing to mend: no stop, no warning, no note.</p>}
      {WORST_FIRST.map((severity) => {
        const alike = notes.filter((note) => note.severity === severity)
        if (alike.length === 0) return null
        return (
          <section key={severity} class="notes" aria-labelledby={`notes-${severity}`}>
            <h3 id={`notes-${severity}`}>
              {alike.length} {SEVERITY_WORDS[severity][alike.length === 1 ? 0 : 1]}
              <span class="quiet"> {MEANINGS[severity]}</span>
            </h3>
            <ol class="rows">
              {alike.map((note) => (
                <NoteItem key={note.first.key} note={note} state={state} canFix={!isBroken} />
              ))}
            </ol>
          </section>
        )
      })}
    </>
  )
}

const MEANINGS = {
  stop: 'would spoil wood',
  warn: 'look before you drill',
  note: 'good to know',
} as const

function Silenced({ state }: { readonly state: FindingsState }): JSX.Element | null {
  const silent = usePage().workshop.findings.value.filter(({ silenced }) => silenced !== undefined)
  if (silent.length === 0) return null
  return (
    <details class="fold">
      <summary>{silent.length} silenced by the definition</summary>
      <ul class="rows">
        {silent.map((finding) => (
          <li key={finding.key}>
            <p class="note-words">
              <TypedWords words={finding.message} />
            </p>
            <p class="quiet">because: {finding.silenced}</p>
            <button type="button" class="plain" onClick={() => state.showLine(finding)}>
              line {finding.line}
            </button>
          </li>
        ))}
      </ul>
    </details>
  )
}
