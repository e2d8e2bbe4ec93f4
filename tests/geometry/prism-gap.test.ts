import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  boxSolid,
  type ClosedPath,
  circlePath,
  cylinder,
  frustum,
  gapBetweenSolids,
  gapToPrism,
  nearPairs,
  type Prism,
  type Solid,
  type Vec3,
} from '../../src/geometry/index.ts'

const corners = (...at: [number, number][]): ClosedPath => at.map((one) => ({ at: one, bulge: 0 }))
/** Two legs 10 wide: along x to 40 and along y to 30. */
const ANGLE = corners([0, 0], [40, 0], [40, 10], [10, 10], [10, 30], [0, 30])
/** A circle of radius 10 about (0, 0), and a slot 8 wide from it to x = 30. It leaves the circle at √(10² − 4²) = 9.165. */
const NECK = Math.sqrt(84)
const KEYHOLE: ClosedPath = [
  { at: [NECK, 4], bulge: Math.tan((2 * Math.PI - 2 * Math.atan2(4, NECK)) / 4) },
  { at: [NECK, -4], bulge: 0 },
  { at: [30, -4], bulge: 0 },
  { at: [30, 4], bulge: 0 },
]
/** 60 × 30, with a half circle of radius 10 about (30, 30) bitten out of its upper side. */
const BITTEN: ClosedPath = [
  { at: [0, 0], bulge: 0 },
  { at: [60, 0], bulge: 0 },
  { at: [60, 30], bulge: 0 },
  { at: [40, 30], bulge: -1 },
  { at: [20, 30], bulge: 0 },
  { at: [0, 30], bulge: 0 },
]

describe('worked by hand', () => {
  const prism: Prism = { path: BITTEN, low: -6, high: 0 }

  test('a bore in the bite: what is left of its radius', () => {
    // 10 − 3 (out of the middle) − 4.
    expect(gapToPrism(cylinder([30, 27, 0], [0, 0, -1], 13, 4), prism)).toBeCloseTo(3, 3)
    // Deeper than the prism, standing from the far face: from −8 on, 2 below its floor; out of the middle by 3.
    expect(gapToPrism(cylinder([30, 27, -18], [0, 0, 1], 10, 4), prism)).toBeCloseTo(Math.hypot(3, 2), 3)
  })

  test('a bore in the edge that ends in the bite', () => {
    // Along −y from y = 60 to y = 24, radius 2, at half the depth: the rim of its flat end lies √(2² + 6²) from the middle of
    // the bite, nearer to its wall than the middle of the end.
    expect(gapToPrism(cylinder([30, 60, -3], [0, -1, 0], 36, 2), prism)).toBeCloseTo(10 - Math.sqrt(40), 3)
    // Under the floor: its upper side at −9 + 2 = −7, 1 below.
    expect(gapToPrism(cylinder([30, 60, -9], [0, -1, 0], 50, 2), prism)).toBeCloseTo(1, 3)
    expect(gapToPrism(cylinder([30, 60, -3], [0, -1, 0], 50, 2), prism)).toBe(0)
  })

  test('a bore that leans at 45° over the rim of a wall', () => {
    const axis: Vec3 = [Math.SQRT1_2, 0, -Math.SQRT1_2]
    // Its axis is the line x + z = 64; the upper rim of the wall, at (60, −6), lies 10 / √2 from it.
    const leaning = cylinder([54, 15, 10], axis, 60, 2)
    expect(gapToPrism(leaning, { path: corners([0, 0], [60, 0], [60, 30], [0, 30]), low: -30, high: -6 })).toBeCloseTo(
      10 / Math.SQRT2 - 2,
      3,
    )
  })

  test('inside the walls it is 0, and no more than asked is worked out', () => {
    expect(gapToPrism(cylinder([10, 10, 0], [0, 0, -1], 3, 1), prism)).toBe(0)
    expect(gapToPrism(cylinder([100, 10, 0], [0, 0, -1], 3, 1), prism, 5)).toBeGreaterThanOrEqual(5)
  })
})

/** Any solid near the shapes. */
const solid: fc.Arbitrary<Solid> = fc
  .record({
    from: fc.tuple(
      fc.integer({ min: -30, max: 60 }),
      fc.integer({ min: -30, max: 50 }),
      fc.integer({ min: -25, max: 8 }),
    ),
    way: fc.tuple(fc.integer({ min: -4, max: 4 }), fc.integer({ min: -4, max: 4 }), fc.integer({ min: -4, max: -1 })),
    flat: fc.boolean(),
    length: fc.integer({ min: 2, max: 40 }),
    radius: fc.integer({ min: 1, max: 8 }),
    wide: fc.integer({ min: 0, max: 8 }),
  })
  .map(({ from, way: [x, y, z], flat, length, radius, wide }) => {
    const [u, v, w] = flat && (x !== 0 || y !== 0) ? [x, y, 0] : [x, y, z]
    const long = Math.hypot(u, v, w)
    const axis: Vec3 = [u / long, v / long, w / long]
    return wide === 0 ? cylinder(from, axis, length, radius) : frustum(from, axis, length, radius, wide)
  })

describe('shapes that are two convex ones together', () => {
  const box = (min: [number, number], max: [number, number], low: number, high: number): Solid =>
    boxSolid({ min: [...min, low], max: [...max, high] })

  test('an angle is its two legs', () => {
    fc.assert(
      fc.property(solid, fc.integer({ min: 1, max: 12 }), (one, deep) => {
        const gap = gapToPrism(one, { path: ANGLE, low: -deep, high: 0 })
        const legs = [box([0, 0], [40, 10], -deep, 0), box([0, 0], [10, 30], -deep, 0)]
        expect(Math.abs(gap - Math.min(...legs.map((leg) => gapBetweenSolids(one, leg))))).toBeLessThan(1e-6)
      }),
      { numRuns: 1000 },
    )
  })

  test('a keyhole is its circle and its slot', () => {
    fc.assert(
      fc.property(solid, fc.integer({ min: 1, max: 12 }), (one, deep) => {
        const gap = gapToPrism(one, { path: KEYHOLE, low: -deep, high: 0 })
        const parts = [cylinder([0, 0, 0], [0, 0, -1], deep, 10), box([0, -4], [30, 4], -deep, 0)]
        const truth = Math.min(...parts.map((part) => gapBetweenSolids(one, part)))
        expect(gap).toBeLessThanOrEqual(truth + 1e-6)
        expect(gap).toBeGreaterThan(truth - 2e-4)
      }),
      { numRuns: 1000 },
    )
  })

  test('a circle is a cylinder', () => {
    fc.assert(
      fc.property(solid, (one) => {
        const gap = gapToPrism(one, { path: circlePath([10, 5], 12), low: -9, high: -2 })
        const truth = gapBetweenSolids(one, cylinder([10, 5, -2], [0, 0, -1], 7, 12))
        expect(gap).toBeLessThanOrEqual(truth + 1e-6)
        expect(gap).toBeGreaterThan(truth - 2e-4)
      }),
      { numRuns: 1000 },
    )
  })
})

test('pairs of near boxes: each once, in order, whatever lies between', () => {
  const side = fc.integer({ min: 0, max: 30 })
  const boxes = fc.array(
    fc.tuple(fc.tuple(side, side, side), fc.tuple(side, side, side)).map(([at, size]) => ({
      min: [at[0] * 5, at[1] * 5, at[2] * 5] as const,
      max: [at[0] * 5 + size[0], at[1] * 5 + size[1], at[2] * 5 + size[2]] as const,
    })),
    { maxLength: 60 },
  )
  fc.assert(
    fc.property(boxes, fc.integer({ min: 0, max: 9 }), (list, reach) => {
      const every = list.flatMap((a, k) =>
        list.flatMap((b, n) =>
          n > k &&
          ([0, 1, 2] as const).every((axis) => a.min[axis] - b.max[axis] <= reach && b.min[axis] - a.max[axis] <= reach)
            ? [[k, n]]
            : [],
        ),
      )
      expect(nearPairs(list, reach)).toEqual(every)
    }),
    { numRuns: 300 },
  )
})
