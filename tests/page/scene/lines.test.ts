import { describe, expect, it } from 'vitest'
import { poseOf } from '../../../src/geometry/index.ts'
import type { PanelToScene } from '../../../src/page/scene/index.ts'
import { circle, closedPath, ellipse, ellipseOf, polygon, strokes } from '../../../src/page/scene/lines.ts'
import { seen, throughPose } from '../../../src/page/scene/plane.ts'

describe('lines of a scene', () => {
  it('are rounded to 0.001 mm, without a minus before nothing', () => {
    expect(
      polygon([
        [0, -0.0001],
        [10.00049, 0],
        [1 / 3, 2.5],
      ]),
    ).toBe('M0 0L10 0L0.333 2.5z')
    expect(
      strokes([
        [
          [0, 0],
          [1, 2],
        ],
        [
          [3, 4],
          [5, 6],
        ],
      ]),
    ).toBe('M0 0L1 2M3 4L5 6')
  })

  it('refuse what is no number', () => {
    expect(() => polygon([[Number.NaN, 0]])).toThrow('not a finite length: NaN')
  })

  it('draw a circle as two half circles from its left', () => {
    expect(circle([10, 20], 5)).toBe('M5 20a5 5 0 1 0 10 0a5 5 0 1 0 -10 0z')
  })

  it('draw arcs of a face to the left of the way, and mirrored on the far face', () => {
    // A half circle, counter-clockwise on the panel, from (0, 0) to (10, 0): on a drawing whose y runs down it bends downward,
    // on the panel, seen with y up, its arc lies below as well: against the way in which SVG turns its arcs.
    const path = [
      { at: [0, 0], bulge: 1 },
      { at: [10, 0], bulge: 0 },
    ] as const
    const faceA: PanelToScene = [1, 0, 0, 0, 0, -1, 0, 100]
    const faceB: PanelToScene = [-1, 0, 0, 200, 0, -1, 0, 100]
    expect(closedPath(faceA, path, 0)).toBe('M0 100A5 5 0 0 0 10 100L0 100z')
    expect(closedPath(faceB, path, 0)).toBe('M200 100A5 5 0 0 1 190 100L200 100z')
  })
})

describe('a circle at a slant', () => {
  const cos30 = Math.sqrt(3) / 2

  it('in the isometric view is √1.5 wide and √0.5 high', () => {
    // A level circle: x goes to (cos 30°, −1/2), y to (−cos 30°, −1/2). The diagonal x − y is drawn √3 long where it is √2, all
    // of it level; x + y is 1 long where it is √2.
    const top = ellipseOf([cos30, -0.5], [-cos30, -0.5])
    expect(top.long).toBeCloseTo(Math.sqrt(1.5), 12)
    expect(top.short).toBeCloseTo(Math.sqrt(0.5), 12)
    expect(Math.sin(top.turn)).toBeCloseTo(0, 12)
    // On a front face (x and z) the longer axis leans by 60 degrees against the level: square to y, which is drawn at 30.
    const front = ellipseOf([cos30, -0.5], [0, -1])
    expect(front.long).toBeCloseTo(Math.sqrt(1.5), 12)
    expect(Math.abs(Math.tan(front.turn))).toBeCloseTo(Math.tan(Math.PI / 3), 9)
  })

  it('seen from its edge is a stroke', () => {
    expect(ellipse([10, 10], { long: 4, short: 0, turn: Math.PI / 2 })).toBe('M10 6l0 8')
  })
})

describe('frames', () => {
  it('take a point through the pose of its panel', () => {
    // The panel's x is the module's z, its y the module's y, its origin at (18, 20, 0): (100, 30, −5) is at (18 − −5·−1 …).
    // z = x × y of the pose: (0, 0, 1) × (0, 1, 0) = (−1, 0, 0). So the point lies at (18 + 5, 20 + 30, 100).
    const pose = poseOf([0, 0, 1], [0, 1, 0], [18, 20, 0])
    const front: PanelToScene = [1, 0, 0, 0, 0, 0, -1, 720]
    expect(seen(throughPose(front, pose), [100, 30, -5])).toEqual([23, 620])
  })
})
