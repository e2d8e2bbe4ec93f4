import { useSignal } from '@preact/signals'
import type { JSX } from 'preact'
import { useEffect, useId, useRef } from 'preact/hooks'
import { dataAt } from '../../../project/index.ts'
import type { Control } from '../control.ts'
import { emptyField } from '../empty.ts'
import { useForm } from '../form-state.ts'
import { shownValue, typedValue } from '../written.ts'
import { Frame } from './frame.tsx'
import type { PlainFieldProps } from './props.ts'
import { asksRedo, asksUndo } from './undo-keys.ts'

/**
 * A field that one types into. What can be read is written into the definition at once, and the drawing follows; while
 * what stands here cannot be read, the definition holds what it held before the visit. An emptied field takes its key
 * out when it is left, not while one types something else in its place.
 */
export function TypedField(
  props: PlainFieldProps & { readonly control: Exclude<Control, { kind: 'choice' }> },
): JSX.Element {
  const { path, label, about, written, placeholder, problem, remedy, control, write } = props
  const form = useForm()
  const { inside, beneath } = emptyField(placeholder)
  const draft = useSignal<string | undefined>(undefined)
  const visit = useRef<object>({})
  // While one types, a way out beside the error would catch the Tab that leaves the field.
  const typing = useSignal(false)
  const own = useRef(new Set<string>())
  const suggestions = useId()
  const words = 'words' in control ? control.words : []
  const typed = typedValue(control, draft.value ?? written, form.units.value)

  // Where something else changed the definition (undo, the text), that is shown, and not what was typed. What was written a
  // few keys ago, or taken back, may still be on its way, also when the field has been left: what it refused stays to be seen.
  useEffect(() => {
    if (!own.current.has(written)) draft.value = undefined
  }, [written, draft])

  const commit = (): void => {
    if (draft.value === undefined) return
    const last = typedValue(control, draft.value, form.units.value)
    if (!last.ok) return
    // Of keys that stand in its place an empty field says nothing.
    const now = shownValue(dataAt(form.now(), path)) ?? ''
    if (last.value === undefined && now !== '') write(undefined, visit.current)
    draft.value = undefined
    visit.current = {}
  }
  const takeBack = (): void => {
    form.takeBack(visit.current)
    form.catchUp()
    draft.value = undefined
  }
  const press = (event: KeyboardEvent): void => {
    if (event.key === 'Enter') commit()
    if (draft.value === undefined) return
    const isWritten = typed.ok && typed.value !== undefined
    if (event.key === 'Escape' || (asksUndo(event) && !isWritten)) {
      // What stands here only is what one wants to have back first.
      event.preventDefault()
      event.stopPropagation()
      takeBack()
    } else if (asksUndo(event) || asksRedo(event)) {
      draft.value = undefined
      visit.current = {}
      own.current = new Set()
    }
  }
  const type = (text: string): void => {
    if (draft.value === undefined) own.current.add(written)
    draft.value = text
    typing.value = true
    const now = typedValue(control, text, form.units.value)
    if (!now.ok || now.value === undefined) {
      form.takeBack(visit.current)
      return
    }
    own.current.add(shownValue(now.value) ?? '')
    write(now.value, visit.current)
  }
  const error = typed.ok
    ? draft.value?.trim() === ''
      ? undefined
      : problem
    : `not ${noun(control)}: ${typed.expected}`
  return (
    <Frame
      path={path}
      label={label}
      about={about}
      error={error}
      holds={written === '' ? beneath : ''}
      remedy={typed.ok && !typing.value && remedy}
    >
      {(framed) => (
        <>
          <input
            {...framed}
            class={control.kind === 'text' ? undefined : 'figures'}
            type="text"
            inputMode={control.kind === 'number' && !control.units ? 'decimal' : 'text'}
            autocomplete="off"
            autocapitalize="off"
            spellcheck={false}
            placeholder={inside}
            list={words.length > 0 ? suggestions : undefined}
            value={draft.value ?? written}
            onFocus={() => {
              visit.current = {}
              own.current = new Set()
              form.note.value = { key: label, about }
            }}
            onInput={({ currentTarget }) => type(currentTarget.value)}
            onBlur={() => {
              typing.value = false
              commit()
            }}
            onKeyDown={press}
          />
          {words.length > 0 && (
            <datalist id={suggestions}>
              {words.map((word) => (
                <option key={word} value={word} />
              ))}
            </datalist>
          )}
        </>
      )}
    </Frame>
  )
}

const NOUNS: Readonly<Record<Control['kind'], string>> = {
  length: 'a length',
  number: 'a number',
  choice: 'one of these',
  text: 'a text',
  list: 'a list',
}

const noun = ({ kind }: Control): string => NOUNS[kind]
