import type { ComponentChildren, JSX } from 'preact'
import type { DefinitionPath } from '../../project/index.ts'
import { pathKey, useForm } from './form-state.ts'

export interface SectionProps {
  readonly path: DefinitionPath
  readonly title: string
  /** In few words, what is in it; shown while it is closed, too. */
  readonly gist?: string
  /** Whether it is open until somebody opens or closes it. */
  readonly open?: boolean
  /** A part of another section. */
  readonly inner?: boolean
  readonly children: () => ComponentChildren
}

/** A part of the form that folds. What is closed is not built. */
export function Section({ path, title, gist, open = false, inner = false, children }: SectionProps): JSX.Element {
  const form = useForm()
  const key = pathKey(path)
  const isOpen = form.folds.value.get(key) ?? open
  const wrong = !isOpen && placesOf(path).some((place) => form.problemsAt(place, true).length > 0)
  return (
    <details
      class={inner ? 'fold fold-inner' : 'fold'}
      open={isOpen}
      data-fold={key}
      onToggle={({ currentTarget }) => {
        if (currentTarget.open === isOpen) return
        form.folds.value = new Map([...form.folds.value, [key, currentTarget.open]])
      }}
    >
      <summary data-path={key}>
        <span class="fold-title">{title}</span>
        {wrong && <span class="fold-wrong">mistake inside</span>}
        {!wrong && gist !== undefined && gist !== '' && <span class="fold-gist">{gist}</span>}
      </summary>
      {isOpen && <div class="fold-body">{children()}</div>}
    </details>
  )
}

/** What a fold holds: the place that it is named for, and two folds that are named for none. */
function placesOf(path: DefinitionPath): readonly DefinitionPath[] {
  if (path.length === 1 && path[0] === 'saw') return [['kerf'], ['fit'], ['bits']]
  return [path.at(-1) === 'more' ? path.slice(0, -1) : path]
}
