import { NOISE_MM } from '../geometry/index.ts'
import type { Bore, BoreUse, Panel } from '../panel/index.ts'
import { type Cylinder, cylindersOf, gapBetween } from './solids.ts'

/** Wood between two bores, mm; common practice. */
export const WALL_STOP_MM = 3
export const WALL_WARN_MM = 5

/** Two bores of one panel that meet, or leave too thin a wall between them. */
export interface Meeting {
  readonly a: Bore
  readonly b: Bore
  /** Wood between them, mm; 0 where they run into each other. */
  readonly wall: number
}

interface Solid {
  readonly bore: Bore
  readonly cylinders: readonly Cylinder[]
  readonly min: number
  readonly max: number
}

/** All pairs of bores of a panel with less wood between them than there should be, in three dimensions. */
export function meetingsIn(panel: Panel): Meeting[] {
  // Sorted along the panel, so that only bores that overlap in x within the wall are ever compared.
  const solids = panel.bores.map(solidOf).sort((a, b) => a.min - b.min)
  const meetings: Meeting[] = []
  for (const [k, a] of solids.entries()) {
    for (let n = k + 1; n < solids.length; n += 1) {
      const b = solids[n]
      if (b === undefined || b.min > a.max + WALL_WARN_MM) break
      if (ofOnePattern(a.bore, b.bore)) continue
      const wall = Math.min(...a.cylinders.flatMap((one) => b.cylinders.map((other) => gapBetween(one, other))))
      if (wall < WALL_WARN_MM - NOISE_MM) meetings.push({ a: a.bore, b: b.bore, wall })
    }
  }
  return meetings
}

function solidOf(bore: Bore): Solid {
  const cylinders = cylindersOf(bore)
  const ends = cylinders.flatMap((one) => {
    const across = one.radius * Math.sqrt(Math.max(0, 1 - one.axis[0] ** 2))
    const far = one.from[0] + one.axis[0] * one.length
    return [Math.min(one.from[0], far) - across, Math.max(one.from[0], far) + across]
  })
  return { bore, cylinders, min: Math.min(...ends), max: Math.max(...ends) }
}

/** Holes of one piece of hardware stand as its maker set them; the bolt of a cam runs into its housing. */
function ofOnePattern(a: Bore, b: Bore): boolean {
  return a.uses.some((use) => b.uses.some((other) => use.hardware === other.hardware))
}

/**
 * The deepest fastener from either face, where the two would meet in the hole that they share. Shelf pins do not count:
 * they are short, and a hole that a plate has taken is simply not used for a pin.
 */
export function meetingInHole(panel: Panel, bore: Bore): { readonly a: BoreUse; readonly b: BoreUse } | undefined {
  const deepest = (surface: 'A' | 'B'): BoreUse | undefined =>
    bore.uses
      .filter((use) => use.surface === surface && use.purpose !== 'shelf pin')
      .sort((a, b) => b.depth - a.depth)[0]
  const a = deepest('A')
  const b = deepest('B')
  if (a === undefined || b === undefined || a.depth + b.depth <= panel.thickness - NOISE_MM) return undefined
  return { a, b }
}
