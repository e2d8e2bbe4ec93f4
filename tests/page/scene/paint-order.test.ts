import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { coversPoint, paintOrder } from '../../../src/page/scene/paint-order.ts'
import { sampleStems } from '../../support/samples.ts'
import { type Box, floorBoxesOf } from './boxes.ts'
import { laidSample } from './laid.ts'

/** A box with corners in whole mm. */
const anyBox: fc.Arbitrary<Box> = fc
  .tuple(
    fc.tuple(fc.integer({ min: 0, max: 8 }), fc.integer({ min: 0, max: 8 }), fc.integer({ min: 0, max: 8 })),
    fc.tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 1, max: 5 }), fc.integer({ min: 1, max: 5 })),
  )
  .map(([[x, y, z], [a, b, c]]) => ({ min: [x, y, z], max: [x + a, y + b, z + c] }))

const shareRoom = (a: Box, b: Box): boolean =>
  [0, 1, 2].every((k) => (a.min[k] ?? 0) < (b.max[k] ?? 0) && (b.min[k] ?? 0) < (a.max[k] ?? 0))

/** Boxes of which no two share any room. */
const apartBoxes = fc
  .array(anyBox, { minLength: 2, maxLength: 9 })
  .map((boxes) => boxes.filter((box, k) => !boxes.slice(0, k).some((other) => shareRoom(box, other))))

/** Which boxes a line of sight goes through from a point on, found by going along it in small steps. */
function metOnTheWay(boxes: readonly Box[], [x, y, z]: readonly [number, number, number]): number[] {
  const met = new Set<number>()
  for (let step = 0; step < 14; step += 0.125) {
    // Toward the eye: to the front, to the left and up.
    const at = [x - step, y - step, z + step]
    for (const [k, { min, max }] of boxes.entries()) {
      if (at.every((value, n) => value > (min[n] ?? 0) && value < (max[n] ?? 0))) met.add(k)
    }
  }
  return [...met]
}

/** Points within a box that lie on no plane of any box. */
function pointsIn({ min, max }: Box): [number, number, number][] {
  const shares = [0.07, 0.31, 0.52, 0.74, 0.93]
  return shares.flatMap((a, k) =>
    shares.map((b, n): [number, number, number] => [
      min[0] + (max[0] - min[0]) * a,
      min[1] + (max[1] - min[1]) * b,
      min[2] + (max[2] - min[2]) * (shares[(k + 2 * n) % shares.length] ?? 0.5),
    ]),
  )
}

describe('painting order', () => {
  it('paints what is nearer later, whichever way lines of sight go', () => {
    fc.assert(
      fc.property(apartBoxes, (boxes) => {
        const { order, rings } = paintOrder(boxes)
        expect([...order].sort((a, b) => a - b)).toEqual(boxes.map((_, k) => k))
        fc.pre(rings === 0)
        const place = new Map(order.map((k, n) => [k, n]))
        boxes.forEach((box, k) => {
          for (const point of pointsIn(box)) {
            for (const near of metOnTheWay(boxes, point)) {
              expect(place.get(near), `${k} before ${near}`).toBeGreaterThanOrEqual(place.get(k) ?? -1)
            }
          }
        })
      }),
      { numRuns: 150 },
    )
  })

  it('knows which boxes lie before a point', () => {
    fc.assert(
      fc.property(apartBoxes, (boxes) => {
        const { covers } = paintOrder(boxes)
        boxes.forEach((box, k) => {
          for (const point of pointsIn(box)) {
            const met = metOnTheWay(boxes, point).filter((near) => near !== k)
            const said = (covers[k] ?? []).filter((near) => {
              const other = boxes[near]
              return other !== undefined && coversPoint(other, point)
            })
            // Going in steps one can miss the corner of a box, but finds no box that is not there.
            expect(said).toEqual(expect.arrayContaining(met))
          }
        })
      }),
      { numRuns: 60 },
    )
  })

  it('paints every board once where three lie over each other in a ring', () => {
    // Each of three bars lies before the next: a along x lies above b, b along y stands before c … as a triangle of three sticks.
    const boxes: Box[] = [
      { min: [0, 4, 6], max: [10, 5, 7] },
      { min: [4, 0, 4], max: [5, 10, 5] },
      { min: [6, 6, 0], max: [7, 7, 10] },
    ]
    expect([...paintOrder(boxes).order].sort()).toEqual([0, 1, 2])
  })

  it('finds no ring in the samples, whole or turned', () => {
    for (const stem of sampleStems) expect(paintOrder(floorBoxesOf(laidSample(stem))).rings).toBe(0)
  })
})
