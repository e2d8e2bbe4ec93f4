import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { groovePrism, prismOf } from '../../src/checks/works.ts'
import {
  type ClosedPath,
  type Cylinder,
  circlePath,
  gapBetweenPrisms,
  gapToPrism,
  holdsPoint,
  type Prism,
  pointsAlong,
  rectanglePath,
  slotPath,
  type Vec3,
} from '../../src/geometry/index.ts'
import { panelOf } from '../drawing/fixture.ts'
import { built, ROUND_STOCK } from '../support/define.ts'

/** Left side of a bench: 720 × 534 × 18, pin columns 37 from the front and from the inside of the back, 32 apart. */
const findings = (openings: string): string[] =>
  built(`${ROUND_STOCK}
modules:
  bench:
    width: 800
    depth: 540
    carcase height: 720
    stock: board
    carcase: { back: { sits: applied, stock: thin } }
    inside: { loose shelves: 1 }
    openings:
${openings}
`)
    .findings.filter(({ rule }) => rule.startsWith('cutout'))
    .map(({ severity, rule, message }) => `${severity} ${rule}: ${message}`)

const round = (diameter: number, from: string, more = ''): string =>
  `      - { panel: left side, shape: round, diameter: ${diameter}, from: { ${from} }, for: port${more} }`

describe('an opening', () => {
  test('in the middle of nowhere is no finding', () => {
    expect(findings(round(60, 'front: 267, bottom: 300'))).toEqual([])
  })

  test('over the edge, at it and near it', () => {
    // Radius 30, its middle 25, 30, 35 and 40 from the front edge: 5 over, touching, 5 left, 10 left. Clear of the pins: high up.
    expect(
      findings(round(60, 'front: 25, top: 200').replace('left side', 'bottom').replace('top: 200', 'left: 200')),
    ).toEqual([
      'stop cutout-leaves-panel: bench, bottom: the port, its middle 25 from front and 200 from left, reaches 5 mm over the front edge',
    ])
    const at = (mm: number): string[] =>
      findings(`      - { panel: bottom, shape: round, diameter: 60, from: { front: ${mm}, left: 200 }, for: port }`)
    expect(at(30)).toEqual([
      'stop cutout-leaves-panel: bench, bottom: the port, its middle 30 from front and 200 from left, touches the front edge',
    ])
    expect(at(35)).toEqual([
      'warn cutout-near-edge: bench, bottom: the port, its middle 35 from front and 200 from left, leaves only 5 mm of wood to the front edge',
    ])
    expect(at(40)).toEqual([])
  })

  test('beside a shelf pin: 37 from the front, 5 in diameter', () => {
    // The pin at 37 from the front, 352 from the bottom (11 × 32): its rim reaches to 39.5. A port of 60 with its middle
    // 352 up and 37 + 2.5 + 30 + wall from the front.
    const wall = (mm: number): string[] => findings(round(60, `front: ${69.5 + mm}, bottom: 352`))
    expect(wall(5)).toEqual([])
    expect(wall(4)).toEqual([
      'warn cutout-near: bench, left side: the port, its middle 73.5 from front and 352 from bottom, is only 4 mm from the shelf pin 5 × 13, 37 from front and 352 from bottom in face A (inside)',
    ])
    expect(wall(2.9)[0]).toMatch(/^stop cutout-near: .* is only 2.9 mm from the shelf pin/)
    expect(wall(-1)[0]).toMatch(/^stop cutout-meets: .* runs into the shelf pin 5 × 13/)
  })

  test('a recess in the other face lies behind the pins: 18 − 13 = 5 of wood', () => {
    const recess = (depth: number): string[] =>
      findings(round(60, 'front: 37, bottom: 352', `, depth: ${depth}, face: outside`)).filter(
        (one) => !one.includes('edge'),
      )
    // The recess 60 wide covers pins at 352 and 352 ± 32 half. 1 deep leaves 4, 3 deep leaves 2.
    expect(recess(0.5)[0]).toMatch(/^warn cutout-near: .* is only 4.5 mm from the shelf pin/)
    expect(recess(3)[0]).toMatch(/^stop cutout-near: .* is only 2 mm from the shelf pin/)
    expect(recess(6)[0]).toMatch(/^stop cutout-meets/)
  })

  test('a recess leaves a skin', () => {
    const recess = (depth: number): string[] =>
      findings(round(60, 'front: 267, bottom: 300', `, depth: ${depth}, face: outside`))
    expect(recess(15)).toEqual([])
    expect(recess(15.5)).toEqual([
      'warn cutout-skin: bench, left side: the port, its middle 267 from front and 300 from bottom in face B (outside), leaves only 2.5 mm of wood behind it',
    ])
    expect(recess(16.5)[0]).toMatch(/^stop cutout-skin: .* leaves only 1.5 mm/)
    expect(recess(18)[0]).toMatch(/^stop cutout-skin: .* comes out of the far face/)
    expect(recess(40)[0]).toMatch(/^stop cutout-skin/)
  })

  test('beside another: 60 and 60, middles 64 apart leave 4; from both faces 18 − 6 − 8 = 4', () => {
    const pair = (apart: number): string[] =>
      findings(`${round(60, 'front: 267, bottom: 300')}\n${round(60, `front: 267, bottom: ${300 + apart}`)}`)
    expect(pair(65)).toEqual([])
    expect(pair(64)[0]).toMatch(
      /^warn cutout-near: .* is only 4 mm from the port, its middle 267 from front and 364 from bottom/,
    )
    expect(pair(50)[0]).toMatch(/^stop cutout-meets/)
    // One opening inside another: the second is in the air.
    expect(findings(`${round(60, 'front: 267, bottom: 300')}\n${round(20, 'front: 267, bottom: 300')}`)[0]).toMatch(
      /^stop cutout-meets/,
    )
    const faces = findings(
      `${round(60, 'front: 267, bottom: 300', ', depth: 6, face: inside')}\n${round(60, 'front: 267, bottom: 300', ', depth: 8, face: outside')}`,
    )
    expect(faces[0]).toMatch(/^warn cutout-near: .* is only 4 mm from/)
  })

  test('with a ledge round it is allowed: the deeper one inside, on the same face', () => {
    const ledge = (inner: string, outer: string): string[] =>
      findings(`${round(100, 'front: 267, bottom: 300', outer)}\n${round(60, 'front: 267, bottom: 300', inner)}`)
    expect(ledge('', ', depth: 6, face: inside')).toEqual([])
    expect(ledge(', depth: 10, face: inside', ', depth: 6, face: inside')).toEqual([])
    expect(ledge(', depth: 4, face: inside', ', depth: 6, face: inside')[0]).toMatch(/^stop cutout-meets/)
    expect(ledge(', depth: 13, face: outside', ', depth: 6, face: inside')[0]).toMatch(/^stop cutout-meets/)
    // Half in, half out.
    expect(
      findings(
        `${round(100, 'front: 267, bottom: 300', ', depth: 6, face: inside')}\n${round(60, 'front: 307, bottom: 300')}`,
      )[0],
    ).toMatch(/^stop cutout-meets/)
  })

  test('beside a groove and beside dowels and screws in the edges', () => {
    const bench = built(`${ROUND_STOCK}
modules:
  bench:
    width: 800
    depth: 540
    carcase height: 720
    stock: board
    carcase: { joint: dowel, back: { sits: grooved, stock: thin, groove setback: 20 } }
    openings:
      - { panel: left side, shape: rectangle, width: 100, height: 60, from: { back: 78, bottom: 300 }, for: port }
      - { panel: bottom, shape: rectangle, width: 60, height: 60, from: { left: 54, front: 50 }, for: hatch }
`)
    const found = bench.findings.filter(({ rule }) => rule.startsWith('cutout'))
    // The groove is 6.2 wide from 20 to 26.2 before the back edge; the port begins 78 − 50 = 28 before it: 1.8 between.
    expect(found.find(({ rule }) => rule === 'cutout-near')?.message).toBe(
      'bench, left side: the port, its middle 78 from back and 300 from bottom, is only 1.8 mm from the groove for the back'.replace(
        '78 from back',
        '462 from front',
      ),
    )
    // A dowel 50 from the front goes 21 into the left end of the bottom; the hatch begins 54 − 30 = 24 in: 3 between.
    expect(found.find(({ message }) => message.includes('hatch'))?.message).toMatch(
      /is only 3 mm from the dowel 8 × 21/,
    )
  })
})

describe('gaps to prisms, against points all over', () => {
  const shapes: fc.Arbitrary<ClosedPath> = fc.constantFrom(
    circlePath([50, 40], 20),
    rectanglePath([30, 25], [70, 60], 8),
    slotPath([35, 40], [65, 55], 14),
  )
  const span = fc
    .tuple(fc.integer({ min: 0, max: 12 }), fc.integer({ min: 3, max: 6 }))
    .map(([top, deep]): [number, number] => [-top - deep, -top])
  const prism = fc.record({ path: shapes, span }).map(({ path, span: [low, high] }): Prism => ({ path, low, high }))
  const cylinder = fc
    .record({
      x: fc.integer({ min: 0, max: 100 }),
      y: fc.integer({ min: 0, max: 80 }),
      z: fc.integer({ min: -15, max: -3 }),
      radius: fc.integer({ min: 1, max: 4 }),
      length: fc.integer({ min: 5, max: 30 }),
      way: fc.constantFrom<Vec3>(
        [0, 0, -1],
        [0, 0, 1],
        [1, 0, 0],
        [0, 1, 0],
        [-1, 0, 0],
        [Math.cos(0.26), 0, -Math.sin(0.26)],
      ),
    })
    .map(
      ({ x, y, z, radius, length, way }): Cylinder => ({
        kind: 'cylinder',
        from: Math.abs(way[2]) === 1 ? [x, y, way[2] < 0 ? 0 : -18] : [x, y, z],
        axis: way,
        length: Math.abs(way[2]) === 1 ? Math.min(length, 13) : length,
        radius,
      }),
    )

  /** Least distance from points all over a cylinder's skin and inside to the prism, by points along its contour. */
  function sampled({ from, axis, length, radius }: Cylinder, { path, low, high }: Prism): number {
    const contour = pointsAlong(path, 0.5)
    const side: Vec3 = Math.abs(axis[0]) < 0.5 ? [1, 0, 0] : [0, 1, 0]
    const other: Vec3 = [
      axis[1] * side[2] - axis[2] * side[1],
      axis[2] * side[0] - axis[0] * side[2],
      axis[0] * side[1] - axis[1] * side[0],
    ]
    let least = Number.POSITIVE_INFINITY
    for (let a = 0; a <= 40; a += 1) {
      for (let b = 0; b < 24; b += 1) {
        for (const share of [0, 0.5, 1]) {
          const [c, s] = [Math.cos((b * Math.PI) / 12) * radius * share, Math.sin((b * Math.PI) / 12) * radius * share]
          const at = ([0, 1, 2] as const).map((k) => from[k] + (axis[k] * length * a) / 40 + side[k] * c + other[k] * s)
          const [x = 0, y = 0, z = 0] = at
          const flat = holdsPoint(path, [x, y])
            ? 0
            : contour.reduce((best, [u, v]) => Math.min(best, Math.hypot(x - u, y - v)), 1e9)
          least = Math.min(least, Math.hypot(flat, Math.max(0, z - high, low - z)))
        }
      }
    }
    return least
  }

  /**
   * No point of the cylinder is further than this from one of its samples, and none of the contour from one of that's,
   * mm: half a step along (of 40), across (of radius / 2) and around (of a 24th turn); a quarter for the contour.
   */
  const apart = ({ length, radius }: Cylinder): number =>
    Math.hypot(length / 80, radius / 4, (Math.PI * radius) / 24) + 0.25

  test('a cylinder and a prism', () => {
    fc.assert(
      fc.property(cylinder, prism, (one, other) => {
        const gap = gapToPrism(one, other)
        const truth = sampled(one, other)
        // Never more than the truth; less by no more than the samples are apart.
        expect(gap).toBeLessThanOrEqual(truth + 1e-6)
        expect(gap).toBeGreaterThanOrEqual(truth - apart(one) - 1e-3)
      }),
      { numRuns: 60 },
    )
  })

  test('two prisms: a groove of 10 × 6 beside a circle, from both faces', () => {
    const panel = panelOf({})
    const circle = { id: 'opening-1', path: circlePath([100, 100], 20), through: false, purpose: 'port' } as const
    const onA = prismOf(panel, { ...circle, face: 'A', depth: 6 })
    expect([onA.low, onA.high]).toEqual([-6, 0])
    const onB = prismOf(panel, { ...circle, face: 'B', depth: 6 })
    expect([onB.low, onB.high]).toEqual([-18, -12])
    expect(gapBetweenPrisms(onA, onB)).toBe(6)
    const groove = {
      id: 'groove-1',
      kind: 'groove',
      face: 'B',
      min: [123, 0],
      max: [129, 300],
      depth: 8,
      roundEnds: false,
      purpose: 'groove',
    } as const
    // 3 beside it, and 18 − 8 − 6 = 4 below it: √(3² + 4²) = 5.
    expect(gapBetweenPrisms(onA, groovePrism(panel, groove))).toBeCloseTo(5, 9)
  })
})
