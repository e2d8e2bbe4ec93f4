import { resolve } from 'node:path'
import type { Context } from './context.ts'
import { EXIT } from './exit-codes.ts'
import { diskErrorCode, diskTrouble, Trouble } from './trouble.ts'

/** `storyrod new`: writes a commented definition where there is no file yet. The exit code. */
export async function newDefinition({ io, engine }: Context, definition: string): Promise<number> {
  if (definition === '') throw new Trouble(EXIT.badInput, 'the name of the definition is empty.')
  const bytes = new TextEncoder().encode(await engine.starter())
  const path = resolve(io.cwd, definition)
  try {
    await io.disk.create(path, bytes)
  } catch (error) {
    if (diskErrorCode(error) === 'EEXIST') throw alreadyThere(definition)
    await removePart(io, path, bytes)
    throw diskTrouble(error, {
      what: `write ${definition}`,
      after: 'Nothing was written.',
      otherwise: 'name another place',
    })
  }
  io.stdout.write(`Wrote ${definition}. Change it to your sizes, then: ${callOf(io.env, 'check')} ${definition}\n`)
  return EXIT.done
}

/** How the person calls a command: through the project's npm scripts, or the installed program. */
function callOf(env: Context['io']['env'], command: string): string {
  return env.npm_lifecycle_event === 'new' ? `npm run ${command} --` : `storyrod ${command}`
}

function alreadyThere(definition: string): Trouble {
  const words = `${definition} is there already, and is left as it is.`
  return new Trouble(EXIT.badInput, `${words}\n  Give another name, or move it away first.`)
}

/** Takes away what a full disk left of our file; never a file that does not begin as ours does. */
async function removePart({ disk }: Context['io'], path: string, bytes: Uint8Array): Promise<void> {
  try {
    const look = await disk.look(path)
    if (look?.kind !== 'file' || look.size >= bytes.length) return
    const part = await disk.read(path)
    if (Buffer.compare(part, bytes.subarray(0, part.length)) === 0) await disk.remove(path)
  } catch {
    // What cannot be looked at is left.
  }
}
