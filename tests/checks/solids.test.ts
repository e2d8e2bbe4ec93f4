import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Cylinder, cylindersOf, gapBetween } from '../../src/checks/solids.ts'
import type { Vec3 } from '../../src/geometry/index.ts'

const cylinder = (from: Vec3, axis: Vec3, length: number, radius: number): Cylinder => ({ from, axis, length, radius })

/**
 * A hundredth of the thinnest wall that a rule judges, 3 mm. Where curved surfaces barely touch, after k rounds of
 * projecting to and fro something like R / 2k remains: 0.0025 for 10 mm and 2000 rounds, and up to 0.011 at the rims.
 */
const CLOSE_MM = 0.03

describe('distance between solid cylinders', () => {
  test('side by side: between the axes, less both radii', () => {
    expect(gapBetween(cylinder([0, 0, 0], [0, 0, -1], 13, 2.5), cylinder([32, 0, 0], [0, 0, -1], 13, 2.5))).toBe(27)
  })

  test('from both faces of an 18 mm board, 7 and 7 deep: 4 mm between the ends', () => {
    const a = cylinder([0, 0, 0], [0, 0, -1], 7, 2.5)
    expect(gapBetween(a, cylinder([0, 0, -18], [0, 0, 1], 7, 2.5))).toBeCloseTo(4, 9)
    // Set 8 aside: 8 − 5 = 3 across and 4 along: 5 by Pythagoras.
    expect(gapBetween(a, cylinder([8, 0, -18], [0, 0, 1], 7, 2.5))).toBeCloseTo(5, 9)
  })

  test('a bore in the face above a pilot in the edge', () => {
    // Pilot along x at z −9, radius 2.5: its upper side at −6.5. A 5 mm deep bore ends at −5: 1.5 between.
    const pilot = cylinder([0, 20, -9], [1, 0, 0], 35, 2.5)
    expect(gapBetween(cylinder([20, 20, 0], [0, 0, -1], 5, 2.5), pilot)).toBeCloseTo(1.5, 6)
    // 6.5 deep just touches; 9 deep runs into it.
    expect(gapBetween(cylinder([20, 20, 0], [0, 0, -1], 9, 2.5), pilot)).toBe(0)
    // 13 deep, but 40 from the edge: the pilot ends at 35, the bore begins at 37.5.
    expect(gapBetween(cylinder([40, 20, 0], [0, 0, -1], 13, 2.5), pilot)).toBeCloseTo(2.5, 6)
    // Beside it: 8 from axis to axis, less both radii.
    expect(gapBetween(cylinder([20, 28, 0], [0, 0, -1], 13, 2.5), pilot)).toBeCloseTo(3, 6)
  })

  test('agrees with the least distance between points spread over both solids', () => {
    const axis = fc.constantFrom<Vec3[]>([1, 0, 0], [0, 1, 0], [0, 0, 1], [-1, 0, 0], [0, Math.SQRT1_2, Math.SQRT1_2])
    const any = fc.record({
      from: fc.tuple(
        fc.integer({ min: -30, max: 30 }),
        fc.integer({ min: -30, max: 30 }),
        fc.integer({ min: -30, max: 30 }),
      ),
      axis,
      length: fc.integer({ min: 2, max: 30 }),
      radius: fc.integer({ min: 1, max: 10 }),
    })
    fc.assert(
      fc.property(any, any, (a, b) => {
        const gap = gapBetween(a, b)
        const sampled = Math.min(...cloud(a).map((p) => pointGap(p, b)))
        // Points of the cloud are at most 1.6 mm apart, and none is nearer than the true distance.
        expect(gap).toBeLessThanOrEqual(sampled + CLOSE_MM)
        expect(sampled - gap).toBeLessThan(1.6)
        expect(Math.abs(gap - gapBetween(b, a))).toBeLessThan(CLOSE_MM)
      }),
      { numRuns: 300 },
    )
  })
})

/** Points on and in a cylinder, about 1.5 mm apart. */
function cloud(c: Cylinder): Vec3[] {
  const u: Vec3 = Math.abs(c.axis[0]) > 0.5 ? [0, 1, 0] : [1, 0, 0]
  const v: Vec3 = [
    c.axis[1] * u[2] - c.axis[2] * u[1],
    c.axis[2] * u[0] - c.axis[0] * u[2],
    c.axis[0] * u[1] - c.axis[1] * u[0],
  ]
  const points: Vec3[] = []
  for (let k = 0; k <= Math.ceil(c.length); k += 1) {
    const along = Math.min(k, c.length)
    for (let r = 0; r <= c.radius; r += 1) {
      const turns = Math.max(1, Math.ceil(2 * Math.PI * r))
      for (let n = 0; n < turns; n += 1) {
        const cos = Math.cos((2 * Math.PI * n) / turns) * r
        const sin = Math.sin((2 * Math.PI * n) / turns) * r
        points.push(
          [0, 1, 2].map(
            (i) => (c.from[i] ?? 0) + (c.axis[i] ?? 0) * along + (u[i] ?? 0) * cos + (v[i] ?? 0) * sin,
          ) as unknown as Vec3,
        )
      }
    }
  }
  return points
}

/** Exact distance of a point from a solid cylinder. */
function pointGap(p: Vec3, c: Cylinder): number {
  const rel = [p[0] - c.from[0], p[1] - c.from[1], p[2] - c.from[2]] as const
  const along = rel[0] * c.axis[0] + rel[1] * c.axis[1] + rel[2] * c.axis[2]
  const radial = Math.sqrt(Math.max(0, rel[0] ** 2 + rel[1] ** 2 + rel[2] ** 2 - along ** 2))
  return Math.hypot(Math.max(0, radial - c.radius), Math.max(0, -along, along - c.length))
}

describe('what a bore takes away', () => {
  const bore = {
    id: 'bore-1',
    surface: 'A',
    at: [0, 0, 0],
    axis: [0, 0, -1],
    diameter: 5,
    depth: 18,
    through: true,
    purpose: 'screw',
    uses: [],
  } as const

  test('a 90° countersink of 9 on a 5 hole is 2 deep', () => {
    // (9 − 5) / 2 / tan 45° = 2.
    expect(cylindersOf({ ...bore, sink: { shape: 'cone', diameter: 9, angleDeg: 90 } })[1]).toMatchObject({
      radius: 4.5,
    })
    expect(cylindersOf({ ...bore, sink: { shape: 'cone', diameter: 9, angleDeg: 90 } })[1]?.length).toBeCloseTo(2, 9)
  })

  test('a counterbore is as deep as it says', () => {
    expect(cylindersOf({ ...bore, sink: { shape: 'counterbore', diameter: 10, depth: 5 } })[1]).toMatchObject({
      radius: 5,
      length: 5,
    })
  })
})
