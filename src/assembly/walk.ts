import type { Bay, ModuleSpec } from '../project/index.ts'
import type { TakenPlates } from './fronts/index.ts'
import type { Parts } from './parts.ts'
import type { PlacedPanel } from './types.ts'

/** Running numbers of a module's inner parts, so that each has a name of its own; lives as long as one call of `inside`. */
export interface Walk {
  readonly spec: ModuleSpec
  readonly sidesFoot: number
  /** How many doors or pairs of doors there are, and how many flaps. */
  readonly fronts: number
  readonly flaps: number
  readonly next: {
    partition: number
    fixedShelf: number
    shelf: number
    pins: number
    front: number
    flap: number
    frontPanel: number
    drawer: number
  }
  /** Bays whose drawers stand in their place. */
  readonly drawersPlaced: Set<Bay>
  readonly panels: Map<string, PlacedPanel>
  /** The shell with its joints, as it stands before the inside is filled. */
  readonly shell: Parts
  /** Hinge plates placed so far, so that a door keeps clear of those on the far face of its wall. */
  readonly plates: TakenPlates
}
