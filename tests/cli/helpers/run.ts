import { fileURLToPath } from 'node:url'
import type { Disk } from '../../../src/cli/disk.ts'
import { nodeDisk } from '../../../src/cli/disk.ts'
import type { StopSignal } from '../../../src/cli/exit-codes.ts'
import type { Engine, Io } from '../../../src/cli/index.ts'
import { runCli } from '../../../src/cli/index.ts'
import { fakeEngine } from './fake-engine.ts'

export interface RunOptions {
  readonly engine?: Engine
  readonly disk?: Disk
  readonly env?: Readonly<Record<string, string | undefined>>
  /** The terminal's width, when stdout and stderr are one. */
  readonly terminal?: number
  readonly home?: string
  /** Handed a function that acts as a signal that asks to stop. */
  readonly signals?: (send: (signal: StopSignal) => void) => void
}

export interface Ran {
  readonly code: number
  readonly out: string
  readonly err: string
}

const REPOSITORY = fileURLToPath(new URL('../../../', import.meta.url))

/** Runs a command line inside this process. */
export async function run(cwd: string, argv: readonly string[], options: RunOptions = {}): Promise<Ran> {
  const printed = { out: '', err: '' }
  const listeners = new Set<(signal: StopSignal) => void>()
  options.signals?.((signal) => {
    for (const listener of listeners) listener(signal)
  })
  const terminal = { isTTY: options.terminal !== undefined, columns: options.terminal }
  const io: Io = {
    stdout: {
      ...terminal,
      write(text) {
        printed.out += text
      },
    },
    stderr: {
      ...terminal,
      write(text) {
        printed.err += text
      },
    },
    cwd,
    env: options.env ?? {},
    home: options.home ?? REPOSITORY,
    disk: options.disk ?? nodeDisk,
    onStop(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
  }
  const code = await runCli(argv, io, options.engine ?? fakeEngine())
  return { code, ...printed }
}
