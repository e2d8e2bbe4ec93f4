import type { Disk } from './disk.ts'
import type { StopSignal } from './exit-codes.ts'

export interface Writer {
  write(text: string): void
  readonly isTTY: boolean
  /** Width of the terminal in characters, when it is one. */
  readonly columns?: number | undefined
}

/** Width of the terminal in characters, or `otherwise` when it does not say; some say 0. */
export function widthOf(writer: Writer, otherwise: number): number {
  return writer.columns === undefined || writer.columns <= 0 ? otherwise : writer.columns
}

/** Everything of the process that a command may touch. */
export interface Io {
  readonly stdout: Writer
  readonly stderr: Writer
  /** Absolute; relative paths on the command line start here. */
  readonly cwd: string
  readonly env: Readonly<Record<string, string | undefined>>
  /** Folder of the installed program: its package.json and sample definitions. */
  readonly home: string
  readonly disk: Disk
  /** Calls `listener` at each signal that asks to stop, in place of ending the process, until the result is called. */
  onStop(listener: (signal: StopSignal) => void): () => void
}
