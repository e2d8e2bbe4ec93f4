import { MM_PER_INCH } from '../../length/index.ts'
import type { DrawerSlide, Drilling, Item } from '../types.ts'

const SOURCE =
  'thickness 12.7, side space 13.0: S18; holes in the cabinet at 37 and on the 32 grid, slide 2 behind the edge: S19, ' +
  'a weak source; load: S20; body 45 high, holes in the box: common practice, measure yours'

/** From the front of the opening to the slide's front end [S19]. */
const SETBACK_MM = 2
/** Holes in the cabinet, from the front of the opening [S19]: all 37 more than a multiple of 32. */
const CABINET_HOLES_MM = [37, 165, 261, 389, 517, 645]
/** A hole is used when so much of the slide lies behind it; common practice. */
const BEHIND_HOLE_MM = 10
/** Grid of the holes in the box; common practice. */
const PITCH_MM = 32

const hole = (x: number, k: number, diameter: number, depth: number): Drilling => ({
  key: `screw-${k + 1}`,
  x,
  y: 0,
  enter: 'contact',
  diameter,
  depth,
  purpose: 'drawer slide',
})

/** System screws, 6.3 mm in a 5 mm hole, in the cabinet; common practice. */
function cabinetHoles(length: number): Drilling[] {
  return CABINET_HOLES_MM.map((x) => x - SETBACK_MM)
    .filter((x) => x <= length - BEHIND_HOLE_MM)
    .map((x, k) => hole(x, k, 5, 13))
}

/**
 * Small screws (3.5 × 12, pilot 2.5) in the side of the box: the first on the axis of the cabinet's first, the last as
 * far from the other end, and one between them, on the 32 grid. Common practice, measure yours.
 */
function boxHoles(length: number): Drilling[] {
  const first = 37 - SETBACK_MM
  const steps = Math.floor((length - 2 * first) / PITCH_MM)
  return [0, Math.floor(steps / 2), steps].map((step, k) => hole(first + step * PITCH_MM, k, 2.5, 8))
}

const slide = (id: string, title: string, measure: DrawerSlide['measure'], length: number): DrawerSlide => ({
  kind: 'drawer slide',
  id,
  title,
  source: SOURCE,
  measure,
  length,
  thickness: 12.7,
  sideSpace: 13,
  height: 45,
  setback: SETBACK_MM,
  loadKg: 45,
  parts: { cabinet: cabinetHoles(length), box: boxHoles(length) },
  mates: [
    { relation: 'level', a: 'cabinet', b: 'box' },
    { relation: 'coaxial', a: ['cabinet', 'screw-1'], b: ['box', 'screw-1'] },
  ],
})

const METRIC = [250, 300, 350, 400, 450, 500, 550, 600, 650, 700]
const INCHES = [10, 12, 14, 16, 18, 20, 22, 24, 26, 28]

/** Side-mounted slides for full extension, 12.7 mm (1/2 in) thick. */
export const slides: readonly Item[] = [
  ...METRIC.map((mm) => slide(`slide ${mm}`, `side-mounted slide, full extension, ${mm} mm`, 'mm', mm)),
  ...INCHES.map((n) => slide(`slide ${n} in`, `side-mounted slide, full extension, ${n} in`, 'in', n * MM_PER_INCH)),
]
