import { NOISE_MM } from '../../geometry/index.ts'
import type { FixedFrontSpec } from '../../project/index.ts'
import { board } from '../boards.ts'
import { contactOf, placeClearJoint } from '../joints/index.ts'
import { merge, type Parts, partsOf } from '../parts.ts'
import type { PlacedPanel, PlacingTrouble } from '../types.ts'
import type { Walk } from '../walk.ts'
import type { FrontPlace } from './fronts.ts'
import { frontExtent, overlays } from './fronts.ts'

/**
 * A fixed panel on an opening. Overlay: its hidden face lies against the front edges of the panels behind it, so its
 * show face stands back from that of a door of the same board by the front gap; it is dowelled or screwed into those
 * edges, where it covers enough of them. Inset: it stands between the panels around it, flush with their front edges and
 * without a gap, and is fastened to the panels on its left and right.
 */
export function fixedFront(
  front: FixedFrontSpec,
  place: FrontPlace,
  walk: Pick<Walk, 'panels' | 'shell' | 'spec'>,
): Parts {
  const { opening, module, name } = place
  const inset = front.lay === 'inset'
  const lap = inset ? { left: 0, right: 0, top: 0, bottom: 0 } : overlays(front, place.bay, opening)
  const { x0, x1, z0, z1 } = frontExtent(opening, lap)
  const hidden = inset ? opening.front + front.stock.thickness : opening.front
  const panel = board({
    module,
    role: 'fixed front',
    name,
    stock: front.stock,
    box: { min: [x0, hidden - front.stock.thickness, z0], max: [x1, hidden, z1] },
    at: front.at,
  })
  const edges = inset ? (['left', 'right'] as const) : (['left', 'right', 'top', 'bottom'] as const)
  const joints = edges.flatMap((edge): Parts[] => {
    const bound = opening[edge]
    const other = bound && walk.panels.get(bound.panel)
    if (other === undefined || (!inset && lap[edge] < leastStrip(front) - NOISE_MM)) return []
    const [head, tip] = inset ? [other, panel] : [panel, other]
    if (contactOf(head, tip) === undefined) return []
    return [
      partsOf(
        placeClearJoint(
          { module, head, tip, joint: front.fix, at: front.at, asked: [...front.at, 'fix'], limits: walk.spec },
          walk.shell,
        ),
      ),
    ]
  })
  const trouble = joints.length < 2 ? [looseTrouble(front, panel, joints.length)] : []
  return merge([{ panels: [panel] }, ...joints, { troubles: trouble }])
}

/** Width of a strip of contact that takes the fasteners in its middle: the bore and the least wood on both sides, mm. */
function leastStrip({ fix }: FixedFrontSpec): number {
  const holes = Object.values(fix.item.parts).flat()
  return Math.max(...holes.map(({ diameter, edgeWall }) => diameter + 2 * (edgeWall ?? diameter / 2)))
}

function looseTrouble(front: FixedFrontSpec, panel: PlacedPanel, edges: number): PlacingTrouble {
  const least = Math.round(leastStrip(front) * 10) / 10
  return {
    rule: 'front-fixing',
    severity: edges === 0 ? 'stop' : 'warn',
    panels: [panel.id],
    message: `${panel.name} is fastened along ${edges === 0 ? 'no edge' : 'one edge alone'}: a ${front.fix.item.id} needs ${least} mm of an edge behind it`,
    fix: 'let it cover the panels in full (`cover: full`), choose a thinner fastener, or `lay: inset`',
    at: front.at,
  }
}
