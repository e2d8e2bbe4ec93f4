import type { FilesAnswer, FilesAsk, FilesJob, FilesNews } from './asks.ts'

/** A worker as the page uses it. */
export interface FilesWorker {
  readonly post: (ask: FilesAsk) => void
  readonly listen: (hear: (answer: FilesAnswer) => void) => void
  readonly end: () => void
}

/** Makes files apart from the page: one job at a time, in the order in which they were asked for. */
export interface FilesCrew {
  /**
   * Does a job; `hear` is told of all news of it. Resolves with the last of it: done, refused, or nothing where it was
   * stopped.
   */
  readonly run: (job: FilesJob, hear: (news: FilesNews) => void) => Promise<Ending | undefined>
  /** Gives up the job that runs, and all that wait. */
  readonly stop: () => void
}

export type Ending = Extract<FilesNews, { kind: 'done' | 'refused' }>

/** `start` is called with the first job, and again after a stop: until then nothing of it is read by the browser. */
export function filesCrew(start: () => FilesWorker): FilesCrew {
  let worker: FilesWorker | undefined
  let number = 0
  let turn: Promise<unknown> = Promise.resolve()
  let stopped = 0
  let giveUp: (() => void) | undefined
  let running: { readonly number: number; readonly hear: (news: FilesNews) => void } | undefined

  const started = (): FilesWorker => {
    if (worker !== undefined) return worker
    const mine = start()
    mine.listen((answer) => {
      if (answer.number === running?.number) running.hear(answer)
    })
    worker = mine
    return mine
  }

  const work = (job: FilesJob, hear: (news: FilesNews) => void): Promise<Ending | undefined> =>
    new Promise((resolve) => {
      number += 1
      const end = (ending: Ending | undefined): void => {
        running = undefined
        giveUp = undefined
        resolve(ending)
      }
      running = {
        number,
        hear: (news) => {
          hear(news)
          if (news.kind === 'done' || news.kind === 'refused') end(news)
        },
      }
      giveUp = () => end(undefined)
      started().post({ number, ...job })
    })

  return {
    run: (job, hear) => {
      const asked = stopped
      const mine = turn.then(() => (asked === stopped ? work(job, hear) : undefined))
      turn = mine
      return mine
    },
    stop: () => {
      stopped += 1
      worker?.end()
      worker = undefined
      giveUp?.()
    },
  }
}
