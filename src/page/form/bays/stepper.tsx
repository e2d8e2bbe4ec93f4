import type { JSX } from 'preact'
import { useId } from 'preact/hooks'

/** A small whole number with a press for one less and one more; typed, too. */
export function Stepper(props: {
  readonly label: string
  readonly value: number
  readonly least: number
  readonly most: number
  readonly change: (value: number) => void
}): JSX.Element {
  const { label, value, least, most, change } = props
  const id = useId()
  const to = (wanted: number): void => {
    const next = Math.min(most, Math.max(least, Math.trunc(wanted)))
    if (Number.isFinite(next) && next !== value) change(next)
  }
  return (
    <div class="stepper">
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
        value={String(value)}
        onChange={({ currentTarget }) => {
          to(Number(currentTarget.value))
          currentTarget.value = String(
            Math.min(most, Math.max(least, Math.trunc(Number(currentTarget.value)) || value)),
          )
        }}
      />
      <button type="button" aria-label={`one more: ${label}`} disabled={value >= most} onClick={() => to(value + 1)}>
        +
      </button>
    </div>
  )
}
