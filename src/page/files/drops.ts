import { type Bench, receive } from './actions.ts'
import type { FileHandle, Picked } from './disk.ts'

/** Some browsers give a file that was dropped in such a way that it can be saved again. */
interface GivesHandle {
  readonly getAsFileSystemHandle?: () => Promise<FileHandle | null>
}

/** Takes in a definition and its files wherever they are dropped on the page. Returns what ends it. */
export function watchDrops(bench: Bench): () => void {
  const { classList } = document.documentElement
  const over = (event: DragEvent): void => {
    if (event.dataTransfer?.types.includes('Files') !== true) return
    event.preventDefault()
    classList.add('dropping')
  }
  const out = (event: DragEvent): void => {
    // Off the page; from one part of it to the next there is always one that it goes to.
    if (event.relatedTarget === null) classList.remove('dropping')
  }
  const drop = (event: DragEvent): void => {
    classList.remove('dropping')
    if (event.dataTransfer?.types.includes('Files') !== true) return
    event.preventDefault()
    // What is dropped can be looked at only until this returns.
    const picked = [...event.dataTransfer.items].flatMap((item) => dropped(item))
    void Promise.all(picked).then((all) => receive(bench, all))
  }
  document.addEventListener('dragover', over)
  document.addEventListener('dragleave', out)
  document.addEventListener('drop', drop)
  return () => {
    document.removeEventListener('dragover', over)
    document.removeEventListener('dragleave', out)
    document.removeEventListener('drop', drop)
  }
}

function dropped(item: DataTransferItem): Promise<Picked>[] {
  const file = item.getAsFile()
  if (item.kind !== 'file' || file === null) return []
  const asked = (item as GivesHandle).getAsFileSystemHandle?.().catch(() => null) ?? Promise.resolve(null)
  return [asked.then((handle) => (handle?.kind === 'file' ? { file, handle } : { file }))]
}
