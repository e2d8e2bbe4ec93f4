import { NOISE_MM } from '../../geometry/index.ts'
import { type Item, itemsOfKind } from '../../hardware/index.ts'
import { mm } from '../../length/index.ts'
import type { FixedFrontSpec, FourEdges } from '../../project/index.ts'
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
    if (other === undefined || (!inset && lap[edge] < stripFor(front.fix.item) - NOISE_MM)) return []
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
  const trouble = joints.length < 2 ? [looseTrouble(front, panel, joints.length, lap)] : []
  return merge([{ panels: [panel] }, ...joints, { troubles: trouble }])
}

/** Width of a strip of contact that takes a fastener in its middle: the bore and the least wood on both sides, mm. */
function stripFor(item: Item): number {
  const holes = Object.values(item.parts).flat()
  return Math.max(...holes.map(({ diameter, edgeWall }) => diameter + 2 * (edgeWall ?? diameter / 2)))
}

function looseTrouble(
  front: FixedFrontSpec,
  panel: PlacedPanel,
  edges: number,
  lap: FourEdges<number>,
): PlacingTrouble {
  return {
    rule: 'front-fixing',
    severity: edges === 0 ? 'stop' : 'warn',
    panels: [panel.id],
    message: `${panel.name} is fastened along ${edges === 0 ? 'no edge' : 'one edge alone'}: a ${front.fix.item.id} needs ${mm(stripFor(front.fix.item))} mm of an edge behind it`,
    ...thinner(front, lap),
    at: front.at,
  }
}

/** Fasteners for narrow strips, the usual kind first. */
const THIN_DOWELS = ['dowel 6x30', 'dowel 1/4x1-1/4']

/** A fastener that two of the edges are wide enough for. */
function thinner(front: FixedFrontSpec, lap: FourEdges<number>): Pick<PlacingTrouble, 'fix' | 'change'> {
  const covered = [...Object.values(lap)].sort((a, b) => b - a)[1] ?? 0
  const found = itemsOfKind('dowel').find(
    ({ id }) => THIN_DOWELS.includes(id) && id.includes('/') === front.fix.item.id.includes('/'),
  )
  if (found === undefined || stripFor(found) > covered + NOISE_MM) {
    return { fix: 'let it cover the panels in full (`cover: full`), or `lay: inset`' }
  }
  const fix = `a ${found.id} needs ${mm(stripFor(found))} mm, and it covers ${mm(covered)} mm`
  return { fix, change: [{ path: [...front.at, 'fix', 'fasten'], value: found.id }] }
}
