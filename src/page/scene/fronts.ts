import type { PanelRole } from '../../assembly/index.ts'
import { ownBox } from '../../assembly/index.ts'
import { compose, type Pose, placedBox, poseOf, type Vec3 } from '../../geometry/index.ts'
import type { EdgeName, Panel } from '../../panel/index.ts'

/** Panels that close an opening from the front. */
const FRONTS: readonly PanelRole[] = ['door', 'flap', 'fixed front', 'drawer front']

export const isFront = ({ role }: Panel): boolean => FRONTS.includes(role)

/** The edge with the hinges, as one sees it from in front of the module; nothing for what does not hang. */
export function hingeEdge(panel: Panel): EdgeName | undefined {
  // Doors and flaps are measured from their hinge edge.
  return panel.role === 'door' || panel.role === 'flap' ? panel.edges[panel.datum.y] : undefined
}

/**
 * Where a front lies that stands open at a right angle, turned about the outer corner of its hinge edge; what does not hang
 * stays where it is. Module frame.
 */
export function openPose(panel: Panel): Pose {
  const edge = hingeEdge(panel)
  if (edge === undefined) return panel.moduleFromPanel
  const { min, max } = placedBox(panel.moduleFromPanel, ownBox(panel))
  switch (edge) {
    case 'left':
      return turnedAbout([min[0], min[1], 0], [0, -1, 0], [1, 0, 0], panel)
    case 'right':
      return turnedAbout([max[0], min[1], 0], [0, 1, 0], [-1, 0, 0], panel)
    case 'top':
      return turnedAbout([0, min[1], max[2]], [1, 0, 0], [0, 0, -1], panel)
    default:
      return turnedAbout([0, min[1], min[2]], [1, 0, 0], [0, 0, 1], panel)
  }
}

/** The panel's pose after a turn that keeps a point where it is and takes the module's x and y to the two ways. */
function turnedAbout(fixed: Vec3, x: Vec3, y: Vec3, panel: Panel): Pose {
  const turn = poseOf(x, y, [0, 0, 0])
  const moved = compose(turn, { x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1], origin: fixed }).origin
  const origin: Vec3 = [fixed[0] - moved[0], fixed[1] - moved[1], fixed[2] - moved[2]]
  return compose({ ...turn, origin }, panel.moduleFromPanel)
}
