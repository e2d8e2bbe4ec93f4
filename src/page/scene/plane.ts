import type { Pose, Vec3 } from '../../geometry/index.ts'
import type { PanelToScene, ScenePoint } from './types.ts'

/** Where a point of the frame lies on the drawing. */
export function seen(m: PanelToScene, [x, y, z]: Vec3): ScenePoint {
  return [m[0] * x + m[1] * y + m[2] * z + m[3], m[4] * x + m[5] * y + m[6] * z + m[7]]
}

/** How a direction of the frame runs on the drawing. */
export function seenWay(m: PanelToScene, [x, y, z]: Vec3): ScenePoint {
  return [m[0] * x + m[1] * y + m[2] * z, m[4] * x + m[5] * y + m[6] * z]
}

/** Takes points of a child frame to the drawing by way of its parent. */
export function throughPose(m: PanelToScene, { x, y, z, origin }: Pose): PanelToScene {
  const [ax, ay] = seenWay(m, x)
  const [bx, by] = seenWay(m, y)
  const [cx, cy] = seenWay(m, z)
  const [ox, oy] = seen(m, origin)
  return [ax, bx, cx, ox, ay, by, cy, oy]
}

/** The same drawing, moved. */
export function moved(m: PanelToScene, [x, y]: ScenePoint): PanelToScene {
  return [m[0], m[1], m[2], m[3] + x, m[4], m[5], m[6], m[7] + y]
}
