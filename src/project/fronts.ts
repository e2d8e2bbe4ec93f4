import type { Bay, FrontLay } from './types.ts'

/** A front that lies over the carcase's edges, with the space that it keeps from them. */
export interface OverlayFront {
  readonly lay: FrontLay
  /** It is fixed against the edges: no front gap behind it. */
  readonly against: boolean
}

/**
 * The overlay fronts that lie over the whole of this bay's own opening, side by side or on top of each other; those of
 * the bays in it do not count. Every kind of front that a bay can have is known here and nowhere else.
 */
export function overlayFronts(bay: Bay): readonly OverlayFront[] {
  const { front, drawers } = bay
  const own = front?.lay === 'overlay' ? [{ lay: front, against: front.kind === 'fixed' }] : []
  const drawn = drawers?.fronts?.lay === 'overlay' ? [{ lay: drawers.fronts, against: false }] : []
  return [...own, ...drawn]
}

/** The largest of what the overlay fronts of a bay and of the bays in it come to, 0 when there is none. */
function most(bay: Bay, of: (front: OverlayFront) => number): number {
  return (bay.split?.bays ?? []).reduce(
    (largest, child) => Math.max(largest, most(child, of)),
    [0, ...overlayFronts(bay).map(of)].reduce((a, b) => Math.max(a, b)),
  )
}

/** Thickness of the thickest overlay front of a bay and the bays in it, mm; 0 when there is none. */
export function overlayThickness(bay: Bay): number {
  return most(bay, ({ lay }) => lay.stock.thickness)
}

/**
 * What the overlay fronts of a bay and the bays in it take of the depth, mm: their thickness, and the front gap behind
 * those that open. 0 when there is none. The carcase stands behind it.
 */
export function frontsTake(bay: Bay, frontGap: number): number {
  return most(bay, ({ lay, against }) => lay.stock.thickness + (against ? 0 : frontGap))
}
