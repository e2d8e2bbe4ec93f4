import { describe, expect, test } from 'vitest'
import { boardBox } from '../../src/assembly/index.ts'
import { built, panelOf, places, ROUND_STOCK } from '../support/define.ts'

// 818 × 720 outside, 18 mm board: openings of half the width are 382; the partition stands from 400 to 418.
const box = (inside: string): string => `${ROUND_STOCK}
modules:
  box:
    width: 818
    depth: 500
    carcase height: 720
    stock: board
    carcase: { back: { sits: applied, stock: thin } }
    inside:
${inside.replace(/^/gm, '      ')}
`
/** `x0 x1 z0 z1` of a front in the module. */
function extent(text: string, id: string): number[] {
  const { min, max } = boardBox(panelOf(built(text), `box/${id}`))
  return [min[0], max[0], min[2], max[2]]
}

describe('overlay at a panel between two bays', () => {
  test('half, where both have overlay fronts: (18 − 3) / 2 = 7.5', () => {
    const text = box('side by side: [{ front: { kind: door } }, { front: { kind: door } }]')
    expect(extent(text, 'door-1')).toEqual([1.5, 407.5, 1.5, 718.5])
    expect(extent(text, 'door-2')).toEqual([410.5, 816.5, 1.5, 718.5])
  })

  test('full, where the neighbour has none, or an inset one: 18 − 1.5 = 16.5', () => {
    // To 400 + 16.5.
    expect(extent(box('side by side: [{ front: { kind: door } }, {}]'), 'door')).toEqual([1.5, 416.5, 1.5, 718.5])
    const inset = box('side by side: [{ front: { kind: door } }, { front: { kind: door, lay: inset } }]')
    expect(extent(inset, 'door-1')).toEqual([1.5, 416.5, 1.5, 718.5])
    // The inset one 2 inside its opening, 418 to 800 and 18 to 702.
    expect(extent(inset, 'door-2')).toEqual([420, 798, 20, 700])
  })

  test('half, where a front deep in the bays beyond reaches the panel; full where it does not', () => {
    // Beyond: two bays, their divider at (382 − 18) / 2 = 182 from 418: from 600 to 618.
    const beyond = (first: string, second: string): string =>
      box(`side by side:\n- front: { kind: door, hang: left }\n- side by side: [{ ${first} }, { ${second} }]`)
    expect(extent(beyond('front: { kind: flap, stay: none }', ''), 'door')[1]).toBe(407.5)
    expect(extent(beyond('', 'front: { kind: flap, stay: none }'), 'door')[1]).toBe(416.5)
  })

  test('a front over several bays counts along its whole edge', () => {
    // On the left, doors above and below a fixed shelf; on the right, one fixed front over both of two bays.
    const text = box(`side by side:
- stacked: [{ front: { kind: door } }, { front: { kind: door } }]
- { front: { kind: fixed }, stacked: [{}, {}] }`)
    // The shelf from 351 to 369: doors to 358.5 and from 361.5.
    expect(extent(text, 'door-1')).toEqual([1.5, 407.5, 361.5, 718.5])
    expect(extent(text, 'door-2')).toEqual([1.5, 407.5, 1.5, 358.5])
    expect(extent(text, 'front-panel-1')).toEqual([410.5, 816.5, 1.5, 718.5])
  })

  test('only along the stretch that both can cover', () => {
    // Left: a door above, nothing below. Right: nothing above, a door below, their shelves at the same height, 351 to 369.
    // Round the crossing the two could meet, so they share the partition; above and below they have the shelves alone.
    const crossing = box(`side by side:
- stacked: [{ front: { kind: door } }, {}]
- stacked: [{}, { front: { kind: door } }]`)
    expect(extent(crossing, 'door-1')).toEqual([1.5, 407.5, 352.5, 718.5])
    expect(extent(crossing, 'door-2')).toEqual([410.5, 816.5, 1.5, 367.5])
    // With the right shelf far below the left one they never come near each other.
    const apart = box(`side by side:
- stacked: [{ size: 200, front: { kind: door } }, {}]
- stacked: [{}, { size: 200, front: { kind: door } }]`)
    expect(extent(apart, 'door-1')[1]).toBe(416.5)
    expect(extent(apart, 'door-2')[0]).toBe(401.5)
  })

  test('unlike gaps: both keep half of the larger from the middle line', () => {
    // Gap 3 and 6: (18 − 6) / 2 = 6 on either side.
    const text = box('side by side: [{ front: { kind: door } }, { front: { kind: door, gap: 6 } }]')
    expect(extent(text, 'door-1')[1]).toBe(406)
    expect(extent(text, 'door-2')[0]).toBe(412)
  })

  test('what the cover says stands', () => {
    const text = box('side by side: [{ front: { kind: door, cover: { right: half } } }, {}]')
    expect(extent(text, 'door')[1]).toBe(407.5)
  })
})

describe('a fixed front', () => {
  test('overlay: against the front edges, dowelled into those that it covers in full', () => {
    const of = built(box('front: { kind: fixed }'))
    const front = panelOf(of, 'box/front-panel-1')
    // No front that opens, so no front gap: the carcase begins at 18, and the front lies from 0 to 18.
    expect(boardBox(front)).toEqual({ min: [1.5, 0, 1.5], max: [816.5, 18, 718.5] })
    expect(boardBox(panelOf(of, 'box/left-side')).min[1]).toBe(18)
    // Over the left side, whole and 720 high, a strip from x 1.5 to 18: its middle 9.75. Contact from z 1.5 to 718.5:
    // 717 − 2 × 50 = 617, ceil(617 / 160) + 1 = 5 dowels, 154.25 apart, from 51.5. On face A of the front x runs up from
    // 1.5, y to the right from 1.5: 50, 204.25 … at y 8.25. Below, over the bottom: z 1.5 to 18, from x 18 to 800.
    const dowels = places(front, 'A', 'dowel')
    expect(dowels.filter((place) => place.endsWith(' 8.25'))).toEqual([
      '50 8.25',
      '204.25 8.25',
      '358.5 8.25',
      '512.75 8.25',
      '667 8.25',
    ])
    expect(front.bores.every(({ surface, diameter, depth }) => surface === 'A' && diameter === 8 && depth === 11)).toBe(
      true,
    )
    // In the side's front edge, 21 deep, 8.25 from its inner face: z = −8.25; x = 720 − z.
    const side = panelOf(of, 'box/left-side').bores.filter(({ surface }) => surface === 'y0')
    expect(side.map(({ at, depth }) => [at[0], at[2], depth])).toEqual(
      [668.5, 514.25, 360, 205.75, 51.5].reverse().map((x) => [x, -8.25, 21]),
    )
    expect(of.findings).toEqual([])
  })

  test('beside a door: its show face stands 2 back, since it has no front gap', () => {
    const of = built(box('side by side: [{ front: { kind: fixed } }, { front: { kind: door, hang: right } }]'))
    // Carcase at 18 + 2 = 20.
    const y = (id: string): number[] => {
      const { min, max } = boardBox(panelOf(of, `box/${id}`))
      return [min[1], max[1]]
    }
    expect([y('front-panel-1'), y('door')]).toEqual([
      [2, 20],
      [0, 18],
    ])
    // Half over the partition is too little for a dowel (8 + 2 × 3.5 = 15): it has none there.
    expect(panelOf(of, 'box/partition-1').bores.filter(({ surface }) => surface === 'y0')).toEqual([])
    expect(of.findings).toEqual([])
  })

  test('through screws, countersunk in the show face', () => {
    const of = built(box('front: { kind: fixed, fix: { fasten: screw 4.5x45, spacing: 300 } }'))
    const front = panelOf(of, 'box/front-panel-1')
    expect(
      front.bores.every(({ surface, through, sink }) => surface === 'B' && through && sink?.shape === 'cone'),
    ).toBe(true)
  })

  test('inset: without a gap between the panels, dowelled from left and right', () => {
    const of = built(box('front: { kind: fixed, lay: inset }'))
    const front = panelOf(of, 'box/front-panel-1')
    expect(boardBox(front)).toEqual({ min: [18, 0, 18], max: [800, 18, 702] })
    // 684 high: (684 − 100) / 160 → 4 + 1 = 5 dowels, 146 apart, in the middle of its edges; the side takes them 9 from its
    // front edge.
    expect(front.bores.map(({ surface }) => surface)).toEqual([...Array(5).fill('y0'), ...Array(5).fill('y1')])
    expect(places(panelOf(of, 'box/left-side'), 'A', 'dowel')).toEqual(
      // x = 720 − z, z = 68 + 146 k.
      [652, 506, 360, 214, 68].reverse().map((x) => `${x} 9`),
    )
    expect(of.findings).toEqual([])
  })

  test('covering halves alone, it has nothing to hold it: a stop', () => {
    const of = built(box('front: { kind: fixed, cover: half }'))
    expect(
      of.findings.filter(({ rule }) => rule === 'front-fixing').map(({ severity, message }) => [severity, message]),
    ).toEqual([['stop', 'front panel 1 is fastened along no edge: a dowel 8x30 needs 15 mm of an edge behind it']])
  })
})
