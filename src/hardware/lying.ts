import type { Item } from './types.ts'

/** A hinge plate reaches so far beyond the middle of its holes, mm; common practice. */
export const PLATE_BEYOND_MM = 10

/**
 * How far around the middle of a hole a piece lies on the face of the board, mm: heads and nuts of joining bolts, flanges
 * of feet, hinge plates. 0 for what goes into its hole, and for what one hole does not tell.
 */
export function lyingReach(item: Item, part: string): number {
  if (item.kind === 'joining bolt') return (part === 'nut' ? item.nutDiameter : item.headDiameter) / 2
  if (item.kind === 'levelling foot') return item.flangeDiameter / 2
  return item.kind === 'cup hinge' && part === 'plate' ? PLATE_BEYOND_MM : 0
}
