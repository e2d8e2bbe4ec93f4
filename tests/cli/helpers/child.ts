import type { ChildProcess, SpawnOptions } from 'node:child_process'
import { spawn } from 'node:child_process'
import { fileURLToPath } from 'node:url'

const TSX = import.meta.resolve('tsx')
export const BIN = fileURLToPath(new URL('../../../src/cli/bin.ts', import.meta.url))
export const SLOW = fileURLToPath(new URL('./slow-program.ts', import.meta.url))

export interface Ended {
  readonly code: number | null
  readonly signal: NodeJS.Signals | null
  readonly out: string
  readonly err: string
}

export interface Child {
  readonly process: ChildProcess
  /** Resolves once stdout holds the text. Fails when the child ends before. */
  printed(text: string): Promise<void>
  readonly ended: Promise<Ended>
}

/** Starts a TypeScript program as a process of its own, without a terminal. */
export function start(script: string, argv: readonly string[], options: SpawnOptions): Child {
  const child = spawn(process.execPath, ['--import', TSX, script, ...argv], {
    stdio: ['ignore', 'pipe', 'pipe'],
    ...options,
  })
  const text = { out: '', err: '' }
  const waiting = new Set<() => void>()
  child.stdout?.on('data', (chunk) => {
    text.out += chunk
    for (const look of waiting) look()
  })
  child.stderr?.on('data', (chunk) => {
    text.err += chunk
  })
  const ended = new Promise<Ended>((resolve, reject) => {
    child.once('error', reject)
    child.once('close', (code, signal) => resolve({ code, signal, ...text }))
  })
  const printed = (wanted: string) =>
    new Promise<void>((resolve, reject) => {
      const look = () => (text.out.includes(wanted) ? resolve() : undefined)
      waiting.add(look)
      look()
      ended.then(() => reject(new Error(`ended without printing ${wanted}: ${text.out}${text.err}`)), reject)
    })
  return { process: child, printed, ended }
}
