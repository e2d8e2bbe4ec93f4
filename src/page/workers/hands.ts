import type { CheckerAnswer, CheckerAsk, DrawerAnswer, DrawerAsk } from '../protocol.ts'
import type { Hand } from '../state/workshop.ts'
import WorkshopWorker from './workshop.worker.ts?worker&inline'

const handOf = <Ask, Answer>(worker: Worker): Hand<Ask, Answer> => ({
  ask: (ask) => worker.postMessage(ask),
  listen: (hear) => worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => hear(data)),
})

/** Starts the worker that draws. */
export const startDrawer = (): Hand<DrawerAsk, DrawerAnswer> => handOf(new WorkshopWorker())

/** Starts the worker that checks. */
export const startChecker = (): Hand<CheckerAsk, CheckerAnswer> => handOf(new WorkshopWorker())
