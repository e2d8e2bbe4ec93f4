import FilesWorkerOf from '../workers/files.worker.ts?worker&inline'
import type { FilesAnswer } from './asks.ts'
import type { FilesWorker } from './crew.ts'

/** Starts the worker that makes files. In the page that is one file it lies packed, and takes a moment to be unpacked. */
export function startFilesWorker(): FilesWorker {
  const worker: Promise<Worker> = (async () => new FilesWorkerOf())()
  let heard: ((answer: FilesAnswer) => void) | undefined
  const whenThere = (use: (worker: Worker) => void, else_: () => void = () => undefined): void => {
    worker.then(use, else_)
  }
  return {
    post: (ask) =>
      whenThere(
        (there) => there.postMessage(ask),
        () =>
          heard?.({
            number: ask.number,
            kind: 'refused',
            words: 'This browser is too old to unpack what makes the files. A browser of this year or the last can.',
          }),
      ),
    listen: (hear) => {
      heard = hear
      whenThere((there) => there.addEventListener('message', ({ data }: MessageEvent<FilesAnswer>) => hear(data)))
    },
    end: () => whenThere((there) => there.terminate()),
  }
}
