import type { FourEdges, FrontLay, FrontSpec } from '../project/index.ts'
import { board } from './boards.ts'
import type { Bound, Opening } from './carcase.ts'
import type { PlacedPanel } from './types.ts'

/** A door in its place, with what its hinges need to know. */
export interface PlacedDoor {
  readonly panel: PlacedPanel
  readonly hang: 'left' | 'right'
  /** Overlay at the hinge edge, mm; negative for an inset gap. */
  readonly overlay: number
  /** Extent in the module frame, mm. */
  readonly x0: number
  readonly x1: number
  readonly z0: number
  readonly z1: number
  /** Plane of the hidden face, mm from the module's front. */
  readonly hidden: number
}

const EDGES = ['left', 'right', 'top', 'bottom'] as const

/**
 * Overlay of a front at each edge of its opening, mm: at an outside panel thickness − reveal, at a shared panel
 * (thickness − gap) / 2, inset −(gap); where there is no panel, −reveal. `cover` can ask for full or half at any edge.
 */
export function overlays(front: FrontLay, opening: Opening): FourEdges<number> {
  const at = (edge: (typeof EDGES)[number], bound: Bound | undefined): number => {
    if (front.lay === 'inset') return -front.insetGap
    if (bound === undefined) return -front.reveal[edge]
    const wish = front.cover[edge]
    const half = wish === 'auto' ? bound.shared : wish === 'half'
    return half ? (bound.thickness - front.gap) / 2 : bound.thickness - front.reveal[edge]
  }
  return {
    left: at('left', opening.left),
    right: at('right', opening.right),
    top: at('top', opening.top),
    bottom: at('bottom', opening.bottom),
  }
}

/**
 * The door or the pair of doors on an opening. Width = opening + overlay left + overlay right; a pair splits what is
 * left after the middle gap. `opening.front` is the plane of the carcase's front edges.
 */
export function doorsOf(
  front: FrontSpec,
  opening: Opening,
  module: string,
  name: string,
  frontGap: number,
): PlacedDoor[] {
  const lap = overlays(front, opening)
  const t = front.stock.thickness
  const hidden = front.lay === 'inset' ? opening.front + t : opening.front - frontGap
  const x0 = opening.x0 - lap.left
  const x1 = opening.x1 + lap.right
  const z0 = opening.z0 - lap.bottom
  const z1 = opening.z1 + lap.top
  const leaf = (hang: 'left' | 'right', from: number, to: number, leafName: string): PlacedDoor => ({
    panel: board({
      module,
      role: 'door',
      name: leafName,
      stock: front.stock,
      box: { min: [from, hidden - t, z0], max: [to, hidden, z1] },
      datumY: hang === 'left' ? 'y0' : 'y1',
      at: front.at,
    }),
    hang,
    overlay: hang === 'left' ? lap.left : lap.right,
    x0: from,
    x1: to,
    z0,
    z1,
    hidden,
  })
  if (front.kind === 'door') return [leaf(front.hang, x0, x1, name)]
  const width = (x1 - x0 - front.gap) / 2
  return [leaf('left', x0, x0 + width, `${name} left`), leaf('right', x1 - width, x1, `${name} right`)]
}
