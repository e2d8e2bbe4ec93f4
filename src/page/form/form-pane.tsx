import './form.css'
import { useSignalEffect } from '@preact/signals'
import type { JSX } from 'preact'
import { useEffect, useMemo, useRef } from 'preact/hooks'
import { dataAt } from '../../project/index.ts'
import { type Page, usePage } from '../state/page.ts'
import { keysOf } from './copied.ts'
import { asksRedo, asksUndo } from './fields/undo-keys.ts'
import { FloorPart } from './floor-part.tsx'
import { type Form, FormContext, formOf, useForm } from './form-state.ts'
import { gistOf } from './gist.ts'
import { ModulesPart } from './modules-part.tsx'
import { Keys, Place } from './place.tsx'
import { Section } from './section.tsx'
import { showPlace, unfold } from './show-place.ts'
import { StockPart } from './stock-part.tsx'
import { AlsoSays } from './to-text.tsx'
import { UnitsChange } from './units-change.tsx'

/** What each page's form had open and chosen, so that it is there again when the text was shown in between. */
const forms = new WeakMap<Page, Form>()

function formFor(page: Page): Form {
  const form = forms.get(page) ?? formOf(page)
  forms.set(page, form)
  return form
}

/** What people change most, as a form; it says the same words as the text, and both are one document. */
export function FormPane(): JSX.Element {
  const page = usePage()
  const form = useMemo(() => formFor(page), [page])
  const root = useRef<HTMLDivElement>(null)
  useSignalEffect(() => {
    const wanted = page.goTo.value
    if (wanted === undefined || wanted === form.shown.current) return
    form.shown.current = wanted
    unfold(form, wanted.path)
    // Once what was unfolded is there.
    requestAnimationFrame(() => {
      if (root.current !== null) showPlace(root.current, wanted.path)
    })
  })
  useEffect(() => {
    const pane = root.current
    const press = (event: KeyboardEvent): void => undoKey(event, form)
    pane?.addEventListener('keydown', press)
    return () => pane?.removeEventListener('keydown', press)
  }, [form])
  return (
    <FormContext.Provider value={form}>
      <div
        class="form"
        ref={root}
        onFocusOut={() => {
          form.note.value = undefined
        }}
      >
        <Unreadable />
        <Mistakes />
        <Refusal />
        <Parts />
      </div>
      <Note />
    </FormContext.Provider>
  )
}

/** In a field of the form the keys of undo mean the definition: the text of the field alone is never all that changed. */
function undoKey(event: KeyboardEvent, { page: { document: definition, say }, catchUp }: Form): void {
  const [back, again] = [asksUndo(event), asksRedo(event)]
  if (!back && !again) return
  event.preventDefault()
  event.stopPropagation()
  if (back && definition.canUndo.peek()) {
    definition.undo()
    catchUp()
    say('undone')
  }
  if (again && definition.canRedo.peek()) {
    definition.redo()
    catchUp()
    say('done again')
  }
}

function Unreadable(): JSX.Element | null {
  const form = useForm()
  const problem = form.unreadable.value
  if (problem === undefined) return null
  const { line, column, message, expected } = problem
  return (
    <div class="strip warn" role="status">
      <p>
        The form waits: line {line} of the text cannot be read ({message}; expected: {expected}).
      </p>
      <button
        type="button"
        onClick={() => {
          form.page.define.value = 'text'
          form.page.goTo.value = { path: [], line, column }
        }}
      >
        Go to line {line}
      </button>
    </div>
  )
}

/** That the definition has mistakes, wherever they are: a press goes to each in turn. */
function Mistakes(): JSX.Element | null {
  const form = useForm()
  const turn = useRef(0)
  const problems = form.unreadable.value === undefined ? form.page.workshop.problems.value : []
  if (problems.length === 0) return null
  const one = problems.length === 1
  const go = (): void => {
    const problem = problems[turn.current % problems.length]
    turn.current += 1
    if (problem === undefined) return
    form.page.goTo.value = { path: problem.path ?? [], line: problem.line, column: problem.column }
  }
  return (
    <div class="strip warn" role="status">
      <p>The definition has {one ? 'a mistake' : `${problems.length} mistakes`}.</p>
      <button type="button" onClick={go}>
        {one ? 'Go to it' : 'Go to the next'}
      </button>
    </div>
  )
}

function Refusal(): JSX.Element | null {
  const form = useForm()
  if (form.refusal.value === undefined) return null
  return (
    <p class="strip warn" role="alert">
      This cannot be changed from the form: {form.refusal.value}. The text says it in a way of its own.
    </p>
  )
}

/** Keys of the definition that have a place in the form. */
const SHOWN: readonly string[] = [
  'storyrod',
  'title',
  'units',
  'usual sizes',
  'stock',
  'common',
  'modules',
  'floor plan',
  'kerf',
  'fit',
  'bits',
]

function Parts(): JSX.Element {
  const form = useForm()
  const data = form.data.value
  const said = dataAt(data, ['usual sizes'])
  const others = keysOf(data).filter((key) => !SHOWN.includes(key) && key !== 'outputs')
  return (
    <fieldset class="form-parts" disabled={form.unreadable.value !== undefined}>
      <legend class="unseen">The definition</legend>
      <Keys path={[]} only={said === undefined ? ['title', 'units'] : ['title', 'units', 'usual sizes']} />
      <UnitsChange />
      <ModulesPart />
      <FloorPart />
      <StockPart />
      <Section path={['common']} title="common" gist={gistOf(dataAt(data, ['common']))}>
        {() => (
          <>
            <p class="quiet">Used by each module that does not say otherwise.</p>
            <Keys path={['common']} />
          </>
        )}
      </Section>
      <Section path={['saw']} title="kerf, fit, bits">
        {() => <Keys path={[]} only={['kerf', 'fit', 'bits']} />}
      </Section>
      <Section path={['outputs']} title="outputs" gist={gistOf(dataAt(data, ['outputs']))}>
        {() => <Place path={['outputs', 'paper']} />}
      </Section>
      <AlsoSays path={[]} keys={others} what="This definition" />
    </fieldset>
  )
}

/** The sentence about the field that has the focus. Without one it is not seen; its room stays, so that nothing moves. */
function Note(): JSX.Element {
  const { note } = useForm()
  const shown = note.value
  return (
    <p class={shown === undefined ? 'form-note at-rest' : 'form-note'} aria-hidden="true">
      {shown !== undefined && `${shown.key}: ${shown.about}`}
    </p>
  )
}
