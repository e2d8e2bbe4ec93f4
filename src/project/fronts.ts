import type { Bay } from './types.ts'

/** Thickness of the thickest overlay front of a bay and the bays in it, mm; 0 when there is none. The carcase stands behind it. */
export function overlayThickness(bay: Bay): number {
  const fronts = [bay.front, bay.drawers?.fronts].filter((front) => front?.lay === 'overlay')
  const own = Math.max(0, ...fronts.map((front) => front?.stock.thickness ?? 0))
  return (bay.split?.bays ?? []).reduce((most, child) => Math.max(most, overlayThickness(child)), own)
}
