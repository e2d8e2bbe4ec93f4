import { useSignal } from '@preact/signals'
import type { JSX } from 'preact'
import { useEffect } from 'preact/hooks'
import { type DefinitionPath, dataAt } from '../../../project/index.ts'
import { useForm } from '../form-state.ts'
import { nameFault } from '../project-actions.ts'
import { Frame } from './frame.tsx'
import { asksUndo } from './undo-keys.ts'

/** The name of a module or a stock, which is a key of the definition: written when it is left, with all that names it. */
export function NameField(props: { readonly path: DefinitionPath; readonly taken: readonly string[] }): JSX.Element {
  const { path, taken } = props
  const form = useForm()
  const name = String(path.at(-1))
  const draft = useSignal<string | undefined>(undefined)
  useEffect(() => {
    draft.value = undefined
  }, [name, draft])
  const wanted = draft.value ?? name
  const others = taken.filter((other) => other !== name)
  const fault = nameFault(wanted, others)
  const commit = (): void => {
    if (fault !== undefined || wanted.trim() === name) return
    // Enter and leaving the field follow each other faster than it is drawn anew.
    if (dataAt(form.now(), path) === undefined) return
    form.change([{ path, rename: wanted.trim() }])
  }
  return (
    <Frame
      path={[...path, 'name']}
      label="name"
      about="A name of your choice. It stands on the drawings and in the names of files; where the definition names it, it changes too."
      error={fault === undefined ? undefined : `expected: ${fault}`}
    >
      {(framed) => (
        <input
          {...framed}
          type="text"
          autocomplete="off"
          spellcheck={false}
          value={wanted}
          onInput={({ currentTarget }) => {
            draft.value = currentTarget.value
          }}
          onBlur={commit}
          onKeyDown={(event) => {
            if (event.key === 'Enter') commit()
            if (wanted === name || !(event.key === 'Escape' || asksUndo(event))) return
            // What stands here only is what one wants to have back first.
            event.preventDefault()
            event.stopPropagation()
            draft.value = undefined
          }}
        />
      )}
    </Frame>
  )
}
