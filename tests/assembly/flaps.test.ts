import { describe, expect, test } from 'vitest'
import { findItem } from '../../src/hardware/index.ts'
import { built, panelOf, places, ROUND_STOCK } from '../support/define.ts'

// One opening 900 × 400 outside, 450 deep, 18 mm board, back 6 applied. Overlay front: 18 + 2, so the carcase stands from
// y 20 to 444; opening x 18 to 882, z 18 to 382.
const box = (front: string, extra = '', width = 900): string => `${ROUND_STOCK}
modules:
  box:
    width: ${width}
    depth: 450
    carcase height: 400
    stock: board
    carcase: { back: { sits: applied, stock: thin } }
    inside:
      front: { kind: flap, ${front} }
      ${extra}
`
const said = (text: string, rule: string): string[] =>
  built(text)
    .findings.filter((one) => one.rule === rule)
    .map(({ severity, message }) => `${severity}: ${message}`)

describe('a flap hung at the top', () => {
  const of = built(box('hang: top'))
  const flap = panelOf(of, 'box/flap')

  test('lies with its grain across: 897 × 397, x from the right end, y up', () => {
    // 900 − 2 × 1.5; 400 − 2 × 1.5. Face A is the hidden face, which looks back: seen on it, x runs to the left.
    expect([flap.length, flap.width]).toEqual([897, 397])
    expect(flap.moduleFromPanel.x).toEqual([-1, 0, 0])
    expect(flap.moduleFromPanel.origin).toEqual([898.5, 18, 1.5])
    expect(flap.faces).toEqual({ A: 'hidden face', B: 'show face' })
  })

  test('cups along its top edge, plates on the underside of the top', () => {
    // 0.897 × 0.397 × 0.018 × 685 = 4.39 kg, 897 along the hinges: up to 5 kg and 900 two hinges; the other size, 397, is
    // not over 600. Overlay 18 − 1.5 = 16.5: plate 3.5, C 5, cup centre 22.5 from the top edge: y = 397 − 22.5 = 374.5;
    // 80 from both ends.
    expect(places(flap, 'A', 'hinge cup')).toEqual(['80 374.5', '817 374.5'])
    expect(places(flap, 'A', 'hinge dowel')).toEqual(['57.5 365', '102.5 365', '794.5 365', '839.5 365'])
    // Top between the sides, 864 long, face A its underside, x from its right end (882), y from its front edge. Hinges
    // stand at x 81.5 and 818.5 of the module; plate holes 16 to each side, 37 from the front edge: 882 − 81.5 ± 16.
    const top = panelOf(of, 'box/top')
    expect(places(top, 'A', 'hinge plate')).toEqual(['47.5 37', '79.5 37', '784.5 37', '816.5 37'])
  })

  test('two lid stays, since it is wider than 600', () => {
    // On the sides: 64 behind their front edges, 215 below the underside of the top, z 382 − 215 = 167; screws 10 above
    // and below. The sides are whole, 400 high: left x = 400 − z, right x = z.
    expect(places(panelOf(of, 'box/left-side'), 'A', 'flap stay')).toEqual(['223 64', '243 64'])
    expect(places(panelOf(of, 'box/right-side'), 'A', 'flap stay')).toEqual(['157 64', '177 64'])
    // On the flap: 20 from the inner faces of the sides, x 38 and 862 of the module, so 860.5 and 36.5 from its right end
    // at 898.5; 60 below the top's underside: z 322, 320.5 above its lower edge at 1.5.
    expect(places(flap, 'A', 'flap stay')).toEqual(['36.5 310.5', '36.5 330.5', '860.5 310.5', '860.5 330.5'])
  })

  test('opens above the carcase: 397 × sin 20° = 135.8, less the reveal of 1.5', () => {
    expect(said(box('hang: top'), 'flap-swing')).toEqual([
      'note: flap opens upward: its free edge rises about 134 mm above the carcase',
    ])
    expect(built(box('hang: top')).findings).toHaveLength(1)
  })
})

describe('a flap hung at the bottom', () => {
  const of = built(box('hang: bottom, pull: { item: pull 128, end: left, end distance: 100 }', '', 500))
  const flap = panelOf(of, 'box/flap')

  test('cups along its bottom edge, plates on the upper face of the bottom', () => {
    // 497 × 397. Overlay 16.5 as on doors: cups 22.5 above the lower edge; the flap from x 1.5 to 498.5.
    expect(places(flap, 'A', 'hinge cup')).toEqual(['80 22.5', '417 22.5'])
    // Bottom 464 long, from x 18: face A up, x to the right. Hinges at 81.5 and 418.5.
    expect(places(panelOf(of, 'box/bottom'), 'A', 'hinge plate')).toEqual([
      '47.5 37',
      '79.5 37',
      '384.5 37',
      '416.5 37',
    ])
  })

  test('one drop stay on the left: 160 above the bottom on the side, 140 on the flap', () => {
    // z 18 + 160 = 178, x = 400 − 178 = 222 on the left side. On the flap: x 38, 498.5 − 38 = 460.5 from its right end; z
    // 158, 156.5 above its lower edge.
    expect(places(panelOf(of, 'box/left-side'), 'A', 'flap stay')).toEqual(['212 64', '232 64'])
    expect(places(panelOf(of, 'box/right-side'), 'A', 'flap stay')).toEqual([])
    expect(places(flap, 'A', 'flap stay')).toEqual(['460.5 146.5', '460.5 166.5'])
    // It stands on the floor, and its pull meets that before the flap lies level.
    expect(of.findings.map(({ severity, rule }) => `${severity} ${rule}`)).toEqual(['warn flap-arc'])
  })

  test('its pull lies across, 40 below its top edge, 100 from its left end', () => {
    // Holes 128 apart at 100 and 228 from the left end: 497 − 100 = 397 and 269 from the right; through, so on face A.
    // y = 397 − 40.
    expect(
      flap.bores.filter(({ purpose }) => purpose === 'pull').map(({ at, through }) => [at[0], at[1], through]),
    ).toEqual([
      [269, 357, true],
      [397, 357, true],
    ])
  })
})

describe('an inset flap', () => {
  test('plates 37 behind the flap and 1.5; stays from its hidden face', () => {
    // No overlay front: the carcase begins at y 0. Flap from 0 to 18, x 20 to 880, z 20 to 380. Plates at 18 + 1.5 + 37 =
    // 56.5. Inset hinge, overlay −2 = −4 + C − H: H 3.5 gives 5.5, H 3 gives 5: C 5. Cups 22.5 from the top edge.
    const of = built(box('hang: top, lay: inset'))
    const flap = panelOf(of, 'box/flap')
    expect([flap.length, flap.width]).toEqual([860, 360])
    expect(places(flap, 'A', 'hinge cup').map((place) => place.split(' ')[1])).toEqual(['337.5', '337.5'])
    expect(places(panelOf(of, 'box/top'), 'A', 'hinge plate').map((place) => place.split(' ')[1])).toEqual([
      '56.5',
      '56.5',
      '56.5',
      '56.5',
    ])
    // 18 + 64 behind the front edges.
    expect(places(panelOf(of, 'box/left-side'), 'A', 'flap stay')).toEqual(['223 82', '243 82'])
  })
})

describe('hinges along the edge', () => {
  test('the table is read along the hinge edge: 1197 wide takes three', () => {
    // 1.197 × 0.397 × 0.018 × 685 = 5.86 kg: over 5 kg and over 900.
    expect(places(panelOf(built(box('hang: top', '', 1200)), 'box/flap'), 'A', 'hinge cup')).toHaveLength(3)
  })

  test('the middle one keeps clear of a partition that stands against the top', () => {
    // Half of 1200: partition from 591 to 609, the middle hinge would be at 600. Plates reach 26: 565 or 635, the lower of
    // the two as near; in the flap, x from its right end at 1198.5: 633.5.
    const cups = places(
      panelOf(built(box('hang: top, stay: none', 'side by side: [{}, {}]', 1200)), 'box/flap'),
      'A',
      'hinge cup',
    )
    expect(cups).toEqual(['80 374.5', '633.5 374.5', '1117 374.5'])
  })

  test('places as asked count from the left end', () => {
    expect(places(panelOf(built(box('hang: top, hinges: [100, 300, 700]')), 'box/flap'), 'A', 'hinge cup')).toEqual([
      '197 374.5',
      '597 374.5',
      '797 374.5',
    ])
  })

  test('two flaps on one fixed shelf: the second keeps 16 off the plates of the first', () => {
    const of = built(`${ROUND_STOCK}
modules:
  box:
    width: 600
    depth: 450
    carcase height: 818
    stock: board
    carcase: { back: { sits: applied, stock: thin } }
    inside:
      stacked:
        - front: { kind: flap, hang: bottom, stay: none }
        - front: { kind: flap, hang: top, stay: none }
`)
    // Openings 382 high, the shelf from 400 to 418. Half overlay 7.5: upper flap from 410.5 to 816.5, lower one from 1.5 to
    // 407.5. Hinges of the first 80 from its ends, of the second 64; the shelf is 564 long from x 18, the flaps from 1.5.
    expect([panelOf(of, 'box/flap-1').width, panelOf(of, 'box/flap-2').width]).toEqual([406, 406])
    const shelf = panelOf(of, 'box/fixed-shelf-1')
    expect(places(shelf, 'A', 'hinge plate')).toEqual(['47.5 37', '79.5 37', '484.5 37', '516.5 37'])
    expect(places(shelf, 'B', 'hinge plate')).toEqual(['31.5 37', '63.5 37', '500.5 37', '532.5 37'])
    expect(of.findings.filter(({ severity }) => severity !== 'note')).toEqual([])
  })
})

describe('stays', () => {
  test.each([
    // Pivot at the corner: shut √(back² + (carcase − flap)²), at a right angle √((back + flap)² + carcase²).
    // 250: √(64² + 155²) = 167.7, √(124² + 215²) = 248.2. 170: √(64² + 90²) = 110.4, √(104² + 130²) = 166.5.
    ['lid stay 250', 167.7, 248.2],
    ['lid stay 170', 110.4, 166.5],
    // 260: √(64² + 20²) = 67.1, √(204² + 160²) = 259.3. 190: √(64² + 3²) = 64.1, √(161² + 100²) = 189.5.
    ['drop stay 260', 67.1, 259.3],
    ['drop stay 190', 64.1, 189.5],
  ])('%s: %d shut and %d open, which its name allows', (id, shut, open) => {
    const item = findItem(id)
    if (item?.kind !== 'flap stay') throw new Error(`${id} is no stay`)
    const { back, fromHinges } = item.carcase
    expect(Math.hypot(back, fromHinges - item.flap.fromHinges)).toBeCloseTo(shut, 1)
    expect(Math.hypot(back + item.flap.fromHinges, fromHinges)).toBeCloseTo(open, 1)
    const longest = Number(id.split(' ').at(-1))
    expect(open).toBeLessThanOrEqual(longest)
    expect(longest - open).toBeLessThan(4)
  })

  test('a low opening takes the shorter; a lower one none', () => {
    // 250 wants 215 + 20 = 235 of height, 170 wants 130 + 20 = 150.
    const low = (height: number): string =>
      box('hang: top').replace('carcase height: 400', `carcase height: ${height + 36}`)
    const items = (text: string): string[] => [
      ...new Set(
        built(text)
          .assembly.hardware.filter(({ item }) => item.kind === 'flap stay')
          .map(({ item }) => item.id),
      ),
    ]
    expect(items(low(235))).toEqual(['lid stay 250'])
    expect(items(low(234))).toEqual(['lid stay 170'])
    expect(items(low(149))).toEqual([])
    expect(said(low(149), 'flap-stay')).toEqual([
      'stop: flap: the lid stay 170 needs an opening 150 mm high; it is 149',
    ])
  })

  test('a fixed shelf behind the flap in its way', () => {
    // The shelf from 191 to 209, between the brackets at 322 and 167.
    expect(said(box('hang: top, stay: lid stay 250', 'stacked: [{}, {}]'), 'flap-stay')).toEqual([
      'stop: flap: a fixed shelf stands in the way of the lid stay 250',
    ])
  })

  test('none, one or both as asked', () => {
    const count = (front: string): number =>
      built(box(front)).assembly.hardware.filter(({ item }) => item.kind === 'flap stay').length
    expect([
      count('hang: top, stay: none'),
      count('hang: top, stays: one'),
      count('hang: bottom, stays: both'),
    ]).toEqual([0, 1, 2])
  })
})
