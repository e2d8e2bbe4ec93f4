import type { PlacedCut, PlacedPanel } from '../assembly/index.ts'
import { type Box, NOISE_MM, placeBack, type Vec3 } from '../geometry/index.ts'
import type { Groove } from './types.ts'

/** A cut of the module seen in its panel's frame. Throws when it opens on neither face: our own mistake. */
export function grooveOf(cut: PlacedCut, panel: PlacedPanel, number: number): Groove {
  const box = boxBack(cut.box, (p) => placeBack(panel.moduleFromPanel, p))
  const onA = Math.abs(box.max[2]) <= NOISE_MM
  const onB = Math.abs(box.min[2] + panel.thickness) <= NOISE_MM
  if (!onA && !onB)
    throw new Error(`${cut.kind} in ${panel.id} lies between its faces: z ${box.min[2]} to ${box.max[2]}`)
  return {
    id: `${cut.kind}-${number}`,
    kind: cut.kind,
    face: onA ? 'A' : 'B',
    min: [box.min[0], box.min[1]],
    max: [box.max[0], box.max[1]],
    depth: box.max[2] - box.min[2],
    roundEnds: cut.roundEnds,
    purpose: cut.purpose,
  }
}

function boxBack(box: Box, back: (p: Vec3) => Vec3): Box {
  const a = back(box.min)
  const b = back(box.max)
  return {
    min: [Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.min(a[2], b[2])],
    max: [Math.max(a[0], b[0]), Math.max(a[1], b[1]), Math.max(a[2], b[2])],
  }
}
