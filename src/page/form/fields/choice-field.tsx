import type { JSX } from 'preact'
import type { Control } from '../control.ts'
import { emptyField } from '../empty.ts'
import { useForm } from '../form-state.ts'
import { namesFor } from '../names.ts'
import { typedValue } from '../written.ts'
import { Frame } from './frame.tsx'
import type { PlainFieldProps } from './props.ts'

/** A field with words or names to choose from. `also`: shown while keys stand in the place of a word. */
export function ChoiceField(
  props: PlainFieldProps & { readonly control: Extract<Control, { kind: 'choice' }>; readonly also?: string },
): JSX.Element {
  const { path, label, about, written, placeholder, problem, remedy, control, write, also } = props
  const form = useForm()
  const { inside, beneath } = emptyField(placeholder)
  const groups = namesFor(form.data.value, control, path)
  const known = groups.some(({ names }) => names.includes(written)) || control.words.includes(written)
  const choose = (text: string): void => {
    if (text === ALSO) return
    const typed = typedValue(control, text, form.units.value)
    if (typed.ok) write(typed.value, {})
  }
  return (
    <Frame
      path={path}
      label={label}
      about={about}
      error={problem}
      holds={written === '' && also === undefined ? beneath : ''}
      remedy={remedy}
    >
      {(framed) => (
        <select
          {...framed}
          value={also === undefined ? written : ALSO}
          onFocus={() => {
            form.note.value = { key: label, about }
          }}
          onChange={({ currentTarget }) => choose(currentTarget.value)}
        >
          {also !== undefined && <option value={ALSO}>{also}</option>}
          <option value="">{inside === '' ? '—' : inside}</option>
          {!known && written !== '' && <option value={written}>{written}</option>}
          {control.words.map((word) => (
            <option key={word} value={word}>
              {word}
            </option>
          ))}
          {groups.map(({ title, names }) => (
            <optgroup key={title} label={title}>
              {names.map((name) => (
                <option key={name} value={name}>
                  {name}
                </option>
              ))}
            </optgroup>
          ))}
        </select>
      )}
    </Frame>
  )
}

/** No word of a definition holds a control character. */
const ALSO = '\u0001'
