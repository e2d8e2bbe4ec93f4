import type { Bore, Panel } from '../../../src/panel/index.ts'
import { ROUND_STOCK } from '../../support/define.ts'
import { bays, box, pins, SHELF } from './boards.ts'
import type { RuleCase } from './case.ts'
import { tampered } from './tampered.ts'

const boresOf =
  (change: (bore: Bore, k: number) => Bore | undefined) =>
  (panel: Panel): Panel => ({
    ...panel,
    bores: panel.bores.flatMap((bore, k) => change(bore, k) ?? []),
  })

const mates: readonly RuleCase[] = [
  {
    rule: 'mate-missing',
    // The first bore of the bottom is the dowel at its left end, 50 from the front: left out.
    trips: tampered(
      box(''),
      'box/bottom',
      boresOf((bore, k) => (k === 0 ? undefined : bore)),
    ),
    severity: 'stop',
    message: 'box, bottom lacks the dowel hole of box/left-side+bottom/1',
    inside: box(''),
  },
  {
    rule: 'mate-axis',
    // The same moved by half a millimetre.
    trips: tampered(
      box(''),
      'box/bottom',
      boresOf((bore, k) => (k === 0 ? { ...bore, at: [bore.at[0], bore.at[1] + 0.5, bore.at[2]] } : bore)),
    ),
    severity: 'stop',
    message: 'box/left-side+bottom/1: its holes in left side and bottom are 0.5 mm out of line',
    // Half a nanometre is float noise.
    inside: tampered(
      box(''),
      'box/bottom',
      boresOf((bore, k) => (k === 0 ? { ...bore, at: [bore.at[0], bore.at[1] + 5e-7, bore.at[2]] } : bore)),
    ),
  },
]

const depths: readonly RuleCase[] = [
  {
    rule: 'bore-far-side',
    // Pins go 13 deep: 1 more than a board of 12. Rows from 18 − 6 … up: multiples of 32 to 640.
    trips: box('loose shelves: 1', { thickness: '12' }),
    severity: 'stop',
    message:
      'box, left side: the shelf pin 5 × 13, 37 from front and 640 from bottom in face A (inside) comes out of the far side by 1 mm',
    fix: 'bore no deeper than 9 mm, or take a thicker board',
    // 13.1 − 13: out it does not come, though the skin is too thin.
    inside: box('loose shelves: 1', { thickness: '13.1' }),
  },
  {
    rule: 'bore-skin',
    // 15.9 − 13 = 2.9.
    trips: box('loose shelves: 1', { thickness: '15.9' }),
    severity: 'warn',
    message:
      'box, left side: the shelf pin 5 × 13, 37 from front and 640 from bottom in face A (inside) leaves only 2.9 mm of wood behind it',
    fix: 'bore no deeper than 12.9 mm, or take a thicker board',
    inside: box('loose shelves: 1', { thickness: '16' }),
  },
  {
    rule: 'bore-skin',
    what: 'the point of a large bit',
    // A cup 12.5 deep in a door of 14.9 leaves 2.4; the point stands 2.5 deeper. Cup 5 from the edge: 5 + 17.5 = 22.5.
    trips: box('front: { kind: door, stock: leaf }', { stocks: '  leaf: { thickness: 14.9 }' }),
    severity: 'stop',
    message:
      'box, door: the hinge cup 35 × 12.5, 22.5 from left and 80 from bottom in face A (hidden face) leaves only 2.4 mm of wood behind it, and the point of its bit stands up to 2.5 mm deeper',
    fix: 'bore no deeper than 11.9 mm, or take a thicker board',
    // 15.5 − 12.5 = 3.
    inside: box('front: { kind: door, stock: leaf }', { stocks: '  leaf: { thickness: 15.5 }' }),
  },
]

const bores: readonly RuleCase[] = [
  {
    rule: 'bores-meet',
    // Dowel 11 and pin 13 from both faces of the partition, 37 from the front, on one axis: 24 in 18. Dowel 8, pin 5 and 5 of
    // wood: 4 + 2.5 + 5 = 11.5 apart.
    trips: bays(SHELF('fasten: dowel, end distance: 37'), pins('0')),
    severity: 'stop',
    message:
      'box, partition 1: the shelf pin 5 × 13, 37 from front and 302 from bottom in face A (right face), and the dowel 8 × 11, 37 from front and 302 from bottom in face B (left face), run into each other',
    fix: 'move the pin rows of shelf opening 1 up 11.5 mm (`datum: 11.5 mm`)',
    // 6.6 apart: 0.1 of wood.
    inside: bays(SHELF('fasten: dowel, end distance: 37'), pins('6.6')),
  },
  {
    rule: 'bores-near',
    // 11 − 4 − 2.5 = 4.5.
    trips: bays(SHELF('fasten: dowel, end distance: 37'), pins('11')),
    severity: 'warn',
    message:
      'box, partition 1: the shelf pin 5 × 13, 37 from front and 313 from bottom in face A (right face), and the dowel 8 × 11, 37 from front and 302 from bottom in face B (left face), are only 4.5 mm apart',
    fix: 'move the pin rows of shelf opening 1 up 0.5 mm (`datum: 11.5 mm`)',
    inside: bays(SHELF('fasten: dowel, end distance: 37'), pins('11.5')),
  },
  {
    rule: 'fasteners-meet',
    // Hinges at 80 and 656 on both faces, their holes 16 above and below, in the pins' own, which go through: 96 up, 78 above
    // the partition's end. 13 and 13 in 18. Holes of 5 want 10 from axis to axis.
    trips: bays(
      'loose shelves: 1, front: { kind: door, hang: right }',
      'loose shelves: 1, front: { kind: door, hang: left, hinges: [78.5, 654.5] }',
    ),
    severity: 'stop',
    message:
      'box, partition 1: in the shelf pin, hinge plate 5 through, 37 from front and 78 from bottom in face A (right face), a hinge plate 13 deep from face A and a hinge plate 13 deep from face B would meet in 18 mm',
    fix: 'move the hinges of door 2 up 10 mm (`hinges: [88.5 mm, 664.5 mm]`)',
    inside: bays(
      'loose shelves: 1, front: { kind: door, hang: right }',
      'loose shelves: 1, front: { kind: door, hang: left, hinges: [88.5, 664.5] }',
    ),
  },
]

const pull = (distance: string): string =>
  box(`front: { kind: door, hang: left, pull: { item: knob, edge distance: ${distance} } }`)

const drawerPull = (distance: string): string =>
  box(`drawers: { stack: 4, fronts: { pull: { item: pull 128, edge distance: ${distance} } } }`)

const edges: readonly RuleCase[] = [
  {
    rule: 'bore-near-edge',
    // A hole of 4.5 with its middle 6 from the edge: 3.75 beside it. Door 597 wide: 591 from the left; 717 high: 60 less.
    trips: pull('6'),
    severity: 'warn',
    message:
      'box, door: the pull 4.5 through, 591 from left and 657 from bottom in face A (hidden face) has only 3.75 mm of wood beside it; 4.5 mm should remain',
    fix: 'move it 0.75 mm inward or more: set `edge distance: 40 mm`, as is usual',
    inside: pull('6.75'),
  },
  {
    rule: 'bore-near-edge',
    what: 'the pull of a drawer',
    // Four fronts over 717 with 3 between them: (717 − 9) / 4 = 177 high; the holes 3 below their upper edges, 128 apart about
    // the middle of 597. 3 − 2.25 = 0.75, less than the radius; 4.5 should remain.
    trips: drawerPull('3'),
    severity: 'stop',
    message:
      'box, drawer 1 front: the pull 4.5 through, 174 from bottom and 234.5 from left in face A (hidden face) has only 0.75 mm of wood beside it; 2.25 mm must remain',
    fix: 'move it 3.75 mm inward or more: set `edge distance: 88.5 mm`, the middle of the front',
    inside: drawerPull('6.75'),
  },
  {
    rule: 'bore-breaks-out',
    // 2 − 2.25 = −0.25; 4.5 should remain: 4.75 inward.
    trips: pull('2'),
    severity: 'stop',
    message:
      'box, door: the pull 4.5 through, 595 from left and 657 from bottom in face A (hidden face) breaks out of the side of the panel by 0.3 mm',
    fix: 'move it 4.75 mm inward or more: set `edge distance: 40 mm`, as is usual',
    inside: pull('2.3'),
  },
  {
    rule: 'bore-breaks-out',
    what: 'its sink',
    // A cone of 14 about the middle of a hole of 4.5 that is 6.75 from the edge: 7 − 6.75 = 0.25 over it; the hole alone is
    // well. To keep 2.25 beside the cone, as the hole would: 2.25 + 0.25 = 2.5.
    trips: tampered(
      pull('6.75'),
      'box/door',
      boresOf((bore) =>
        bore.purpose === 'pull' ? { ...bore, sink: { shape: 'cone', diameter: 14, angleDeg: 90 } } : bore,
      ),
    ),
    severity: 'stop',
    message:
      'box, door: the pull 4.5 through, 590.3 from left and 657 from bottom in face A (hidden face) breaks out of the side of the panel by 0.3 mm with its sink',
    fix: 'move it 2.5 mm inward or more: set `edge distance: 40 mm`, as is usual',
    inside: tampered(
      pull('6.75'),
      'box/door',
      boresOf((bore) =>
        bore.purpose === 'pull' ? { ...bore, sink: { shape: 'cone', diameter: 13, angleDeg: 90 } } : bore,
      ),
    ),
  },
]

/** Dowels in the corners, the first and last so far from the edges. */
const dowelsFrom = (end: string): string => `${ROUND_STOCK}
modules:
  box: { width: 500, depth: 400, carcase height: 720, stock: board, carcase: { back: none, joint: { fasten: dowel, end distance: ${end} } } }
`

const ends: readonly RuleCase[] = [
  {
    rule: 'bore-near-edge',
    what: 'the end of a joint',
    // 5 − 4 = 1 of wood; a dowel asks for 3.5: 4 + 3.5 = 7.5 from the edge. The middle of the top is 720 − 9 = 711 high.
    trips: dowelsFrom('5'),
    severity: 'stop',
    message:
      'box, left side: the dowel 8 × 11, 5 from front and 711 from bottom in face A (inside) has only 1 mm of wood beside it; 3.5 mm must remain',
    fix: 'set `end distance: 7.5 mm`',
    inside: dowelsFrom('7.5'),
  },
]

export const woodCases: readonly RuleCase[] = [...mates, ...depths, ...bores, ...edges, ...ends]
