import { cylinder, type Vec3, Z } from '../../geometry/index.ts'
import type { Item, JointScrew, PocketScrew } from '../types.ts'
import type { Body, Surroundings } from './types.ts'

/** Pilots are so much of the thread's diameter; common practice, see items/screws.ts. */
const PILOT_SHARE = 0.7
/** Thread of a pocket screw (#8), mm; common practice. */
const POCKET_THREAD_MM = 4.2

/** Diameter of the thread, mm: the pilot's over its share, and no more than the hole that it passes. */
export function threadOf(item: JointScrew | PocketScrew): number {
  if (item.kind === 'pocket screw') return POCKET_THREAD_MM
  const pilot = item.parts.tip?.[0]?.diameter
  const clearance = item.parts.head?.[0]?.diameter ?? POCKET_THREAD_MM
  return pilot === undefined ? clearance : Math.min(clearance, pilot / PILOT_SHARE)
}

/** Where a screw begins under its head, which way it goes (unit) and how long it is, in the frame of `part`, mm. */
export interface ShankLine {
  readonly part: string
  readonly from: Vec3
  readonly axis: Vec3
  readonly length: number
  readonly radius: number
}

/**
 * The axis of a screw: from the far face of its first board, where sunk heads lie flush, or from the floor of its pocket.
 * Nothing for other hardware.
 */
export function shankOf(item: Item, { thicknessOf, setting }: Surroundings): ShankLine | undefined {
  switch (item.kind) {
    case 'through screw':
    case 'one-piece screw': {
      const from: Vec3 = [0, 0, -thicknessOf('head')]
      return { part: 'head', from, axis: Z, length: item.length, radius: threadOf(item) / 2 }
    }
    case 'pocket screw': {
      const collar = setting('collar')
      const lean = ((item.parts.pocket?.[0]?.leanDeg ?? 90) * Math.PI) / 180
      if (collar === undefined) return undefined
      const axis: Vec3 = [Math.cos(lean), 0, Math.sin(lean)]
      const from: Vec3 = [axis[0] * collar, 0, axis[2] * collar]
      return { part: 'pocket', from, axis, length: item.length, radius: threadOf(item) / 2 }
    }
    default:
      return undefined
  }
}

export function screwBodies(item: Item, around: Surroundings): Body[] {
  const shank = shankOf(item, around)
  if (shank === undefined) return []
  const { part, from, axis, length, radius } = shank
  return [{ part, name: 'shank', solid: cylinder(from, axis, length, radius) }]
}
