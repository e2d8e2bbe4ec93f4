import { computed, type ReadonlySignal, signal } from '@preact/signals'
import { stopsStanding } from '../../outputs/index.ts'
import type { Page } from '../state/page.ts'
import type { FilesJob, FilesNews } from './asks.ts'
import { type Consent, consentTo } from './consent.ts'
import type { FilesCrew } from './crew.ts'
import { download, type FolderHandle, writeBelow } from './disk.ts'

/** What is being made, or what came of it. */
export type TakeState =
  | { readonly kind: 'idle' }
  | { readonly kind: 'busy'; readonly words: string; readonly done: number; readonly of: number }
  | { readonly kind: 'over'; readonly words: string; readonly isTrouble: boolean }

/** Files being made and taken away. */
export interface Taking {
  readonly state: ReadonlySignal<TakeState>
  /** The definition that stands there can be drawn, or why not. */
  readonly hindrance: ReadonlySignal<'working' | 'mistakes' | 'stops' | undefined>
  readonly stops: ReadonlySignal<number>
  /** The person would have it drawn all the same. */
  readonly anyway: Consent
  /** Makes one file and hands it to the downloads. */
  readonly one: (path: string) => Promise<void>
  readonly zip: () => Promise<void>
  /** Writes all files below a folder. */
  readonly into: (folder: FolderHandle) => Promise<void>
  readonly stop: () => void
  /** Does a job of the worker's, and shows how far it is. True where it was done. */
  readonly run: (job: FilesJob, words: string, hear: (news: FilesNews) => void) => Promise<boolean>
  /** Ends what `run` began, in words. */
  readonly say: (words: string) => void
}

export function takingFrom({ document, workshop, say }: Page, crew: FilesCrew): Taking {
  const state = signal<TakeState>({ kind: 'idle' })
  const anyway = consentTo(workshop.findings, document.opened)
  const stops = computed(() => stopsStanding(workshop.findings.value))
  const hindrance = computed(() => {
    if (workshop.problems.value.length > 0) return 'mistakes'
    if (workshop.files.value === undefined) return 'working'
    return stops.value > 0 && !anyway.given.value ? 'stops' : undefined
  })
  const asked = () => ({ source: document.source.peek(), anyway: anyway.given.peek() })
  const over = (words: string, isTrouble: boolean): void => {
    state.value = { kind: 'over', words, isTrouble }
    say(words)
  }

  const run: Taking['run'] = async (job, words, hear) => {
    state.value = { kind: 'busy', words, done: 0, of: 0 }
    const ending = await crew.run(job, (news) => {
      if (news.kind === 'progress')
        state.value = {
          kind: 'busy',
          words: `${words}: ${news.done} of ${news.of}, ${news.what}`,
          done: news.done,
          of: news.of,
        }
      else hear(news)
    })
    if (ending === undefined) over('Stopped. Nothing was taken away.', false)
    if (ending?.kind === 'refused') over(ending.words, true)
    return ending?.kind === 'done'
  }

  const save: (job: FilesJob, words: string) => Promise<void> = async (job, words) => {
    let size = ''
    const done = await run(job, words, (news) => {
      if (news.kind !== 'file') return
      const { path, bytes } = news.file
      size = `${path.replace(/^.*\//, '')}, ${sizeWords(bytes.length)}, went to your downloads.`
      download(path, bytes)
    })
    if (done) over(size, false)
  }

  return {
    state,
    hindrance,
    stops,
    anyway,
    run,
    say: (words) => over(words, false),
    stop: () => crew.stop(),
    one: (path) => save({ kind: 'one', path, ...asked() }, 'Making the file'),
    zip: () => save({ kind: 'zip', ...asked() }, 'Files'),
    into: async (folder) => {
      let written: Promise<unknown> = Promise.resolve()
      let count = 0
      let sum = 0
      const done = await run({ kind: 'all', ...asked() }, 'Files', (news) => {
        if (news.kind !== 'file') return
        const { path, bytes } = news.file
        written = written.then(async () => {
          await writeBelow(folder, path, bytes)
          count += 1
          sum += bytes.length
        })
        // What the folder does not take need not be drawn.
        written.catch(() => crew.stop())
      })
      try {
        await written
        if (done) over(`${count} files, ${sizeWords(sum)}, are in the folder ${folder.name}.`, false)
        else if (count > 0 && !isTrouble(state.peek()))
          over(`Stopped. Of all files the first ${count} are in the folder ${folder.name}.`, false)
      } catch (error) {
        over(
          `Not all files could be written into ${folder.name}: ${error instanceof Error ? error.message : error}`,
          true,
        )
      }
    },
  }
}

const isTrouble = (state: TakeState): boolean => state.kind === 'over' && state.isTrouble

const KILO = 1000

/** `14 kB`, `2.4 MB`: thousands, as files are told on most systems today. */
export function sizeWords(bytes: number): string {
  if (bytes < KILO) return `${bytes} bytes`
  if (bytes < KILO * KILO) return `${Math.round(bytes / KILO)} kB`
  return `${(bytes / KILO / KILO).toFixed(1)} MB`
}
