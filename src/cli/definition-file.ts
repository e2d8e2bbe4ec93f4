import { basename, dirname, extname, resolve } from 'node:path'
import type { Disk } from './disk.ts'
import { EXIT } from './exit-codes.ts'
import type { Io } from './io.ts'
import { orTrouble, Trouble } from './trouble.ts'

/** Size limit of a definition, bytes. */
export const DEFINITION_LIMIT = 4 * 1024 * 1024

/** Endings that a definition has by custom, dropped to name its drawings. */
const ENDINGS = ['.yaml', '.yml', '.json']
/** How many definitions are named to a person whose own was not found. */
const NEIGHBOURS_SHOWN = 6

/**
 * The text of a definition; `named` is its path as the person gave it.
 * Trouble with exit code 2 when it is not there, is a folder, is too large or is not UTF-8; 3 when the disk refuses.
 */
export async function readDefinitionFile(io: Pick<Io, 'disk' | 'cwd'>, named: string): Promise<string> {
  if (named === '') throw new Trouble(EXIT.badInput, 'the name of the definition is empty.')
  const path = resolve(io.cwd, named)
  const look = await orTrouble(`read the definition ${named}`, () => io.disk.lookThrough(path))
  if (look === undefined) throw await notThere(io.disk, path, named)
  if (look.kind === 'folder') {
    throw new Trouble(
      EXIT.badInput,
      `${named} is a folder; a definition is one file.${await neighbours(io.disk, path)}`,
    )
  }
  if (look.size > DEFINITION_LIMIT) throw tooLarge(named)
  // One byte more than allowed tells a pipe that is too long from one that just fits.
  const bytes = await orTrouble(`read the definition ${named}`, () => io.disk.readStart(path, DEFINITION_LIMIT + 1))
  if (bytes.length > DEFINITION_LIMIT) throw tooLarge(named)
  return decode(bytes, named, 'definition')
}

/**
 * The text of a file that a definition names, found from the definition's own folder; nothing when it is not there, is a
 * folder, or is larger than a definition may be. Trouble with exit code 3 when the disk refuses, 2 when it is not UTF-8.
 */
export async function readNamedFile(
  io: Pick<Io, 'disk' | 'cwd'>,
  definition: string,
  name: string,
): Promise<string | undefined> {
  const path = resolve(dirname(resolve(io.cwd, definition)), name)
  return orTrouble(`read ${name}, which ${definition} names`, async () => {
    const look = await io.disk.lookThrough(path)
    if (look?.kind !== 'file' || look.size > DEFINITION_LIMIT) return undefined
    return decode(await io.disk.readStart(path, DEFINITION_LIMIT), name, 'file')
  })
}

/** The name of a definition without folder and customary ending. */
export function stemOf(path: string): string {
  const ending = extname(path).toLowerCase()
  return ENDINGS.includes(ending) ? basename(path).slice(0, -ending.length) : basename(path)
}

/** Names of the files in a folder that end as definitions do, sorted; none when it cannot be read. */
export async function definitionsIn(disk: Disk, folder: string): Promise<readonly string[]> {
  const names = await disk.list(folder).catch(() => [])
  return names.filter((name) => /\.ya?ml$/i.test(name) && !name.startsWith('.')).sort()
}

async function notThere(disk: Disk, path: string, named: string): Promise<Trouble> {
  const folder = dirname(path)
  const look = await disk.lookThrough(folder).catch(() => undefined)
  const where = look?.kind === 'folder' ? await neighbours(disk, folder) : `\n  There is no folder ${folder} either.`
  return new Trouble(EXIT.badInput, `there is no definition ${named}.${where}`)
}

async function neighbours(disk: Disk, folder: string): Promise<string> {
  const names = await definitionsIn(disk, folder)
  if (names.length === 0) return `\n  No .yaml file is in ${folder}; "storyrod new" writes one to start from.`
  const more = names.length > NEIGHBOURS_SHOWN ? ', …' : ''
  return `\n  In ${folder} there are: ${names.slice(0, NEIGHBOURS_SHOWN).join(', ')}${more}`
}

function tooLarge(named: string): Trouble {
  const words = `the definition ${named} is larger than 4 MiB (${DEFINITION_LIMIT} bytes), the most that is read.`
  return new Trouble(EXIT.badInput, `${words}\n  Is it a definition? Split a very large workshop into several files.`)
}

function decode(bytes: Uint8Array, named: string, what: 'definition' | 'file'): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch (error) {
    const words = `the ${what} ${named} is not UTF-8 text: ${firstBad(bytes)}`
    throw new Trouble(EXIT.badInput, `${words}\n  Save it as UTF-8 in your editor.`, error)
  }
}

/** Where and what the first byte is that no UTF-8 text has there; a byte order mark of UTF-16 is told as what it is. */
function firstBad(bytes: Uint8Array): string {
  const [first, second] = bytes
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) return 'it looks like UTF-16.'
  // A streaming decoder holds back an unfinished character, so the bad byte is the one at which it throws.
  const decoder = new TextDecoder('utf-8', { fatal: true })
  let line = 1
  for (const byte of bytes) {
    try {
      decoder.decode(Uint8Array.of(byte), { stream: true })
    } catch {
      return `line ${line} has the byte ${byte.toString(16).padStart(2, '0')} where it makes no character.`
    }
    if (byte === 0x0a) line += 1
  }
  return `it ends within a character, in line ${line}.`
}
