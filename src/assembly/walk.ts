import type { Bay, ModuleSpec } from '../project/index.ts'
import type { PlacedPanel } from './types.ts'

/** Running numbers of a module's inner parts, so that each has a name of its own; lives as long as one call of `inside`. */
export interface Walk {
  readonly spec: ModuleSpec
  readonly sidesFoot: number
  readonly fronts: number
  readonly next: { partition: number; fixedShelf: number; shelf: number; pins: number; front: number; drawer: number }
  /** Bays whose drawers stand in their place. */
  readonly drawersPlaced: Set<Bay>
  readonly panels: Map<string, PlacedPanel>
}
