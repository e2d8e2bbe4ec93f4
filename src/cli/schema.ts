import type { Context } from './context.ts'
import { EXIT } from './exit-codes.ts'

/** `storyrod schema`: prints the JSON Schema of definitions. The exit code. */
export async function schema({ io, engine }: Context): Promise<number> {
  io.stdout.write(`${JSON.stringify(await engine.schema(), null, 2)}\n`)
  return EXIT.done
}
