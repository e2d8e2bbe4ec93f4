import type { PlacedCut, PlacedHardware, PlacedPanel, PlacingTrouble } from './types.ts'

/** What one concern of a module adds to it. */
export interface Parts {
  readonly panels: readonly PlacedPanel[]
  readonly cuts: readonly PlacedCut[]
  readonly hardware: readonly PlacedHardware[]
  readonly troubles: readonly PlacingTrouble[]
}

/** All parts together, in the order given. */
export function merge(parts: readonly Parts[]): Parts {
  return {
    panels: parts.flatMap((part) => part.panels),
    cuts: parts.flatMap((part) => part.cuts),
    hardware: parts.flatMap((part) => part.hardware),
    troubles: parts.flatMap((part) => part.troubles),
  }
}
