import type { PlacedCut, PlacedCutout, PlacedHardware, PlacedPanel, PlacingTrouble } from './types.ts'

/** What one concern of a module adds to it. */
export interface Parts {
  readonly panels: readonly PlacedPanel[]
  readonly cuts: readonly PlacedCut[]
  readonly cutouts: readonly PlacedCutout[]
  readonly hardware: readonly PlacedHardware[]
  readonly troubles: readonly PlacingTrouble[]
}

const NOTHING: Parts = { panels: [], cuts: [], cutouts: [], hardware: [], troubles: [] }

/** The parts that are given, and nothing of the other kinds. */
export function partsOf(some: Partial<Parts>): Parts {
  return { ...NOTHING, ...some }
}

/** All parts together, in the order given. */
export function merge(parts: readonly Partial<Parts>[]): Parts {
  return {
    panels: parts.flatMap((part) => part.panels ?? []),
    cuts: parts.flatMap((part) => part.cuts ?? []),
    cutouts: parts.flatMap((part) => part.cutouts ?? []),
    hardware: parts.flatMap((part) => part.hardware ?? []),
    troubles: parts.flatMap((part) => part.troubles ?? []),
  }
}
