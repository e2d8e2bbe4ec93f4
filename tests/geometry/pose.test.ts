import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  compose,
  determinant,
  MINUS_X,
  MINUS_Y,
  MINUS_Z,
  type Pose,
  place,
  placeBack,
  placedBox,
  poseOf,
  roundMm,
  same,
  turn,
  turnBack,
  type Vec3,
  X,
  Y,
  Z,
} from '../../src/geometry/index.ts'

const AXES: readonly Vec3[] = [X, Y, Z, MINUS_X, MINUS_Y, MINUS_Z]
const point = fc.tuple(
  ...Array.from({ length: 3 }, () => fc.integer({ min: -3000, max: 3000 })),
) as unknown as fc.Arbitrary<Vec3>

/** Quarter turns about any axis: x and y any two directions square to each other. */
const pose: fc.Arbitrary<Pose> = fc
  .tuple(fc.constantFrom(...AXES), fc.constantFrom(...AXES), point)
  .filter(([x, y]) => x[0] * y[0] + x[1] * y[1] + x[2] * y[2] === 0)
  .map(([x, y, origin]) => poseOf(x, y, origin))

const near = (a: Vec3, b: Vec3): boolean => a.every((value, k) => same(value, b[k] ?? Number.NaN))

describe('poses', () => {
  test('by hand: the left side of a module, its length hanging down', () => {
    // Face A at X 18 looks right; x runs down from the upper end at Z 700, y to the back from Y 20.
    const left = poseOf(MINUS_Z, Y, [18, 20, 700])
    expect(near(left.z, [1, 0, 0])).toBe(true)
    // A hole 37 from the front edge and 96 below the upper end: (18, 57, 604).
    expect(place(left, [96, 37, 0])).toEqual([18, 57, 604])
    // The far face, 18 behind face A, lies at X 0.
    expect(place(left, [0, 0, -18])).toEqual([0, 20, 700])
    expect(placedBox(left, { min: [0, 0, -18], max: [700, 480, 0] })).toEqual({ min: [0, 20, 0], max: [18, 500, 700] })
  })

  test('are proper, whatever the quarter turn', () => {
    fc.assert(fc.property(pose, (one) => same(determinant(one), 1)))
  })

  test('there and back again is the same point and the same direction', () => {
    fc.assert(
      fc.property(
        pose,
        point,
        (one, p) => near(placeBack(one, place(one, p)), p) && near(turnBack(one, turn(one, p)), p),
      ),
    )
  })

  test('composed is one after the other', () => {
    fc.assert(fc.property(pose, pose, point, (a, b, p) => near(place(compose(a, b), p), place(a, place(b, p)))))
  })
})

describe('rounding', () => {
  test('to 0.001, never −0, never a number that is none', () => {
    expect(Object.is(roundMm(-0.0001), 0)).toBe(true)
    expect(roundMm(12.34567)).toBe(12.346)
    expect(() => roundMm(Number.NaN)).toThrow('not a finite length: NaN')
    expect(() => roundMm(Number.POSITIVE_INFINITY)).toThrow('not a finite length: Infinity')
  })
})
