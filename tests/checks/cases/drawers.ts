import { ROUND_STOCK } from '../../support/define.ts'
import type { RuleCase } from './case.ts'

// Opening 564 wide from 18 to 582, z 18 to 702. Fronts 18 and a gap of 2: the carcase begins at 20 and ends before the
// applied back of 6 at 554; 534 deep.
const module = (inside: string, { width = 600, depth = 560 } = {}): string => `${ROUND_STOCK}
  ply 12: { thickness: 12, sheet: [2500, 1250] }
  ply 6: { thickness: 6.4, sheet: [2500, 1250] }
modules:
  box:
    width: ${width}
    depth: ${depth}
    carcase height: 720
    stock: board
    carcase: { back: { sits: applied, stock: thin } }
    inside: { ${inside} }
`
const BOX = 'box: { stock: ply 12, bottom stock: ply 6 }'
const drawers = (stack: string, more = '', size = {}): string =>
  module(`drawers: { stack: ${stack}, ${BOX}${more === '' ? '' : `, ${more}`} }`, size)
const inner = (stack: string, more = '', front = 'kind: door'): string =>
  module(`front: { ${front} }, drawers: { stack: ${stack}, fronts: none, ${BOX}${more === '' ? '' : `, ${more}`} }`)

export const drawerCases: readonly RuleCase[] = [
  {
    rule: 'drawer-slide-length',
    what: 'a shorter one',
    // 534 deep: 2 + 550 + 10 = 562 is too much, 2 + 500 + 10 = 512 is not.
    trips: drawers('3', 'slide: slide 550'),
    severity: 'stop',
    message: 'box, the slide, slide 550, wants a depth of 562 mm with 10 mm behind it; there are 534 mm',
    fix: 'a slide 500 is the longest that fits',
    inside: drawers('3', 'slide: slide 550', { depth: 588 }),
  },
  {
    rule: 'drawer-slide-length',
    what: 'none is short enough',
    // 280 − 20 − 6 = 254; 2 + 250 + 10 = 262.
    trips: drawers('3', '', { depth: 280 }),
    severity: 'stop',
    message: 'box, the shortest slide, slide 250, wants a depth of 262 mm with 10 mm behind it; there are 254 mm',
    fix: 'make the module 8 mm deeper',
    inside: drawers('3', '', { depth: 288 }),
  },
  {
    rule: 'drawer-stack',
    // 720 − 3 = 717 for 500 + 213 and two gaps of 3: 719.
    trips: drawers('[{ height: 500 }, { height: 213 }, {}]'),
    severity: 'stop',
    message: 'box, drawer fronts: their heights and gaps take 2 mm more than there is',
    fix: 'make them lower, or all alike: `stack: 3`',
    inside: drawers('[{ height: 500 }, { height: 130 }, {}]'),
  },
  {
    rule: 'drawer-narrow',
    // 130 − 2 × 18 − 2 × 13 − 2 × 12 = 44. The screws of the corners, 45 long, stand 33 in the box front from both ends,
    // their pilots 34: with 5 between them 73 are wanted.
    trips: drawers('3', '', { width: 130 }),
    severity: 'stop',
    message: 'box, an opening 94 mm wide leaves 44 mm inside a drawer; 50 mm is the least',
    fix: 'make the opening 29 mm wider',
    inside: drawers('3', '', { width: 136 }),
  },
  {
    rule: 'drawer-box-low',
    // 10 alike: (717 − 27) / 10 = 69. The upper one covers 16.5 of the top: 52.5, less 10 and 12 a box of 30.5. The
    // slide's line from 10 + 6.6 + 8 = 24.6 up to 30.5 − 22.5 = 8: 16.6 short. 720 / (69 + 16.6 + 3) = 8.1.
    trips: drawers('10'),
    severity: 'stop',
    message: 'box, drawer 1: a box 30.5 mm high has no room for a slide 45 mm high',
    fix: 'make it 16.6 mm higher: there is room for 8 drawers',
    inside: drawers('8'),
  },
  {
    rule: 'drawer-front-screws',
    // Through 12 the shortest that bites 8 is 20 long; with 1 and a skin of 3 it wants 24: a front of 12.
    trips: drawers('3', 'fronts: { stock: thin }'),
    severity: 'stop',
    message:
      'drawer 1: no screw holds a front of 6 mm through a box front of 12 mm; there are screw 4x40, screw 4x35, screw 4x30, screw 3.5x25, screw 3.5x20',
    fix: 'take a front of 12 mm or more',
    inside: drawers('3', 'fronts: { stock: ply 12 }'),
  },
  {
    rule: 'drawer-pull',
    // The uppermost front ends at 718.5, its box at 702 − 10 = 692, 26.5 below; its front is (717 − 6) / 3 = 237 high and
    // ends at 481.5, the box at 481.5 + 12 = 493.5, 225 below. A hole of 4.5 and 5 of wood: 7.25 further in.
    trips: drawers('3', 'fronts: { pull: { item: knob, edge distance: 26.5 } }'),
    severity: 'stop',
    message:
      'drawer 1: the holes of the knob, 26.5 mm below the upper edge of the front, cut the edge of the box front; it lies from 26.5 to 225 mm',
    fix: 'set `edge distance` from 33.8 mm to 217.7 mm',
    inside: drawers('3', 'fronts: { pull: { item: knob, edge distance: 33.8 } }'),
  },
  {
    rule: 'drawer-packing',
    what: 'none',
    // The open hinge stands in 25, the box lies 13 beside the wall: 12 are needed.
    trips: inner('4', 'packing: none'),
    severity: 'stop',
    message:
      'box, drawer 1 would hit the open hinges of door, which stand 25 mm into the opening; its slide lies on the left wall itself',
    fix: 'leave out `packing: none`: 12 mm are needed',
    inside: inner('4'),
  },
  {
    rule: 'drawer-packing',
    what: 'too thin',
    // 13 deep and 3 beyond.
    trips: inner('4', 'packing: ply 12'),
    severity: 'stop',
    message: "box, drawer 1: a packing of ply 12, 12 mm thick, is too thin for the slide's screws, 13 mm deep",
    fix: 'name a stock of 16 mm or more as `packing`, or leave it to the rule: board',
    inside: inner('4', 'packing: board'),
  },
  {
    rule: 'drawer-hinge',
    // 7 places of 684 / 7 = 97.714. The lowest box begins at 30; its slide's line lies from 30 + 10 + 6.6 + 8 = 54.6 to
    // 18 + 97.714 − 10 − 22.5 = 83.214, the next ones' 97.714 higher. Slide and plate take 22.5 + 26 = 48.5: a plate has
    // room from 103.1 to 83.214 + 97.714 − 48.5 = 132.429, and so between any two drawers. The hinges at 81.5, 360 and
    // 638.5 come to 103.1, to 132.429 + 2 × 97.714 = 327.857 and to 132.429 + 5 × 97.714 = 621; the door begins at 1.5.
    trips: inner('7'),
    severity: 'stop',
    message:
      'box, drawer 7: its slide and packing, 45 mm high, would lie on a hinge plate at every height that the box allows',
    fix: 'set `hinges: [101.6 mm, 326.3 mm, 619.5 mm]`',
    inside: inner('7', '', 'kind: door, hinges: [101.6, 326.3, 619.5]'),
  },
]
