import type { Bay, DoorSpec, FlapSpec, FourEdges, FrontLay } from '../../project/index.ts'
import { board } from '../boards.ts'
import { type Bound, cellOf, type Edge, frontsBeyond, type Opening } from '../carcase/index.ts'
import type { PlacedPanel } from '../types.ts'

/** A door or a flap in its place, with what its hinges need to know. */
export interface PlacedDoor {
  readonly panel: PlacedPanel
  /** The edge with the hinges. */
  readonly hang: Edge
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

/**
 * Overlay of a front at each edge of its opening, mm: thickness − reveal over a panel that it has for itself; where
 * another overlay front meets it over the panel, (thickness − gap) / 2 with the largest gap that one of them asks for,
 * so that each keeps half of it from the middle line; inset: −(gap); where there is no panel, −reveal. `cover` can ask
 * for full or half at any edge.
 */
export function overlays(lay: FrontLay, bay: Bay, opening: Opening): FourEdges<number> {
  const cell = cellOf(bay, opening)
  const at = (edge: Edge, bound: Bound | undefined): number => {
    if (lay.lay === 'inset') return -lay.insetGap
    if (bound === undefined) return -lay.reveal[edge]
    const met = frontsBeyond(cell, lay, edge, bound.beyond)
    const wish = lay.cover[edge]
    const half = wish === 'auto' ? met.length > 0 : wish === 'half'
    const gap = Math.max(lay.gap, ...met.map((other) => other.gap))
    return half ? (bound.thickness - gap) / 2 : bound.thickness - lay.reveal[edge]
  }
  return {
    left: at('left', opening.left),
    right: at('right', opening.right),
    top: at('top', opening.top),
    bottom: at('bottom', opening.bottom),
  }
}

/** Extent of a front over or in its opening, module frame, mm. */
export function frontExtent(opening: Opening, lap: FourEdges<number>): Pick<PlacedDoor, 'x0' | 'x1' | 'z0' | 'z1'> {
  return {
    x0: opening.x0 - lap.left,
    x1: opening.x1 + lap.right,
    z0: opening.z0 - lap.bottom,
    z1: opening.z1 + lap.top,
  }
}

/** The opening that a front lies on, and how it is called. */
export interface FrontPlace {
  readonly bay: Bay
  /** Its `front` is the plane of the carcase's front edges. */
  readonly opening: Opening
  readonly module: string
  readonly name: string
  /** Between the carcase's front edges and an overlay front that opens, mm. */
  readonly frontGap: number
}

const hiddenFace = (front: FrontLay, { opening, frontGap }: FrontPlace): number =>
  front.lay === 'inset' ? opening.front + front.stock.thickness : opening.front - frontGap

/**
 * The door or the pair of doors on an opening. Width = opening + overlay left + overlay right; a pair splits what is
 * left after the middle gap.
 */
export function doorsOf(front: DoorSpec, place: FrontPlace): PlacedDoor[] {
  const lap = overlays(front, place.bay, place.opening)
  const hidden = hiddenFace(front, place)
  const { x0, x1, z0, z1 } = frontExtent(place.opening, lap)
  const leaf = (hang: 'left' | 'right', from: number, to: number, leafName: string): PlacedDoor => ({
    panel: board({
      module: place.module,
      role: 'door',
      name: leafName,
      stock: front.stock,
      box: { min: [from, hidden - front.stock.thickness, z0], max: [to, hidden, z1] },
      datumY: hang === 'left' ? 'y0' : 'y1',
      at: front.at,
    }),
    hang,
    overlay: lap[hang],
    x0: from,
    x1: to,
    z0,
    z1,
    hidden,
  })
  const { name } = place
  if (front.kind === 'door') return [leaf(front.hang, x0, x1, name)]
  const width = (x1 - x0 - front.gap) / 2
  return [leaf('left', x0, x0 + width, `${name} left`), leaf('right', x1 - width, x1, `${name} right`)]
}

/** The flap on an opening. */
export function flapOf(front: FlapSpec, place: FrontPlace): PlacedDoor {
  const lap = overlays(front, place.bay, place.opening)
  const hidden = hiddenFace(front, place)
  const extent = frontExtent(place.opening, lap)
  const { x0, x1, z0, z1 } = extent
  const panel = board({
    module: place.module,
    role: 'flap',
    name: place.name,
    stock: front.stock,
    box: { min: [x0, hidden - front.stock.thickness, z0], max: [x1, hidden, z1] },
    datumY: front.hang === 'bottom' ? 'y0' : 'y1',
    at: front.at,
  })
  return { panel, hang: front.hang, overlay: lap[front.hang], ...extent, hidden }
}
