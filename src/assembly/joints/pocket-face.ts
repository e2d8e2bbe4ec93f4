import { scale, type Vec3 } from '../../geometry/index.ts'
import { boardBox, thicknessAxis } from '../boards.ts'
import type { PanelRole, PlacedPanel } from '../types.ts'

/** Boards whose face B is seen from outside the module, or lies against the back. */
const POCKETS_ON_A: readonly PanelRole[] = [
  'left side',
  'right side',
  'front stretcher',
  'rear stretcher',
  'plinth front',
  'plinth back',
  'plinth left side',
  'plinth right side',
]

/** The face that takes pockets and cams, by its outward direction: where they show least, inside for sides, else face B. */
export function pocketFace(tip: PlacedPanel): Vec3 {
  const inside = POCKETS_ON_A.includes(tip.role)
  return inside ? tip.moduleFromPanel.z : scale(tip.moduleFromPanel.z, -1)
}

/** How far a point lies below the face that takes pockets and cams, mm. */
export function belowFace(tip: PlacedPanel, point: Vec3): number {
  const face = pocketFace(tip)
  const box = boardBox(tip)
  const axis = thicknessAxis(tip)
  return face[axis] > 0 ? box.max[axis] - point[axis] : point[axis] - box.min[axis]
}
