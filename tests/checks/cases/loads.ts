import type { RuleCase } from './case.ts'

const GUIDE = '(a guide, not a proof; the data sheet of the hardware and local codes come first)'

const stock = (more = '') => `
storyrod: 1
stock:
  board: { thickness: 18, board: birch plywood, sheet: [2500, 1250] }${more}
`
const STOUT = '\n  stout: { thickness: 24, stiffness: 8000, sheet: [2500, 1250] }'

/** A module of boards of 18 without a back, and with nothing on its floors and top but what `loads` says. */
const box = (sizes: string, more = '', loads = 'on the top: 0', boards = ''): string => `${stock(boards)}
modules:
  box: { ${sizes}, stock: board, carcase: { back: none }, loads: { on all shelves: 0, ${loads} }${more} }
`

/** Loose shelves as long and deep as asked: opening = width − 2 × 18, shelf 2 × 1.2 shorter, 5 + 2 less deep. */
const shelf = (length: number, depth: number, group: string, boards = ''): string =>
  box(
    `width: ${length + 38.4}, depth: ${depth + 7}, carcase height: 720`,
    `, inside: { loose shelves: { count: 1, ${group} } }`,
    'on the top: 0',
    boards,
  )

// I = 300 × 18³ / 12 = 145 800 mm⁴; 5 W L³ / (384 E I) with W = 40 × 9.81 N, E 8000: 6.908 mm at 1164, 2.915 mm at 873.
// In the middle 8/5 of it: 11.05, 4.66; crept 1.8 of it: 12.44, 5.25; kitchen: 1.6 × L / 305 = 6.11, 4.58.
const sagCases: readonly RuleCase[] = [
  {
    rule: 'shelf-sag',
    what: 'a thicker stock holds',
    trips: shelf(1164, 300, 'load: 40 kg', STOUT),
    severity: 'warn',
    message: `box, shelf 1: 40 kg spread over a span of 1164 mm make it sag 6.91 mm, L/168 (E 8000 N/mm², I 145800 mm⁴); 11.05 mm if all of it stands in the middle, 12.44 mm once it has lain there for long; kitchen cabinets may sag 6.11 mm after a week under 73 kg/m² ${GUIDE}`,
    // 24 mm: 6.908 × (18 / 24)³ = 2.91. A strip of 40: I 349 551 (beams.test.ts), 6.908 × 145 800 / 349 551 = 2.88; one of
    // 30 has I 209 125 and 4.82 mm, more than 1164 / 300 = 3.88.
    fix: 'take stout for it and it sags 2.91 mm, or lip the shelf with a 40 × 18 mm hardwood strip and it sags 2.88 mm, or put a partition under its middle',
    // 40 kg at 872: 5 × 392.4 × 872³ / (384 × 8000 × 145 800) = 2.9045 mm, L/300.2.
    inside: shelf(872, 300, 'load: 40 kg'),
  },
  {
    rule: 'shelf-sag',
    what: 'a strip holds',
    trips: shelf(873, 300, 'load: 40 kg'),
    severity: 'note',
    // L/299.5. With a strip of 30: I = 137 052 + 22.5 × 30³ / 12 + 5076 × 675 / 5751 × 6² = 209 125; 2.915 × 0.6972 = 2.03.
    message: `box, shelf 1: 40 kg spread over a span of 873 mm make it sag 2.91 mm, L/299 (E 8000 N/mm², I 145800 mm⁴); 4.66 mm if all of it stands in the middle, 5.25 mm once it has lain there for long; kitchen cabinets may sag 4.58 mm after a week under 73 kg/m² ${GUIDE}`,
    fix: 'lip the shelf with a 30 × 18 mm hardwood strip and it sags 2.03 mm, or put a partition under its middle',
    // A lipping of 2 mm: E I is 298 × 8000 + 2 × 10 000 to 300 × 8000, 1.00167 of it: L/300.03.
    inside: shelf(873, 300, 'load: 40 kg').replace(
      'loads:',
      'lipping: [{ thickness: 2, edges: [front], on: [shelves] }], loads:',
    ),
  },
  {
    rule: 'shelf-sag',
    what: 'a fixed shelf, and a partition under it',
    // From side to side 1164: I = 400 × 18³ / 12 = 194 400; 1164 × 400 mm² × 195.297 kg/m² = 90.93, at most 90.7 (200 lb).
    // 90.718 × 9.81 = 889.95 N: 5 × 889.95 × 1164³ / (384 × 8000 × 194 400) = 11.75 mm, L/99; × 1.6, × 1.8.
    trips: box('width: 1200, depth: 400, carcase height: 720', ', inside: { stacked: [{}, {}] }'),
    severity: 'warn',
    message: `box, fixed shelf 1: 90.7 kg spread over a span of 1164 mm make it sag 11.75 mm, L/99 (E 8000 N/mm², I 194400 mm⁴); 18.8 mm if all of it stands in the middle, 21.15 mm once it has lain there for long; kitchen cabinets may sag 6.11 mm after a week under 73 kg/m² ${GUIDE}`,
    // At most 3.88 mm: I 588 700 or more. Strip of 50: 382 × 18³ / 12 + 22.5 × 50³ / 12 + 6876 × 1125 / 8001 × 16² =
    // 185 652 + 234 375 + 247 504 = 667 531; 11.75 × 194 400 / 667 531 = 3.42. Of 40: 185 652 + 120 000 + 96 297 = too little.
    fix: 'lip the shelf with a 50 × 18 mm hardwood strip and it sags 3.42 mm, or put a partition under its middle',
    // Half the span with half the load: far inside.
    inside: box(
      'width: 1200, depth: 400, carcase height: 720',
      ', inside: { stacked: [{}, { side by side: [{}, {}] }] }',
    ),
  },
]

const CHIPS = box(
  'width: 600.4, depth: 407, carcase height: 720',
  ', inside: { loose shelves: { count: 1, load: 58 kg } }',
).replace('birch plywood', 'particleboard')

const pinCases: readonly RuleCase[] = [
  {
    rule: 'shelf-pins',
    // Its own 0.562 × 0.4 × 0.018 × 685 = 2.772 kg; (78 + 2.772) / 4 = 20.19 kg; 80 − 2.772 = 77.2.
    trips: shelf(562, 400, 'load: 78 kg'),
    severity: 'warn',
    message: `box, shelf 1: 78 kg on it and its own 2.8 kg make 20.2 kg on each of 4 pins; a pin in plywood carries 20 kg ${GUIDE}`,
    fix: 'set `load: 77 kg` for these shelves and keep to it; or divide the opening',
    inside: shelf(562, 400, 'load: 77 kg'),
  },
  {
    rule: 'shelf-pins',
    what: 'in particleboard',
    // Its own 0.562 × 0.4 × 0.018 × 650 = 2.630 kg; (58 + 2.63) / 4 = 15.16 kg; 60 − 2.63 = 57.4.
    trips: CHIPS,
    severity: 'warn',
    message: `box, shelf 1: 58 kg on it and its own 2.6 kg make 15.2 kg on each of 4 pins; a pin in particleboard or MDF carries 15 kg ${GUIDE}`,
    fix: 'set `load: 57 kg` for these shelves and keep to it; or divide the opening',
    inside: CHIPS.replace('58 kg', '57 kg'),
  },
  {
    rule: 'shelf-pins',
    what: 'long',
    trips: shelf(900, 300, 'load: 20 kg'),
    severity: 'note',
    message: `box, shelf 1: it is 900 mm long and lies on 4 pins; from 900 mm on, 5 or 6 are usual ${GUIDE}`,
    fix: 'screw a strip to the back under the middle of its rear edge, or divide the opening',
    inside: shelf(899.9, 300, 'load: 20 kg'),
  },
]

/** Boards of the carcase, 600 wide, 560 deep, 720 high: 2 × 720 × 560 + 2 × 564 × 560 mm², × 18 × 685 / 10⁹ = 17.731 kg. */
const stands = (base: string, top: number): string =>
  box('width: 600, depth: 560, carcase height: 720', `, base: { ${base} }`, `on the top: ${top}`)

const wheelCases: readonly RuleCase[] = [
  {
    rule: 'caster-load',
    // (17.731 + 210) / 3 = 75.91 kg; 0.91 × 3 = 2.73 kg too much.
    trips: stands('casters: caster 75', 210),
    severity: 'warn',
    message: `box: its own 17.7 kg and 210 kg on it make 75.9 kg on each of 3 casters, since one of 4 hangs on a floor that is never flat; caster 75 carries 75 kg ${GUIDE}`,
    fix: 'take caster 100, which carries 100 kg, or load it with 2.8 kg less (`loads`)',
    // (17.731 + 207) / 3 = 74.91 kg.
    inside: stands('casters: caster 75', 207),
  },
  {
    rule: 'foot-load',
    // (17.731 + 290) / 3 = 102.58 kg; 2.577 × 3 = 7.73 kg too much.
    trips: stands('feet: foot M8', 290),
    severity: 'warn',
    message: `box: its own 17.7 kg and 290 kg on it make 102.6 kg on each of 3 levelling feet, since one of 4 hangs on a floor that is never flat; foot M8 carries 100 kg ${GUIDE}`,
    fix: 'take foot M10, which carries 200 kg, or load it with 7.8 kg less (`loads`)',
    // (17.731 + 282) / 3 = 99.91 kg.
    inside: stands('feet: foot M8', 282),
  },
]

/** A drawer box of 12 mm (700 kg/m³) with a front of the board; no fasteners weigh anything. */
const drawers = (sizes: string, group: string): string =>
  box(
    sizes,
    `, inside: { drawers: { ${group}, box: { stock: thin } } }`,
    'on the top: 0',
    '\n  thin: { thickness: 12, density: 700 }',
  )

const slideCases: readonly RuleCase[] = [
  {
    rule: 'slide-load',
    // Front 597 × 297 × 18: 2.186 kg; sides 2 × 350 × 242, box front and back 2 × 514 × 242, bottom 525 × 337, all 12 thick:
    // 1.423 + 2.090 + 1.486; in all 7.185 kg. 45 − 7.185 = 37.8.
    trips: drawers('width: 600, depth: 400, carcase height: 300', 'stack: 1, load: 60 kg'),
    severity: 'warn',
    message: `box, drawer 1: 60 kg in it and its own 7.2 kg make 67.2 kg; a pair of slide 350 carries 45 kg ${GUIDE}`,
    fix: 'set `load: 37 kg` for these drawers and keep to it; or make them narrower, or take slides for 68 kg',
    inside: drawers('width: 600, depth: 400, carcase height: 300', 'stack: 1, load: 37.8 kg'),
  },
  {
    rule: 'slide-load',
    what: 'a wide drawer',
    // 836 − 36 − 26 = 774 wide: 45 × 600 / 774 = 34.88 kg. Its own 3.050 + 1.423 + 3.049 + 2.154 = 9.677 kg.
    trips: drawers('width: 836, depth: 400, carcase height: 300', 'stack: 1, load: 30 kg'),
    severity: 'warn',
    message: `box, drawer 1: 30 kg in it and its own 9.7 kg make 39.7 kg; a pair of slide 350 carries 45 kg, at a width of 774 mm about 34.9 kg ${GUIDE}`,
    fix: 'set `load: 25 kg` for these drawers and keep to it; or make them narrower, or take slides for 40 kg',
    inside: drawers('width: 836, depth: 400, carcase height: 300', 'stack: 1, load: 25.2 kg'),
  },
]

const UNPUSHED = 'findings: { tipping: { push warn: 0 } }\n'

const tippingCases: readonly RuleCase[] = [
  {
    rule: 'tipping',
    what: 'loaded on top',
    // 2 × 200 × 1400 + 2 × 564 × 200 = 785 600 mm², × 18 × 685 / 10⁹ = 9.686 kg, 700 high; 100 kg at 1400:
    // (6780 + 140 000) / 109.686 = 1338.2 high, 100 from front and back: atan(100 / 1338.2) = 4.27°.
    // 1338.2 × tan 10° = 235.96, 135.96 more.
    trips: box('width: 600, depth: 200, carcase height: 1400', '', 'on the top: 100 kg'),
    severity: 'stop',
    message: `box: with all of its load, it tips at 4.3°, less than 10°: the middle of its 109.7 kg lies 1338.2 mm high and 100 mm inside the front edge of what it stands on ${GUIDE}`,
    fix: 'let its base reach 136 mm further out at the front, keep the heavy things low (`loads`), or bolt it to a neighbour or to the wall',
    // 22.279 kg and 100 kg: 1272.5 high, 230 from the edges: 10.25°.
    inside: box('width: 600, depth: 460, carcase height: 1400', '', 'on the top: 100 kg'),
  },
  {
    rule: 'tipping',
    what: 'with a drawer out',
    // Carcase 2 × 900 × 430 + 2 × 364 × 430 mm²: 13.403 kg at y 235, z 450. Drawers 5.611, 5.809 and 5.611 kg with 40 kg in
    // each: in all 150.434 kg, y 213.46, z 448.44. The middle one (45.809 kg) out by 400: 121.80 forward, so 91.65, and the
    // sides begin at 20: 71.65 inside. atan(71.65 / 448.44) = 9.08°; 448.44 × tan 10° = 79.07, 7.42 more.
    trips: drawers('width: 400, depth: 450, carcase height: 900', 'stack: 3, load: 40 kg'),
    severity: 'warn',
    message: `box: with drawer 2 (45.8 kg) fully out, it tips at 9.1°, less than 10°: the middle of its 150.4 kg lies 448.4 mm high and 71.7 mm inside the front edge of what it stands on ${GUIDE}`,
    fix: 'let its base reach 8 mm further out at the front, keep the heavy things low (`loads`), or bolt it to a neighbour or to the wall',
    // With 10 kg in each 60.434 kg, 444.6 high, 82.05 inside: 10.46°.
    inside: drawers('width: 400, depth: 450, carcase height: 900', 'stack: 3, load: 10 kg'),
  },
  {
    rule: 'tipping',
    what: 'low',
    // 2 × 80 × 450 + 2 × 564 × 80 mm²: 2.000 kg; 100 kg at 450: 445.6 high, atan(40 / 445.6) = 5.13°; 78.57 − 40 = 38.57.
    trips: box('width: 600, depth: 80, carcase height: 450', '', 'on the top: 100 kg'),
    severity: 'warn',
    message: `box: with all of its load, it tips at 5.1°, less than 10°: the middle of its 102 kg lies 445.6 mm high and 40 mm inside the front edge of what it stands on ${GUIDE}`,
    fix: 'let its base reach 39 mm further out at the front, keep the heavy things low (`loads`), or bolt it to a neighbour or to the wall',
    inside: box('width: 600, depth: 80, carcase height: 449.9', '', 'on the top: 100 kg'),
  },
  {
    rule: 'tipping',
    what: 'as it rolls',
    // 2 × 500 × 850 + 2 × 564 × 500 = 1 414 000 mm², 17.435 kg, 100 + 425 = 525 high. Wheels 75 + 5 = 80 in, and swivelled
    // by 75 − 37.5 = 37.5: 250 − 117.5 = 132.5; atan(132.5 / 525) = 14.16°. 525 × tan 15° = 140.67, 8.17 more.
    trips: box('width: 600, depth: 500, carcase height: 850', ', base: { casters: caster 75 }') + UNPUSHED,
    severity: 'warn',
    message: `box: as it rolls, all shut, it tips at 14.2°, less than 15°: the middle of its 17.4 kg lies 525 mm high and 132.5 mm inside the front edge of what it stands on, its casters swivelled 37.5 mm inward ${GUIDE}`,
    fix: 'let its base reach 9 mm further out at the front, keep the heavy things low (`loads`), or bolt it to a neighbour or to the wall',
    // 100 + 390 = 490 high: 15.13°.
    inside: box('width: 600, depth: 500, carcase height: 780', ', base: { casters: caster 75 }') + UNPUSHED,
  },
  {
    rule: 'tipping',
    what: 'pushed',
    // 2 × 300 × 720 + 2 × 1164 × 300 = 1 130 400 mm², 13.938 kg, more than 13.6; 13.938 × 150 / 720 = 2.90 kg.
    // 5 × 720 / 13.938 = 258.29, 108.29 more.
    trips: box('width: 1200, depth: 300, carcase height: 720'),
    severity: 'warn',
    message: `box: a push of 2.9 kg at its upper edge, 720 mm high, tips it: the middle of its 13.9 kg lies 360 mm high and 150 mm inside the front edge of what it stands on ${GUIDE}`,
    fix: 'let its base reach 109 mm further out at the front, keep the heavy things low (`loads`), or bolt it to a neighbour or to the wall',
    // 15.199 kg: 15.199 × 240 / 720 = 5.07 kg.
    inside: box('width: 600, depth: 480, carcase height: 720'),
  },
  {
    rule: 'tall-module',
    trips: box('width: 600, depth: 500, carcase height: 1201'),
    severity: 'note',
    message: `box: its upper side stands 1201 mm above the floor, more than 1200 mm ${GUIDE}`,
    fix: 'fix it to the wall, or bolt it to a module that is',
    inside: box('width: 600, depth: 500, carcase height: 1200'),
  },
  {
    rule: 'tall-module',
    what: 'slender',
    trips: box('width: 600, depth: 280, carcase height: 1121'),
    severity: 'note',
    message: `box: its upper side stands 1121 mm above the floor, more than 4 times the 280 mm of its foot ${GUIDE}`,
    fix: 'fix it to the wall, or bolt it to a module that is',
    inside: box('width: 600, depth: 280, carcase height: 1120'),
  },
]

/** A platform 560 deep, 12 + 21 + 12 = 45 mm thick: 280 from the axle to its edge. */
const flip = (machines: string): string =>
  box(
    'width: 700, depth: 560, working height: 900',
    `, flip-over top: { skin: skin, core: core, machines: { ${machines} } }`,
    'on the top: 0',
    '\n  skin: { thickness: 12 }\n  core: { thickness: 21 }',
  )
const saw = (mass: number): string => `upper: { name: saw, width: 400, depth: 300, height: 200, mass: ${mass} }`

const balanceCases: readonly RuleCase[] = [
  {
    rule: 'flip-balance',
    // 22.5 + 200 / 2 = 122.5 above the axle; 60 × 122.5 / 280 = 26.25 kg.
    trips: flip(saw(60)),
    severity: 'warn',
    message: `box: as the platform turns with the saw (60 kg, its middle 122.5 mm above the axle), 26.3 kg pull at its edge, 280 mm from the axle; the saw comes down by itself as soon as the locking bolts are drawn ${GUIDE}`,
    fix: 'turn it with two people',
    // 11.4 × 122.5 / 280 = 4.99 kg.
    inside: flip(saw(11.4)),
  },
  {
    rule: 'flip-balance',
    what: 'two machines',
    // 22.5 + 150 = 172.5 below: 60 × 122.5 − 20 × 172.5 = 3900; / 280 = 13.93 kg; / 172.5 = 22.6 kg.
    trips: flip(`${saw(60)}, lower: { name: sander, width: 300, depth: 240, height: 300, mass: 20 }`),
    severity: 'note',
    message: `box: as the platform turns with the saw (60 kg, its middle 122.5 mm above the axle) and the sander (20 kg, its middle 172.5 mm below the axle), 13.9 kg pull at its edge, 280 mm from the axle; the saw comes down by itself as soon as the locking bolts are drawn ${GUIDE}`,
    fix: 'hold it with both hands, or balance it with 22.6 kg beside the sander, 172.5 mm from the axle',
    // 60 × 122.5 − 35 × 172.5 = 1312.5; / 280 = 4.69 kg.
    inside: flip(`${saw(60)}, lower: { name: sander, width: 300, depth: 240, height: 300, mass: 35 }`),
  },
]

/** A door 600 × 1500: carcase 3 larger both ways, for reveals of 1.5. 0.6 × 1.5 × 0.018 × 685 = 11.10 kg. */
const door = (more: string, hardware = ''): string =>
  `${box('width: 603, depth: 400, carcase height: 1503', `, inside: { front: { kind: door, hang: left${more} } }`)}${hardware}`

const hingeCases: readonly RuleCase[] = [
  {
    rule: 'door-hinges',
    // By its mass over 9 and up to 15 kg: 4; by its height alone 3.
    trips: door(', hinges: 2'),
    severity: 'stop',
    message: 'door is 1500 mm high, 600 mm wide and weighs 11.1 kg; 2 hinges are asked for, it needs 4',
    fix: 'set `hinges: 4` or leave it to the rule',
    inside: door(', hinges: 4'),
  },
  {
    rule: 'hinge-door-width',
    trips: door(', hinge: mine', 'hardware: { mine: { like: hinge 35 full, widest door: 599 } }\n'),
    severity: 'warn',
    message: 'door is 600 mm wide; mine is made for doors up to 599 mm',
    fix: 'choose a larger hinge, or use a pair of doors',
    inside: door(', hinge: mine', 'hardware: { mine: { like: hinge 35 full, widest door: 600 } }\n'),
  },
]

/** Cases of what a project carries, and of doors on their hinges. */
export const loadCases: readonly RuleCase[] = [
  ...sagCases,
  ...pinCases,
  ...slideCases,
  ...wheelCases,
  ...tippingCases,
  ...balanceCases,
  ...hingeCases,
]
