import type { JSX } from 'preact'
import { usePage } from '../state/page.ts'

/** The files of the project. */
export function TakeAway(): JSX.Element {
  const { document } = usePage()
  return <p>{document.file.value}</p>
}
