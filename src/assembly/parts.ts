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
    panels: together(parts.map((part) => part.panels)),
    cuts: together(parts.map((part) => part.cuts)),
    cutouts: together(parts.map((part) => part.cutouts)),
    hardware: together(parts.map((part) => part.hardware)),
    troubles: together(parts.map((part) => part.troubles)),
  }
}

/** Some lists as one: the only one that has anything in it as it is, since lists are never changed. */
function together<T>(lists: readonly (readonly T[] | undefined)[]): readonly T[] {
  let only: readonly T[] = []
  let all: T[] | undefined
  for (const list of lists) {
    if (list === undefined || list.length === 0) continue
    if (all === undefined && only.length === 0) only = list
    else {
      all ??= [...only]
      for (const item of list) all.push(item)
    }
  }
  return all ?? only
}
