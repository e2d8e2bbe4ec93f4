import { describe, expect, test } from 'vitest'
import {
  balance,
  distanceFor,
  fromEdge,
  tipAngle,
  tippingEdges,
  tippingPush,
  wheelLoad,
} from '../../../src/checks/loads/index.ts'

const contact = (x: number, y: number, inward = 0) => ({ at: [x, y] as const, inward })

describe('tipping', () => {
  test('half a base of 250 and a middle of mass 450 high: 29.05°', () => {
    expect(tipAngle(250, 450)).toBeCloseTo(29.05, 2)
    expect(distanceFor(29.0546, 450)).toBeCloseTo(250, 2)
  })

  test('15° is 0.27 of the height', () => {
    expect(distanceFor(15, 1)).toBeCloseTo(0.268, 3)
  })

  test('beyond the edge the angle is below 0', () => {
    expect(tipAngle(-10, 500)).toBeLessThan(0)
  })

  test('a push at twice the half base tips with half the mass', () => {
    expect(tippingPush(40, 300, 600)).toBe(20)
  })

  test('edges are those of the hull, counter-clockwise; what lies within it does not count', () => {
    const edges = tippingEdges([contact(0, 0), contact(600, 0), contact(300, 200), contact(600, 500), contact(0, 500)])
    expect(edges.map(({ from, to }) => [...from, ...to])).toEqual([
      [0, 0, 600, 0],
      [600, 0, 600, 500],
      [600, 500, 0, 500],
      [0, 500, 0, 0],
    ])
    expect(edges.map((edge) => fromEdge(edge, [200, 100]))).toEqual([100, 400, 400, 200])
  })

  test('an L falls over the line between its tips', () => {
    const corners = [
      contact(0, 0),
      contact(1000, 0),
      contact(1000, 300),
      contact(300, 300),
      contact(300, 1000),
      contact(0, 1000),
    ]
    // The edge from (1000, 300) to (300, 1000): the line x + y = 1300; (500, 500) lies 300 / √2 inside.
    const edge = tippingEdges(corners).find(({ from, to }) => from[0] === 1000 && to[0] === 300)
    expect(edge && fromEdge(edge, [500, 500])).toBeCloseTo(300 / Math.SQRT2, 9)
  })

  test('wheels that swivel inward make the base smaller', () => {
    const edges = tippingEdges([contact(0, 0, 30), contact(600, 0, 30), contact(600, 500), contact(0, 500)])
    expect(edges.map((edge) => fromEdge(edge, [300, 250]))).toEqual([220, 270, 250, 270])
  })

  test('points on one line are no base', () => {
    expect(tippingEdges([contact(0, 0), contact(100, 0), contact(200, 0)])).toEqual([])
  })
})

describe('load on each wheel', () => {
  test('tare 60 and load 240 on four: three carry 100 each; with a factor 1.5 and 2', () => {
    expect(wheelLoad(60, 240, 4)).toBe(100)
    expect(wheelLoad(60, 240, 4, 1.5)).toBe(112.5)
    expect(wheelLoad(60, 240, 4, 2)).toBe(150)
  })
})

describe('balance about an axle', () => {
  const axle = { y: 250, z: 800 }

  test('equal moments above and below leave nothing to hold', () => {
    const bodies = [
      { mass: 20, at: [0, 250, 950] as const },
      { mass: 30, at: [0, 250, 700] as const },
    ]
    expect(balance(bodies, axle, 250)).toEqual({ upward: 0, atEdge: 0 })
  })

  test('off the middle it pulls more: 3 and 4 make 5', () => {
    // 10 kg, 40 above and 30 behind: hypot(400, 300) = 500 kg mm, 2 kg at 250 mm.
    expect(balance([{ mass: 10, at: [0, 280, 840] }], axle, 250)).toEqual({ upward: 400, atEdge: 2 })
  })
})
