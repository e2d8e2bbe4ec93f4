import type { JSX } from 'preact'
import { usePage } from '../state/page.ts'

/** The definition's file. */
export function FilesBar(): JSX.Element {
  const { document } = usePage()
  return <p>{document.file.value}</p>
}
