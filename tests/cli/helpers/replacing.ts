import { utimesSync } from 'node:fs'
import { join } from 'node:path'
import type { Disk } from '../../../src/cli/disk.ts'
import type { Replaced } from '../../../src/cli/replace-output.ts'
import { replaceOutput } from '../../../src/cli/replace-output.ts'
import type { StopRequest } from '../../../src/cli/stop-request.ts'
import { handOut } from './fake-engine.ts'
import { fill, tempFolder, tree } from './temp.ts'

export const OLD = {
  'svg/a/left-a.svg': 'old left',
  'svg/a/right-a.svg': 'the same in both',
  'panels.json': 'old index',
}
export const FOREIGN = { 'notes.txt': 'mine', 'svg/a/mine.txt': 'mine too' }
export const NEW = {
  'svg/a/left-a.svg': 'new left',
  'svg/a/right-a.svg': 'the same in both',
  'svg/b/door-a.svg': 'new door',
  'dxf/b/door-a.dxf': 'new door',
  'panels.json': 'new index',
}

export interface Extra {
  readonly files?: Readonly<Record<string, string>>
  readonly stop?: StopRequest
  readonly before?: (path: string) => void
}

/** Draws NEW, or other files, into the folder. */
export function replace(disk: Disk, folder: string, extra: Extra = {}): Promise<Replaced> {
  const files = extra.files ?? NEW
  return replaceOutput(disk, {
    folder,
    paths: Object.keys(files),
    files: () => handOut(files, extra.before),
    onFile: () => undefined,
    stop: extra.stop ?? { asked: undefined },
  })
}

/** A folder with an earlier output and files of someone else, times long past. */
export function earlier(): string {
  const folder = tempFolder()
  fill(folder, { ...OLD, ...FOREIGN })
  for (const path of Object.keys({ ...OLD, ...FOREIGN })) utimesSync(join(folder, path), 1000, 1000)
  return folder
}

/** Files alone, without the entries for folders. */
export function filesIn(folder: string): Record<string, string> {
  return Object.fromEntries(Object.entries(tree(folder)).filter(([, what]) => what !== 'folder'))
}
