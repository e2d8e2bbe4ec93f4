import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  areaOf,
  boundsOf,
  type ClosedPath,
  circlePath,
  crossingOf,
  distanceToContour,
  gapBetweenContours,
  gapBetweenShapes,
  holdsPoint,
  liesIn,
  middleOf,
  mirroredPath,
  movedPath,
  pointsAlong,
  rectanglePath,
  slotPath,
  type Vec2,
} from '../../src/geometry/index.ts'

const corners = (...at: [number, number][]): ClosedPath => at.map((one) => ({ at: one, bulge: 0 }))

describe('a contour', () => {
  // A quarter circle about (0, 0) of radius 10: its arc bows out to (7.07, 7.07), its box is 10 × 10.
  const quarter: ClosedPath = [
    { at: [0, 0], bulge: 0 },
    { at: [10, 0], bulge: Math.tan(Math.PI / 8) },
    { at: [0, 10], bulge: 0 },
  ]

  test('has the box of its arcs, not of its corners', () => {
    expect(boundsOf(circlePath([100, 50], 30))).toEqual({ min: [70, 20], max: [130, 80] })
    // From (30, 0) to (0, 30) the long way round: three quarters of a circle about (0, 0).
    const long: ClosedPath = [
      { at: [0, -30], bulge: Math.tan((3 * Math.PI) / 8) },
      { at: [-30, 0], bulge: 0 },
    ]
    const { min, max } = boundsOf(long)
    expect([...min, ...max].map((n) => Math.round(n * 1e6) / 1e6)).toEqual([-30, -30, 30, 30])
    expect(middleOf(slotPath([0, 0], [60, 0], 20))).toEqual([30, 0])
  })

  test('holds points inside it, those behind a chord too', () => {
    expect(holdsPoint(circlePath([0, 0], 10), [0, 0])).toBe(true)
    expect(holdsPoint(circlePath([0, 0], 10), [7.06, 7.06])).toBe(true)
    expect(holdsPoint(circlePath([0, 0], 10), [7.08, 7.08])).toBe(false)
    expect(holdsPoint(quarter, [6, 6])).toBe(true)
    expect(holdsPoint(quarter, [7.2, 7.2])).toBe(false)
    // Beside a horizontal edge, at the height of corners.
    expect(holdsPoint(corners([0, 0], [10, 0], [10, 10], [0, 10]), [-1, 0])).toBe(false)
    expect(holdsPoint(corners([0, 0], [10, 0], [10, 10], [5, 5], [0, 10]), [-1, 5])).toBe(false)
    expect(holdsPoint(corners([0, 0], [10, 0], [10, 10], [5, 5], [0, 10]), [1, 5])).toBe(true)
  })

  test('knows its distance from a point', () => {
    expect(distanceToContour(circlePath([0, 0], 10), [0, 0])).toBeCloseTo(10, 9)
    expect(distanceToContour(circlePath([0, 0], 10), [13, 0])).toBeCloseTo(3, 9)
    // From (20, 5) to the corner at (10, 0) of the quarter: √(10² + 5²).
    expect(distanceToContour(quarter, [20, -5])).toBeCloseTo(Math.hypot(10, 5), 9)
  })

  test('knows its gap to another', () => {
    // Circles of 10 and 5 with centres 20 apart: 5 between them; one inside the other 10 apart at the nearest: 10 − 5 − 2 = 3.
    expect(gapBetweenShapes(circlePath([0, 0], 10), circlePath([20, 0], 5))).toBeCloseTo(5, 9)
    expect(gapBetweenShapes(circlePath([0, 0], 10), circlePath([2, 0], 5))).toBe(0)
    expect(gapBetweenContours(circlePath([0, 0], 10), circlePath([2, 0], 5))).toBeCloseTo(3, 9)
    expect(gapBetweenShapes(circlePath([0, 0], 10), circlePath([12, 0], 5))).toBe(0)
    // A circle of 5 about (30, 15) beside a box up to (20, 10): the corner is √(10² + 5²) away.
    expect(gapBetweenShapes(circlePath([30, 15], 5), rectanglePath([0, 0], [20, 10], 0))).toBeCloseTo(
      Math.hypot(10, 5) - 5,
      9,
    )
  })

  test('lies in another, touching or not', () => {
    const box = rectanglePath([0, 0], [100, 50], 0)
    expect(liesIn(rectanglePath([10, 10], [90, 40], 5), box)).toBe(true)
    expect(liesIn(rectanglePath([0, 10], [90, 40], 0), box)).toBe(true)
    expect(liesIn(box, box)).toBe(true)
    expect(liesIn(rectanglePath([10, 10], [110, 40], 0), box)).toBe(false)
    expect(liesIn(box, rectanglePath([10, 10], [90, 40], 0))).toBe(false)
    // A bar across a box that is open above: its ends lie inside, its middle does not.
    const open = corners([0, 0], [30, 0], [30, 30], [20, 30], [20, 10], [10, 10], [10, 30], [0, 30])
    expect(liesIn(corners([2, 20], [28, 20], [28, 22], [2, 22]), open)).toBe(false)
  })

  test('crosses itself, or not', () => {
    expect(crossingOf(corners([0, 0], [10, 10], [10, 0], [0, 10]))).toEqual([5, 5])
    expect(crossingOf(corners([0, 0], [10, 0], [10, 10], [5, 0], [0, 10]))).toBeDefined()
    // Goes back on itself.
    expect(crossingOf(corners([0, 0], [10, 0], [10, 10], [10, -5]))).toBeDefined()
    expect(crossingOf(rectanglePath([0, 0], [100, 50], 5))).toBeUndefined()
    expect(crossingOf(rectanglePath([0, 0], [100, 50], 25))).toBeUndefined()
    expect(crossingOf(circlePath([0, 0], 5))).toBeUndefined()
    expect(crossingOf(slotPath([0, 0], [60, 0], 20))).toBeUndefined()
    expect(crossingOf(quarter)).toBeUndefined()
  })

  test('is mirrored with its arcs, and stays counter-clockwise', () => {
    const seen = mirroredPath(quarter, 100)
    expect(areaOf(seen)).toBeCloseTo((Math.PI * 100) / 4, 9)
    expect(boundsOf(seen).min).toEqual([90, 0])
    expect(boundsOf(seen).max[1]).toBeCloseTo(10, 9)
    expect(holdsPoint(seen, [94, 6])).toBe(true)
    expect(holdsPoint(seen, [92.8, 7.2])).toBe(false)
    expect(movedPath(quarter, [5, 6])[1]?.at).toEqual([15, 6])
  })
})

const spot = fc
  .tuple(fc.integer({ min: -400, max: 400 }), fc.integer({ min: -400, max: 400 }))
  .map(([x, y]): Vec2 => [x / 10, y / 10])
const shape: fc.Arbitrary<ClosedPath> = fc.oneof(
  fc.tuple(spot, fc.integer({ min: 1, max: 30 })).map(([at, radius]) => circlePath(at, radius)),
  fc
    .record({
      at: spot,
      w: fc.integer({ min: 2, max: 60 }),
      h: fc.integer({ min: 2, max: 60 }),
      r: fc.double({ min: 0, max: 1, noNaN: true }),
    })
    .map(({ at: [x, y], w, h, r }) => rectanglePath([x, y], [x + w, y + h], (r * Math.min(w, h)) / 2)),
  fc
    .record({ at: spot, to: spot, width: fc.integer({ min: 1, max: 20 }) })
    .filter(({ at, to }) => Math.hypot(to[0] - at[0], to[1] - at[1]) > 0.1)
    .map(({ at, to, width }) => slotPath(at, to, width)),
)

/** Even–odd by the chords of many points: another way than the one under test. */
function holdsByChords(path: ClosedPath, [x, y]: Vec2): boolean {
  const points = pointsAlong(path, 0.05)
  return (
    points.filter(([ax, ay], k) => {
      const [bx, by] = points[(k + 1) % points.length] ?? [ax, ay]
      return ay > y !== by > y && ax + ((bx - ax) * (y - ay)) / (by - ay) > x
    }).length %
      2 ===
    1
  )
}

describe('any two contours', () => {
  test('their gap is that of points all along them', () => {
    fc.assert(
      fc.property(shape, shape, (a, b) => {
        const others = pointsAlong(b, 0.2)
        const near = (p: Vec2): number =>
          others.reduce((least, q) => Math.min(least, Math.hypot(p[0] - q[0], p[1] - q[1])), 1e9)
        const sampled = pointsAlong(a, 0.2).reduce((least, p) => Math.min(least, near(p)), 1e9)
        const gap = gapBetweenContours(a, b)
        expect(gap).toBeLessThanOrEqual(sampled + 1e-6)
        // Two points on either side of the nearest place are at most half a step away along each line.
        expect(gap).toBeGreaterThanOrEqual(sampled - 0.2)
      }),
      { numRuns: 60 },
    )
  })

  test('a point lies in one as it does by its chords', () => {
    fc.assert(
      fc.property(shape, spot, (path, p) => {
        fc.pre(distanceToContour(path, p) > 0.01)
        expect(holdsPoint(path, p)).toBe(holdsByChords(path, p))
      }),
      { numRuns: 100 },
    )
  })

  test('one lies in another only when all points along it do', () => {
    fc.assert(
      fc.property(shape, shape, (a, b) => {
        const points = pointsAlong(a, 0.5)
        fc.pre(points.every((p) => distanceToContour(b, p) > 1e-3))
        expect(liesIn(a, b)).toBe(points.every((p) => holdsByChords(b, p)) && gapBetweenContours(a, b) > 0)
      }),
      { numRuns: 60 },
    )
  })
})
