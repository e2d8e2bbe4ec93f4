import { describe, expect, test } from 'vitest'
import { areaOf, circlePath, rectanglePath, slotPath } from '../../src/geometry/index.ts'

describe('closed paths of the usual shapes', () => {
  test('a circle: π r², counter-clockwise, from its lowest point', () => {
    const path = circlePath([100, 50], 20)
    expect(path[0]?.at).toEqual([100, 30])
    expect(areaOf(path)).toBeCloseTo(Math.PI * 400, 6)
  })

  test('a rectangle with corners: w h − (4 − π) r²', () => {
    // 120 × 80 with corners of 10: 9600 − 0.858407 × 100 = 9514.1593.
    const path = rectanglePath([30, 40], [150, 120], 10)
    expect(path).toHaveLength(8)
    expect(areaOf(path)).toBeCloseTo(9514.1593, 3)
    expect(path[0]?.at).toEqual([40, 40])
  })

  test('a rectangle with square corners', () => {
    const path = rectanglePath([30, 40], [150, 120], 0)
    expect(path.map((vertex) => vertex.at)).toEqual([
      [30, 40],
      [150, 40],
      [150, 120],
      [30, 120],
    ])
  })

  test('a slot, straight and slanted: length × width + π r²', () => {
    // Centres 100 apart, 12 wide: 1200 + 36 π = 1313.0973.
    expect(areaOf(slotPath([10, 20], [110, 20], 12))).toBeCloseTo(1313.0973, 3)
    // 60 and 80 across: 100 apart all the same.
    expect(areaOf(slotPath([10, 20], [70, 100], 12))).toBeCloseTo(1313.0973, 3)
  })

  test('what is no shape is refused with its figures', () => {
    expect(() => circlePath([0, 0], 0)).toThrow('no circle of radius 0')
    expect(() => rectanglePath([0, 0], [20, 30], 11)).toThrow('no rectangle 20 × 30 with corners of 11')
    expect(() => slotPath([5, 5], [5, 5], 8)).toThrow('no slot from 5,5 to 5,5, 8 wide')
  })
})
