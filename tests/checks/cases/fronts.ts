import { ROUND_STOCK } from '../../support/define.ts'
import type { RuleCase } from './case.ts'

const fronted = (front: string, { side = 18, height = 720, width = 600, inside = '' } = {}): string => `${ROUND_STOCK}
  side: { thickness: ${side}, sheet: [2500, 1250] }
modules:
  box:
    width: ${width}
    depth: 400
    carcase height: ${height}
    stock: side
    carcase: { back: none, joint: screw 5x70 }
    inside: { front: { stock: board, ${front} }${inside} }
`

export const frontCases: readonly RuleCase[] = [
  {
    rule: 'hinge-overlay',
    what: 'no plate reaches so far',
    // 30 less a reveal of 1.5 is 28.5. Straight arm, K = 15: 15 + 7 (most) + 2 (plate of −2) = 24. 30 − 24 = 6.
    trips: fronted('kind: door', { side: 30 }),
    severity: 'stop',
    message: 'door: an overlay of 28.5 mm is wanted, but no plate of hinge 35 full gives it; the nearest is 24 mm',
    fix: 'set its `reveal` at the left to 6 mm',
    inside: fronted('kind: door, reveal: 6', { side: 30 }),
  },
  {
    rule: 'hinge-overlay',
    what: 'another plate',
    // 18 − 1.5 = 16.5 = 15 + C − H: with H = 0 C = 1.5, under the least of 3; 3 gives 18. With H = 2 C = 3.5.
    trips: fronted('kind: door, hinge: hinge 35 full, plate: hinge plate 0'),
    severity: 'stop',
    message: 'door: an overlay of 16.5 mm is wanted, but no plate of hinge 35 full gives it; the nearest is 18 mm',
    fix: 'a hinge plate 2 would do',
    inside: fronted('kind: door, hinge: hinge 35 full, plate: hinge plate 2'),
  },
  {
    rule: 'hinge-overlay',
    what: 'another hinge',
    // K = 5.5: 5.5 + 7 + 2 = 14.5 at most; 16.5 is wanted.
    trips: fronted('kind: door, hinge: hinge 35 half'),
    severity: 'stop',
    message: 'door: an overlay of 16.5 mm is wanted, but no plate of hinge 35 half gives it; the nearest is 14.5 mm',
    fix: 'a hinge 35 full would do, with the plate left to the rule',
    // 18 − 3.5 = 14.5
    inside: fronted('kind: door, hinge: hinge 35 half, reveal: 3.5'),
  },
  {
    rule: 'hinge-overlay',
    what: 'an inset gap',
    // K = −4: −(gap) = −4 + 3 − H at least; the highest plate is 3.5: −4.5. A gap of 6 is −6.
    trips: fronted('kind: door, lay: inset, inset gap: 6'),
    severity: 'stop',
    message: 'door: an overlay of -6 mm is wanted, but no plate of hinge 35 inset gives it; the nearest is -4.5 mm',
    fix: 'set `inset gap: 4.5 mm`',
    inside: fronted('kind: door, lay: inset, inset gap: 4.5'),
  },
  {
    rule: 'hinge-height',
    // The dowels beside a cup, 8 thick, stand 45 / 2 = 22.5 from its middle: 26.5, and 3 of wood as at the hinge edge make
    // 29.5. Moved, the plate, which reaches 26, clears the bottom, 16.5 above the door's end; the next stands 2 × 30.5 further,
    // with half of its 8 beside each dowel.
    trips: fronted('kind: door, hinges: [29, 80]', { width: 400 }),
    severity: 'stop',
    message: 'door is 717 mm high; a hinge 29 mm from its lower end leaves no room for the cup, which takes 29.5 mm',
    fix: 'set `hinges: [42.5 mm, 103.5 mm]`',
    inside: fronted('kind: door, hinges: [29.5, 89]', { width: 400 }),
  },
  {
    rule: 'flap-stay',
    what: 'another stay',
    // 200 high: 200 − 36 = 164 inside; the lid stay 250 wants 215 + 20. The lid stay 170 wants 130 + 20 = 150.
    trips: fronted('kind: flap, hang: top, stay: lid stay 250', { height: 200 }),
    severity: 'stop',
    message: 'flap: the lid stay 250 needs an opening 235 mm high; it is 164',
    fix: 'a lid stay 170 has room',
    inside: fronted('kind: flap, hang: top, stay: lid stay 250', { height: 271 }),
  },
  {
    rule: 'flap-stay',
    what: 'no room for any',
    // 150 + 36 = 186 is the least; 185 leaves 149.
    trips: fronted('kind: flap, hang: top', { height: 185 }),
    severity: 'stop',
    message: 'flap: the lid stay 170 needs an opening 150 mm high; it is 149',
    fix: 'give the flap more room, or set `stay: none` and hold it by hand',
    inside: fronted('kind: flap, hang: top', { height: 186 }),
  },
  {
    rule: 'flap-swing',
    // From 1.5 to 718.5: 717 high, 717 × sin 20° = 245.2 past the level of its hinges; 1.5 of them below the carcase's top.
    trips: fronted('kind: flap, hang: top, stay: none'),
    severity: 'note',
    message: 'flap opens upward: its free edge rises about 244 mm above the carcase',
    fix: 'keep the space above free, overhangs of a worktop included',
    inside: fronted('kind: flap, hang: bottom, stay: none'),
  },
  {
    rule: 'front-fixing',
    what: 'no edge wide enough',
    // Half of 18 less half the gap of 3: 7.5. A dowel of 8 wants its 8 and 3.5 on both sides.
    trips: fronted('kind: fixed, cover: half'),
    severity: 'stop',
    message: 'front panel 1 is fastened along no edge: a dowel 8x30 needs 15 mm of an edge behind it',
    fix: 'let it cover the panels in full (`cover: full`), or `lay: inset`',
    // 18 − 1.5 = 16.5.
    inside: fronted('kind: fixed'),
  },
  {
    rule: 'front-fixing',
    what: 'a thinner dowel',
    // 18 − 3.5 = 14.5 covered; a dowel of 6 wants 6 and 2.5 on both sides.
    trips: fronted('kind: fixed, reveal: 3.5, fix: dowel 8x30'),
    severity: 'stop',
    message: 'front panel 1 is fastened along no edge: a dowel 8x30 needs 15 mm of an edge behind it',
    fix: 'a dowel 6x30 needs 11 mm, and it covers 14.5 mm',
    inside: fronted('kind: fixed, reveal: 3, fix: dowel 8x30'),
  },
]
