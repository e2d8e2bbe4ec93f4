import { describe, expect, test } from 'vitest'
import { tightSpots } from '../../src/checks/corners.ts'
import { circlePath, type PathVertex, rectanglePath, slotPath } from '../../src/geometry/index.ts'
import { built } from '../support/define.ts'

const vertices = (...points: [number, number][]): PathVertex[] => points.map((at) => ({ at, bulge: 0 }))

describe('what a round cutter leaves in a contour', () => {
  test('in a square corner 0.414 of its radius', () => {
    const spots = tightSpots(rectanglePath([0, 0], [100, 60], 0), 3)
    // 3 (√2 − 1) = 1.2426.
    expect(spots.map(({ left, turnDeg, radius }) => [left.toFixed(4), turnDeg.toFixed(3), radius])).toEqual(
      Array.from({ length: 4 }, () => ['1.2426', '90.000', 0]),
    )
  })

  test('nothing in round corners as wide as itself, less in those that are nearly', () => {
    expect(tightSpots(rectanglePath([0, 0], [100, 60], 3), 3).filter(({ left }) => left > 1e-9)).toEqual([])
    // (3 − 2) × 0.4142.
    const tight = tightSpots(rectanglePath([0, 0], [100, 60], 2), 3).filter(({ left }) => left > 1e-9)
    expect(tight.map(({ left }) => left.toFixed(4))).toEqual(['0.4142', '0.4142', '0.4142', '0.4142'])
    // The middle of each arc lies 2 (√2 − 1) from its corner: 2 − √2 = 0.5858 in along both axes.
    const corners = tight.map(({ at: [x, y] }) => [Math.min(x, 100 - x).toFixed(4), Math.min(y, 60 - y).toFixed(4)])
    expect(corners).toEqual(Array.from({ length: 4 }, () => ['0.5858', '0.5858']))
  })

  test('corners that stand out into the opening are no trouble', () => {
    // An L: five inner corners, and one that the cutter goes round.
    const path = vertices([0, 0], [80, 0], [80, 40], [40, 40], [40, 80], [0, 80])
    expect(tightSpots(path, 3).map(({ at }) => at.join(' '))).toEqual(['0 0', '80 0', '80 40', '40 80', '0 80'])
  })

  test('a slot narrower than the cutter turns back on itself', () => {
    const ends = tightSpots(slotPath([0, 0], [50, 0], 5), 3).filter(({ left }) => left > 1e-9)
    expect(ends.map(({ left, radius }) => [left, radius.toFixed(6)])).toEqual([
      [Number.POSITIVE_INFINITY, '2.500000'],
      [Number.POSITIVE_INFINITY, '2.500000'],
    ])
    expect(tightSpots(slotPath([0, 0], [50, 0], 6), 3).filter(({ left }) => left > 1e-9)).toEqual([])
    expect(tightSpots(circlePath([0, 0], 2), 3).filter(({ left }) => left === Number.POSITIVE_INFINITY)).toHaveLength(2)
  })
})

// T21 of the workshop's table: half the bit / √2: 1.123, 2.121, 2.245, 2.828, 4.490; here to hundredths.
test.each([
  [3.175, '1.12'],
  [6, '2.12'],
  [6.35, '2.25'],
  [8, '2.83'],
  [12.7, '4.49'],
])('the relief of a bit of %s mm stands %s mm in from both walls', (bit, offset) => {
  const { findings } = built(`
storyrod: 1
stock: { board: { thickness: 18, sheet: [2500, 1250] } }
modules:
  box:
    width: 600
    depth: 400
    carcase height: 700
    stock: board
    carcase: { back: none }
    openings: [{ panel: top, shape: path, svg: M0 0 H80 V60 H0 Z, unit: mm, from: centred }]
bits: [{ kind: straight, diameter: ${bit} }]
`)
  const corner = findings.find(({ rule }) => rule === 'cutter-corner')
  // Of a path of its own there is no corner radius to change.
  expect(corner?.change).toBeUndefined()
  expect(corner?.places).toHaveLength(4)
  expect(corner?.fix).toBe(
    `relieve each with the same bit, its middle ${offset} mm in from both walls, or square them with a chisel`,
  )
})
