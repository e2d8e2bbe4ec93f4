import { basename, dirname, resolve } from 'node:path'
import type { Disk } from './disk.ts'
import { EXIT } from './exit-codes.ts'
import type { Io } from './io.ts'
import { orTrouble, Trouble } from './trouble.ts'

/** How many definitions are named to a person whose own was not found. */
const NEIGHBOURS_SHOWN = 6

/**
 * The text of a definition; `named` is its path as the person gave it.
 * Trouble with exit code 2 when it is not there, is a folder, is too large or is not UTF-8; 3 when the disk refuses.
 */
export async function readDefinitionFile(io: Pick<Io, 'disk' | 'cwd'>, named: string): Promise<string> {
  const { DEFINITION_LIMIT } = await definitionRules()
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
  if (look.size > DEFINITION_LIMIT) throw await tooLarge(named)
  // One byte more than allowed tells a pipe that is too long from one that just fits.
  const bytes = await orTrouble(`read the definition ${named}`, () => io.disk.readStart(path, DEFINITION_LIMIT + 1))
  if (bytes.length > DEFINITION_LIMIT) throw await tooLarge(named)
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
  const { DEFINITION_LIMIT } = await definitionRules()
  return orTrouble(`read ${name}, which ${definition} names`, async () => {
    const look = await io.disk.lookThrough(path)
    if (look?.kind !== 'file' || look.size > DEFINITION_LIMIT) return undefined
    return decode(await io.disk.readStart(path, DEFINITION_LIMIT), name, 'file')
  })
}

/** The name of a definition without folder and customary ending. */
export async function stemOf(path: string): Promise<string> {
  return (await definitionRules()).stemOf(basename(path))
}

/** What holds for the file of a definition, here and in the page; loaded when it is asked for, as all stages are. */
const definitionRules = () => import('../project/index.ts')

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

async function tooLarge(named: string): Promise<Trouble> {
  return new Trouble(EXIT.badInput, (await definitionRules()).tooLargeWords(named))
}

async function decode(bytes: Uint8Array, named: string, what: 'definition' | 'file'): Promise<string> {
  const decoded = (await definitionRules()).decodeText(bytes, named, what)
  if (!decoded.ok) throw new Trouble(EXIT.badInput, decoded.words)
  return decoded.text
}
