import type { Engine } from './engine.ts'
import type { Io } from './io.ts'
import type { Progress } from './progress.ts'

/** What every command is given. */
export interface Context {
  readonly io: Io
  readonly engine: Engine
  readonly progress: Progress
}
