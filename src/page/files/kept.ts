import { effect } from '@preact/signals'
import type { OpenedText, PageDocument } from '../state/document.ts'
import type { Origin, Work } from './work.ts'

/** What the browser keeps of a definition, so that nothing is lost with the tab. */
export interface KeptWork extends OpenedText {
  /** Under which it is kept; each definition that is opened has one of its own, so that no tab writes over another's. */
  readonly id: string
  /** The tab in which it was last open. */
  readonly tab: string
  /** When it was last written, ms since 1970. */
  readonly at: number
  readonly origin: Origin
  /** A file has all of it. */
  readonly isSaved: boolean
}

export type KeptStorage = Pick<Storage, 'length' | 'key' | 'getItem' | 'setItem' | 'removeItem'>

const PREFIX = 'storyrod work '
/** Works that are kept, at most; the oldest go first, those that a file has before all others. */
const MOST = 12
/** How long a change may wait, ms. */
const WRITE_AFTER_MS = 150

/** All that is kept, the latest first. What cannot be read is left alone. */
export function keptWorks(storage: KeptStorage | undefined): KeptWork[] {
  if (storage === undefined) return []
  try {
    const keys = Array.from({ length: storage.length }, (_, k) => storage.key(k) ?? '')
    return keys
      .filter((key) => key.startsWith(PREFIX))
      .flatMap((key) => read(key.slice(PREFIX.length), storage.getItem(key)))
      .sort((a, b) => b.at - a.at)
  } catch {
    return []
  }
}

function read(id: string, json: string | null): KeptWork[] {
  try {
    const kept: unknown = JSON.parse(json ?? '')
    if (typeof kept !== 'object' || kept === null) return []
    const { text, file, files, tab, at, origin, isSaved } = kept as Readonly<Record<string, unknown>>
    if (typeof text !== 'string' || typeof file !== 'string' || typeof at !== 'number' || !Array.isArray(files))
      return []
    const known = origin === 'new' || origin === 'file' || origin === 'kept' ? origin : 'sample'
    return [
      {
        id,
        text,
        file,
        files: new Map(files.filter(isPair)),
        tab: String(tab),
        at,
        origin: known,
        isSaved: isSaved === true,
      },
    ]
  } catch {
    return []
  }
}

const isPair = (one: unknown): one is [string, string] =>
  Array.isArray(one) && typeof one[0] === 'string' && typeof one[1] === 'string'

/** Takes one out of what is kept. */
export function forget(storage: KeptStorage | undefined, id: string): void {
  try {
    storage?.removeItem(PREFIX + id)
  } catch {
    // A browser that forbids to keep has nothing to forget.
  }
}

export interface Keeping {
  readonly document: PageDocument
  readonly work: Work
  readonly storage: KeptStorage | undefined
  readonly tab: string
  readonly now: () => number
  readonly newId: () => string
  /** Told whether the browser lets the page keep anything. */
  readonly onKept: (isKept: boolean) => void
}

/** Keeps the open definition in the browser with every change. Returns what writes at once what still waits. */
export function keepWork({ document, work, storage, tab, now, newId, onKept }: Keeping): () => void {
  let id = newId()
  let opened = document.opened.peek()
  /** What is kept of it by now; nothing yet. */
  let written: string | undefined
  let waiting: ReturnType<typeof setTimeout> | undefined

  const write = (): void => {
    if (waiting === undefined) return
    clearTimeout(waiting)
    waiting = undefined
    const content = {
      text: document.fileText.peek(),
      file: document.file.peek(),
      files: [...document.files.peek()],
      origin: work.origin.peek(),
      isSaved: !work.unsaved.peek(),
    }
    const words = JSON.stringify(content)
    if (words === written) return
    written = words
    onKept(put(storage, id, JSON.stringify({ ...content, tab, at: now() })))
  }

  effect(() => {
    // What was open before stays under its own name.
    if (document.opened.value !== opened) {
      opened = document.opened.value
      id = newId()
      written = undefined
    }
    const origin = work.origin.value
    const isPlain = !work.unsaved.value && (origin === 'sample' || origin === 'new')
    // Each of these is kept.
    void [document.text.value, document.file.value, document.files.value]
    // A sample or a new definition as it comes can be had again at any time.
    if (isPlain && written === undefined) return
    waiting ??= setTimeout(write, WRITE_AFTER_MS)
  })
  return write
}

/** Whether it is kept now; room is made where there is none. */
function put(storage: KeptStorage | undefined, id: string, json: string): boolean {
  if (storage === undefined) return false
  const spare = keptWorks(storage)
    .filter((one) => one.id !== id)
    .sort((a, b) => Number(b.isSaved) - Number(a.isSaved) || a.at - b.at)
  while (spare.length >= MOST) forget(storage, spare.shift()?.id ?? '')
  for (;;) {
    try {
      storage.setItem(PREFIX + id, json)
      return true
    } catch {
      // Full: only what a file has makes room.
      const oldest = spare.shift()
      if (oldest?.isSaved !== true) return false
      forget(storage, oldest.id)
    }
  }
}
