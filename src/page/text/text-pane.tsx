import './text.css'
import { nextDiagnostic, setDiagnostics } from '@codemirror/lint'
import { openSearchPanel } from '@codemirror/search'
import { EditorView } from '@codemirror/view'
import { useSignal, useSignalEffect } from '@preact/signals'
import type { JSX } from 'preact'
import { useEffect, useRef } from 'preact/hooks'
import { placeOf } from '../../project/index.ts'
import type { Page } from '../state/page.ts'
import { usePage } from '../state/page.ts'
import { type Explanation, explanationAt } from './explain.ts'
import { HELP_ID, startCompletion } from './extensions.ts'
import { findingMarks, problemMarks, rangeAt } from './marks.ts'
import { pathAt } from './path-at.ts'

/** How long typing and moving rest before the line at the foot follows, ms. */
const FOLLOW_AFTER_MS = 120

/** The definition as text. */
export function TextPane(): JSX.Element {
  const page = usePage()
  const holder = useRef<HTMLDivElement>(null)
  const view = useSignal<EditorView | undefined>(undefined)
  const explained = useSignal<Explanation | undefined>(undefined)

  useEffect(() => {
    if (holder.current === null) return undefined
    const made = mount(page, holder.current)
    const stop = follow(page, made, (explanation) => {
      explained.value = explanation
    })
    view.value = made
    return () => {
      stop()
      view.value = undefined
      made.destroy()
    }
  }, [page])
  useSignalEffect(() => {
    if (view.value !== undefined) showMarks(page, view.value)
  })
  useSignalEffect(() => {
    if (view.value !== undefined) showPlace(page, view.value)
  })

  const run = (command: (view: EditorView) => unknown) => () => {
    if (view.value === undefined) return
    command(view.value)
  }
  const marks = page.workshop.problems.value.length + page.workshop.findings.value.length
  return (
    <div class="text-pane">
      <div class="text-tools">
        <button type="button" onClick={run(openSearchPanel)}>
          Find
        </button>
        <button type="button" onClick={run(suggest)}>
          What fits here
        </button>
        <button type="button" disabled={marks === 0} onClick={run(toNextMark)}>
          Next mark
        </button>
      </div>
      <div class="text-holder" ref={holder} />
      <p class="text-foot">
        {explained.value === undefined ? null : <strong>{explained.value.key}: </strong>}
        {explained.value?.about}
      </p>
      <p class="text-help" id={HELP_ID}>
        Tab indents; Escape, then Tab, leaves the text. Control and space: what fits here. F8: next mark.
      </p>
    </div>
  )
}

function suggest(view: EditorView): void {
  view.focus()
  startCompletion(view)
}

function toNextMark(view: EditorView): void {
  view.focus()
  nextDiagnostic(view)
}

/** An editor of the page's one document: what it does goes through the document, and so does what others do. */
function mount({ document }: Page, parent: HTMLElement): EditorView {
  return new EditorView({
    state: document.state.peek(),
    parent,
    dispatchTransactions: (transactions) => {
      for (const transaction of transactions) document.apply(transaction)
    },
  })
}

/** Keeps the editor at what the document says, and the foot at what the cursor stands on. */
function follow(page: Page, view: EditorView, explain: (explanation: Explanation | undefined) => void): () => void {
  const { document } = page
  let pause: ReturnType<typeof setTimeout> | undefined
  const soon = (): void => {
    clearTimeout(pause)
    pause = setTimeout(() => {
      const { state } = view
      const here = pathAt(state.doc.toString(), state.selection.main.head)
      explain(here && explanationAt(here))
    }, FOLLOW_AFTER_MS)
  }
  const stop = document.follow((transaction) => {
    if (transaction.startState === view.state) view.update([transaction])
    else view.setState(transaction.state)
    soon()
  })
  const opened = document.opened.subscribe(() => {
    const state = document.state.peek()
    if (view.state === state) return
    // Another definition is read from its beginning; heights that were guessed far down it would be measured again and again.
    view.scrollDOM.scrollTop = 0
    view.setState(state)
  })
  soon()
  return () => {
    clearTimeout(pause)
    stop()
    opened()
  }
}

/** Underlines what is wrong. While the text cannot be read, the findings are those of another text. */
function showMarks({ workshop, document }: Page, view: EditorView): void {
  const problems = workshop.problems.value
  const findings = workshop.findings.value
  // Opened anew, the text has no marks.
  document.opened.value
  const { doc } = view.state
  const marks =
    problems.length > 0
      ? problemMarks(doc, problems)
      : findingMarks(doc, findings, ({ change }) => change && document.edit(change))
  view.dispatch(setDiagnostics(view.state, marks))
}

/** What was asked to be shown and has been: an editor that is opened later does not go there again. */
const shown = new WeakSet<object>()

function showPlace({ goTo, define }: Page, view: EditorView): void {
  const asked = goTo.value
  if (asked === undefined || define.value !== 'text' || shown.has(asked)) return
  shown.add(asked)
  const { doc } = view.state
  const from =
    asked.line === undefined
      ? (placeOf(doc.toString(), asked.path)?.from ?? 0)
      : rangeAt(doc, asked.line, asked.column ?? 1, 1).from
  const word = pathAt(doc.toString(), from)
  view.dispatch({
    selection: { anchor: from, head: word !== undefined && word.from === from ? word.to : doc.lineAt(from).to },
    effects: EditorView.scrollIntoView(from, { y: 'center' }),
  })
  view.focus()
}
