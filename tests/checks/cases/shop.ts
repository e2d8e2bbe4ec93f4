import { ROUND_STOCK } from '../../support/define.ts'
import type { RuleCase } from './case.ts'

/** A box of 600 × 400 × 720 in boards of 18 mm. */
const shop = (bits: string, more = ''): string => `${ROUND_STOCK}
modules:
  box: { width: 600, depth: 400, carcase height: 720, stock: board, carcase: { back: none, joint: dowel }, ${more} }
bits: [${bits}]
`

const door = 'inside: { front: { kind: door } }'
const DRILLS =
  '{ kind: brad point, diameter: 5 }, { kind: brad point, diameter: 8 }, { kind: brad point, diameter: 10 }'
const port = (radius: string): string =>
  `openings: [{ panel: left side, shape: rectangle, width: 100, height: 60, corner radius: ${radius}, from: centred, for: cable port }]`
const recess = (depth: string): string =>
  `openings: [{ panel: left side, shape: rectangle, width: 100, height: 60, corner radius: 6, depth: ${depth}, face: inside, from: centred, for: recess }]`
const slot = (width: number): string =>
  `openings: [{ panel: right side, shape: slot, length: 100, width: ${width}, from: centred, for: cable slot }]`

const grooved = (bits: string, thin: number): string => `${ROUND_STOCK}
  ply: { thickness: ${thin}, sheet: [2500, 1250] }
modules:
  box: { width: 600, depth: 400, carcase height: 720, stock: board, carcase: { joint: dowel, back: { sits: grooved, stock: ply } } }
bits: [${DRILLS}, ${bits}]
`

const strip = (width: number): string => `${ROUND_STOCK}
modules:
  box:
    width: 600
    depth: 400
    carcase height: 720
    stock: board
    carcase: { back: none, top: rails, rails: { width: ${width} } }
`

export const shopCases: readonly RuleCase[] = [
  {
    rule: 'bit-missing',
    what: 'cups want a flat bottom',
    // The door is 718.5 or so high: 3 hinges. A twist bit of 35 mm has a point.
    trips: shop(`${DRILLS}, { kind: twist, diameter: 35 }`, door),
    severity: 'warn',
    message: 'no bit for flat holes of 35 mm: 3 hinge cups in box, door wait for it; there is none of its kind',
    fix: 'get a forstner bit of 35 mm, and put it under `bits`',
    inside: shop(`${DRILLS}, { kind: forstner, diameter: 35 }`, door),
  },
  {
    rule: 'bit-missing',
    what: 'nothing is said of bits, or a machine mills them',
    trips: shop(`${DRILLS}, { kind: straight, diameter: 6 }`, door),
    severity: 'warn',
    message: 'no bit for flat holes of 35 mm: 3 hinge cups in box, door wait for it; the nearest is 6 mm',
    fix: 'get a forstner bit of 35 mm, and put it under `bits`',
    inside: shop(`${DRILLS}, { kind: end mill, diameter: 6 }`, door),
  },
  {
    rule: 'bit-missing',
    what: 'a tenth of a millimetre is let pass',
    // Two dowels at least in each of 4 corners: (400 − 2 × 50) / 160 = 1.9, so 3 of them; each in a face and in an edge.
    trips: shop('{ kind: brad point, diameter: 8.2 }'),
    severity: 'warn',
    message: 'no bit of 8 mm: 24 dowels in 4 panels (the first is box, left side) wait for it; the nearest is 8.2 mm',
    fix: 'get a brad point bit of 8 mm, and put it under `bits`',
    inside: shop('{ kind: brad point, diameter: 8.1 }'),
  },
  {
    rule: 'bit-missing',
    what: 'a countersink of another angle',
    // screw 4.5x45: head of 9 mm at 90°; 3 screws in each of 4 corners.
    trips: shop(
      '{ kind: twist, diameter: 3 }, { kind: twist, diameter: 5 }, { kind: countersink, diameter: 12, angle: 82 }',
    ).replace('joint: dowel', 'joint: through screw'),
    severity: 'warn',
    message:
      'no countersink of 9 mm and 90°: 12 sunk screws in 2 panels (the first is box, left side) wait for it; the nearest is 12 mm and 82°',
    fix: 'get a countersink of 9 mm and 90°, and put it under `bits`',
    inside: shop(
      '{ kind: twist, diameter: 3 }, { kind: twist, diameter: 5 }, { kind: countersink, diameter: 12 }',
    ).replace('joint: dowel', 'joint: through screw'),
  },
  {
    rule: 'bit-depth',
    // Dowels of 8 × 30: 11 in the face, 21 in the edge, 12 of them (S25).
    trips: shop('{ kind: brad point, diameter: 8, depth: 20 }'),
    severity: 'warn',
    message:
      'the longest bit of 8 mm bores 20 mm deep, too short for 12 dowels in 2 panels (the first is box, top), up to 21 mm deep',
    fix: 'get one that bores 21 mm deep, and put it under `bits`, or bore what goes through from both faces',
    inside: shop('{ kind: brad point, diameter: 8, depth: 21 }'),
  },
  {
    rule: 'cutter-corner',
    // A bit of 6 mm leaves 3 mm; its relief stands 3 / √2 = 2.12 in (T21).
    trips: shop(`${DRILLS}, { kind: straight, diameter: 6 }`, port('0')),
    severity: 'warn',
    message:
      'box, left side: the cable port, its middle 200 from front and 360 from bottom, has 4 inner square corners; the smallest router bit that reaches its floor, 6 mm, leaves a radius of 3 mm',
    fix: 'give it a corner radius of 3 mm, or relieve each with the same bit, its middle 2.12 mm in from both walls, or square them with a chisel',
    inside: shop(`${DRILLS}, { kind: straight, diameter: 6 }`, port('3')),
  },
  {
    rule: 'cutter-corner',
    what: 'the smallest bit is too short, the next one counts',
    // Through 18 mm of wood and 1 mm beyond: the bit of 6 mm does not reach, 12.7 leaves 6.35; 6.35 is typed as 6.4.
    trips: shop(`${DRILLS}, { kind: straight, diameter: 6, depth: 18 }, { kind: straight, diameter: 12.7 }`, port('3')),
    severity: 'warn',
    message:
      'box, left side: the cable port, its middle 200 from front and 360 from bottom, has 4 inner corners of 3 mm; the smallest router bit that reaches its floor, 12.7 mm, leaves a radius of 6.35 mm',
    fix: 'give it a corner radius of 6.4 mm, or relieve each with the same bit, its middle 6.35 mm from the corner on its bisector, or square them with a chisel',
    inside: shop(
      `${DRILLS}, { kind: straight, diameter: 6, depth: 19 }, { kind: straight, diameter: 12.7 }`,
      port('3'),
    ),
  },
  {
    rule: 'groove-cutter',
    what: 'narrow',
    // The back of 5 mm with 0.2 mm of play; 8 mm deep.
    trips: grooved('{ kind: straight, diameter: 6 }', 5),
    severity: 'warn',
    message:
      'no router bit is narrow enough for 4 × groove for the back in 4 panels (the first is box, left side), 5.2 mm wide; the narrowest is 6 mm',
    fix: 'get a straight bit of 3.175 mm that cuts 8 mm deep, and put it under `bits`',
    inside: grooved('{ kind: straight, diameter: 6 }', 5.8),
  },
  {
    rule: 'groove-cutter',
    what: 'deep',
    trips: grooved('{ kind: straight, diameter: 6, depth: 7.9 }', 6),
    severity: 'warn',
    message:
      'no router bit reaches 8 mm deep for 4 × groove for the back in 4 panels (the first is box, left side); the longest that goes in cuts 7.9 mm deep',
    fix: 'get a straight bit of 6 mm that cuts 8 mm deep, and put it under `bits`',
    inside: grooved('{ kind: straight, diameter: 6, depth: 8 }', 6),
  },
  {
    rule: 'groove-cutter',
    what: 'a slot, by its round ends',
    // 18 + 1 mm deep.
    trips: shop(`${DRILLS}, { kind: straight, diameter: 8 }`, slot(7.9)),
    severity: 'warn',
    message: 'no router bit is narrow enough for 1 cable slot in box, right side, 7.9 mm wide; the narrowest is 8 mm',
    fix: 'get a straight bit of 6.35 mm that cuts 19 mm deep, and put it under `bits`',
    inside: shop(`${DRILLS}, { kind: straight, diameter: 8 }`, slot(8)),
  },
  {
    rule: 'groove-cutter',
    what: 'a recess',
    trips: shop(`${DRILLS}, { kind: end mill, diameter: 12, depth: 9 }`, recess('10')),
    severity: 'warn',
    message: 'no router bit reaches 10 mm deep for 1 recess in box, left side; the longest that goes in cuts 9 mm deep',
    fix: 'get a straight bit of 12 mm that cuts 10 mm deep, and put it under `bits`',
    inside: shop(`${DRILLS}, { kind: end mill, diameter: 12, depth: 10 }`, recess('10')),
  },
  {
    rule: 'piece-small',
    // 600 − 2 × 18 = 564 long.
    trips: strip(49),
    severity: 'note',
    message:
      'board: 2 pieces are shorter than 150 mm or narrower than 50 mm: box, front top rail 564 × 49; box, rear top rail 564 × 49',
    fix: 'bore and groove them while still part of a larger board, and cut them off last, with push sticks or on a sled',
    inside: strip(50),
  },
]
