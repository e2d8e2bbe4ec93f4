import { ROUND_STOCK } from '../../support/define.ts'
import type { RuleCase } from './case.ts'

/** 800 × 540 × 720 of 18 mm board, back of 6 over the rear edges: sides 534 deep, pins 37 from the front at multiples of 32. */
const bench = (
  openings: readonly string[],
  carcase = 'back: { sits: applied, stock: thin }',
  inside = 'loose shelves: 1',
): string => `${ROUND_STOCK}
modules:
  bench:
    width: 800
    depth: 540
    carcase height: 720
    stock: board
    carcase: { ${carcase} }
    inside: { ${inside} }
    openings:
${openings.map((one) => `      - { ${one}, for: port }`).join('\n')}
`

const inBottom = (front: number): string =>
  bench([`panel: bottom, shape: round, diameter: 60, from: { front: ${front}, left: 200 }`])
const inSide = (front: number, bottom: number, more = ''): string =>
  `panel: left side, shape: round, diameter: 60, from: { front: ${front}, bottom: ${bottom} }${more}`
const recess = (depth: number, more = ''): string =>
  bench([inSide(267, 300, `, depth: ${depth}, face: outside${more}`)])

/** Side with a stopped housing at the lower end, its board notched there, and a groove for the back. */
const grooved = 'back: { sits: grooved, stock: thin, groove setback: 20 }'

export const cutoutCases: readonly RuleCase[] = [
  {
    rule: 'cutout-leaves-panel',
    // Radius 30, middle 25 from the edge: 5 over it. 10 of wood should remain: middle at 40.
    trips: inBottom(25),
    severity: 'stop',
    message: 'bench, bottom: the port, its middle 25 from front and 200 from left, reaches 5 mm over the front edge',
    fix: 'move it in or make it smaller; a notch in an edge is not made',
    inside: inBottom(30.1),
  },
  {
    rule: 'cutout-leaves-panel',
    what: 'at the edge',
    trips: inBottom(30),
    severity: 'stop',
    message: 'bench, bottom: the port, its middle 30 from front and 200 from left, touches the front edge',
    fix: 'move it in or make it smaller; a notch in an edge is not made',
    inside: inBottom(30.1),
  },
  {
    rule: 'cutout-near-edge',
    trips: inBottom(35),
    severity: 'warn',
    message:
      'bench, bottom: the port, its middle 35 from front and 200 from left, leaves only 5 mm of wood to the front edge',
    fix: 'move it in 5 mm, or make it smaller',
    inside: inBottom(40),
  },
  {
    rule: 'cutout-near-edge',
    what: 'measured from the other edge',
    // The bottom is 534 deep: 499 from the back is 35 from the front, and 494 is 40.
    trips: bench(['panel: bottom, shape: round, diameter: 60, from: { back: 499, left: 200 }']),
    severity: 'warn',
    message:
      'bench, bottom: the port, its middle 35 from front and 200 from left, leaves only 5 mm of wood to the front edge',
    fix: 'move it in 5 mm, or make it smaller',
    inside: bench(['panel: bottom, shape: round, diameter: 60, from: { back: 494, left: 200 }']),
  },
  {
    rule: 'cutout-skin',
    // 18 − 15.5 = 2.5.
    trips: recess(15.5),
    severity: 'warn',
    message:
      'bench, left side: the port, its middle 267 from front and 300 from bottom in face B (outside), leaves only 2.5 mm of wood behind it',
    fix: 'cut it no deeper than 15 mm, or through',
    inside: recess(15),
  },
  {
    rule: 'cutout-near',
    what: 'a pin',
    // A pin of 5 stands 37 from the front, 352 up; its rim reaches 39.5, the port begins 73.5 − 30 = 43.5: 4. Moved up by
    // a, the pin's middle is √(36.5² + a²) from the port's: 37.5 wanted; a = 8.6, in half millimetres 9.
    trips: bench([inSide(73.5, 352)]),
    severity: 'warn',
    message:
      'bench, left side: the port, its middle 73.5 from front and 352 from bottom, is only 4 mm from the shelf pin 5 × 13, 37 from front and 352 from bottom in face A (inside)',
    fix: 'move it 1 mm further from the front edge (`front: 74.5 mm`), or move the pin rows of shelf opening 1 up 9 mm (`datum: 9 mm`)',
    inside: bench([inSide(74.5, 352)]),
  },
  {
    rule: 'cutout-near',
    what: 'another port',
    // 64 from middle to middle, less 60.
    trips: bench([inSide(267, 300), inSide(267, 364)]),
    severity: 'warn',
    message:
      'bench, left side: the port, its middle 267 from front and 300 from bottom, is only 4 mm from the port, its middle 267 from front and 364 from bottom',
    fix: 'move it 1 mm nearer to the bottom edge (`bottom: 299 mm`)',
    inside: bench([inSide(267, 300), inSide(267, 365)]),
  },
  {
    rule: 'cutout-near',
    what: 'a groove',
    // The groove lies from 20 to 26.2 before the rear edge, 540 from the front; the port's rim at 480 + 30 = 510: 3.8. Moved in
    // half millimetres: 1.5 leaves 5.3.
    trips: bench([inSide(480, 300)], grooved, ''),
    severity: 'warn',
    message:
      'bench, left side: the port, its middle 480 from front and 300 from bottom, is only 3.8 mm from the groove for the back',
    fix: 'move it 1.5 mm nearer to the front edge (`front: 478.5 mm`)',
    inside: bench([inSide(478.8, 300)], grooved, ''),
  },
  {
    rule: 'cutout-meets',
    // The port's rim at 68.5 − 30 = 38.5 lies 1 inside the pin's, 39.5: 6 for 5 of wood. No row of
    // pins 32 apart clears a port of 60.
    trips: bench([inSide(68.5, 352)]),
    severity: 'stop',
    message:
      'bench, left side: the port, its middle 68.5 from front and 352 from bottom, runs into the shelf pin 5 × 13, 37 from front and 352 from bottom in face A (inside)',
    fix: 'move it 6 mm further from the front edge (`front: 74.5 mm`)',
    inside: bench([inSide(69.6, 352)]),
  },
  {
    rule: 'cutout-meets',
    what: 'a smaller one in a larger',
    // Beside it, with 5 between: 30 + 5 + 10 = 45 from middle to middle.
    trips: bench([inSide(267, 300), 'panel: left side, shape: round, diameter: 20, from: { front: 267, bottom: 300 }']),
    severity: 'stop',
    message:
      'bench, left side: the port, its middle 267 from front and 300 from bottom, runs into the port, its middle 267 from front and 300 from bottom',
    fix: 'move it 45 mm further from the front edge (`front: 312 mm`)',
    // A ledge round it, on one face, is a design.
    inside: bench([
      inSide(267, 300, ', depth: 6, face: outside'),
      'panel: left side, shape: round, diameter: 20, from: { front: 267, bottom: 300 }',
    ]),
  },
]
