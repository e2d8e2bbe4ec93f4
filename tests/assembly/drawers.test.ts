import { describe, expect, test } from 'vitest'
import type { Built } from '../../src/outputs/index.ts'
import type { Panel } from '../../src/panel/index.ts'
import { built, panelOf, places } from '../support/define.ts'

// Module 600 wide, 560 deep, 720 high, board 18: opening 564 wide from x 18 to 582, z 18 to 702. Fronts 18 and a gap of 2:
// the carcase begins at y 20 and ends before the applied back of 6 at 554; 534 deep.
const module = (inside: string, depth = 560): string => `
storyrod: 1
stock:
  board: { thickness: 18, sheet: [2500, 1250], density: 685 }
  thin: { thickness: 6, sheet: [2500, 1250] }
  ply 12: { thickness: 12, sheet: [2500, 1250] }
  ply 6: { thickness: [6.3, 6.5], sheet: [2500, 1250] }
modules:
  box:
    width: 600
    depth: ${depth}
    carcase height: 720
    stock: board
    carcase: { back: { sits: applied, stock: thin } }
    inside:
${inside}
`
const BOX = 'box: { stock: ply 12, bottom stock: ply 6 }'
const drawers = (stack: string, more = '', depth = 560): string =>
  module(`      drawers: { stack: ${stack}, ${BOX}${more === '' ? '' : `, ${more}`} }`, depth)

const rules = (of: Built): string[] => of.findings.map(({ rule }) => rule)

const size = (panel: Panel): number[] => [panel.length, panel.width, panel.thickness]
const rounded = (values: readonly number[]): number[] => values.map((value) => Math.round(value * 1000) / 1000)

describe('the drawer box', () => {
  const of = built(drawers('3'))

  test('width: an opening of 564 less two side spaces of 13 is 538 (a slide maker allows 537.6 to 538.2)', () => {
    // help.accuride-europe.com/knowledge/understanding-side-space: 12.7 thick, 12.9 to 13.2 a side.
    const left = panelOf(of, 'box/drawer-1-left-side')
    const right = panelOf(of, 'box/drawer-1-right-side')
    // The outer faces: face B of the left side at x 31, of the right at 569; face A lies 12 further in.
    expect([left.moduleFromPanel.origin[0], right.moduleFromPanel.origin[0]]).toEqual([43, 557])
    // Box front and back between sides of 12: 538 − 24.
    expect(panelOf(of, 'box/drawer-1-box-front').length).toBe(514)
    expect(panelOf(of, 'box/drawer-1-box-back').length).toBe(514)
  })

  test('length: 2 before it, 10 behind it: 500 + 12 fits into 534, 550 + 12 does not', () => {
    expect(panelOf(of, 'box/drawer-1-left-side').length).toBe(500)
    expect(of.assembly.hardware.find((piece) => piece.id === 'box/drawer-1-left-slide/1')?.item.id).toBe('slide 500')
  })

  test('length in inches: 534 mm is 21.02 in, so 20 in (508 + 12)', () => {
    const inch = drawers('3')
      .replace('storyrod: 1', 'storyrod: 1\nunits: in')
      .replaceAll(/thickness: (\d+)(?= |,|})/g, 'thickness: $1 mm')
      .replace('[6.3, 6.5]', '[6.3 mm, 6.5 mm]')
      .replaceAll('[2500, 1250]', '[2500 mm, 1250 mm]')
      .replace('width: 600', 'width: 600 mm')
      .replace('depth: 560', 'depth: 560 mm')
      .replace('height: 720', 'height: 720 mm')
    // Front gap 1/16 in is 1.5875: the carcase begins at 19.5875, 534.4 deep; 508 + 2 + 9.525 = 519.5; 22 in would want 570.3.
    expect(panelOf(built(inch), 'box/drawer-1-left-side').length).toBeCloseTo(508, 9)
  })

  test('height: the place of each drawer less 12 below and 10 above', () => {
    // Three fronts of 237 and gaps of 3 in 717, from 718.5 down: 481.5 to 718.5, 241.5 to 478.5, 1.5 to 238.5. The opening
    // ends at 702 and begins at 18: places 220.5, 237, 220.5 high; boxes 198.5, 215, 198.5.
    const heights = [1, 2, 3].map((k) => panelOf(of, `box/drawer-${k}-left-side`).width)
    expect(heights).toEqual([198.5, 215, 198.5])
    // Lower edges: 481.5 + 12, 241.5 + 12, 18 + 12.
    const feet = [1, 2, 3].map((k) => panelOf(of, `box/drawer-${k}-left-side`).moduleFromPanel.origin[2])
    expect(feet).toEqual([493.5, 253.5, 30])
  })

  test('the box begins at the hidden face of its front', () => {
    // y 20 − 2 = 18; the front reaches from 0 to 18.
    expect(panelOf(of, 'box/drawer-1-left-side').moduleFromPanel.origin[1]).toBe(18)
    expect(panelOf(of, 'box/drawer-1-front').moduleFromPanel.origin[1]).toBe(18)
  })

  test('the groove is the largest reading and 0.2 wide, 10 up, 6 deep; the bottom stands 0.5 short in it', () => {
    const side = panelOf(of, 'box/drawer-1-left-side')
    expect(side.grooves).toHaveLength(1)
    // 6.5 + 0.2 = 6.7, from 10 to 16.7.
    expect(
      rounded([...(side.grooves[0]?.min ?? []), ...(side.grooves[0]?.max ?? []), side.grooves[0]?.depth ?? 0]),
    ).toEqual([0, 10, 500, 16.7, 6])
    expect(side.grooves[0]?.face).toBe('A')
    for (const part of ['right-side', 'box-front', 'box-back']) {
      const [groove] = panelOf(of, `box/drawer-1-${part}`).grooves
      expect(rounded([groove?.min[1] ?? 0, groove?.max[1] ?? 0, groove?.depth ?? 0]), part).toEqual([10, 16.7, 6])
    }
    // Inside 514 × (500 − 24 = 476), and 5.5 in each groove: 525 × 487; the mean of the readings thick.
    expect(rounded(size(panelOf(of, 'box/drawer-1-bottom')))).toEqual([525, 487, 6.4])
  })

  test('corner screws stand above the groove, in the middle of the ends', () => {
    // Box 198.5 high, 16.7 kept for the bottom: 181.8 left, more than three end distances of 50: two screws 81.8 apart,
    // 50 from 16.7 and from 198.5. On face B of the left side, 6 from its ends (half of 12).
    expect(places(panelOf(of, 'box/drawer-1-left-side'), 'B', 'screw')).toEqual([
      '6 66.7',
      '6 148.5',
      '494 66.7',
      '494 148.5',
    ])
    expect(places(panelOf(of, 'box/drawer-1-box-front'), 'x0', 'pilot')).toEqual(['0 66.7', '0 148.5'])
  })

  test('an applied bottom lies under the sides, which are lower by it', () => {
    const applied = built(
      module('      drawers: { stack: 3, box: { stock: ply 12, bottom stock: thin, bottom: applied } }'),
    )
    // Box 198.5 high with its bottom of 6: sides 192.5, from 493.5 + 6.
    const side = panelOf(applied, 'box/drawer-1-left-side')
    expect([side.width, side.moduleFromPanel.origin[2]]).toEqual([192.5, 499.5])
    expect(size(panelOf(applied, 'box/drawer-1-bottom'))).toEqual([538, 500, 6])
    // Screws 3.5 × 25 up into the edges, pilot 25 + 1 − 6 = 20 deep.
    const pilots = side.bores.filter((bore) => bore.surface === 'y0')
    expect(pilots.length).toBeGreaterThanOrEqual(4)
    expect(new Set(pilots.map((bore) => bore.depth))).toEqual(new Set([20]))
  })

  test('nothing is found', () => {
    expect(rules(of)).toEqual([])
  })
})

describe('slides', () => {
  const of = built(drawers('3'))

  test('holes in the cabinet at 37, 165, 261 and 389 from its front edge (conduct.edu.vn/drawer-guide)', () => {
    // 517 lies 15 beyond the slide's end at 502. Middle lines half-way up the boxes: 493.5 + 99.25 = 592.75,
    // 253.5 + 107.5 = 361, 30 + 99.25 = 129.25. On the left side x = 720 − z.
    const expected = [127.25, 359, 590.75].flatMap((x) => [37, 165, 261, 389].map((y) => `${x} ${y}`))
    expect(places(panelOf(of, 'box/left-side'), 'A', 'drawer slide')).toEqual(expected)
    // The right side is its mirror: x = z.
    const mirrored = [129.25, 361, 592.75].flatMap((x) => [37, 165, 261, 389].map((y) => `${x} ${y}`))
    expect(places(panelOf(of, 'box/right-side'), 'A', 'drawer slide')).toEqual(mirrored)
  })

  test('a slide of 550 takes the hole at 517, too; one of 250 only two', () => {
    const long = places(panelOf(built(drawers('3', 'slide: slide 550', 700)), 'box/right-side'), 'A', 'drawer slide')
    expect(long.slice(0, 5)).toEqual(['129.25 37', '129.25 165', '129.25 261', '129.25 389', '129.25 517'])
    const short = places(panelOf(built(drawers('3', 'slide: slide 250')), 'box/right-side'), 'A', 'drawer slide')
    expect(short.slice(0, 3)).toEqual(['129.25 37', '129.25 165', '361 37'])
  })

  test('holes in the box: its front lies 4 before the slide, so 39, 231 and 455 from its front on both hands', () => {
    // The slide's front end at y 22, the box's at 18. On the slide 35, 35 + 6 × 32 = 227, 35 + 13 × 32 = 451.
    expect(places(panelOf(of, 'box/drawer-1-left-side'), 'B', 'drawer slide')).toEqual([
      '39 99.25',
      '231 99.25',
      '455 99.25',
    ])
    // The right side runs from the back: x = 500 − 455 …
    expect(places(panelOf(of, 'box/drawer-1-right-side'), 'B', 'drawer slide')).toEqual([
      '45 99.25',
      '269 99.25',
      '461 99.25',
    ])
  })

  test('behind an inset front of 18 the first hole stands at 55', () => {
    // 37 + 18. Carcase 554 deep; 554 − 18 = 536 for slide 500.
    const inset = built(drawers('3', 'fronts: { lay: inset }'))
    expect(places(panelOf(inset, 'box/right-side'), 'A', 'drawer slide').slice(0, 2)).toEqual([
      '133.333 55',
      '133.333 183',
    ])
    // Fronts 564 − 4 wide and (684 − 4 − 6) / 3 = 224.667 high. The place of the lowest is z 20 to 244.667, its box 32 to
    // 234.667, half-way up 133.333.
    expect(rounded(size(panelOf(inset, 'box/drawer-3-front')))).toEqual([560, 224.667, 18])
    expect(rules(inset)).toEqual([])
  })

  test('stacks on both faces of a partition stand 16 apart', () => {
    const of2 = built(
      module(`      side by side:
        - drawers: { stack: 2, ${BOX} }
        - drawers: { stack: 2, ${BOX} }`),
    )
    const partition = panelOf(of2, 'box/partition-1')
    const heights = (surface: string): number[] => [
      ...new Set(places(partition, surface, 'drawer slide').map((place) => Number(place.split(' ')[0]))),
    ]
    const [a, b] = [heights('A'), heights('B')]
    expect(a.map((x, k) => Math.abs(x - (b[k] ?? 0)))).toEqual([16, 16])
    expect(rules(of2)).toEqual([])
  })
})

describe('drawer fronts', () => {
  const heights = (stack: string, more = ''): number[] => {
    const of = built(drawers(stack, more))
    return rounded(of.panels.filter((panel) => panel.role === 'drawer front').map((panel) => panel.width))
  }

  test('equal: 684 + 2 × 16.5 = 717 less two gaps of 3, by three', () => {
    expect(heights('3')).toEqual([237, 237, 237])
    expect(heights('1')).toEqual([717])
    // Gap 2, reveal 2: 684 + 32 = 716 less 2 × 2: 712 / 3.
    expect(heights('3', 'fronts: { gap: 2, reveal: 2 }')).toEqual([237.333, 237.333, 237.333])
  })

  test('mixed: 140, then one and two shares of 717 − 6 − 140 = 571', () => {
    expect(heights('[{ height: 140 }, {}, { share: 2 }]')).toEqual([140, 190.333, 380.667])
  })

  test('width: over both sides with a reveal of 1.5', () => {
    expect(panelOf(built(drawers('3')), 'box/drawer-1-front').length).toBe(597)
  })

  test('over a fixed shelf half each: (18 − 3) / 2 = 7.5', () => {
    const of = built(
      module(`      stacked:
        - { drawers: { stack: 1, ${BOX} } }
        - { front: { kind: door } }`),
    )
    // Openings (684 − 18) / 2 = 333: the drawer's front 333 + 16.5 + 7.5.
    expect(panelOf(of, 'box/drawer-1-front').width).toBe(357)
    expect(rules(of)).toEqual([])
  })

  test('the depth of the module counts the fronts', () => {
    expect(panelOf(built(drawers('3')), 'box/left-side').width).toBe(534)
  })

  test('four screws through a high box front, two through a low one; pilots on their axes', () => {
    const of = built(drawers('[{ height: 120 }, {}]'))
    // Drawer 1: front z 598.5 to 718.5, box from 610.5 to 692: 81.5 high, kept 16.7 + 12 below and 12 above: from 28.7
    // to 69.5, less than 60: one row at 49.1, 70 from the ends of the box front (514).
    const low = panelOf(of, 'box/drawer-1-box-front')
    expect(places(low, 'A', 'screw')).toEqual(['70 49.1', '444 49.1'])
    expect(low.bores.filter((bore) => bore.surface === 'A').map((bore) => bore.sink?.diameter)).toEqual([7, 7])
    // Screw 3.5 × 25 through 12: pilot 25 + 1 − 12 = 14 deep in the front, 610.5 + 49.1 − 598.5 = 61.1 up; the box front
    // begins at x 43, the front at 1.5: 41.5 more.
    const front = panelOf(of, 'box/drawer-1-front')
    expect(places(front, 'A', 'pilot')).toEqual(['111.5 61.1', '485.5 61.1'])
    expect(front.bores[0]?.depth).toBe(14)
    expect(places(panelOf(of, 'box/drawer-2-box-front'), 'A', 'screw')).toHaveLength(4)
  })

  test('18 in 18 takes 4 × 30', () => {
    const of = built(module('      drawers: { stack: 2, box: { bottom stock: thin } }'))
    // 30 + 1 + 3 = 34 of 36.
    const screws = of.assembly.hardware.filter((piece) => piece.series === 'box/drawer-1-front+drawer-1-box-front')
    expect(screws.map((piece) => piece.item.id)).toEqual(Array.from({ length: 4 }, () => 'screw 4x30'))
  })

  test('a pull goes through front and box front on one axis', () => {
    const of = built(drawers('3', 'fronts: { pull: { item: pull 128 } }'))
    // Middle of the front: 118.5 of 237; 64 to each side of 298.5. The box front begins 41.5 further right and, drawer 1,
    // 12 higher: 106.5.
    expect(places(panelOf(of, 'box/drawer-1-front'), 'A', 'pull')).toEqual(['234.5 118.5', '362.5 118.5'])
    expect(places(panelOf(of, 'box/drawer-1-box-front'), 'A', 'pull')).toEqual(['193 106.5', '321 106.5'])
    expect(rules(of)).toEqual([])
  })

  test('a pull above the box front goes through the front alone', () => {
    // Drawer 1: the box ends at 692, 26.5 below the front's upper edge at 718.5; a hole of 4.5 at 20 ends at 22.25.
    const of = built(drawers('3', 'fronts: { pull: { item: pull 128, edge distance: 20 } }'))
    expect(places(panelOf(of, 'box/drawer-1-front'), 'A', 'pull')).toEqual(['234.5 217', '362.5 217'])
    expect(places(panelOf(of, 'box/drawer-1-box-front'), 'A', 'pull')).toEqual([])
  })
})

describe('inner drawers behind a door', () => {
  const inner = (front: string, stack = '4', more = ''): string =>
    module(`      front: { ${front} }
      drawers: { stack: ${stack}, fronts: none, ${BOX}${more} }`)
  const of = built(inner('kind: door, hang: left'))

  test('one layer of packing on the hinge side: the box is narrower by 18', () => {
    // The open door stands 18 − 16.5 = 1.5 in, 4.5 with air; its hinge 25, less the side space of 13: 12. One 18 does.
    const left = panelOf(of, 'box/drawer-1-left-side')
    const right = panelOf(of, 'box/drawer-1-right-side')
    // 18 + 18 + 13 = 49 to the outer face, 61 to the inner; on the right 582 − 13 − 12 = 557.
    expect([left.moduleFromPanel.origin[0], right.moduleFromPanel.origin[0]]).toEqual([61, 557])
    expect(of.panels.filter((panel) => panel.role === 'right packing')).toEqual([])
    expect(size(panelOf(of, 'box/drawer-1-left-packing'))).toEqual([500, 45, 18])
    expect(panelOf(of, 'box/drawer-1-box-front').length).toBe(564 - 18 - 26 - 24)
    expect(rules(of)).toEqual(['piece-small'])
  })

  test('slides half-way up their boxes, or moved until they clear the hinge plates', () => {
    // 684 / 4 = 171 each; boxes from 543, 372, 201 and 30, 149 high. Half-way up 617.5, 446.5, 275.5, 104.5. The door is
    // 717 high and weighs 5.3 kg: hinges at 81.5, 360, 638.5. A slide 45 high keeps 22.5 + 26 = 48.5 from each, so not
    // 590 to 687, 311.5 to 408.5, 33 to 130. Moved: 590 and 130.
    const heights = [130, 275.5, 446.5, 590]
    const expected = heights.flatMap((x) => [37, 165, 261, 389].map((y) => `${x} ${y}`))
    expect(places(panelOf(of, 'box/right-side'), 'A', 'drawer slide')).toEqual(expected)
    expect(places(panelOf(of, 'box/left-side'), 'A', 'drawer slide')).toEqual([])
    // In the box 590 − 543 = 47 up; the front of an inner box lies at the slide's front end.
    expect(places(panelOf(of, 'box/drawer-1-left-side'), 'B', 'drawer slide')).toEqual(['35 47', '227 47', '451 47'])
  })

  test('the slide is screwed to the packing, the packing to the side between the holes of the slide', () => {
    const packing = panelOf(of, 'box/drawer-1-left-packing')
    // The packing begins 2 behind the edge: 35, 163, 259, 387, half-way up 45.
    expect(places(packing, 'A', 'drawer slide')).toEqual(['35 22.5', '163 22.5', '259 22.5', '387 22.5'])
    // Midway between the first two and between the last two: 99 and 323; in the side 2 more.
    expect(places(packing, 'A', 'screw')).toEqual(['99 22.5', '323 22.5'])
    expect(places(panelOf(of, 'box/left-side'), 'A', 'screw pilot').slice(0, 2)).toEqual(['130 101', '130 325'])
    // 4 × 30 through 18: 30 + 1 − 18 = 13 deep.
    const pilot = panelOf(of, 'box/left-side').bores.find(
      (bore) => bore.purpose === 'screw pilot' && bore.surface === 'A',
    )
    expect(pilot?.depth).toBe(13)
  })

  test('hung right: the mirror', () => {
    const right = built(inner('kind: door, hang: right'))
    const flipped = places(panelOf(of, 'box/left-side'), 'A', 'screw pilot').map((place) => {
      const [x, y] = place.split(' ').map(Number)
      return `${720 - (x ?? 0)} ${y}`
    })
    expect(places(panelOf(right, 'box/right-side'), 'A', 'screw pilot').sort()).toEqual(flipped.sort())
    const packing = panelOf(right, 'box/drawer-1-right-packing')
    expect(places(packing, 'A', 'drawer slide')).toEqual(['113 22.5', '241 22.5', '337 22.5', '465 22.5'])
  })

  test('a pair packs both sides; a half overlay takes two layers', () => {
    const pair = built(inner('kind: pair'))
    // 564 − 2 × 18 − 26 − 24.
    expect(panelOf(pair, 'box/drawer-1-box-front').length).toBe(478)
    expect(rules(pair)).toEqual(['piece-small'])
    // Overlay 7.5: the door stands 10.5 in, 13.5 with air; a cranked hinge 25 + 9.5 − 13 = 21.5: two of 18.
    const half = built(inner('kind: door, cover: { left: half }'))
    expect(panelOf(half, 'box/drawer-1-left-side').moduleFromPanel.origin[0]).toBe(18 + 36 + 13 + 12)
    const upper = panelOf(half, 'box/drawer-1-left-packing-2')
    // Its screws 16 further back than those of the layer below.
    expect(places(upper, 'A', 'screw')).toEqual(['115 22.5', '339 22.5'])
    expect(places(panelOf(half, 'box/drawer-1-left-packing-1'), 'A', 'drawer slide')).toEqual([])
    expect(rules(half)).toEqual(['piece-small'])
  })

  test('behind an inset door: 18 + 2 in, 23 with air, the hinge 44 − 13 = 31: two layers', () => {
    const inset = built(inner('kind: door, lay: inset'))
    expect(panelOf(inset, 'box/drawer-1-left-side').moduleFromPanel.origin[0]).toBe(18 + 36 + 13 + 12)
    // The inside begins 19.5 behind the front edges: first hole 37 + 19.5.
    expect(places(panelOf(inset, 'box/right-side'), 'A', 'drawer slide')[0]?.split(' ')[1]).toBe('56.5')
    expect(rules(inset)).toEqual(['piece-small'])
  })

  test('only the wall with the hinges is packed when the door lies before two bays', () => {
    const of2 = built(
      module(`      front: { kind: door, hang: left }
      side by side:
        - drawers: { stack: 3, fronts: none, ${BOX} }
        - drawers: { stack: 3, fronts: none, ${BOX} }`),
    )
    const packings = of2.panels.filter((panel) => panel.role.includes('packing')).map((panel) => panel.name)
    expect(packings).toEqual(['drawer 1 left packing', 'drawer 2 left packing', 'drawer 3 left packing'])
  })

  test('heights of inner drawers leave what remains free above them', () => {
    const low = built(inner('kind: door', '[{ height: 150 }, { height: 200 }]'))
    // The lower place 18 to 218, its box from 30; the upper 218 to 368, its box from 230.
    const feet = [1, 2].map((k) => panelOf(low, `box/drawer-${k}-left-side`).moduleFromPanel.origin[2])
    expect(feet).toEqual([230, 30])
  })
})

describe('slides and bolts', () => {
  const row = (end: number): string =>
    `${drawers('[{ height: 137 }, {}]').replace('modules:', 'common: { stock: board }\nmodules:')}
  other: { width: 600, depth: 560, carcase height: 720 }
floor plan:
  - { row: [box, other], join: { bolt: bolt M6, end inset: ${end} } }
`
  // Drawer 1: front 581.5 to 718.5, box 593.5 to 692, slide at 642.75: its body from 620.25 to 665.25. The nuts' flanges
  // are 19 wide: no bolt between 610.75 and 674.75. Bolts 64 from the top stand at 656; in whole millimetres 19 up is the
  // nearest: 675. At 40 from the top (680) and 110 (610) they stay.
  test.each([
    [64, 675],
    [40, 680],
    [110, 610],
  ])('bolts %d from the top stand at %d', (end, height) => {
    const of = built(row(end))
    expect(of.findings.filter((finding) => finding.rule === 'slide-on-fastener')).toEqual([])
    const heights = of.assembly.hardware
      .filter((piece) => piece.item.kind === 'joining bolt')
      .map((piece) => Math.round((piece.stations[0]?.pose.origin[2] ?? 0) * 1000) / 1000)
    expect(Math.max(...heights)).toBe(height)
  })
})

describe('what cannot be', () => {
  const found = (text: string, rule: string): string => {
    const finding = built(text).findings.find((one) => one.rule === rule)
    if (finding === undefined)
      throw new Error(
        `no ${rule}: ${built(text)
          .findings.map((one) => one.rule)
          .join(', ')}`,
      )
    return `${finding.severity}: ${finding.message}; ${finding.fix}`
  }
  const inner = (more: string, stack = '4', front = 'kind: door'): string =>
    module(`      front: { ${front} }
      drawers: { stack: ${stack}, fronts: none, ${BOX}, ${more} }`)

  test('no slide short enough', () => {
    // 280 − 20 − 6 = 254; 2 + 250 + 10 = 262. At 288 it fits exactly.
    expect(found(drawers('3', '', 280), 'drawer-slide-length')).toBe(
      'stop: box, the shortest slide, slide 250, wants a depth of 262 mm with 10 mm behind it; there are 254 mm; make the module 8 mm deeper',
    )
    // So shallow a module tips with a drawer out; that is another matter.
    expect(rules(built(drawers('3', '', 288)))).toEqual(['tipping'])
  })

  test('a box lower than its slide', () => {
    // 10 drawers: (717 − 27) / 10 = 69, the upper one's place 52.5 and its box 30.5: the slide's line from 10 + 6.7 + 8 =
    // 24.7 to 30.5 − 22.5 = 8.
    expect(found(drawers('10'), 'drawer-box-low')).toBe(
      'stop: box, drawer 1: a box 30.5 mm high has no room for a slide 45 mm high; make it 16.7 mm higher: there is room for 8 drawers',
    )
  })

  test('a box without width inside', () => {
    // 130 − 36 − 26 − 24 = 44.
    expect(found(drawers('3').replace('width: 600', 'width: 130'), 'drawer-narrow')).toBe(
      'stop: box, an opening 94 mm wide leaves 44 mm inside a drawer; 50 mm is the least; make the opening 29 mm wider',
    )
  })

  test('fronts that are too high together', () => {
    // 500 + 211 and two gaps of 3 are 717, all that there is; with reveals of 10 there are 700.
    expect(found(drawers('[{ height: 500 }, { height: 211 }, {}]'), 'drawer-stack')).toBe(
      'stop: box, drawer fronts: their heights and gaps leave nothing for a share; make them lower, or all alike: `stack: 3`',
    )
    expect(found(drawers('[{ height: 500 }, { height: 211 }, {}]', 'fronts: { reveal: 10 }'), 'drawer-stack')).toBe(
      'stop: box, drawer fronts: their heights and gaps take 17 mm more than there is; make them lower, or all alike: `stack: 3`',
    )
  })

  test('no screw for a thin front', () => {
    expect(found(drawers('3', 'fronts: { stock: thin }'), 'drawer-front-screws')).toBe(
      'stop: drawer 1: no screw holds a front of 6 mm through a box front of 12 mm; there are screw 4x40, screw 4x35, screw 4x30, screw 3.5x25, screw 3.5x20; take a front of 12 mm or more',
    )
  })

  test('a pull on the edge of the box front', () => {
    // The box ends 718.5 − 692 = 26.5 below the upper edge and begins 718.5 − 493.5 = 225 below, its groove ends
    // 10 + 6.7 above that; 2.25 + 5 inward.
    expect(found(drawers('3', 'fronts: { pull: { item: knob, edge distance: 26.5 } }'), 'drawer-pull')).toBe(
      'stop: drawer 1: the holes of the knob, 26.5 mm below the upper edge of the front, cut the edge of the box front; it lies from 26.5 to 225 mm; set `edge distance` from 33.8 mm to 201 mm',
    )
  })

  test('without packing, the door is hit', () => {
    expect(found(inner('packing: none'), 'drawer-packing')).toBe(
      'stop: box, drawer 1 would hit the open hinges of door, which stand 25 mm into the opening; its slide lies on the left wall itself; leave out `packing: none`: 12 mm are needed',
    )
  })

  test('a packing too thin for the screws', () => {
    expect(found(inner('packing: ply 12'), 'drawer-packing')).toBe(
      "stop: box, drawer 1: a packing of ply 12, 12 mm thick, is too thin for the slide's screws, 13 mm deep; name a stock of 16 mm or more as `packing`, or leave it to the rule: board",
    )
  })

  test('a plate behind every height that the box allows: where the hinges would be clear', () => {
    // 8 places of 85.5: the lowest box from 30 to 93.5; the slide's line from 54.7 to 71. A plate keeps 48.5 from it, so it
    // has room from 103.2 to 71 + 85.5 − 48.5 = 108, and so every 85.5. The hinges at 81.5, 360 and 638.5 of a door that
    // begins at 1.5 come to 103.2, stay in 359.7 to 364.5, and come to 108 + 6 × 85.5 = 621.
    const messages = built(inner('packing: auto', '8')).findings.filter((finding) => finding.rule === 'drawer-hinge')
    expect(messages.map((finding) => finding.fix).at(-1)).toBe('set `hinges: [101.7 mm, 358.5 mm, 619.5 mm]`')
  })
})
