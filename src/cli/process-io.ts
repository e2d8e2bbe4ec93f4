import { fileURLToPath } from 'node:url'
import { nodeDisk } from './disk.ts'
import type { StopSignal } from './exit-codes.ts'
import { EXIT, STOP_SIGNALS } from './exit-codes.ts'
import type { Io, Writer } from './io.ts'
import { describeFault } from './our-fault.ts'

/** The running process as the commands see it. */
export function processIo(): Io {
  const stderr = writerOf(process.stderr)
  process.once('uncaughtException', (error) => {
    stderr.write(describeFault(error, process.env))
    process.exit(EXIT.ourFault)
  })
  return {
    stdout: writerOf(process.stdout),
    stderr,
    cwd: process.cwd(),
    env: process.env,
    // Two folders up from src/cli and from dist/cli alike.
    home: fileURLToPath(new URL('../../', import.meta.url)),
    disk: nodeDisk,
    onStop,
  }
}

function writerOf(stream: NodeJS.WriteStream): Writer {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    // A reader that has gone away (`storyrod schema | head`) takes nothing from the work: the files still get drawn.
    if (error.code !== 'EPIPE') outputLost(stream, error)
  })
  return {
    write: (text) => void stream.write(text),
    isTTY: stream.isTTY === true,
    get columns() {
      return stream.columns
    },
  }
}

/** What was printed into a file is not all there: a full disk, as a rule. */
function outputLost(stream: NodeJS.WriteStream, error: Error): void {
  if (stream === process.stdout) process.stderr.write(`storyrod: could not print everything: ${error.message}\n`)
  process.once('exit', (code) => {
    if (code === EXIT.done) process.exitCode = EXIT.diskTrouble
  })
}

function onStop(listener: (signal: StopSignal) => void): () => void {
  const signals = Object.keys(STOP_SIGNALS) as StopSignal[]
  for (const signal of signals) process.on(signal, listener)
  return () => {
    for (const signal of signals) process.off(signal, listener)
  }
}
