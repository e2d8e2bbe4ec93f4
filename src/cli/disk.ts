import type { Stats } from 'node:fs'
import {
  link,
  lstat,
  mkdir,
  open,
  readdir,
  readFile,
  realpath,
  rename,
  rm,
  rmdir,
  stat,
  unlink,
} from 'node:fs/promises'
import { diskErrorCode } from './trouble.ts'

export interface Look {
  readonly kind: 'file' | 'folder' | 'link' | 'other'
  /** Bytes; means something for a file alone. */
  readonly size: number
}

/** All that the commands do to a disk, so that a test can make any step of it fail. Paths are absolute. */
export interface Disk {
  /** What stands at the path, a link taken as a link; undefined when nothing does. */
  look(path: string): Promise<Look | undefined>
  /** As `look`, but through links. */
  lookThrough(path: string): Promise<Look | undefined>
  /** The path with every link resolved. */
  real(path: string): Promise<string>
  list(folder: string): Promise<readonly string[]>
  read(path: string): Promise<Uint8Array>
  /** No more than `limit` bytes from the start; for things whose size is not known beforehand. */
  readStart(path: string, limit: number): Promise<Uint8Array>
  /** One folder; fails when something is there or when its parent is not. */
  makeFolder(path: string): Promise<void>
  /** A new file with these bytes; fails when something is there. */
  create(path: string, bytes: Uint8Array): Promise<void>
  /** Has the system bring a file's bytes to the disk itself. */
  flush(path: string): Promise<void>
  /** The same for the names in a folder, where the system can. */
  flushFolder(path: string): Promise<void>
  link(from: string, to: string): Promise<void>
  /** Moves a file, over one that is there. */
  rename(from: string, to: string): Promise<void>
  remove(file: string): Promise<void>
  /** One folder, which must be empty. */
  removeFolder(path: string): Promise<void>
  removeTree(path: string): Promise<void>
}

/** The real disk. */
export const nodeDisk: Disk = {
  look: (path) => orNothing(lstat(path)),
  lookThrough: (path) => orNothing(stat(path)),
  real: (path) => realpath(path),
  list: (folder) => readdir(folder),
  read: (path) => readFile(path),
  readStart,
  makeFolder: (path) => mkdir(path),
  create,
  flush,
  flushFolder: (path) => flush(path, 'r').catch(() => undefined),
  link,
  rename,
  remove: unlink,
  removeFolder: rmdir,
  removeTree: (path) => rm(path, { recursive: true, force: true }),
}

async function orNothing(stats: Promise<Stats>): Promise<Look | undefined> {
  try {
    return asLook(await stats)
  } catch (error) {
    const code = diskErrorCode(error)
    if (code === 'ENOENT' || code === 'ENOTDIR') return undefined
    throw error
  }
}

function asLook(stats: Stats): Look {
  const { size } = stats
  if (stats.isSymbolicLink()) return { kind: 'link', size }
  if (stats.isDirectory()) return { kind: 'folder', size }
  return { kind: stats.isFile() ? 'file' : 'other', size }
}

async function readStart(path: string, limit: number): Promise<Uint8Array> {
  const file = await open(path, 'r')
  try {
    const bytes = new Uint8Array(limit)
    let filled = 0
    while (filled < limit) {
      const { bytesRead } = await file.read(bytes, filled, limit - filled, null)
      if (bytesRead === 0) break
      filled += bytesRead
    }
    return bytes.subarray(0, filled)
  } finally {
    await file.close()
  }
}

async function create(path: string, bytes: Uint8Array): Promise<void> {
  const file = await open(path, 'wx')
  try {
    await file.writeFile(bytes)
  } finally {
    await file.close()
  }
}

async function flush(path: string, mode: 'r' | 'r+' = 'r+'): Promise<void> {
  const file = await open(path, mode)
  try {
    await file.sync()
  } finally {
    await file.close()
  }
}
