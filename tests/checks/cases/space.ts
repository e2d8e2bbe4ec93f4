import { ROUND_STOCK } from '../../support/define.ts'
import type { RuleCase } from './case.ts'

/** Modules 600 wide, 400 deep, 720 high of 18 mm board with a thin back, unless they say otherwise. */
const define = (modules: string, rest = ''): string => `${ROUND_STOCK}
common: { width: 600, depth: 400, carcase height: 720, stock: board, carcase: { back: { stock: thin } } }
modules:
${modules}
${rest}`

/** The thin back of a module so deep is screwed on with so long a screw. */
const longScrew = (depth: number): string =>
  define(`  box: { depth: ${depth}, carcase: { back: { stock: thin, joint: screw 6x80 } } }`)

/** A partition with a fixed shelf, 318 to 336 high, on pocket screws at its left, and pins at its right. */
const pocketBesidePins = (datum: string): string =>
  define(`  box:
    width: 900
    inside:
      side by side:
        - dividers: { joint: { fasten: pocket screw, end distance: 37 } }
          stacked: [{}, { size: 300 }]
        - loose shelves: { count: 1, pins: { datum: ${datum} } }`)

const shelfAtHinge = (upper: number): string =>
  define(`  box:
    inside:
      loose shelves: 1
      front: { kind: door, hinges: [80, ${upper}] }`)

const narrowBay = (size: number): string =>
  define(`  box:
    inside:
      side by side: [{ size: ${size} }, {}]
      front: { kind: door, hinges: [80, 600] }`)

const shelfAtBolt = (inset: number): string =>
  define(
    `  one: { inside: { stacked: [{}, { size: 200, loose shelves: 1 }] } }
  two: {}`,
    `floor plan: [{ row: [one, two], join: { bolt: bolt M6, end inset: ${inset}, side inset: 100 } }]`,
  )

const plateOnFoot = (inset: number): string =>
  define(`  box:
    base: { feet: foot M10, inset: ${inset} }
    inside: { front: { kind: flap, hang: bottom, stay: none, hinges: [80, 517] } }`)

const pair = (gap: string): string => define(`  box: { inside: { front: { kind: pair, gap: ${gap} } } }`)

/** Two modules side by side with a door each. */
const row = (reveal: string): string =>
  define(
    `  one: { inside: { front: { kind: door, reveal: ${reveal} } } }
  two: { inside: { front: { kind: door, hang: right, reveal: ${reveal} } } }`,
    'floor plan: [{ row: [one, two] }]',
  )

/** Pocket screws from the bottom into the sides, and a hole in the left side, 60 wide, over one of their tips. */
const holeAtTip = (bottom: number): string =>
  define(`  box:
    carcase: { joint: { fasten: pocket screw, end distance: 50 }, back: { stock: thin } }
    openings: [{ panel: left side, shape: round, diameter: 60, from: { front: 50, bottom: ${bottom} }, for: a cable }]`)

/** A door beside a module that stands 700 mm further forward. */
const besideDeep = (hang: string): string =>
  define(
    `  one: { inside: { front: { kind: door, hang: ${hang}, pull: { item: pull 128 } } } }
  two: { depth: 1100 }`,
    `floor plan: [{ row: [one] }, { row: [two], stands: { against: one, at its: right, line up: front, shift: -700 } }]`,
  )

/** What looks to the left stands at the right of another, with its front toward that one's side. */
const towardSide = (inside: string, gap: number): string =>
  define(
    `  one: {}
  two: { inside: ${inside} }`,
    `floor plan: [{ row: [one] }, { row: [two], stands: { against: one, at its: right, fronts look: left, gap: ${gap} } }]`,
  )

const DRAWER = '{ drawers: 1 }'
const FLAP = '{ front: { kind: flap, hang: bottom, stay: none } }'

/** In an inner corner: a door, and drawers that come out before it. */
const innerCorner = (hang: string): string =>
  define(
    `  one: { inside: { front: { kind: door, hang: ${hang} } } }
  two: { inside: { drawers: 3 } }`,
    `floor plan: [{ row: [one] }, { row: [two], stands: { against: one, at its: right, fronts look: left, line up: front, shift: -600 } }]`,
  )

/** A module stands so far before the door of another, behind which there is a drawer. */
const before = (gap: number): string =>
  define(
    `  one: { inside: { front: { kind: door }, drawers: { stack: 1, fronts: none } } }
  two: {}`,
    `floor plan: [{ row: [one] }, { row: [two], stands: { against: one, at its: front, fronts look: back, gap: ${gap} } }]`,
  )

/** A flip-over top with a planer, and a module so far behind it. */
const behindTurner = (gap: number): string => `${ROUND_STOCK}
  ply 12: { thickness: 12, sheet: [2500, 1250] }
  ply 24: { thickness: 24, sheet: [2500, 1250] }
common: { width: 600, depth: 500, carcase height: 800, stock: board }
modules:
  turner:
    carcase: { back: none }
    flip-over top:
      skin: ply 12
      core: ply 24
      axle: axle 20
      machines: { upper: { name: planer, width: 500, depth: 400, height: 280 } }
  two: { carcase: { back: { stock: thin } } }
floor plan: [{ row: [turner] }, { row: [two], stands: { against: turner, at its: back, fronts look: back, gap: ${gap} } }]
`

export const spaceCases: readonly RuleCase[] = [
  {
    rule: 'screw-through',
    // The sides are 80 − 6 = 74 deep. Screw 80 less the back's 6 reaches 74 into them, its pilot 75: out by 1. 4 shorter
    // leaves 3 mm; the next screw of 6 mm is 60 long.
    trips: longScrew(80),
    severity: 'stop',
    message:
      'box, left side: the screw 6x80 in the screw pilot 4.2 × 75, 50 from bottom in the back edge, and 4 more of its kind, come out of the front edge by 1 mm',
    fix: 'take a screw 76 mm long or shorter, not 80: screw 6x60',
    // 84 − 6 − 75 = 3.
    inside: longScrew(84),
  },
  {
    rule: 'screw-through',
    what: 'a thin skin',
    trips: longScrew(83),
    severity: 'warn',
    message:
      'box, left side: the screw 6x80 in the screw pilot 4.2 × 75, 50 from bottom in the back edge, and 4 more of its kind, leave only 2 mm of wood before the front edge',
    fix: 'take a screw 79 mm long or shorter, not 80: screw 6x60',
    inside: longScrew(84),
  },
  {
    rule: 'screw-through',
    what: 'into a hole',
    // The screw enters the side in the middle of the bottom, 9 up, and rises by 15° to 15 deep: 9 + 15 × tan 15° = 13.02;
    // its thread, 4.2 thick, to 13.02 + 2.1 × cos 15° = 15.05. The hole begins at 44 − 30 = 14.
    trips: holeAtTip(44),
    severity: 'stop',
    message:
      'box, left side: the pocket screw 32 with its tip 50 from front and 13 from bottom comes out in the cutout for a cable',
    fix: 'move it 3 mm or more away from there, or take another joint',
    // 48.1 − 30 − 15.05 = 3.05.
    inside: holeAtTip(48.1),
  },
  {
    rule: 'fasteners-cross',
    // The screw enters the partition in the middle of the shelf, at 318 + 9 = 327, 37 from the front, and rises by
    // 15° to 15 deep: 327 + 15 × tan 15° = 331. A pin at 10 + 10 × 32 = 330, 13 deep from the other face, lies on it.
    // The partition stands on the bottom, 18 up, and is measured from there.
    trips: pocketBesidePins('10'),
    severity: 'stop',
    message:
      'box, partition 1: the pocket screw 32 (its tip 37 from front and 313 from bottom) runs into the shelf pin 5 × 13, 37 from front and 312 from bottom in face A (right face)',
    fix: 'move one of them 2 mm or more: the screws by the `end distance` or `spacing` of their joint',
    // The thread, 4.2 thick, reaches up to 331.02 + 2.1 × cos 15° = 333.05; a pin at 337.6 begins at 335.1: 2.05 apart.
    inside: pocketBesidePins('17.6'),
  },
  {
    rule: 'fasteners-cross',
    what: 'nearly',
    // A pin at 337 begins at 334.5: 1.45 above 333.05.
    trips: pocketBesidePins('17'),
    severity: 'warn',
    message:
      'box, partition 1: the pocket screw 32 (its tip 37 from front and 313 from bottom) passes only 1.5 mm beside the shelf pin 5 × 13, 37 from front and 319 from bottom in face A (right face)',
    fix: 'move one of them 0.5 mm or more: the screws by the `end distance` or `spacing` of their joint',
    inside: pocketBesidePins('17.6'),
  },
  {
    rule: 'hinge-arm',
    // The door begins 1.5 above the side's end: the hinge lies at 361.5, its plate from 335.5 to 387.5, its arm to 57
    // behind the side's front edge. The shelf on the pins nearest to the middle, 352, lies from 354.5 to 372.5. Pins at
    // 288 (shelf to 308.5) and 416 (from 418.5) are clear; 320 (to 340.5) and 384 (from 386.5) are not. The lower plate
    // ends at 81.5 + 26 = 107.5: 96 (from 98.5) is not clear, 128 is. 20 + (57 − 20) = 57.
    trips: shelfAtHinge(360),
    severity: 'note',
    message:
      'box: shelf 1 is in the way of the arm of the hinge 35 full, 37 from front and 361.5 from bottom on face A (inside) of left side, for door',
    fix: 'set it on pins 128 to 288 and 416 to 608 mm above the lower end of left side, or set `front setback: 57 mm` for it to end behind the hinges',
    // 397 + 1.5 − 26 = 372.5: the plate begins where the shelf ends.
    inside: shelfAtHinge(397),
  },
  {
    rule: 'hinge-arm',
    what: 'a partition',
    // The arm stands in 25 mm, and the partition begins 20 mm from the side.
    trips: narrowBay(20),
    severity: 'stop',
    message:
      'box: partition 1 is in the way of the arm of the hinge 35 full, 37 from front and 81.5 from bottom on face A (inside) of left side, for door, and of 1 more of its hinges',
    fix: 'move the hinge or partition 1 5 mm or more (`hinges: [ … ]`)',
    inside: narrowBay(25),
  },
  {
    rule: 'head-on-panel',
    // Over the bottom, 18 to 218, pins stand at 96 and 128; the shelf on 128 lies from 130.5 to 148.5. The head, 18 wide,
    // takes 131 to 149. On 96 the shelf ends at 116.5.
    trips: shelfAtBolt(140),
    severity: 'warn',
    message:
      'one, right side: the head of the bolt M6, 100 from front and 140 from bottom on face A (inside) is in the way of shelf 1',
    fix: 'set it on pins 96 mm above the lower end of left side',
    // 157.5 − 9 = 148.5.
    inside: shelfAtBolt(157.5),
  },
  {
    rule: 'head-on-panel',
    what: 'a hinge plate on the nut of a foot',
    // The flap begins 1.5 from the side's outside and 18 + 2 behind the module's front. Plate: 37 + 20 ± 10, so 47 to 67
    // from the front, 81.5 ± 26 from the left. The flange of the nut, 25 wide, 70 in: from 57.5 on, both ways.
    trips: plateOnFoot(70),
    severity: 'stop',
    message:
      'box, bottom: the plate of the hinge 35 full, 37 from front and 63.5 from left on face A (inside), lies on the nut of the foot M10, 50 from front and 52 from left on face A (inside)',
    // The flange ends at 70 + 12.5 = 82.5; the plate, 26 to each side, 1 beyond it: 109.5, so 108 from the flap's end at
    // 1.5. At the other end 600 − 109.5 − 1.5 = 489.
    fix: 'set `hinges: [108 mm, 489 mm]`',
    // 79.6 − 12.5 = 67.1.
    inside: plateOnFoot(79.6),
  },
  {
    rule: 'fronts-gap',
    trips: pair('0.5'),
    severity: 'warn',
    message: 'box, door left and box, door right are only 0.5 mm apart',
    fix: 'set `gap: 3 mm`',
    inside: pair('1'),
  },
  {
    rule: 'fronts-gap',
    what: 'of two modules',
    // 0.3 at each; (3 − 0.6) / 2 = 1.2 more at each.
    trips: row('0.3'),
    severity: 'warn',
    message: 'one, door and two, door are only 0.6 mm apart',
    fix: 'set the right `reveal` of one to 1.5 mm and the left `reveal` of two to 1.5 mm',
    inside: row('0.5'),
  },
  {
    rule: 'door-swing',
    // The door, 597 wide, turns about its outer corner, 1.5 from the neighbour. The outer corner of its pull, 35 out and
    // 597 − 40 + 6 = 563 or − 6 = 551 from there, leads by atan 35/551 = 3.63° and comes to the neighbour at
    // 90 + asin 1.5/552.1 − 3.63 = 86.5°.
    trips: besideDeep('right'),
    severity: 'warn',
    message: 'one, door opens only to 86° before its pull meets left side of two',
    fix: 'hang it at its left edge (`hang: left`)',
    inside: besideDeep('left'),
  },
  {
    rule: 'corner-swing',
    trips: towardSide(DRAWER, 100),
    severity: 'warn',
    message: 'two, drawer 1 front comes out only 100 mm of 350 before it meets right side of one',
    fix: 'leave 250 mm more before it: a filler at the corner, or another place for one of the modules',
    // 90 % of 350.
    inside: towardSide(DRAWER, 315),
  },
  {
    rule: 'corner-swing',
    what: 'both open',
    // The door sweeps a quarter of a circle of 597 before its module; the drawers come out 350 into it.
    trips: innerCorner('left'),
    severity: 'note',
    message: 'one, door and two, drawer 1 front meet when both are open, and so do 2 more pairs of their fronts',
    fix: 'open one at a time',
    // Far from the corner: nothing comes out there.
    inside: towardSide('{}', 0),
  },
  {
    rule: 'flap-arc',
    // Its free edge, 717 from the pivot, comes 100 out at asin 100/717 = 8.02°.
    trips: towardSide(FLAP, 100),
    severity: 'warn',
    message: 'two, flap opens only to 8° before it meets right side of one',
    fix: 'hang it at another edge, or leave more room there',
    // At 85° it is 717 × sin 85° = 714.3 out, at 90° 717.
    inside: towardSide(FLAP, 715),
  },
  {
    rule: 'drawer-room',
    // The door, 597 wide, stands at asin 300/597 = 30.16°. The box begins 18 + 18 (packing) + 13 from the outside of its
    // module, so 47.5 from the pivot. There the hidden face, 18 thick, is met (47.5 − 18 × sin) / cos = 44.5 from the
    // hinge edge: 44.5 × sin − 18 × cos = 6.8 out. The box begins 18 + 2 + 2 behind the show face: 6.8 + 22 = 28.8.
    trips: before(300),
    severity: 'warn',
    message: 'one, drawer 1 box front comes out only 28.8 mm of 350 behind door, which opens only to 30°',
    fix: 'let door open to a right angle: hang it at its other edge, or leave more room before it',
    // The corner of the door behind its show face reaches √(597² + 18²) = 597.3.
    inside: before(598),
  },
  {
    rule: 'flip-room',
    // The planer's far corner: √(200² + (24 + 280)²) = 363.9 from the axle, which lies 250 before the module's rear, at
    // 776 of 800. The other module begins 50 behind that: 300. 363.89 + 5 − 300 = 68.9.
    trips: behindTurner(50),
    severity: 'warn',
    message: 'turner: as it turns, the planer strikes back of two',
    fix: 'leave 68.9 mm more between the two modules (`gap`), or roll one of them away first',
    // 250 + 118.9 = 368.9.
    inside: behindTurner(118.9),
  },
]
