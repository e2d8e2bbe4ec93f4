import { ROUND_STOCK } from '../../support/define.ts'
import type { RuleCase } from './case.ts'

// Platform 564 − 2 × 3 = 558 wide, 500 deep, 12 + 24 + 12 = 48 thick: its corner is hypot(250, 24) = 251.149 from the
// axle. Well: 251.149 + 10 + 24 = 285.149, up to 286.
const turner = (top: string, { core = 24, axle = 'axle 20', more = '', rest = '' } = {}): string => `${ROUND_STOCK}
  skin: { thickness: 12, sheet: [2500, 1250] }
  core: { thickness: ${core}, sheet: [2500, 1250] }
modules:
  turner:
    width: 600
    depth: 500
    carcase height: 800
    stock: board
    carcase: { back: none }
    flip-over top: { skin: skin, core: core, axle: ${axle}, ${top} }
${more}${rest}`
// The far corner: hypot(200, 24 + 280) = 363.890.
const PLANER = 'machines: { upper: { name: planer, width: 500, depth: 400, height: 280 } }'
const lower = (width: number, off = ''): string =>
  turner(`machines: { lower: { width: ${width}, depth: 200, height: 100${off} } }`)
const beside = (height: number, join = 'none'): string =>
  turner('well: 350', {
    more: `  neighbour: { width: 400, depth: 500, carcase height: ${height}, stock: board, carcase: { back: none } }\n`,
    rest: `floor plan: [{ row: [turner, neighbour], join: ${join} }]\n`,
  })

export const flipOverCases: readonly RuleCase[] = [
  {
    rule: 'axle-channel',
    what: 'a core too thin',
    // 20 and 0.2 of play; 16.5 takes 16 and 0.2.
    trips: turner('', { core: 17 }),
    severity: 'stop',
    message: 'turner: a core of 17 mm leaves no channel for the axle 20, which needs 20.2 mm',
    fix: 'take a core of 20.2 mm or more, or axle 16',
    inside: turner('', { core: 20.2 }),
  },
  {
    rule: 'axle-channel',
    what: 'a core to be packed out',
    // (24 − 20) / 2.
    trips: turner(''),
    severity: 'note',
    message:
      'turner: the channel is 24 mm high and the axle 20 20 mm thick: pack it out by 2 mm above and below, so that the axle lies in the middle',
    inside: turner('', { core: 21 }),
  },
  {
    rule: 'locking-place',
    what: 'too near the edge',
    // A bore of 11: 5 + 5.5 = 10.5; from the axle 10.25 + 5 + 5.5 = 20.75, so up to 250 − 20.75 = 229.25.
    trips: turner('locking bolts: { edge distance: 9 }'),
    severity: 'stop',
    message: "turner: a locking bolt M8, 9 mm from the platform's edge, lies too near the platform's edge",
    fix: 'set its `edge distance` from 10.5 mm to 229.2 mm',
    inside: turner('locking bolts: { edge distance: 10.5 }'),
  },
  {
    rule: 'locking-place',
    what: 'a core too thin',
    // 11 and 3 on both sides.
    trips: turner('', { core: 16.5, axle: 'axle 16' }),
    severity: 'stop',
    message: 'turner: the bores of a locking bolt M8, 11 mm wide, want a core of 17 mm; it is 16.5 mm thick',
    fix: 'take a core of 17 mm or more',
    inside: turner('', { core: 17, axle: 'axle 16' }),
  },
  {
    rule: 'swing-clearance',
    what: 'nearly',
    // In a well of 390 the axle is 366 above the top: 2.110 free, 7.890 short.
    trips: turner(`well: 390, ${PLANER}`),
    severity: 'warn',
    message:
      'turner: as it turns, the planer swings 363.9 mm about the axle and passes the top by only 2.1 mm; 10 mm is wanted',
    fix: 'make the well 397.9 mm deep or more',
    inside: turner(`well: 397.9, ${PLANER}`),
  },
  {
    rule: 'swing-clearance',
    what: 'it strikes, resting below the ends of the sides',
    // 380 − 24 = 356 above the top; 17.890 short of 10 beside it: 397.890 and 417.890.
    trips: turner(`well: 400, surface: 380, ${PLANER}`),
    severity: 'stop',
    message: 'turner: as it turns, the planer swings 363.9 mm about the axle and strikes the top, 356 mm from it',
    fix: 'set `surface: 397.9 mm` and `well: 417.9 mm` or more',
    inside: turner(`well: 417.9, surface: 397.9, ${PLANER}`),
  },
  {
    rule: 'machine-width',
    what: 'too wide',
    // 564 between the sides: 550 leaves 7 at each, 3 short of 10.
    trips: lower(550),
    severity: 'warn',
    message: 'turner: the lower machine, 550 mm wide, passes with only 7 mm at one side between sides 564 mm apart',
    fix: 'make the module 606 mm wide or more',
    inside: lower(544),
  },
  {
    rule: 'machine-width',
    what: 'off centre',
    // 500 wide: 32 at each side, none once it stands 40 to the right.
    trips: lower(500, ', off centre: { right: 40 }'),
    severity: 'stop',
    message: 'turner: the lower machine, 500 mm wide, does not pass between sides 564 mm apart',
    fix: 'stand it in the middle: leave out `off centre` to the right',
    inside: lower(500, ', off centre: { right: 22 }'),
  },
  {
    rule: 'swing-room',
    // 251.149 − 250 at both ends. A platform 20 shorter at both ends reaches hypot(230, 24) = 231.249.
    trips: turner(''),
    severity: 'note',
    message:
      'turner: as it turns, the platform swings beyond the footprint by 1.1 mm at the front and 1.1 mm at the rear; a wall or a neighbour there must leave that room',
    inside: turner('front clearance: 20, rear clearance: 20'),
  },
  {
    rule: 'flip-over-care',
    trips: turner(''),
    severity: 'note',
    message:
      'turner: the manuals of the machines come first; turn the platform only with the machines unplugged and bolted down, the casters locked and hands clear of the sides, and lock every bolt before you work',
    inside: turner('').replace(/ {4}flip-over top: .*/, ''),
  },
  {
    rule: 'swing-hardware',
    // The upper bolts count from below the circle, 776 − 251.149 = 524.851: 5 lower in the middle, as the axle is, 256.149
    // from it. A head of 18 takes 9: 260.149 is the least, and 9 the inset.
    trips: beside(800, '{ bolt: bolt M6, end inset: 5, side inset: 250 }'),
    severity: 'stop',
    message:
      'turner, right side: what is fixed in the joining bolt 7 through, 250 from front and 519.9 from bottom in face A (inside) lies where the platform turns, 256.1 mm from the axle; 260.1 mm is the least',
    fix: 'set `end inset: 9 mm` of the bolts',
    inside: beside(800, '{ bolt: bolt M6, end inset: 9, side inset: 250 }'),
  },
  {
    rule: 'lock-reach',
    // The bolts stand 24 below the ends of the sides, 776 up; the hand takes 15 more to both sides: 761.
    trips: beside(762),
    severity: 'warn',
    message: 'turner: neighbour stands before the locking bolts in the right side, so that no hand reaches them',
    fix: 'leave 30 mm or more beside it, or let the neighbour end below the axle',
    inside: beside(761),
  },
]
