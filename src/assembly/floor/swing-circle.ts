import { type Box, place } from '../../geometry/index.ts'
import { boardBox } from '../boards.ts'
import type { OuterFace, SharedRectangle } from './faces.ts'
import type { Grips } from './obstacles.ts'

/**
 * What of a shared rectangle lies below the circles of flip-over platforms that turn beside it: bolts keep out of them,
 * and a platform is as deep as its sides, so that there is no room beside its circle. The whole rectangle where nothing
 * lies below. Floor frame, mm.
 */
export function belowCircles(shared: SharedRectangle, faces: readonly OuterFace[], grips: Grips): SharedRectangle {
  const low = Math.min(...faces.map((face) => circleFoot(face, grips)))
  const [from, to] = shared.up
  return low <= from || low >= to ? shared : { ...shared, up: [from, low] }
}

/** Height of the lowest point of the circle of the platform between the sides of a face's module; none is infinitely high. */
function circleFoot({ module, panel }: OuterFace, grips: Grips): number {
  const axle = grips.on(module.key, panel.id).find(({ piece }) => piece.item.kind === 'axle')
  if (axle === undefined) return Number.POSITIVE_INFINITY
  const { origin } = axle.station.pose
  const boards = module.panels.filter(({ role }) => role.startsWith('platform')).map(boardBox)
  const across = ({ min, max }: Box, k: 1 | 2): number => Math.max(origin[k] - min[k], max[k] - origin[k])
  const radius = Math.max(0, ...boards.map((box) => Math.hypot(across(box, 1), across(box, 2))))
  return place(module.floorFromModule, origin)[2] - radius
}
