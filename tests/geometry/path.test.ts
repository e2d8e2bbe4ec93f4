import * as fc from 'fast-check'
import makerjs from 'makerjs'
import { describe, expect, test } from 'vitest'
import { areaOf, closedPathsOf, grooveModel, outlineModel } from '../../src/geometry/index.ts'

const SQUARE = { start: false, end: false }
const ROUND = { start: true, end: true }

describe('closed paths', () => {
  test('a panel is its four corners, counter-clockwise from the lower left', () => {
    expect(closedPathsOf(outlineModel(720, 560))).toEqual([
      [
        { at: [0, 0], bulge: 0 },
        { at: [720, 0], bulge: 0 },
        { at: [720, 560], bulge: 0 },
        { at: [0, 560], bulge: 0 },
      ],
    ])
  })

  test('a groove from edge to edge is square at both ends', () => {
    expect(closedPathsOf(grooveModel([0, 535], [720, 541], { along: 'x', round: SQUARE }))).toEqual([
      [
        { at: [0, 535], bulge: 0 },
        { at: [720, 535], bulge: 0 },
        { at: [720, 541], bulge: 0 },
        { at: [0, 541], bulge: 0 },
      ],
    ])
  })

  // 6 wide, so a half circle of radius 3 lies between x = 10 and 13; tan(180° / 4) = 1 by the definition of a bulge.
  test('a stopped end is a half circle inside the box, with a bulge of 1', () => {
    expect(
      closedPathsOf(grooveModel([10, 100], [200, 106], { along: 'x', round: { start: true, end: false } })),
    ).toEqual([
      [
        { at: [13, 100], bulge: 0 },
        { at: [200, 100], bulge: 0 },
        { at: [200, 106], bulge: 0 },
        { at: [13, 106], bulge: 1 },
      ],
    ])
  })

  test('along y the round ends are below and above', () => {
    expect(closedPathsOf(grooveModel([50, 10], [56, 90], { along: 'y', round: ROUND }))).toEqual([
      [
        { at: [50, 13], bulge: 1 },
        { at: [56, 13], bulge: 0 },
        { at: [56, 87], bulge: 1 },
        { at: [50, 87], bulge: 0 },
      ],
    ])
  })

  test('a groove as long as it is wide, both ends round, is a circle of two arcs', () => {
    expect(closedPathsOf(grooveModel([0, 0], [6, 6], { along: 'x', round: ROUND }))).toEqual([
      [
        { at: [3, 0], bulge: 1 },
        { at: [3, 6], bulge: 1 },
      ],
    ])
  })

  test('a circle begins at its lowest point', () => {
    const model = { paths: { hole: new makerjs.paths.Circle([10, 20], 5) }, origin: [1, 2] }
    expect(closedPathsOf(model)).toEqual([
      [
        { at: [11, 17], bulge: 1 },
        { at: [11, 27], bulge: 1 },
      ],
    ])
  })

  test('a contour drawn clockwise from pieces in any order comes out the same', () => {
    const { Line, Arc } = makerjs.paths
    const shuffled = {
      paths: {
        d: new Line([0, 4], [0, 0]),
        b: new Arc([10, 2], 2, 270, 90),
        a: new Line([10, 0], [0, 0]),
        c: new Line([0, 4], [10, 4]),
      },
    }
    expect(closedPathsOf(shuffled)).toEqual([
      [
        { at: [0, 0], bulge: 0 },
        { at: [10, 0], bulge: 1 },
        { at: [10, 4], bulge: 0 },
        { at: [0, 4], bulge: 0 },
      ],
    ])
  })

  test('an arc that bites into the panel keeps a negative bulge', () => {
    const { Line, Arc } = makerjs.paths
    // A half circle of radius 2 cut out of the right edge of a 10 × 4 rectangle.
    const bitten = {
      paths: {
        a: new Line([0, 0], [10, 0]),
        b: new Arc([10, 2], 2, 90, 270),
        c: new Line([10, 4], [0, 4]),
        d: new Line([0, 4], [0, 0]),
      },
    }
    const [path] = closedPathsOf(bitten)
    expect(path?.[1]).toEqual({ at: [10, 0], bulge: -1 })
    // 40 − π 2² / 2 = 33.716815
    expect(areaOf(path ?? [])).toBeCloseTo(33.716815, 6)
  })

  test('several contours come in the order of their lowest corners', () => {
    const model = {
      models: { far: makerjs.model.move(outlineModel(5, 5), [20, 0]), near: outlineModel(10, 10) },
    }
    expect(closedPathsOf(model).map((path) => path[0]?.at)).toEqual([
      [0, 0],
      [20, 0],
    ])
  })
})

describe('what is refused', () => {
  test('a contour with a gap of 0.004 mm, which makerjs would close by default', () => {
    const { Line } = makerjs.paths
    const paths = { a: new Line([0, 0], [10, 0]), b: new Line([10, 0], [5, 8]), c: new Line([5, 8], [0, 0.004]) }
    expect(() => closedPathsOf({ paths })).toThrow(/does not close/)
  })

  test('a line that stands alone', () => {
    expect(() => closedPathsOf({ paths: { a: new makerjs.paths.Line([0, 0], [10, 0]) } })).toThrow(
      'a path stands alone',
    )
  })

  test('sizes that are no sizes', () => {
    expect(() => outlineModel(0, 5)).toThrow('no outline: 0 × 5')
    expect(() => outlineModel(Number.NaN, 5)).toThrow('no outline: NaN × 5')
    expect(() => grooveModel([0, 0], [4, 6], { along: 'x', round: ROUND })).toThrow('in a box of 4 × 6')
  })
})

describe('properties', () => {
  const length = fc.double({ min: 20, max: 2500, noNaN: true })
  const width = fc.double({ min: 1, max: 20, noNaN: true })

  test('any groove closes, runs counter-clockwise, fills its box, and has the area of a slot', () => {
    fc.assert(
      fc.property(
        length,
        width,
        fc.double({ min: 0, max: 100, noNaN: true }),
        fc.constantFrom<'x' | 'y'>('x', 'y'),
        fc.boolean(),
        fc.boolean(),
        (long, wide, from, along, start, end) => {
          const size = along === 'x' ? [long, wide] : [wide, long]
          const max: [number, number] = [from + (size[0] ?? 0), from / 2 + (size[1] ?? 0)]
          const [path, ...more] = closedPathsOf(grooveModel([from, from / 2], max, { along, round: { start, end } }))
          expect(more).toEqual([])
          const rounds = (start ? 1 : 0) + (end ? 1 : 0)
          // A half circle instead of half a square: r² (2 − π / 2) less, at each round end.
          const expected = long * wide - rounds * (wide / 2) ** 2 * (2 - Math.PI / 2)
          expect(areaOf(path ?? [])).toBeCloseTo(expected, 2)
          for (const { at } of path ?? []) {
            expect(at[0]).toBeGreaterThanOrEqual(from - 1e-6)
            expect(at[1]).toBeLessThanOrEqual(max[1] + 1e-6)
          }
        },
      ),
      { numRuns: 500 },
    )
  })

  test('moving the model moves the path and nothing else', () => {
    fc.assert(
      fc.property(fc.integer({ min: -500, max: 500 }), fc.integer({ min: -500, max: 500 }), (dx, dy) => {
        const still = closedPathsOf(grooveModel([10, 10], [90, 16], { along: 'x', round: ROUND }))
        const moved = closedPathsOf(
          makerjs.model.move(grooveModel([10, 10], [90, 16], { along: 'x', round: ROUND }), [dx, dy]),
        )
        expect(moved).toEqual(
          still.map((path) => path.map(({ at, bulge }) => ({ at: [at[0] + dx, at[1] + dy], bulge }))),
        )
      }),
    )
  })
})
