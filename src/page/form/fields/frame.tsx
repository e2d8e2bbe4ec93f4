import type { ComponentChildren, JSX } from 'preact'
import { useId } from 'preact/hooks'
import type { DefinitionPath } from '../../../project/index.ts'
import { pathKey } from '../form-state.ts'

/** What a control takes over from its frame, so that it is named, described and found. */
export interface FramedControl {
  readonly id: string
  readonly 'data-path': string
  readonly 'aria-describedby': string
  readonly 'aria-invalid': boolean
}

export interface FrameProps {
  readonly path: DefinitionPath
  readonly label: string
  readonly about: string
  readonly error: string | undefined
  /** What holds while the field is empty, beneath it; empty where the field says it. */
  readonly holds?: string
  /** What stands beside the error: a way out. */
  readonly remedy?: ComponentChildren
  readonly children: (control: FramedControl) => ComponentChildren
}

/** One field: its key, its control and, where something is wrong, what would be right. */
export function Frame({ path, label, about, error, holds = '', remedy, children }: FrameProps): JSX.Element {
  const id = useId()
  const [aboutId, errorId, holdsId] = [`${id}-about`, `${id}-error`, `${id}-holds`]
  const described = [
    ...(holds === '' ? [] : [holdsId]),
    ...(about === '' ? [] : [aboutId]),
    ...(error === undefined ? [] : [errorId]),
  ].join(' ')
  return (
    <div class={error === undefined ? 'field beside' : 'field beside wrong'}>
      <label for={id}>{label}</label>
      {children({
        id,
        'data-path': pathKey(path),
        'aria-describedby': described,
        'aria-invalid': error !== undefined,
      })}
      {holds !== '' && (
        <span class="holds" id={holdsId}>
          {holds}
        </span>
      )}
      {about !== '' && (
        <span id={aboutId} class="unseen">
          {about}
        </span>
      )}
      {error !== undefined && (
        <p class="fault" id={errorId}>
          {error}
          {remedy}
        </p>
      )}
    </div>
  )
}
