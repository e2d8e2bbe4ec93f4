import { type Box, NOISE_MM, placeBack } from '../../geometry/index.ts'
import type { Edit, Overhang } from '../../project/index.ts'
import { boardBox } from '../boards.ts'
import { typed } from '../floor/index.ts'
import type { PlacedModule, PlacedPanel } from '../types.ts'

/** A top with less overhang at one side. */
export interface LessOverhang {
  readonly side: keyof Overhang
  /** What is left of it there, mm. */
  readonly overhang: number
  readonly change: readonly Edit[]
}

/**
 * The side at which a top must lose the least overhang to be clear of a box (floor frame, mm) that it reaches into; nothing
 * where no overhang alone is in the way. A machine top is left to its own figures.
 */
export function lessOverhang(module: PlacedModule, top: PlacedPanel, shared: Box): LessOverhang | undefined {
  if (top.role !== 'worktop') return undefined
  const { min, max } = boardBox(top)
  const overhang: Overhang = {
    left: -min[0],
    right: max[0] - module.size.width,
    front: -min[1],
    back: max[1] - module.size.depth,
  }
  const [a, b] = [placeBack(module.floorFromModule, shared.min), placeBack(module.floorFromModule, shared.max)]
  // How much must go at each side for the top to end before the box.
  const off: Overhang = {
    left: Math.max(a[0], b[0]) - min[0],
    right: max[0] - Math.min(a[0], b[0]),
    front: Math.max(a[1], b[1]) - min[1],
    back: max[1] - Math.min(a[1], b[1]),
  }
  const sides = (['left', 'right', 'front', 'back'] as const).filter((side) => off[side] <= overhang[side] + NOISE_MM)
  const side = sides.sort((one, other) => off[one] - off[other])[0]
  if (side === undefined) return undefined
  const left = Math.max(0, overhang[side] - off[side])
  // A worktop of a module may stand under `common`: the edit is made for this module.
  const path = module.liesOver === undefined ? [...module.at, 'worktop'] : top.at
  const asked = { ...overhang, [side]: left }
  const value = {
    left: typed(asked.left),
    right: typed(asked.right),
    front: typed(asked.front),
    back: typed(asked.back),
  }
  return { side, overhang: left, change: [{ path: [...path, 'overhang'], value }] }
}
