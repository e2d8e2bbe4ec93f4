import type { JSX } from 'preact'
import { usePage } from '../state/page.ts'
import { startFilesWorker } from './start-worker.ts'

/** The files of the project. */
export function TakeAway(): JSX.Element {
  const { document } = usePage()
  return <p onClick={() => startFilesWorker()}>{document.file.value}</p>
}
