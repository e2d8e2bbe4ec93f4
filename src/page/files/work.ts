import { computed, type ReadonlySignal, signal } from '@preact/signals'
import type { OpenedText, PageDocument } from '../state/document.ts'
import type { FileHandle } from './disk.ts'

/** Where the open definition came from. */
export type Origin = 'sample' | 'new' | 'file' | 'kept'

/** The definition that is open, and how much of it is in a file. */
export interface Work {
  readonly origin: ReadonlySignal<Origin>
  /** Something would be lost without the browser's own memory: the text is not that of a file, a sample or a new definition. */
  readonly unsaved: ReadonlySignal<boolean>
  /** The file that it is saved into, where the browser lets the page write it. */
  readonly handle: ReadonlySignal<FileHandle | undefined>
  /** Opens another definition. `isSaved`: its text is somewhere else too. */
  readonly open: (opened: OpenedText, from: { origin: Origin; isSaved: boolean; handle?: FileHandle }) => void
  /** A text was saved under a name; the person may have typed on since. */
  readonly saved: (text: string, name: string, handle?: FileHandle) => void
}

/** A document that begins with a sample, followed from there on. */
export function workOn(document: PageDocument): Work {
  const origin = signal<Origin>('sample')
  const saved = signal<string | undefined>(document.text.peek())
  const handle = signal<FileHandle | undefined>(undefined)
  return {
    origin,
    handle,
    unsaved: computed(() => document.text.value !== saved.value),
    open: (opened, from) => {
      document.open(opened)
      origin.value = from.origin
      saved.value = from.isSaved ? document.text.peek() : undefined
      handle.value = from.handle
    },
    saved: (text, name, to) => {
      document.rename(name)
      origin.value = 'file'
      saved.value = text
      handle.value = to
    },
  }
}

/** In words: what would be lost, if anything. */
export function stateWords(origin: Origin, unsaved: boolean): string {
  if (unsaved) return 'not saved'
  switch (origin) {
    case 'sample':
      return 'sample'
    case 'new':
      return 'new'
    case 'file':
    case 'kept':
      return 'saved'
    default:
      return origin satisfies never
  }
}
