import FilesWorkerOf from '../workers/files.worker.ts?worker&inline'
import type { FilesAnswer } from './asks.ts'
import type { FilesWorker } from './crew.ts'

/** Starts the worker that makes files. */
export function startFilesWorker(): FilesWorker {
  const worker = new FilesWorkerOf()
  return {
    post: (ask) => worker.postMessage(ask),
    listen: (hear) => worker.addEventListener('message', ({ data }: MessageEvent<FilesAnswer>) => hear(data)),
    end: () => worker.terminate(),
  }
}
