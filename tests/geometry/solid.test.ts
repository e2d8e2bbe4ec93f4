import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type Box,
  boundsOfSolid,
  boxSolid,
  circlePath,
  curvesOf,
  cylinder,
  frustum,
  gapBetweenSolids,
  IDENTITY,
  movedSolid,
  poseOf,
  rectanglePath,
  type Solid,
  type Vec3,
} from '../../src/geometry/index.ts'
import { nestedGap } from '../support/nested-gap.ts'

const DOWN: Vec3 = [0, 0, -1]
const box = (min: Vec3, max: Vec3): Solid => boxSolid({ min, max })

describe('gaps worked by hand', () => {
  test('side by side: between the axes, less both radii', () => {
    expect(gapBetweenSolids(cylinder([0, 0, 0], DOWN, 13, 2.5), cylinder([32, 0, 0], DOWN, 13, 2.5))).toBe(27)
  })

  test('from both faces of an 18 mm board, 7 and 7 deep: 4 mm between the ends', () => {
    const a = cylinder([0, 0, 0], DOWN, 7, 2.5)
    expect(gapBetweenSolids(a, cylinder([0, 0, -18], [0, 0, 1], 7, 2.5))).toBeCloseTo(4, 9)
    // Set 8 aside: 8 − 5 = 3 across and 4 along: 5 by Pythagoras.
    expect(gapBetweenSolids(a, cylinder([8, 0, -18], [0, 0, 1], 7, 2.5))).toBeCloseTo(5, 9)
  })

  test('a bore in the face above a pilot in the edge', () => {
    // Pilot along x at z −9, radius 2.5: its upper side at −6.5. A 5 mm deep bore ends at −5: 1.5 between.
    const pilot = cylinder([0, 20, -9], [1, 0, 0], 35, 2.5)
    expect(gapBetweenSolids(cylinder([20, 20, 0], DOWN, 5, 2.5), pilot)).toBeCloseTo(1.5, 9)
    expect(gapBetweenSolids(cylinder([20, 20, 0], DOWN, 6.5, 2.5), pilot)).toBe(0)
    expect(gapBetweenSolids(cylinder([20, 20, 0], DOWN, 9, 2.5), pilot)).toBe(0)
    // The pilot ends at 35, the bore begins at 37.5; beside it 8 from axis to axis.
    expect(gapBetweenSolids(cylinder([40, 20, 0], DOWN, 13, 2.5), pilot)).toBeCloseTo(2.5, 9)
    expect(gapBetweenSolids(cylinder([20, 28, 0], DOWN, 13, 2.5), pilot)).toBeCloseTo(3, 9)
  })

  test('a countersink is a cone, not the cylinder around it', () => {
    // 90°, 10 wide at the face, 5 deep to a point; a wall upright at x = 8 reaching from −4 to −20: the cone's side runs
    // at 45° from (5, 0) to (0, −5); from (8, −4) to the line x − z = 5: (8 + 4 − 5) / √2 = 4.9497.
    const cone = frustum([0, 0, 0], DOWN, 5, 5, 0)
    expect(gapBetweenSolids(cone, box([8, -10, -20], [20, 10, -4]))).toBeCloseTo(7 / Math.SQRT2, 9)
    // The cylinder around it would come within 3.
    expect(gapBetweenSolids(cylinder([0, 0, 0], DOWN, 5, 5), box([8, -10, -20], [20, 10, -4]))).toBeCloseTo(3, 9)
  })

  test('boxes: corner to corner √(3² + 4² + 12²) = 13, and one that stands on its edge', () => {
    expect(gapBetweenSolids(box([0, 0, 0], [1, 1, 1]), box([4, 5, 13], [9, 9, 20]))).toBe(13)
    // Turned by 45° about z, half the diagonal of a 2 × 2 square is √2: from 5 to √2.
    const turned = boxSolid(
      { min: [-1, -1, 0], max: [1, 1, 1] },
      poseOf([Math.SQRT1_2, Math.SQRT1_2, 0], [-Math.SQRT1_2, Math.SQRT1_2, 0], [0, 0, 0]),
    )
    expect(gapBetweenSolids(turned, box([5, -3, 0], [6, 3, 1]))).toBeCloseTo(5 - Math.SQRT2, 9)
  })

  test('a prism over a rounded rectangle, and a capsule', () => {
    const rounded: Solid = {
      kind: 'prism',
      pose: IDENTITY,
      pieces: curvesOf(rectanglePath([0, 0], [40, 20], 5)),
      low: -6,
      high: 0,
    }
    // Corner’s middle (35, 15), radius 5; a 6 mm bore at (43, 21): √(8² + 6²) − 5 − 3 = 2.
    expect(gapBetweenSolids(rounded, cylinder([43, 21, 0], DOWN, 13, 3))).toBeCloseTo(2, 8)
    // Below it: 13 deep to −13; the capsule's line at z −10, radius 1.5: 10 − 6 − 1.5.
    expect(
      gapBetweenSolids(rounded, { kind: 'capsule', from: [-9, 9, -10], to: [60, 9, -10], radius: 1.5 }),
    ).toBeCloseTo(2.5, 9)
  })

  test('touching counts as meeting, and a micrometre apart does not', () => {
    const a = cylinder([0, 0, 0], [1, 0, 0], 30, 4)
    expect(gapBetweenSolids(a, cylinder([15, 4 + 3, 20], DOWN, 40, 3))).toBe(0)
    expect(gapBetweenSolids(a, cylinder([15, 4 + 3 + 0.001, 20], DOWN, 40, 3))).toBeCloseTo(0.001, 7)
  })
})

const coordinate = fc.integer({ min: -30, max: 30 })
const point = fc.tuple(coordinate, coordinate, coordinate)
/** Along the axes, leaning in a plane as pocket screws do, and any way. */
const axis = fc.oneof(
  fc.constantFrom<Vec3[]>([1, 0, 0], [0, -1, 0], [0, 0, -1], [0, Math.SQRT1_2, Math.SQRT1_2]),
  fc
    .tuple(fc.integer({ min: -9, max: 9 }), fc.integer({ min: -9, max: 9 }), fc.integer({ min: 1, max: 9 }))
    .map(([x, y, z]): Vec3 => {
      const long = Math.hypot(x, y, z)
      return [x / long, y / long, z / long]
    }),
)
const size = fc.integer({ min: 1, max: 30 })
const radius = fc.integer({ min: 1, max: 10 })
const solids: fc.Arbitrary<Solid> = fc.oneof(
  fc.tuple(point, axis, size, radius).map(([from, way, long, r]) => cylinder(from, way, long, r)),
  fc.tuple(point, axis, size, radius, radius).map(([from, way, long, r, s]) => frustum(from, way, long, r, s)),
  fc.tuple(point, axis, fc.tuple(size, size, size)).map(([from, z, max]) => {
    const [x, y, up] = z
    const side: Vec3 = Math.abs(up) < 0.6 ? [y, -x, 0] : [0, up, -y]
    const long = Math.hypot(...side)
    const first: Vec3 = [side[0] / long, side[1] / long, side[2] / long]
    const second: Vec3 = [
      z[1] * first[2] - z[2] * first[1],
      z[2] * first[0] - z[0] * first[2],
      z[0] * first[1] - z[1] * first[0],
    ]
    return boxSolid({ min: [0, 0, 0], max }, poseOf(first, second, from))
  }),
)

describe('any two solids', () => {
  test('agree with a search of its own over all points of the one', () => {
    fc.assert(
      fc.property(solids, solids, (a, b) => {
        const gap = gapBetweenSolids(a, b)
        expect(Math.abs(gap - nestedGap(a, b))).toBeLessThan(2e-6)
      }),
      { numRuns: 20 },
    )
  })

  test('either way round, and moved together, the gap is the same', () => {
    fc.assert(
      fc.property(solids, solids, point, (a, b, by) => {
        const gap = gapBetweenSolids(a, b)
        expect(Math.abs(gap - gapBetweenSolids(b, a))).toBeLessThan(1e-6)
        expect(Math.abs(gap - gapBetweenSolids(movedSolid(by, a), movedSolid(by, b)))).toBeLessThan(1e-6)
      }),
      { numRuns: 500 },
    )
  })

  test('a solid touches each side of the box around it, and none is outside', () => {
    fc.assert(
      fc.property(solids, (solid) => {
        const { min, max } = boundsOfSolid(solid)
        for (const k of [0, 1, 2] as const) {
          const slab = (from: number, to: number): Box => {
            const far = (value: number): Vec3 =>
              [0, 1, 2].map((i) => (i === k ? value : Math.sign(value - from + 1e-9) * 200)) as unknown as Vec3
            return {
              min: far(from).map((v, i) => (i === k ? v : -200)) as unknown as Vec3,
              max: far(to).map((v, i) => (i === k ? v : 200)) as unknown as Vec3,
            }
          }
          expect(gapBetweenSolids(solid, boxSolid(slab(max[k], max[k] + 5)))).toBeLessThan(1e-6)
          expect(gapBetweenSolids(solid, boxSolid(slab(max[k] + 1, max[k] + 5)))).toBeCloseTo(1, 6)
          expect(gapBetweenSolids(solid, boxSolid(slab(min[k] - 5, min[k] - 1)))).toBeCloseTo(1, 6)
        }
      }),
      { numRuns: 100 },
    )
  })
})

test('a circle as a convex prism is a cylinder', () => {
  const disc: Solid = { kind: 'prism', pose: IDENTITY, pieces: curvesOf(circlePath([10, 10], 4)), low: -13, high: 0 }
  const leaning = cylinder([20, 12, 0], [-0.6, 0, -0.8], 30, 3)
  expect(gapBetweenSolids(disc, leaning)).toBeCloseTo(gapBetweenSolids(cylinder([10, 10, 0], DOWN, 13, 4), leaning), 6)
})
