import type { JSX } from 'preact'
import type { DefinitionPath } from '../../project/index.ts'
import { useForm } from './form-state.ts'

/** Shows a place of the definition in the text. */
export function useToText(): (path: DefinitionPath) => void {
  const { page } = useForm()
  return (path) => {
    page.define.value = 'text'
    page.goTo.value = { path }
  }
}

/** A place that is said in the text alone. */
export function ToText({ path, label }: { readonly path: DefinitionPath; readonly label: string }): JSX.Element {
  const toText = useToText()
  return (
    <div class="field beside">
      <span class="label">{label}</span>
      <button type="button" class="plain" onClick={() => toText(path)}>
        in the text
      </button>
    </div>
  )
}

/** What a group says beside what the form has fields for, with the way to it. */
export function AlsoSays(props: {
  readonly path: DefinitionPath
  readonly keys: readonly string[]
  /** What it is that says so. */
  readonly what?: string
}): JSX.Element | null {
  const toText = useToText()
  const { path, keys, what = 'This part' } = props
  if (keys.length === 0) return null
  return (
    <p class="also">
      {what} also says:{' '}
      {keys.map((key) => (
        <button key={key} type="button" class="plain" onClick={() => toText([...path, key])}>
          {key} (text)
        </button>
      ))}
    </p>
  )
}
