import { Kept } from '../memory/index.ts'
import type { Chunk } from './chunks.ts'
import type { ProjectHardware } from './project-hardware.ts'
import type { Contour } from './svg/contour.ts'
import type { DefinitionPath, FindingSpec, ModuleSpec, RowSpec, Stock } from './types.ts'

/** What all modules depend on besides what they say themselves. */
export interface Surroundings {
  readonly stocks: ReadonlyMap<string, Stock | undefined>
  readonly hardware: ProjectHardware
}

/** A module as it is read by itself. */
export interface ReadModule {
  readonly spec: ModuleSpec | undefined
  /** Its sizes that are to be as large as fits. */
  readonly fits: readonly DefinitionPath[]
}

/**
 * What was read of the last definition without a problem, by what it was made of: what is the same in the next is taken
 * from it. Nothing of a definition with problems is kept, since they stand at places of its text.
 */
export class ReadMemory {
  readonly chunks = new Kept<Chunk | undefined>()
  readonly surroundings = new Kept<Surroundings>()
  readonly modules = new Kept<ReadModule>()
  readonly contours = new Kept<Contour>()
  readonly specs = new Kept<ModuleSpec>()
  readonly rows = new Kept<RowSpec>()
  readonly findings = new Kept<FindingSpec>()
  /** Modules that can be built. */
  readonly buildable = new Kept<true>()
  /** Groups and lists of data that fit their places in the schema. */
  readonly fitting = new WeakSet<object>()
  /** The same of the sizes that were tried for those that are as large as fits. */
  private sized: ReadMemory | undefined

  /** The memory for sizes that are tried: each is begun with and settled by itself. */
  get tried(): ReadMemory {
    this.sized ??= new ReadMemory()
    return this.sized
  }

  private get all(): readonly Kept<unknown>[] {
    const { chunks, surroundings, modules, contours, specs, rows, findings, buildable } = this
    return [chunks, surroundings, modules, contours, specs, rows, findings, buildable]
  }

  /** Begins with the next definition. */
  begin(): void {
    for (const kept of this.all) kept.begin()
  }

  /** Keeps what was read of it, which had no problem. */
  settle(): void {
    for (const kept of this.all) kept.settle()
  }
}
