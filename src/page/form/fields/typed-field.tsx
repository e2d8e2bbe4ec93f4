import { useSignal } from '@preact/signals'
import type { JSX } from 'preact'
import { useEffect, useId, useRef } from 'preact/hooks'
import type { Control } from '../control.ts'
import { emptyField } from '../empty.ts'
import { useForm } from '../form-state.ts'
import { shownValue, typedValue } from '../written.ts'
import { Frame } from './frame.tsx'
import type { PlainFieldProps } from './props.ts'

/**
 * A field that one types into. What can be read is written into the definition at once, and the drawing follows; what
 * cannot stays here, and the definition as it was. An emptied field takes its key out when it is left, not while one
 * types something else in its place.
 */
export function TypedField(
  props: PlainFieldProps & { readonly control: Exclude<Control, { kind: 'choice' }> },
): JSX.Element {
  const { path, label, about, written, placeholder, problem, remedy, control, write } = props
  const form = useForm()
  const { inside, beneath } = emptyField(placeholder)
  const draft = useSignal<string | undefined>(undefined)
  const visit = useRef<object>({})
  const focused = useRef(false)
  const own = useRef(new Set<string>())
  const suggestions = useId()
  const words = 'words' in control ? control.words : []
  const typed = typedValue(control, draft.value ?? written, form.units.value)

  // Where something else changed the definition (undo, the text), that is shown, and not what was typed. While one types,
  // what was written a few keys ago may still be on its way.
  useEffect(() => {
    if (!focused.current || !own.current.has(written)) draft.value = undefined
  }, [written, draft])

  const commit = (): void => {
    if (draft.value === undefined) return
    const last = typedValue(control, draft.value, form.units.value)
    if (!last.ok) return
    if (last.value === undefined && written !== '') write(undefined, visit.current)
    draft.value = undefined
  }
  const type = (text: string): void => {
    draft.value = text
    const now = typedValue(control, text, form.units.value)
    if (!now.ok || now.value === undefined) return
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
      remedy={typed.ok && remedy}
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
              focused.current = true
              visit.current = {}
              own.current = new Set()
              form.note.value = { key: label, about }
            }}
            onInput={({ currentTarget }) => type(currentTarget.value)}
            onBlur={() => {
              focused.current = false
              commit()
            }}
            onKeyDown={(event) => {
              if (event.key === 'Enter') commit()
              if (event.key === 'Escape' && draft.value !== undefined) {
                event.stopPropagation()
                draft.value = undefined
              }
            }}
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
