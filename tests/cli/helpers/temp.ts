import {
  chmodSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterEach } from 'vitest'

const made: string[] = []

afterEach(() => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true })
})

/** A new empty folder, taken away after the test. Open to every user, for tests that give up root's rights. */
export function tempFolder(): string {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'storyrod-test-')))
  chmodSync(folder, 0o755)
  made.push(folder)
  return folder
}

/** Writes files given by path below `folder`. */
export function fill(folder: string, files: Readonly<Record<string, string | Uint8Array>>): void {
  for (const [path, content] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true })
    writeFileSync(join(folder, path), content)
  }
}

/** Everything below a folder, hidden things too: folders as `folder`, links as `link`, files as their text. */
export function tree(folder: string): Record<string, string> {
  const found: Record<string, string> = {}
  for (const name of readdirSync(folder).sort()) {
    const path = join(folder, name)
    const stats = lstatSync(path)
    if (stats.isDirectory()) {
      found[name] = 'folder'
      for (const [below, what] of Object.entries(tree(path))) found[`${name}/${below}`] = what
    } else {
      found[name] = stats.isSymbolicLink() ? 'link' : readFileSync(path, 'utf8')
    }
  }
  return found
}

/** As `tree`, with each file's time of change, so that a file written again with the same text shows. */
export function treeWithTimes(folder: string): Record<string, string> {
  const entries = Object.entries(tree(folder)).map(([path, what]) => {
    const stats = lstatSync(join(folder, path))
    return [path, stats.isFile() ? `${stats.mtimeMs} ${what}` : what]
  })
  return Object.fromEntries(entries)
}
