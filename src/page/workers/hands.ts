import type { CheckerAnswer, CheckerAsk, DrawerAnswer, DrawerAsk } from '../protocol.ts'
import { isFirstAsk } from '../sample.ts'
import type { Hand } from '../state/workshop.ts'
import WorkshopWorker from './workshop.worker.ts?worker&inline'

const handOf = <Ask, Answer>(worker: Worker): Hand<Ask, Answer> => ({
  ask: (ask) => worker.postMessage(ask),
  listen: (hear) => worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => hear(data)),
})

/** A page that is one file starts the worker that draws before it reads its own script, and it begins with the sample. */
interface Early {
  storyrodEarly?: {
    readonly worker: Worker
    /** What it has said by now. */
    readonly answers: DrawerAnswer[]
  }
}

/** The worker that draws, started unless it is already. */
export function startDrawer(): Hand<DrawerAsk, DrawerAnswer> {
  const { storyrodEarly: early } = window as Early
  return early === undefined ? handOf(new WorkshopWorker()) : handOfEarly(early)
}

/** Of a worker that was not asked for what it does first. */
function handOfEarly({ worker, answers }: NonNullable<Early['storyrodEarly']>): Hand<DrawerAsk, DrawerAnswer> {
  let begun = false
  let heard: ((answer: DrawerAnswer) => void) | undefined
  return {
    ask: (ask) => {
      if (begun || !isFirstAsk(ask)) worker.postMessage(ask)
      if (begun) return
      begun = true
      worker.onmessage = ({ data }: MessageEvent<DrawerAnswer>) => heard?.(data)
      for (const answer of answers.splice(0)) heard?.(answer)
    },
    listen: (hear) => {
      heard = hear
    },
  }
}

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
