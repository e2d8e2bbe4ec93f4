import { describe, expect, test } from 'vitest'
import { solidsOf, worksOf } from '../../src/checks/works.ts'
import { boundsOfSolid, boxSolid, cylinder, gapBetweenSolids, type Solid } from '../../src/geometry/index.ts'
import { panelOf } from '../drawing/fixture.ts'

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

  const solidAt = (k: number, solids: readonly Solid[]): Solid =>
    solids[k] ?? { ...cylinder([0, 0, 0], [0, 0, 1], 0, 0) }

  test('a 90° countersink of 9 on a 5 hole is a cone 2 deep, from a radius of 4.5 to 2.5', () => {
    // (9 − 5) / 2 / tan 45° = 2.
    const cone = solidAt(1, solidsOf({ ...bore, sink: { shape: 'cone', diameter: 9, angleDeg: 90 } }))
    const { min, max } = boundsOfSolid(cone)
    expect([...min, ...max].map((value) => Math.round(value * 1e6) / 1e6 + 0)).toEqual([-4.5, -4.5, -2, 4.5, 4.5, 0])
    // Its slant, 45°: from (4.5, 0) to (2.5, −2); a wall at x = 5 from −2 down is 5 − 2.5 away at −2 and nearest to the slant
    // at (5, −2): (5 + 2 − 4.5) / √2 = 1.768.
    expect(gapBetweenSolids(cone, boxSolid({ min: [5, -9, -9], max: [9, 9, -2] }))).toBeCloseTo(2.5 / Math.SQRT2, 8)
  })

  test('a counterbore is as deep as it says', () => {
    expect(solidsOf({ ...bore, sink: { shape: 'counterbore', diameter: 10, depth: 5 } })[1]).toMatchObject({
      radius: 5,
      length: 5,
    })
  })

  test('a bore that leans at 30° has a mouth twice as long as it is wide', () => {
    // 9.5 wide; 9.5 / sin 30° = 19 along x, and nothing of it stands over the face.
    const axis = [Math.cos(Math.PI / 6), 0, -Math.sin(Math.PI / 6)] as const
    const { min, max } = boundsOfSolid(
      solidAt(0, solidsOf({ ...bore, diameter: 9.5, depth: 30, axis, leanDeg: 30, through: false })),
    )
    expect(min[0]).toBeCloseTo(-9.5, 9)
    expect([min[1], max[1]]).toEqual([-4.75, 4.75])
    expect(max[2]).toBeCloseTo(0, 9)
    // End of the axis: 30 × sin 30° = 15 deep, and the rim 4.75 × cos 30° = 4.114 deeper.
    expect(min[2]).toBeCloseTo(-15 - 4.75 * Math.cos(Math.PI / 6), 9)
  })
})

describe('what a groove takes away', () => {
  const groove = {
    id: 'groove-1',
    kind: 'groove',
    face: 'A',
    min: [0, 40],
    max: [100, 50],
    depth: 6,
    roundEnds: true,
    purpose: 'groove',
  } as const
  const grooved = (more: object) => panelOf({ grooves: [{ ...groove, ...more }] })
  /** Distance to a point on the face. */
  const off = (more: object, x: number, y: number): number => {
    const [work] = worksOf(grooved(more))
    return gapBetweenSolids(solidAtFirst(work?.solids), boxSolid({ min: [x, y, -1], max: [x, y, -1] }))
  }
  const solidAtFirst = (solids: readonly Solid[] | undefined): Solid =>
    solids?.[0] ?? cylinder([0, 0, 0], [0, 0, 1], 0, 0)

  test('its stopped end is round, the one at the edge square', () => {
    // About (95, 45) with radius 5: from (100, 50) √50 − 5 = 2.071.
    expect(off({}, 100, 50)).toBeCloseTo(Math.sqrt(50) - 5, 6)
    expect(off({}, 0, 50)).toBe(0)
    expect(off({ roundEnds: false }, 100, 50)).toBe(0)
    expect(off({ min: [20, 40] }, 20, 50)).toBeCloseTo(Math.sqrt(50) - 5, 6)
  })

  test('the same along y', () => {
    const upright = { min: [40, 0], max: [50, 100] }
    expect(off(upright, 50, 100)).toBeCloseTo(Math.sqrt(50) - 5, 6)
    expect(off(upright, 50, 0)).toBe(0)
    expect(off({ ...upright, min: [40, 30] }, 40, 30)).toBeCloseTo(Math.sqrt(50) - 5, 6)
  })
})
