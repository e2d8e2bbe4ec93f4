import type { JSX } from 'preact'
import { usePage } from '../state/page.ts'

/** What the checks found, worst first. */
export function FindingsPane(): JSX.Element {
  const { document } = usePage()
  return <p>{document.file.value}</p>
}
