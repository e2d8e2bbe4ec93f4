import { CommanderError } from 'commander'
import type { Engine } from './engine.ts'
import { EXIT, STOP_SIGNALS } from './exit-codes.ts'
import type { Io } from './io.ts'
import { describeFault } from './our-fault.ts'
import { buildProgram } from './program.ts'
import { progressOn } from './progress.ts'
import { Stopped, Trouble } from './trouble.ts'

/**
 * Runs one command line, `argv` without the program's own name. Prints through `io` and returns the exit code;
 * never throws and never ends the process.
 */
export async function runCli(argv: readonly string[], io: Io, engine: Engine): Promise<number> {
  const progress = progressOn(io)
  let code: number = EXIT.done
  try {
    const program = await buildProgram({ io, engine, progress }, (result) => {
      code = result
    })
    await program.parseAsync([...argv], { from: 'user' })
    return code
  } catch (error) {
    progress.clear()
    return explain(error, io)
  }
}

/** Says what went wrong, and gives the exit code for it. */
function explain(error: unknown, io: Io): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.done : EXIT.badInput
  if (error instanceof Trouble) {
    io.stderr.write(`storyrod: ${error.message}\n`)
    return error.exitCode
  }
  if (error instanceof Stopped) {
    io.stderr.write('storyrod: stopped; the earlier output is as it was.\n')
    return STOP_SIGNALS[error.signal]
  }
  io.stderr.write(describeFault(error, io.env))
  return EXIT.ourFault
}
