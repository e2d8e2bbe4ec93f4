import type { JSX } from 'preact'
import { usePage } from '../state/page.ts'

/** What people change most, as a form. */
export function FormPane(): JSX.Element {
  const { document } = usePage()
  return <p>{document.file.value}</p>
}
