import type { JSX } from 'preact'
import { usePage } from '../state/page.ts'

/** The definition as text. */
export function TextPane(): JSX.Element {
  const { document } = usePage()
  return (
    <textarea
      aria-label="Definition"
      value={document.text.value}
      onInput={({ currentTarget }) => document.setText(currentTarget.value)}
    />
  )
}
