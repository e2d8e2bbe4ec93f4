import { starterDefinition } from '../../project/index.ts'
import type { OpenedText } from '../state/document.ts'
import type { Page } from '../state/page.ts'
import type { Desk } from './desk.ts'
import { chooseFiles, type Picked, saveText } from './disk.ts'
import { forget, type KeptWork } from './kept.ts'
import { readPicked } from './reading.ts'

/** What the actions are done on. */
export interface Bench {
  readonly page: Page
  readonly desk: Desk
}

/** Does what takes the open definition off the page; asks first where it is in no file. */
function unlessUnsaved({ desk }: Bench, then: () => void): void {
  if (desk.work.unsaved.peek()) desk.question.value = { then }
  else then()
}

function put(bench: Bench, opened: OpenedText, from: Parameters<Desk['work']['open']>[1]): void {
  const { page, desk } = bench
  desk.keepNow()
  desk.work.open(opened, from)
  desk.offered.value = []
  desk.notice.value = undefined
  page.say(`${opened.file} is open`)
}

/** A small definition with words that explain it. */
export function openNew(bench: Bench): void {
  const opened = { text: starterDefinition(), file: 'my-cabinets.yaml', files: new Map<string, string>() }
  unlessUnsaved(bench, () => put(bench, opened, { origin: 'new', isSaved: true }))
}

export function openSample(bench: Bench, sample: OpenedText): void {
  unlessUnsaved(bench, () => put(bench, sample, { origin: 'sample', isSaved: true }))
}

/** Work that was kept takes the place of what is open. */
export function goOn(bench: Bench, kept: KeptWork): void {
  unlessUnsaved(bench, () => {
    put(bench, kept, { origin: 'kept', isSaved: kept.isSaved })
    forget(bench.desk.storage, kept.id)
  })
}

/** Lets the person choose a definition, and opens it. */
export async function openFiles(bench: Bench): Promise<void> {
  await told(bench, async () => receive(bench, await chooseFiles('definition')))
}

/** Lets the person choose files that the open definition names. */
export async function addNamed(bench: Bench, name: string): Promise<void> {
  await told(bench, async () => {
    const picked = await chooseFiles('drawing')
    const [only] = picked
    // One file is the one that was asked for, whatever it is called.
    if (only !== undefined && picked.length === 1) {
      const reading = await readPicked([only], [name])
      if (reading.kind === 'files') {
        for (const text of reading.files.values()) bench.page.document.addFile(name, text)
        return
      }
    }
    await receive(bench, picked)
  })
}

/** Takes in files that were chosen or dropped. */
export async function receive(bench: Bench, picked: readonly Picked[]): Promise<void> {
  const { page, desk } = bench
  if (picked.length === 0) return
  const reading = await readPicked(picked, page.workshop.named.peek())
  switch (reading.kind) {
    case 'refused':
      desk.notice.value = { words: reading.words, isTrouble: true }
      break
    case 'files':
      for (const [name, text] of reading.files) page.document.addFile(name, text)
      desk.notice.value = {
        words: `${[...reading.files.keys()].join(', ')} is beside the definition now.`,
        isTrouble: false,
      }
      break
    case 'definition': {
      const { opened, handle } = reading
      const from = { origin: 'file', isSaved: true, ...(handle !== undefined && { handle }) } as const
      unlessUnsaved(bench, () => put(bench, opened, from))
      break
    }
    default:
      reading satisfies never
  }
}

/** Saves the definition. `as`: into a file that the person chooses. True where it is saved now. */
export async function save({ page, desk }: Bench, as = false): Promise<boolean> {
  const { document } = page
  const text = document.text.peek()
  const handle = as ? undefined : desk.work.handle.peek()
  return told({ page, desk }, async () => {
    const saved = await saveText(document.fileText.peek(), document.file.peek(), handle)
    if (saved === undefined) return false
    desk.work.saved(text, saved.name, saved.handle)
    desk.notice.value =
      saved.handle === undefined ? { words: `${saved.name} went to your downloads.`, isTrouble: false } : undefined
    page.say(`${saved.name} is saved`)
    return true
  })
}

/** Does something with files, and says what the browser or the disk has against it. */
async function told<T>({ desk }: Bench, work: () => Promise<T>): Promise<T | false> {
  try {
    return await work()
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error)
    desk.notice.value = { words: `That did not work, and nothing was changed: ${why}`, isTrouble: true }
    return false
  }
}
