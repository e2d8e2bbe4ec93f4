import { onePieceScrew, throughScrew } from '../kinds/screws.ts'
import type { Item, JointScrew } from '../types.ts'

const CHIPBOARD =
  'heads 2 × d: S31; pilot 0.7 d, clearance d + 0.5: common practice; countersink 90° ' +
  '(ISO): from memory; pilot 1 mm deeper than the screw: S28'
const INCH_WOOD =
  'pilot and shank hole for hardwood: wood screw chart, plate 6B (S30); countersink 82° (ASME): from memory; ' +
  'head diameters: common practice'
const INCH_6 =
  'shank hole 9/64: wood screw chart, plate 6B (S30); pilot 3/32, head diameter: common practice; countersink 82° ' +
  '(ASME): from memory'

/** Holes by the screw's diameter: pilot 0.7 d to the next half millimetre that is sold, heads [S31]. */
const METRIC = {
  '3.5': { clearance: 4, pilot: 2.5, headDiameter: 7, edgeWall: 2 },
  '4': { clearance: 4.5, pilot: 2.8, headDiameter: 8, edgeWall: 2 },
  '4.5': { clearance: 5, pilot: 3, headDiameter: 9, edgeWall: 3 },
  '5': { clearance: 5.5, pilot: 3.5, headDiameter: 10, edgeWall: 3 },
  '6': { clearance: 6.5, pilot: 4.2, headDiameter: 12, edgeWall: 3 },
} as const

const metric = (size: keyof typeof METRIC, length: number): JointScrew =>
  throughScrew.make({
    id: `screw ${size}x${length}`,
    title: `countersunk screw ${size} × ${length}`,
    source: CHIPBOARD,
    length,
    ...METRIC[size],
    sinkDeg: 90,
  })

/** By gauge; the shank hole and the hardwood pilot are those of plate 6B [S30] in mm: #8 11/64 and 7/64, #10 3/16 and 1/8. */
const GAUGES = {
  '#6': { clearance: 3.572, pilot: 2.381, headDiameter: 7.144, edgeWall: 2 },
  '#8': { clearance: 4.366, pilot: 2.778, headDiameter: 8.731, edgeWall: 3 },
  '#10': { clearance: 4.7625, pilot: 3.175, headDiameter: 9.525, edgeWall: 3 },
} as const

const inch = (gauge: keyof typeof GAUGES, name: string, length: number): JointScrew =>
  throughScrew.make({
    id: `screw ${gauge}x${name}`,
    title: `countersunk wood screw ${gauge} × ${name} in`,
    source: gauge === '#6' ? INCH_6 : INCH_WOOD,
    length,
    ...GAUGES[gauge],
    sinkDeg: 82,
  })

const onePiece = (
  size: string,
  length: number,
  holes: { clearance: number; pilot: number; headDiameter: number; headDepth: number },
  source: string,
): JointScrew =>
  onePieceScrew.make({
    id: `one-piece screw ${size}x${length}`,
    title: `one-piece connector screw ${size} × ${length}`,
    source,
    length,
    ...holes,
  })

const SEVEN = { clearance: 7, pilot: 5, headDiameter: 10, headDepth: 5 } as const
const seven = (length: number): JointScrew =>
  onePiece(
    '7',
    length,
    SEVEN,
    'major 7, core 4, pilot 5: S27; stepped bit 5/7/10, ' +
      `countersink 10 × 5, pilot depth ${length} − t + 3: common practice`,
  )
const STEPPED = 'bores and pilot depth, length − t + 3: common practice, measure yours'

/** Screws through one board into the edge of the next. The first of a kind is the usual one. */
export const screws: readonly Item[] = [
  metric('4.5', 45),
  metric('5', 50),
  metric('3.5', 25),
  inch('#8', '1-3/4', 44.45),
  inch('#6', '1', 25.4),
  seven(50),
  metric('3.5', 30),
  metric('3.5', 20),
  metric('3.5', 35),
  metric('4', 30),
  metric('4', 35),
  metric('4', 40),
  metric('4', 50),
  metric('4.5', 50),
  metric('5', 60),
  metric('5', 70),
  metric('6', 60),
  metric('6', 80),
  inch('#6', '1-1/4', 31.75),
  inch('#6', '1-5/8', 41.275),
  inch('#8', '1-1/4', 31.75),
  inch('#8', '1-1/2', 38.1),
  inch('#8', '2', 50.8),
  inch('#10', '1-1/2', 38.1),
  inch('#10', '2', 50.8),
  inch('#10', '2-1/2', 63.5),
  seven(40),
  seven(70),
  onePiece('5', 50, { clearance: 5, pilot: 3.5, headDiameter: 7, headDepth: 4 }, STEPPED),
  onePiece('6.3', 50, { clearance: 6.5, pilot: 4.5, headDiameter: 9, headDepth: 4 }, STEPPED),
]
