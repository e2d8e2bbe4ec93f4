import type { ModuleSpec } from '../project/index.ts'
import type { PlacedPanel } from './types.ts'

/** Running numbers of a module's inner parts, so that each has a name of its own; lives as long as one call of `inside`. */
export interface Walk {
  readonly spec: ModuleSpec
  readonly sidesFoot: number
  readonly fronts: number
  readonly next: { partition: number; fixedShelf: number; shelf: number; pins: number; front: number }
  readonly panels: Map<string, PlacedPanel>
}
