import { describe, expect, test } from 'vitest'
import { lapEdge, seamMarks } from '../../src/templates/index.ts'

const FACE = { min: [0, 0], max: [600, 500] } as const

describe('marks of an upright seam', () => {
  // The right page, which lies on top, begins at 254 and the left one ends at 268: the seam is 14 wide, from 100 to 266 up.
  const lower = { min: [0, 100], max: [268, 266] } as const
  const upper = { min: [254, 100], max: [522, 266] } as const
  const lap = { upper, lower, along: 1 } as const

  test('the upper sheet begins at 254', () => {
    expect(lapEdge(lap)).toEqual({ at: 254, inward: 1 })
  })

  test('they stand 7 from the edge of the upper sheet, as far apart as their reach of 6 allows', () => {
    expect(seamMarks(lap, FACE, [])).toEqual([
      [261, 106],
      [261, 260],
    ])
  })

  test('a hole at one end moves its mark along', () => {
    // 5 round, at 110 on the line: clear from 110 + 5 + 6 + 1 = 122.
    expect(seamMarks(lap, FACE, [{ at: [261, 110], radius: 5 }])).toEqual([
      [261, 122],
      [261, 260],
    ])
  })

  test('where holes leave less than 60 clear, they stand apart and cover as little as can be', () => {
    const holes = Array.from({ length: 12 }, (_, k) => ({ at: [261, 106 + 14 * k] as const, radius: 5 }))
    const [first, second] = seamMarks(lap, FACE, holes)
    expect(second[1] - first[1]).toBeGreaterThanOrEqual(60)
    // Between two holes, 7 from either: 7 − 5 = 2 clear of both rims, the most that there is.
    for (const [, y] of [first, second]) expect((y - 106) % 14).toBe(7)
  })
})

test('of a short seam with a hole at its end, the marks stand nearer to each other than 60, but not on the hole', () => {
  // The pages share 100 to 147 up, so that middles may lie from 106 to 141. A hole of 5 round at 106 on the line: clear
  // from 106 + 5 + 6 + 1 = 118, which leaves 141 − 118 = 23 between the marks.
  const lower = { min: [0, 0], max: [268, 147] } as const
  const upper = { min: [254, 100], max: [522, 266] } as const
  expect(seamMarks({ upper, lower, along: 1 }, FACE, [{ at: [261, 106], radius: 5 }])).toEqual([
    [261, 118],
    [261, 141],
  ])
})

test('a level seam: the lower page in the row below lies on top, its upper edge is the line', () => {
  const lower = { min: [0, 300], max: [268, 466] } as const
  const upper = { min: [0, 148], max: [268, 314] } as const
  expect(lapEdge({ upper, lower, along: 0 })).toEqual({ at: 314, inward: -1 })
  expect(seamMarks({ upper, lower, along: 0 }, FACE, [])).toEqual([
    [6, 307],
    [262, 307],
  ])
})

test('no mark lies on the paper that is folded over the edge', () => {
  // The windows reach 26 beyond the lower edge; the marks begin 6 above it.
  const lower = { min: [0, -26], max: [268, 140] } as const
  const upper = { min: [254, -26], max: [522, 140] } as const
  expect(seamMarks({ upper, lower, along: 1 }, FACE, [])).toEqual([
    [261, 6],
    [261, 134],
  ])
})
