import { join } from 'node:path'
import type { Disk } from './disk.ts'
import { foldersOf, staysInside } from './output-paths.ts'

/*
 * A staging folder holds three things:
 *   new/…         the files of this run, complete, under their own paths;
 *   old/…         the files that they replace, kept until the last one is in place;
 *   placing.json  the journal: there while files are being moved, written before the first move, removed after
 *                 the last. Its removal is the moment at which the new output counts.
 * So a run that ends at any point, by whatever cause, leaves either no journal (nothing moved, or all moved) or one
 * from which `putBack` restores what was there.
 */

/** What the journal says: the folders made for the files, outer ones first, and whether each file was there before. */
interface Journal {
  readonly version: 1
  readonly folders: readonly string[]
  readonly files: readonly { readonly path: string; readonly had: boolean }[]
}

export function stagedPath(staging: string, path: string): string {
  return join(staging, 'new', path)
}

/** Moves the staged files to their places under `root`, all or none. `had` holds those that replace a file. */
export async function place(
  disk: Disk,
  root: string,
  staging: string,
  paths: readonly string[],
  had: ReadonlySet<string>,
): Promise<void> {
  const journal: Journal = {
    version: 1,
    folders: await missingFolders(disk, root, paths),
    files: paths.map((path) => ({ path, had: had.has(path) })),
  }
  await makeOldFolders(disk, staging, [...had])
  const journalPath = join(staging, 'placing.json')
  await disk.create(journalPath, new TextEncoder().encode(JSON.stringify(journal)))
  await disk.flush(journalPath)
  await disk.flushFolder(staging)
  for (const folder of journal.folders) await disk.makeFolder(join(root, folder))
  for (const file of journal.files) {
    if (file.had) await keepOld(disk, join(root, file.path), oldPath(staging, file.path))
    await disk.rename(stagedPath(staging, file.path), join(root, file.path))
  }
  for (const folder of ['', ...foldersOf(paths)]) await disk.flushFolder(join(root, folder))
  await disk.remove(journalPath)
}

/** Restores what was under `root` before `place` began, from the journal in the staging folder; nothing without one. */
export async function putBack(disk: Disk, root: string, staging: string): Promise<void> {
  const journalPath = join(staging, 'placing.json')
  const journal = await readJournal(disk, journalPath)
  if (journal === undefined) return
  for (const { path, had } of journal.files.toReversed()) {
    if (had) {
      const old = oldPath(staging, path)
      if ((await disk.look(old)) !== undefined) await disk.rename(old, join(root, path))
    } else if ((await disk.look(stagedPath(staging, path))) === undefined) {
      await removeIfThere(disk, join(root, path))
    }
  }
  for (const folder of journal.folders.toReversed()) await disk.removeFolder(join(root, folder)).catch(() => undefined)
  await disk.remove(journalPath)
}

function oldPath(staging: string, path: string): string {
  return join(staging, 'old', path)
}

async function missingFolders(disk: Disk, root: string, paths: readonly string[]): Promise<readonly string[]> {
  const missing: string[] = []
  for (const folder of foldersOf(paths)) {
    if ((await disk.look(join(root, folder))) === undefined) missing.push(folder)
  }
  return missing
}

async function makeOldFolders(disk: Disk, staging: string, had: readonly string[]): Promise<void> {
  if (had.length === 0) return
  await disk.makeFolder(join(staging, 'old'))
  for (const folder of foldersOf(had)) await disk.makeFolder(oldPath(staging, folder))
}

/** A second name for the old file, so that the place is never empty; a move where the disk knows no second names. */
async function keepOld(disk: Disk, place: string, old: string): Promise<void> {
  try {
    await disk.link(place, old)
  } catch {
    await disk.rename(place, old)
  }
}

async function removeIfThere(disk: Disk, path: string): Promise<void> {
  if ((await disk.look(path)) !== undefined) await disk.remove(path)
}

/** A journal that cannot be read whole was never finished, and then no file had been moved. */
async function readJournal(disk: Disk, path: string): Promise<Journal | undefined> {
  if ((await disk.look(path))?.kind !== 'file') return undefined
  const text = new TextDecoder().decode(await disk.read(path))
  let value: unknown
  try {
    value = JSON.parse(text)
  } catch {
    return undefined
  }
  return isJournal(value) ? value : undefined
}

function isJournal(value: unknown): value is Journal {
  if (typeof value !== 'object' || value === null) return false
  const { version, folders, files } = value as Partial<Record<keyof Journal, unknown>>
  if (version !== 1 || !Array.isArray(folders) || !Array.isArray(files)) return false
  return folders.every(isPath) && files.every((file) => isPath(file?.path) && typeof file.had === 'boolean')
}

function isPath(value: unknown): boolean {
  return typeof value === 'string' && staysInside(value)
}
