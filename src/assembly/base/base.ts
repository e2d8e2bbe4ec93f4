import type { ModuleSpec } from '../../project/index.ts'
import { merge, type Parts } from '../parts.ts'
import type { PlacedCut, PlacedHardware, PlacedPanel } from '../types.ts'
import { placeCasters } from './casters.ts'
import { placeFeet } from './feet.ts'
import { placePlinth } from './plinth.ts'

/** What of a module stands on its bottom or is in it already when the base comes. */
export interface OnBottom {
  readonly panels: readonly PlacedPanel[]
  readonly hardware: readonly PlacedHardware[]
  readonly cuts: readonly PlacedCut[]
  /** The clear inside that the bottom's upper face shows, module frame, mm. */
  readonly x0: number
  readonly x1: number
  readonly rear: number
}

/** What a module stands on, under its bottom; nothing where there is no bottom. */
export function placeBase(spec: ModuleSpec, bottom: PlacedPanel | undefined, on: OnBottom): Parts {
  const { base } = spec
  if (bottom === undefined) return merge([])
  switch (base.kind) {
    case 'none':
      return merge([])
    case 'casters':
      return placeCasters(spec, base, bottom, on)
    case 'plinth':
      return placePlinth(spec, base, bottom, on)
    case 'feet':
      return placeFeet(spec, base, bottom, on)
    default:
      return base satisfies never
  }
}
