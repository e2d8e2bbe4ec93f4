import { ROUND_STOCK } from '../../support/define.ts'
import type { RuleCase } from './case.ts'
import { tampered } from './tampered.ts'

/** Doors over two bays beside each other, the partition between them 18 thick. */
const doors = (cover: string): string => `${ROUND_STOCK}
modules:
  box:
    width: 818
    depth: 400
    carcase height: 700
    stock: board
    carcase: { back: none }
    inside: { side by side: [{ front: { kind: door, cover: ${cover} } }, { front: { kind: door, hang: right, cover: ${cover} } }] }
`

/** A door over a fixed shelf whose middle is 18 + 333 + 9 = 360 up; hinges as given from the door's lower end, 1.5 up. */
const hinged = (middle: number): string => `${ROUND_STOCK}
modules:
  box: { width: 600, depth: 400, carcase height: 720, stock: board, carcase: { back: none, joint: dowel }, inside: { stacked: [{}, {}], front: { kind: door, hinges: [80, ${middle}, 640] } } }
`

/** 500 × 400 × 450: one stay on the left, its bracket 64 behind the front edges, reaching 10 to front and back and 20 up. */
const flap = (shelves: string): string => `${ROUND_STOCK}
modules:
  box:
    width: 500
    depth: 450
    carcase height: 400
    stock: board
    carcase: { back: { sits: applied, stock: thin } }
    inside:
      front: { kind: flap }
      loose shelves: { count: 1, ${shelves} }
`

const drawers = `${ROUND_STOCK}
common: { depth: 560, carcase height: 720, stock: board }
modules:
  box: { width: 600, carcase: { back: { sits: applied, stock: thin } }, inside: { drawers: { stack: [{ height: 137 }, {}] } } }
  other: { width: 600 }
floor plan:
  - { row: [box, other], join: { bolt: bolt M6, end inset: 110 } }
`

const lipped = (edge: string): string => `${ROUND_STOCK}
modules:
  box: { width: 600, depth: 400, carcase height: 720, stock: board, carcase: { back: none, joint: dowel }, lipping: [{ thickness: 2, edges: [${edge}], on: [bottom] }] }
`

export const inPlaceCases: readonly RuleCase[] = [
  {
    rule: 'panels-overlap',
    // Each covers 18 − 1.5 = 16.5 of the partition's 18: 15 twice.
    trips: doors('full'),
    severity: 'stop',
    message: 'box: door 1 and door 2 overlap by 15 mm',
    fix: 'let one of them cover the panel between them by half (`cover: half`, or leave it out)',
    inside: doors('half'),
  },
  {
    rule: 'hole-covered',
    // A hinge at 1.5 + 343.5 = 345, its plate's holes 329 and 361; the shelf lies from 351 to 369. A plate reaches 10 beyond
    // its holes: up by 369 − 361 + 10 = 18, less than down by 361 − 351 + 10 = 20.
    trips: hinged(343.5),
    severity: 'stop',
    message:
      'box, left side: the hinge plate 5 × 13, 37 from front and 361 from bottom in face A (inside) lies under fixed shelf 1, or too near it for what is fixed there',
    fix: 'move the hardware or fixed shelf 1 18 mm or more',
    // Holes at 309 and 341: 10 below the shelf.
    inside: hinged(323.5),
  },
  {
    rule: 'edge-lipped',
    // Dowels along 400: ceil((400 − 100) / 160) + 1 = 3.
    trips: lipped('left'),
    severity: 'note',
    message: 'box, bottom: 3 bores enter the left edge through a lipping of 2 mm; depths count from the finished edge',
    fix: 'bore when the lipping is on, or 2 mm less deep before',
    inside: lipped('front'),
  },
  {
    rule: 'stay-clear',
    what: 'a pin under its bracket',
    // The column on the bracket's own line, the pin at 160 within 20 of its middle at 167: 10 + 2.5 aside.
    trips: flap('front setback: 120, pins: { front setback: 64 }'),
    severity: 'warn',
    message:
      'box, left side: the bracket of the lid stay 250 lies on the shelf pin 5 × 13, 64 from front and 160 from bottom in face A (inside)',
    fix: 'move the column of pins 12.5 mm or more away from it (`front setback` or `rear setback`), or choose another stay',
    inside: flap('front setback: 120, pins: { front setback: 76.5 }'),
  },
  {
    rule: 'stay-clear',
    what: 'a shelf beside its arm',
    // The stay ends 64 + 10 = 74 behind the front edges, the shelf begins 20 behind them.
    trips: flap('pins: { datum: 0 }'),
    severity: 'warn',
    message: 'box: shelf 1 stands in the way of the lid stay 250',
    fix: 'keep the shelf 54 mm further back (`front setback` of the loose shelves), set it above or below the stay, or choose another stay',
    inside: flap('front setback: 74'),
  },
  {
    rule: 'slide-on-fastener',
    // The placing keeps bolts off slides. Bolts 110 below the top, at 610, are moved to 612: a head of 18 reaches 621;
    // the slide's body, 45 high about 642.75, begins at 620.25.
    trips: tampered(drawers, 'box/right-side', (panel) => ({
      ...panel,
      bores: panel.bores.map((bore) => (bore.at[0] === 610 ? { ...bore, at: [612, bore.at[1], bore.at[2]] } : bore)),
    })),
    severity: 'stop',
    message:
      'box, right side: a drawer slide lies on what is fixed in the joining bolt 7 through, 96 from front and 612 from bottom in face A (inside)',
    fix: 'move one of them 0.8 mm or more: the bolts by their insets, the slide by the heights of the drawers',
    inside: drawers,
  },
]
