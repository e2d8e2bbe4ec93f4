import { dirname, join } from 'node:path'
import type { Disk } from './disk.ts'
import { EXIT } from './exit-codes.ts'
import { foldersOf } from './output-paths.ts'
import { diskTrouble, OTHER_FOLDER, orTrouble, Trouble } from './trouble.ts'

/** Makes `folder` with its parents and says which were made, outer ones first. On failure none of them stays. */
export async function makeFolders(disk: Disk, folder: string): Promise<readonly string[]> {
  const made: string[] = []
  try {
    for (const path of await missingParts(disk, folder)) {
      await disk.makeFolder(path)
      made.push(path)
    }
  } catch (error) {
    await removeFolders(disk, made)
    throw diskTrouble(error, { what: `make the folder ${folder}`, otherwise: OTHER_FOLDER })
  }
  return made
}

/** Takes away folders that `makeFolders` made, as far as they are empty. */
export async function removeFolders(disk: Disk, made: readonly string[]): Promise<void> {
  for (const path of made.toReversed()) await disk.removeFolder(path).catch(() => undefined)
}

/** The folder and those of its parents that are not there, outer ones first. Trouble when a file is in the way. */
async function missingParts(disk: Disk, folder: string): Promise<readonly string[]> {
  const missing: string[] = []
  for (let path = folder; ; path = dirname(path)) {
    const look = await disk.lookThrough(path)
    if (look?.kind === 'folder') return missing.toReversed()
    if (look !== undefined) throw inTheWay(path, 'a file')
    if ((await disk.look(path)) !== undefined) throw inTheWay(path, 'a link to nothing')
    if (path === dirname(path)) return missing.toReversed()
    missing.push(path)
  }
}

function inTheWay(path: string, what: string): Trouble {
  const words = `could not make the folder ${path}: ${what} of that name is in the way.`
  return new Trouble(EXIT.diskTrouble, `${words}\n  Move it away, or ${OTHER_FOLDER}.`)
}

/**
 * Trouble unless every one of the output paths can be put under `root` without passing through a link and
 * without a folder or device where a file must go. Links are refused wherever they lead: what is written
 * must be found in the folder that was named, and nowhere else.
 */
export async function assertPlaces(disk: Disk, root: string, paths: readonly string[]): Promise<void> {
  for (const folder of foldersOf(paths)) {
    const look = await lookAt(disk, join(root, folder))
    if (look === undefined || look.kind === 'folder') continue
    throw refuse(root, folder, look.kind === 'link' ? 'is a link to another place' : 'is a file, and a folder must be')
  }
  for (const path of paths) {
    const look = await lookAt(disk, join(root, path))
    if (look === undefined || look.kind === 'file') continue
    throw refuse(root, path, look.kind === 'folder' ? 'is a folder, and a file must be' : 'is a link or a device')
  }
}

function lookAt(disk: Disk, path: string) {
  return orTrouble(`look at ${path}`, () => disk.look(path))
}

function refuse(root: string, path: string, what: string): Trouble {
  const words = `could not draw into ${root}: ${path} ${what} there.\n  Nothing was changed.`
  return new Trouble(EXIT.diskTrouble, `${words}\n  Move it away, or ${OTHER_FOLDER}.`)
}
