import type { PlacedCutout, PlacedPanel } from '../assembly/index.ts'
import type { Cutout } from './types.ts'

/** A cutout as its panel has it. One that goes through is cut from face A, so that the panel need not be turned over. */
export function cutoutOf(cutout: PlacedCutout, panel: PlacedPanel): Cutout {
  const through = cutout.depth === 'through'
  return {
    id: cutout.key,
    face: through ? 'A' : cutout.face,
    path: cutout.path,
    depth: cutout.depth === 'through' ? panel.thickness : cutout.depth,
    through,
    ...(cutout.notch === true && { notch: true }),
    purpose: cutout.purpose,
  }
}
