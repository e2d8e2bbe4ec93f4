import { dirname, join } from 'node:path'
import { abandon, claim, release } from './claim.ts'
import type { Disk } from './disk.ts'
import type { OutputFile } from './engine.ts'
import { assertPlaces, makeFolders, removeFolders } from './folders.ts'
import { assertOutputPaths } from './output-paths.ts'
import { place, putBack, stagedPath } from './placing.ts'
import type { StopRequest } from './stop-request.ts'
import { diskTrouble, OTHER_FOLDER, orTrouble, Stopped } from './trouble.ts'

export interface Replacement {
  /** The output folder, absolute; made, with its parents, when it is not there. */
  readonly folder: string
  /** What `files` will yield, relative to the folder; each exactly once. */
  readonly paths: readonly string[]
  files(): AsyncIterable<OutputFile>
  /** Called as each file has been worked out and, where it is new or changed, written to the staging folder. */
  onFile(path: string): void
  readonly stop: StopRequest
}

export interface Replaced {
  /** Files that are new or differ from what was there. */
  readonly written: number
  /** Files that were there with the same bytes, and were left alone. */
  readonly same: number
}

/** Files brought to the disk at once: enough to share its waits, few enough for any limit of open files. */
const FLUSH_TOGETHER = 8

/**
 * Writes a run's files into a folder, all or none: every file is first written to a staging folder inside it and
 * brought to the disk, and only then are they moved into place. Files with the same bytes as before are left alone,
 * and so is everything that the run does not name.
 *
 * Throws Trouble (exit code 3) for the disk's refusals and Stopped when asked to stop before the moves began; in
 * either case, and when `files` itself fails, the folder is as it was before, down to folders newly made. Once
 * begun, the moves are brought to an end whatever is asked.
 */
export async function replaceOutput(disk: Disk, work: Replacement): Promise<Replaced> {
  assertOutputPaths(work.paths)
  const made = await makeFolders(disk, work.folder)
  try {
    const root = await orTrouble(`open the folder ${work.folder}`, () => disk.real(work.folder))
    await assertPlaces(disk, root, work.paths)
    const staging = await claim(disk, root)
    return await stageAndPlace(disk, work, root, staging)
  } catch (error) {
    await removeFolders(disk, made)
    throw error
  }
}

async function stageAndPlace(disk: Disk, work: Replacement, root: string, staging: string): Promise<Replaced> {
  const staged = await orRelease(disk, staging, async () => {
    const files = await stage(disk, work, root, staging)
    await flushAll(disk, files.written, staging, root)
    if (work.stop.asked !== undefined) throw new Stopped(work.stop.asked)
    return files
  })
  if (staged.written.length > 0) await placeOrPutBack(disk, root, staging, staged)
  await release(disk, staging)
  return { written: staged.written.length, same: work.paths.length - staged.written.length }
}

async function orRelease<T>(disk: Disk, staging: string, task: () => Promise<T>): Promise<T> {
  try {
    return await task()
  } catch (error) {
    await release(disk, staging)
    throw error
  }
}

interface Staged {
  readonly written: readonly string[]
  /** Those of them that replace a file. */
  readonly had: ReadonlySet<string>
}

async function stage(disk: Disk, work: Replacement, root: string, staging: string): Promise<Staged> {
  const expected = new Set(work.paths)
  const written: string[] = []
  const had = new Set<string>()
  const folders = new Set<string>()
  for await (const { path, bytes } of work.files()) {
    if (work.stop.asked !== undefined) throw new Stopped(work.stop.asked)
    if (!expected.delete(path)) throw new Error(`a file that was not announced, or twice: ${JSON.stringify(path)}`)
    const before = await compare(disk, join(root, path), bytes)
    if (before !== 'same') {
      await stageFile(disk, root, staging, path, bytes, folders)
      written.push(path)
    }
    if (before === 'differs') had.add(path)
    work.onFile(path)
  }
  if (expected.size > 0) throw new Error(`files that were announced did not come: ${[...expected].join(', ')}`)
  return { written, had }
}

async function compare(disk: Disk, path: string, bytes: Uint8Array): Promise<'missing' | 'same' | 'differs'> {
  return orTrouble(`look at ${path}`, async () => {
    const look = await disk.look(path)
    if (look === undefined) return 'missing'
    if (look.size !== bytes.length) return 'differs'
    const there = await disk.read(path)
    return Buffer.compare(there, bytes) === 0 ? 'same' : 'differs'
  })
}

async function stageFile(
  disk: Disk,
  root: string,
  staging: string,
  path: string,
  bytes: Uint8Array,
  folders: Set<string>,
): Promise<void> {
  const target = stagedPath(staging, path)
  try {
    await makeStagedFolders(disk, staging, dirname(target), folders)
    await disk.create(target, bytes)
  } catch (error) {
    throw unchanged(error, `write ${path} into ${root}`)
  }
}

async function makeStagedFolders(disk: Disk, staging: string, folder: string, made: Set<string>): Promise<void> {
  if (folder === staging || made.has(folder)) return
  await makeStagedFolders(disk, staging, dirname(folder), made)
  await disk.makeFolder(folder)
  made.add(folder)
}

async function flushAll(disk: Disk, paths: readonly string[], staging: string, root: string): Promise<void> {
  for (let from = 0; from < paths.length; from += FLUSH_TOGETHER) {
    const some = paths.slice(from, from + FLUSH_TOGETHER)
    const results = await Promise.allSettled(some.map((path) => disk.flush(stagedPath(staging, path))))
    const failed = results.find((result) => result.status === 'rejected')
    if (failed !== undefined) throw unchanged(failed.reason, `write all files into ${root}`)
  }
}

async function placeOrPutBack(disk: Disk, root: string, staging: string, staged: Staged): Promise<void> {
  try {
    await place(disk, root, staging, staged.written, staged.had)
  } catch (error) {
    try {
      await putBack(disk, root, staging)
    } catch (second) {
      abandon(staging)
      throw diskTrouble(second, { what: `put the earlier output of ${root} back`, after: notPutBack(staging) })
    }
    await release(disk, staging)
    throw unchanged(error, `put all files in place in ${root}`)
  }
}

function unchanged(error: unknown, what: string): unknown {
  return diskTrouble(error, { what, after: 'The earlier output is as it was.', otherwise: OTHER_FOLDER })
}

function notPutBack(staging: string): string {
  return `Old and new files are mixed there now. The old ones are kept in ${staging}; draw again once the cause is gone, and they are put back first.`
}
