import { effect, type Signal, signal } from '@preact/signals'
import { createContext } from 'preact'
import { useContext } from 'preact/hooks'
import type { PageDocument } from '../state/document.ts'
import { type FilesCrew, filesCrew } from './crew.ts'
import { type KeptStorage, type KeptWork, keepWork, keptWorks } from './kept.ts'
import { startFilesWorker } from './start-worker.ts'
import { otherTabs } from './tabs.ts'
import { type Work, workOn } from './work.ts'

/** What the page has to do with files. */
export interface Desk {
  readonly work: Work
  readonly crew: FilesCrew
  readonly storage: KeptStorage | undefined
  /** The browser keeps what is worked on; not yet known before the first change. */
  readonly isKept: Signal<boolean | undefined>
  /** Work of an earlier day, or of a tab that is gone, that is offered back; none once it was answered. */
  readonly offered: Signal<readonly KeptWork[]>
  /** What is said of files, until it is put away or something else is said. */
  readonly notice: Signal<Notice | undefined>
  /** Asked before unsaved work goes off the page. */
  readonly question: Signal<Question | undefined>
  /** Keeps at once what still waits. */
  readonly keepNow: () => void
}

export interface Notice {
  readonly words: string
  readonly isTrouble: boolean
}

export interface Question {
  readonly then: () => void
}

/** The desk of a document that has just begun with the sample. */
export function deskOf(document: PageDocument, storage: KeptStorage | undefined): Desk {
  const work = workOn(document)
  const tab = newName()
  const isKept = signal<boolean | undefined>(undefined)
  const offered = signal<readonly KeptWork[]>([])
  const keepNow = keepWork({
    document,
    work,
    storage,
    tab,
    now: () => Date.now(),
    newId: newName,
    onKept: (kept) => {
      isKept.value = kept
    },
  })
  const earlier = keptWorks(storage)
  otherTabs(tab).then((open) => {
    offered.value = earlier.filter((one) => !open.has(one.tab))
  })
  return {
    work,
    crew: filesCrew(startFilesWorker),
    storage,
    isKept,
    offered,
    notice: signal(undefined),
    question: signal(undefined),
    keepNow,
  }
}

const newName = (): string =>
  `${Date.now().toString(36)}-${crypto.getRandomValues(new Uint32Array(1))[0]?.toString(36)}`

/** Keeps what waits when the page goes away, and asks before it goes with unsaved work. Returns what ends it. */
export function guardLeaving({ work, keepNow }: Desk): () => void {
  const ask = (event: BeforeUnloadEvent): void => event.preventDefault()
  const end = effect(() => {
    // Only while there is need: a page that listens is not kept for the way back.
    if (work.unsaved.value) addEventListener('beforeunload', ask)
    else removeEventListener('beforeunload', ask)
  })
  addEventListener('pagehide', keepNow)
  document.addEventListener('visibilitychange', keepNow)
  return () => {
    end()
    removeEventListener('beforeunload', ask)
    removeEventListener('pagehide', keepNow)
    document.removeEventListener('visibilitychange', keepNow)
  }
}

export const DeskContext = createContext<Desk | undefined>(undefined)

/** The desk; only below its context. */
export function useDesk(): Desk {
  const desk = useContext(DeskContext)
  if (desk === undefined) throw new Error('a part of the page stands outside of its desk')
  return desk
}
