import type { ComponentChildren, JSX } from 'preact'
import { useId } from 'preact/hooks'
import type { DefinitionPath } from '../../../project/index.ts'
import { pathKey } from '../form-state.ts'

/** What is wrong with a number in the definition, at the place that says it. */
export interface StepperFault {
  readonly words: string
  /** As it stands in the definition, where that is a plain value: shown as it is, since no number can be made of it. */
  readonly written: string | undefined
  /** What stands beside the words: a way out. */
  readonly remedy: ComponentChildren
}

/** A small whole number with a press for one less and one more; typed, too. */
export function Stepper(props: {
  readonly label: string
  readonly value: number
  readonly least: number
  readonly most: number
  readonly change: (value: number) => void
  /** The place of the definition that says it, so that a mistake there is found. */
  readonly path?: DefinitionPath
  readonly fault?: StepperFault | undefined
}): JSX.Element {
  const { label, value, least, most, change, path, fault } = props
  const id = useId()
  const faultId = `${id}-fault`
  const shown = fault?.written ?? String(value)
  const to = (wanted: number): void => {
    const next = Math.min(most, Math.max(least, Math.trunc(wanted)))
    if (Number.isFinite(next) && (next !== value || fault !== undefined)) change(next)
  }
  const type = (input: HTMLInputElement): void => {
    const typed = input.value.trim()
    const number = typed === '' ? Number.NaN : Number(typed)
    to(number)
    // What is no number was a slip: what holds is shown again.
    input.value = Number.isFinite(number) ? String(Math.min(most, Math.max(least, Math.trunc(number)))) : shown
  }
  return (
    <div class={fault === undefined ? 'stepper' : 'stepper wrong'}>
      <label for={id}>{label}</label>
      <button type="button" aria-label={`one less: ${label}`} disabled={value <= least} onClick={() => to(value - 1)}>
        −
      </button>
      <input
        id={id}
        class="figures"
        type="text"
        inputMode="numeric"
        autocomplete="off"
        {...(path !== undefined && { 'data-path': pathKey(path) })}
        aria-invalid={fault !== undefined}
        {...(fault !== undefined && { 'aria-describedby': faultId })}
        value={shown}
        onChange={({ currentTarget }) => type(currentTarget)}
      />
      <button type="button" aria-label={`one more: ${label}`} disabled={value >= most} onClick={() => to(value + 1)}>
        +
      </button>
      {fault !== undefined && (
        <p class="fault" id={faultId}>
          {fault.words}
          {fault.remedy}
        </p>
      )}
    </div>
  )
}
