/** Hidden folders of ours inside an output folder begin with this; the process's number follows. */
export const STAGING_PREFIX = '.storyrod-staging-'

/** The file that lists what a run drew. */
export const INDEX_FILE = 'panels.json'

/** Characters that part or ban a name on some system; control characters are `\p{Cc}`. */
const CONTROL_OR_FOREIGN = /[\p{Cc}\\:*?"<>|]/u

/** True for a relative path with `/` between names that stays below the folder that it is joined to, on any system. */
export function staysInside(path: string): boolean {
  if (path === '' || CONTROL_OR_FOREIGN.test(path)) return false
  return path.split('/').every((name) => name !== '' && !/[. ]$/.test(name))
}

/**
 * Throws, with the path, when one leaves the output folder, meets our own hidden folders, or is the same as
 * another (or a folder on the way to another) on a disk that takes capitals and small letters as one.
 */
export function assertOutputPaths(paths: readonly string[]): void {
  const seen = new Map<string, string>()
  for (const path of paths) {
    if (!staysInside(path)) throw new Error(`an output path leaves its folder: ${JSON.stringify(path)}`)
    if (path.startsWith(STAGING_PREFIX)) throw new Error(`an output path is one of our own folders: ${path}`)
    const folded = fold(path)
    const other = seen.get(folded)
    if (other !== undefined) throw new Error(`two output paths are one on some disks: ${other} and ${path}`)
    seen.set(folded, path)
  }
  const folders = foldersOf(paths)
  for (const folder of folders) {
    const file = seen.get(fold(folder))
    if (file !== undefined) throw new Error(`an output path is both a file and a folder: ${file}`)
  }
  const byFold = new Map<string, string>()
  for (const folder of folders) {
    const other = byFold.get(fold(folder))
    if (other !== undefined) throw new Error(`two output folders are one on some disks: ${other} and ${folder}`)
    byFold.set(fold(folder), folder)
  }
}

/** Every folder on the way to the paths, each once, outer ones before inner ones. */
export function foldersOf(paths: readonly string[]): readonly string[] {
  const folders = new Set<string>()
  for (const path of paths) {
    const names = path.split('/').slice(0, -1)
    for (let count = 1; count <= names.length; count += 1) folders.add(names.slice(0, count).join('/'))
  }
  return [...folders]
}

function fold(path: string): string {
  return path.normalize('NFC').toLowerCase()
}
