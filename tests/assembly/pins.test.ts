import { describe, expect, test } from 'vitest'
import { gridPositions } from '../../src/assembly/index.ts'
import { built, panelOf, places, ROUND_STOCK } from '../support/define.ts'

describe('pin columns', () => {
  test('a 720 side, 64 kept free at each end, pitch 32: 19 holes over 576', () => {
    // 64 + 18 × 32 = 640 = 720 − 64. 32 mm system: "What all modular 32mm systems have in common", davelers.com.
    const holes = gridPositions(64, 720 - 64, 0, 32)
    expect(holes).toHaveLength(19)
    expect([holes[0], holes[18]]).toEqual([64, 640])
  })

  test('positions come from k × pitch, so that a hundred inch pitches lose nothing', () => {
    // 31.75 × 100 = 3175 exactly.
    expect(gridPositions(0, 3175, 0, 31.75).at(100)).toBe(3175)
  })

  test('nothing fits', () => {
    expect(gridPositions(65, 95, 0, 32)).toEqual([])
    expect(gridPositions(100, 50, 0, 32)).toEqual([])
  })

  const open = (inside: string, width = 500): string => `${ROUND_STOCK}
modules:
  box:
    width: ${width}
    depth: 400
    carcase height: 400
    stock: board
    carcase: { top: over, bottom: between, back: { sits: applied, stock: thin } }
    inside: ${inside}
`

  test('both sides, two columns, heights by hand', () => {
    const of = built(open('{ loose shelves: 1 }'))
    // Open module: carcase from 0 to 394; columns at 37 and 394 − 37 = 357. Heights: datum at the sides' lower end (0);
    // between 18 + 64 = 82 and 382 − 64 = 318: 96, 128 … 288 (k 3 to 9). Side is 382 long; left x = 382 − z.
    const heights = [96, 128, 160, 192, 224, 256, 288]
    const right = panelOf(of, 'box/right-side')
    expect(places(right, 'A', 'shelf pin')).toEqual(heights.flatMap((z) => [`${z} 37`, `${z} 357`]))
    const left = panelOf(of, 'box/left-side')
    expect(places(left, 'A', 'shelf pin')).toEqual(
      [...heights].reverse().flatMap((z) => [`${382 - z} 37`, `${382 - z} 357`]),
    )
    expect(
      left.bores
        .filter((bore) => bore.purpose === 'shelf pin')
        .every((bore) => bore.diameter === 5 && bore.depth === 13),
    ).toBe(true)
    // Loose shelf: 464 − 2 × 1.2 = 461.6 long; 394 − 5 − 2 = 387 deep. It lies on the pins nearest to the middle of
    // the opening (200): those at 192, and on their upper side, 194.5.
    const shelf = panelOf(of, 'box/shelf-1')
    expect([shelf.length, shelf.width]).toEqual([461.6, 387])
    expect(shelf.moduleFromPanel.origin[2]).toBeCloseTo(194.5 + 18, 9)
  })

  test('a partition: two 13 mm holes would meet in 18 mm, so they are one through hole', () => {
    const of = built(open('{ side by side: [{ loose shelves: 1 }, { loose shelves: 1 }] }', 818))
    const partition = panelOf(of, 'box/partition-1')
    const pins = partition.bores.filter((bore) => bore.purpose === 'shelf pin')
    expect(pins).toHaveLength(14)
    expect(
      pins.every((bore) => bore.through && bore.surface === 'A' && bore.depth === 18 && bore.uses.length === 2),
    ).toBe(true)
  })

  test('staggered: the second row stands half a pitch higher, on both of its walls', () => {
    const stagger = '{ count: 1, pins: { both faces: stagger } }'
    const of = built(open(`{ side by side: [{ loose shelves: ${stagger} }, { loose shelves: ${stagger} }] }`, 818))
    const partition = panelOf(of, 'box/partition-1')
    // The partition's lower end lies 18 above the sides'; its face A looks right, x runs down from its upper end at 382.
    const onA = partition.bores.filter(
      (bore) => bore.surface === 'A' && bore.purpose === 'shelf pin' && bore.at[1] === 37,
    )
    const onB = partition.bores.filter(
      (bore) => bore.surface === 'B' && bore.purpose === 'shelf pin' && bore.at[1] === 37,
    )
    // From the left opening (face B): 96 … 288. From the right (face A): 112 … 304.
    expect(onB.map((bore) => 382 - bore.at[0])).toEqual([288, 256, 224, 192, 160, 128, 96])
    expect(onA.map((bore) => 382 - bore.at[0])).toEqual([304, 272, 240, 208, 176, 144, 112])
    expect(partition.bores.filter((bore) => bore.purpose === 'shelf pin').every((bore) => !bore.through)).toBe(true)
    expect(places(panelOf(of, 'box/right-side'), 'A', 'shelf pin')[0]).toBe('112 37')
  })

  test('inch pins: 6.35 × 9.525, 1 in apart, 1 1/2 in from the edges', () => {
    // Sizes: engineerfix.com, shelf support peg sizes; pitch, depth and setback: common practice, no source.
    const of = built(`
storyrod: 1
units: in
stock:
  ply: { thickness: 3/4 }
modules:
  box: { width: 24, depth: 12, carcase height: 16, stock: ply, carcase: { back: none }, inside: { loose shelves: 1 } }
`)
    const right = panelOf(of, 'box/right-side')
    const front = right.bores.filter((bore) => bore.purpose === 'shelf pin' && Math.abs(bore.at[1] - 38.1) < 1e-9)
    // Between 3/4 + 2 1/2 = 3 1/4 in and 16 − 3 1/4 = 12 3/4 in: 4, 5 … 12 in.
    expect(front.map((bore) => Math.round((bore.at[0] / 25.4) * 1e6) / 1e6)).toEqual([4, 5, 6, 7, 8, 9, 10, 11, 12])
    expect(front.every((bore) => bore.diameter === 6.35 && bore.depth === 9.525)).toBe(true)
  })
})
