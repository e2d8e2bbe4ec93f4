import type { CheckerAnswer, CheckerAsk, DrawerAnswer, DrawerAsk } from '../protocol.ts'
import type { Hand } from '../state/workshop.ts'
import WorkshopWorker from './workshop.worker.ts?worker&inline'

const handOf = <Ask, Answer>(worker: Worker): Hand<Ask, Answer> => ({
  ask: (ask) => worker.postMessage(ask),
  listen: (hear) => worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => hear(data)),
})

/** A page that is one file starts the worker that draws before it reads its own script. */
interface Early {
  storyrodDrawer?: Worker
}

/** The worker that draws, started unless it is already. */
export const startDrawer = (): Hand<DrawerAsk, DrawerAnswer> =>
  handOf((window as Early).storyrodDrawer ?? new WorkshopWorker())

/** Starts the worker that checks when it is first asked: until the first drawing is there it would only be in the way. */
export function startChecker(): Hand<CheckerAsk, CheckerAnswer> {
  let started: Hand<CheckerAsk, CheckerAnswer> | undefined
  let heard: ((answer: CheckerAnswer) => void) | undefined
  return {
    ask: (ask) => {
      if (started === undefined) {
        started = handOf(new WorkshopWorker())
        started.listen((answer) => heard?.(answer))
      }
      started.ask(ask)
    },
    listen: (hear) => {
      heard = hear
    },
  }
}
