import { join } from 'node:path'
import type { Disk } from './disk.ts'
import { INDEX_FILE, staysInside } from './output-paths.ts'

/** How many file names a warning lists before it only counts. */
const NAMES_SHOWN = 5

/**
 * The files that an earlier run listed in its index, to be asked for before this run replaces that index. Empty when
 * there is no index that can be read: it may be a file of someone else's.
 */
export async function filesOfEarlierRun(disk: Disk, folder: string): Promise<readonly string[]> {
  try {
    const index: unknown = JSON.parse(new TextDecoder().decode(await disk.read(join(folder, INDEX_FILE))))
    if (typeof index !== 'object' || index === null || !('files' in index) || !Array.isArray(index.files)) return []
    return index.files.filter((path): path is string => typeof path === 'string' && staysInside(path))
  } catch {
    return []
  }
}

/**
 * Files in the output folder that look as if they belonged to this run and do not: those of an earlier run, and any
 * other in the run's own folders (`svg`, `dxf`, …), since the index of a still earlier run is gone by now. Sorted.
 */
export async function findStrangers(
  disk: Disk,
  folder: string,
  paths: readonly string[],
  earlier: readonly string[],
): Promise<readonly string[]> {
  const ours = new Set(paths)
  const found = new Set<string>()
  for (const path of earlier) {
    if (!ours.has(path) && (await isFile(disk, join(folder, path)))) found.add(path)
  }
  const tops = new Set(paths.filter((path) => path.includes('/')).map((path) => path.slice(0, path.indexOf('/'))))
  for (const top of tops) {
    for (const path of await filesBelow(disk, folder, top)) if (!ours.has(path)) found.add(path)
  }
  return [...found].sort()
}

/** The warning about such files; empty when there are none. */
export function renderStrangers(folder: string, strangers: readonly string[]): string {
  if (strangers.length === 0) return ''
  const shown = strangers.slice(0, NAMES_SHOWN).join(', ')
  const rest = strangers.length > NAMES_SHOWN ? ` and ${strangers.length - NAMES_SHOWN} more` : ''
  const what = strangers.length === 1 ? '1 file is' : `${strangers.length} files are`
  return `Warning: ${what} in ${folder} that this run did not draw, left as found: ${shown}${rest}. Delete what is out of date, or an old template may be drilled by mistake.\n`
}

async function isFile(disk: Disk, path: string): Promise<boolean> {
  const look = await disk.look(path).catch(() => undefined)
  return look?.kind === 'file'
}

/** Paths of the files under `folder/inside`; hidden names and links are passed over, and so is what cannot be read. */
async function filesBelow(disk: Disk, folder: string, inside: string): Promise<readonly string[]> {
  const found: string[] = []
  const names = await disk.list(join(folder, inside)).catch(() => [])
  for (const name of names.filter((each) => !each.startsWith('.'))) {
    const path = `${inside}/${name}`
    const look = await disk.look(join(folder, path)).catch(() => undefined)
    if (look?.kind === 'file') found.push(path)
    if (look?.kind === 'folder') found.push(...(await filesBelow(disk, folder, path)))
  }
  return found
}
