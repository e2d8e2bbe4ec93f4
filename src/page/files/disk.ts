/** What the browser lets a page do with files, as far as it is used here; some browsers have none of it. */
interface Pickers {
  readonly showOpenFilePicker?: (options: PickerOptions) => Promise<readonly FileHandle[]>
  readonly showSaveFilePicker?: (options: PickerOptions) => Promise<FileHandle>
  readonly showDirectoryPicker?: (options: { readonly mode: 'readwrite' }) => Promise<FolderHandle>
}

interface PickerOptions {
  readonly multiple?: boolean
  readonly suggestedName?: string
  readonly types?: readonly {
    readonly description: string
    readonly accept: Readonly<Record<string, readonly string[]>>
  }[]
}

/** A file on the disk that may be written again without asking for its place. */
export interface FileHandle {
  readonly kind?: string
  readonly name: string
  readonly getFile: () => Promise<File>
  readonly createWritable: () => Promise<{
    readonly write: (data: string | Uint8Array) => Promise<void>
    readonly close: () => Promise<void>
    readonly abort: () => Promise<void>
  }>
}

export interface FolderHandle {
  readonly name: string
  readonly getDirectoryHandle: (name: string, options: { readonly create: true }) => Promise<FolderHandle>
  readonly getFileHandle: (name: string, options: { readonly create: true }) => Promise<FileHandle>
  readonly removeEntry: (name: string) => Promise<void>
}

/** A file that a person chose or dropped. */
export interface Picked {
  readonly file: File
  readonly handle?: FileHandle
}

const DEFINITIONS = { description: 'Definitions', accept: { 'application/yaml': ['.yaml', '.yml', '.json'] } }
const DRAWINGS = { description: 'Drawings', accept: { 'image/svg+xml': ['.svg'] } }

const pickers = (): Pickers => window as unknown as Pickers

/** Nothing where the person thought better of it. */
async function unlessGivenUp<T>(chosen: Promise<T>): Promise<T | undefined> {
  try {
    return await chosen
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return undefined
    throw error
  }
}

/** Lets a person choose a definition with the files that it names, or those alone; none where they thought better of it. */
export async function chooseFiles(what: 'definition' | 'drawing'): Promise<readonly Picked[]> {
  const types = what === 'definition' ? [DEFINITIONS, DRAWINGS] : [DRAWINGS]
  const pick = pickers().showOpenFilePicker
  if (pick === undefined) return chooseByInput(types.flatMap(({ accept }) => Object.values(accept).flat()))
  const handles = (await unlessGivenUp(pick.call(window, { multiple: true, types }))) ?? []
  return Promise.all(handles.map(async (handle) => ({ file: await handle.getFile(), handle })))
}

function chooseByInput(endings: readonly string[]): Promise<readonly Picked[]> {
  const input = document.createElement('input')
  input.type = 'file'
  input.multiple = true
  input.accept = endings.join(',')
  return new Promise((resolve) => {
    input.addEventListener('change', () => resolve([...(input.files ?? [])].map((file) => ({ file }))))
    input.addEventListener('cancel', () => resolve([]))
    input.click()
  })
}

/** Where a text was saved: its name, and the file itself where the browser lets a page write it again. */
export interface Saved {
  readonly name: string
  readonly handle?: FileHandle
}

/**
 * Saves a definition into the file that it came from, else into one that the person chooses, else as a download. Nothing where
 * they thought better of it; throws what the browser says where it does not let the page write.
 */
export async function saveText(text: string, name: string, handle?: FileHandle): Promise<Saved | undefined> {
  const pick = pickers().showSaveFilePicker
  if (handle === undefined && pick === undefined) {
    download(name, new TextEncoder().encode(text), 'application/yaml')
    return { name }
  }
  const to = handle ?? (pick && (await unlessGivenUp(pick.call(window, { suggestedName: name, types: [DEFINITIONS] }))))
  if (to === undefined) return undefined
  await writeInto(to, text)
  return { name: to.name, handle: to }
}

/** The browser writes beside the file and puts it in its place when all is there. */
async function writeInto(handle: FileHandle, data: string | Uint8Array): Promise<void> {
  const stream = await handle.createWritable()
  try {
    await stream.write(data)
    await stream.close()
  } catch (error) {
    // One that has failed may be closed already.
    await stream.abort().catch(() => undefined)
    throw error
  }
}

/** Whether a page may write into folders here. */
export const canWriteFolders = (): boolean => pickers().showDirectoryPicker !== undefined

/** Lets a person choose a folder to write into; nothing where they thought better of it. */
export async function chooseFolder(): Promise<FolderHandle | undefined> {
  const pick = pickers().showDirectoryPicker
  return pick && unlessGivenUp(pick.call(window, { mode: 'readwrite' }))
}

/** Writes a file below a folder, at a path with forward slashes. Where that fails, what stood there stands there still. */
export async function writeBelow(folder: FolderHandle, path: string, bytes: Uint8Array): Promise<void> {
  const steps = path.split('/')
  const name = steps.pop() ?? path
  let place = folder
  for (const step of steps) place = await place.getDirectoryHandle(step, { create: true })
  const handle = await place.getFileHandle(name, { create: true })
  try {
    await writeInto(handle, bytes)
  } catch (error) {
    // A file that is new is made empty before it is written, and an empty one would pass for a drawing.
    const { size } = await handle.getFile().catch(() => ({ size: undefined }))
    if (size === 0) await place.removeEntry(name).catch(() => undefined)
    throw error
  }
}

/** How long the browser may take to begin with a download, ms. */
const DOWNLOAD_BEGINS_MS = 60_000

const KINDS: Readonly<Record<string, string>> = {
  svg: 'image/svg+xml',
  pdf: 'application/pdf',
  zip: 'application/zip',
  json: 'application/json',
  txt: 'text/plain',
}

/** Hands a file to the browser's downloads, under the last step of its path. */
export function download(path: string, bytes: Uint8Array, kind = KINDS[path.replace(/^.*\./, '')]): void {
  const blob = new Blob([bytes as BlobPart], { type: kind ?? 'application/octet-stream' })
  const address = URL.createObjectURL(blob)
  const link = document.createElement('a')
  link.href = address
  link.download = path.replace(/^.*\//, '')
  link.click()
  setTimeout(() => URL.revokeObjectURL(address), DOWNLOAD_BEGINS_MS)
}
