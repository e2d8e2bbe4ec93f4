import fc from 'fast-check'
import makerjs from 'makerjs'
import { describe, expect, test } from 'vitest'
import {
  areaOf,
  boundsOf,
  type ClosedPath,
  distanceToContour,
  holdsPoint,
  pointsAlong,
} from '../../src/geometry/index.ts'
import { contourOf } from '../../src/project/svg/contour.ts'
import type { SvgUnit } from '../../src/project/svg/document.ts'

const read = (text: string, unit?: SvgUnit, scale = 1): ClosedPath => {
  const contour = contourOf(text, { unit, scale })
  if ('reason' in contour) throw new Error(contour.reason)
  return contour.path
}
const reason = (text: string, unit: SvgUnit = 'mm'): string => {
  const contour = contourOf(text, { unit, scale: 1 })
  return 'reason' in contour ? contour.reason : 'it was read'
}
const size = (path: ClosedPath): number[] => {
  const { min, max } = boundsOf(path)
  return [max[0] - min[0], max[1] - min[1]].map((n) => Math.round(n * 1000) / 1000)
}

describe('a path of SVG', () => {
  test('is turned over, counter-clockwise, its middle at (0, 0)', () => {
    // An L: its foot to the lower right on screen, where y runs down. Area 10 × 40 + 20 × 10 = 600.
    const path = read('M0 0 H10 V30 H30 V40 H0 Z', 'mm')
    expect(areaOf(path)).toBeCloseTo(600, 9)
    expect(boundsOf(path)).toEqual({ min: [-15, -20], max: [15, 20] })
    // The foot lies low (y < −10) and to the right.
    expect(holdsPoint(path, [10, -15])).toBe(true)
    expect(holdsPoint(path, [10, 15])).toBe(false)
    expect(path[0]).toEqual({ at: [-15, -20], bulge: 0 })
  })

  test('goes the same way round whichever way it is drawn', () => {
    expect(read('M0 0 V40 H30 V30 H10 V0 Z', 'mm')).toEqual(read('M0 0 H10 V30 H30 V40 H0 Z', 'mm'))
  })

  test('keeps circle arcs as arcs', () => {
    // A half disc: radius 20, from (0, 0) to (40, 0), swept clockwise on screen: over the top.
    const path = read('M0 0 A20 20 0 0 1 40 0 Z', 'mm')
    expect(path).toHaveLength(2)
    expect(areaOf(path)).toBeCloseTo(200 * Math.PI, 6)
    expect(holdsPoint(path, [0, 5])).toBe(true)
    expect(path.map(({ bulge }) => Math.round(bulge * 1e6) / 1e6).sort()).toEqual([0, 1])
    // Flags may stand without spaces, and the large arc is the other part of the circle: π 20² less the bow of 90°,
    // r² (π / 2 − 1) / 2 with chord 20 √2 = 28.284271.
    const large = read('M0 0a20 20 0 1120 20Z', 'mm')
    expect(areaOf(large)).toBeCloseTo(Math.PI * 400 - (400 * (Math.PI / 2 - 1)) / 2, 3)
    const small = read('M0 0a20 20 0 0120 20Z', 'mm')
    expect(areaOf(small)).toBeCloseTo((400 * (Math.PI / 2 - 1)) / 2, 3)
  })

  test('reads relative, repeated, smooth and short forms', () => {
    expect(read('m5 5 20 0 0 10 -20 0z', 'mm')).toEqual(read('M5,5L25,5L25,15L5,15Z', 'mm'))
    expect(read('M0 0h.5e1v5h-5z', 'mm')).toEqual(read('M0 0 L5 0 L5 5 L0 5 L0 0', 'mm'))
    expect(size(read('M0 0 Q10 20 20 0 T40 0 V30 H0 Z', 'mm'))).toEqual([40, 40])
    expect(read('M0 0 C5 10 15 10 20 0 S35 -10 40 0 V30 H0Z', 'mm')).toEqual(
      read('M0 0 C5 10 15 10 20 0 C25 -10 35 -10 40 0 V30 H0Z', 'mm'),
    )
  })

  test('lays arcs along curves within 0.01 mm', () => {
    // A quarter of a circle of 100 as everybody draws it: k = 0.5522847498, which strays 0.0273 mm from the circle.
    const k = 55.22847498
    const path = read(`M0 0 C${k} 0 100 ${100 - k} 100 100 H0 Z`, 'mm')
    const [cx, cy] = [-50, -50]
    for (let step = 0; step <= 200; step += 1) {
      const t = step / 200
      const u = 1 - t
      const x = 3 * u * u * t * k + 3 * u * t * t * 100 + t * t * t * 100
      const y = 3 * u * t * t * (100 - k) + t * t * t * 100
      expect(distanceToContour(path, [cx + x, -(cy + y)])).toBeLessThan(0.01)
    }
    expect(path.length).toBeLessThan(20)
  })

  test('an ellipse is one within 0.01 mm', () => {
    const path = read('<svg><ellipse cx="50" cy="20" rx="80" ry="30"/></svg>', 'mm')
    expect(areaOf(path)).toBeCloseTo(Math.PI * 2400, 0)
    for (const [x, y] of pointsAlong(path, 3)) {
      // How far the point lies from the ellipse, to first order: f / |grad f|.
      const f = (x / 80) ** 2 + (y / 30) ** 2 - 1
      expect(Math.abs(f) / Math.hypot((2 * x) / 6400, (2 * y) / 900)).toBeLessThan(0.01)
    }
  })

  test.each([
    ['M0 0 H10 V10', 'the contour does not close: 14.14 mm lie between its ends'],
    [
      'M0 0 L20 20 H0 L20 0 Z',
      'the contour crosses or touches itself 10 mm from its left and 10 mm from its upper end',
    ],
    ['M0 0 H20 H0 Z', 'the contour has no area'],
    ['M0 0 H0.5 V0.5 H0 Z', 'the contour has no area'],
    ['M0 0 H20 V20 H0 Z M40 0 H60 V20 Z', '2 contours are drawn'],
    ['M0 0 H20 V20 K', 'the path cannot be read at "K"'],
    ['H20 V20 Z', 'the path cannot be read at "H20 V20 Z"'],
    ['M0 0 L20', 'the path cannot be read at "L20"'],
    ['', 'nothing is drawn'],
    ['M0 0 H99999 V20 H0 Z', 'the contour is 99999 × 20 mm'],
    ['<svg><text>port</text></svg>', '<text> draws no contour that can be cut'],
    ['<svg><g transform="turn(3)"><rect width="9" height="9"/></g></svg>', 'the transform "turn(3)" cannot be read'],
    ['<svg><path d="M0 0', 'this is no SVG document'],
    ['<html/>', 'this is no SVG document'],
    ['<svg/>', 'nothing is drawn'],
  ])('%s is refused', (text, why) => {
    expect(reason(text)).toBe(why)
  })
})

describe('units of a document', () => {
  const box = '<rect width="60" height="30"/>'
  test.each([
    // width / viewBox: 120 mm for 60 units are 2 mm a unit.
    [`<svg width="120mm" height="60mm" viewBox="0 0 60 30">${box}</svg>`, undefined, [120, 60]],
    [`<svg width="6in" viewBox="0 0 60 30">${box}</svg>`, undefined, [152.4, 76.2]],
    [`<svg height="3cm" viewBox="0 0 60 30">${box}</svg>`, undefined, [60, 30]],
    // 60 px are 60 / 96 in = 15.875 mm.
    [`<svg viewBox="0 0 60 30">${box}</svg>`, undefined, [15.875, 7.938]],
    [`<svg width="500mm">${box}</svg>`, undefined, [15.875, 7.938]],
    [`<svg width="120" height="60" viewBox="0 0 60 30">${box}</svg>`, undefined, [31.75, 15.875]],
    ['M0 0H60V30H0Z', undefined, [15.875, 7.938]],
    // The key unit stands before what the document says.
    [`<svg width="120mm" height="60mm" viewBox="0 0 60 30">${box}</svg>`, 'mm', [60, 30]],
    ['M0 0H60V30H0Z', 'in', [1524, 762]],
  ] as const)('%s', (text, unit, wanted) => {
    expect(size(read(text, unit))).toEqual(wanted)
  })

  test('a scale makes it larger', () => {
    expect(size(read('M0 0H60V30H0Z', 'mm', 1.5))).toEqual([90, 45])
  })

  test('two different scales are refused', () => {
    const text = `<svg width="120mm" height="90mm" viewBox="0 0 60 30">${box}</svg>`
    expect(contourOf(text, { unit: undefined, scale: 1 })).toMatchObject({
      reason: 'width, height and viewBox of the document give two different scales',
    })
  })
})

describe('transforms of groups', () => {
  test('are taken up: a flag turned, stretched and mirrored', () => {
    const flag = 'M0 0 H60 V30 H10 V80 H0 Z'
    const within = (transform: string): ClosedPath =>
      read(`<svg><g transform="${transform}"><path d="${flag}"/></g></svg>`, 'mm')
    expect(within('translate(100 -7)')).toEqual(read(flag, 'mm'))
    expect(size(within('scale(2 .5)'))).toEqual([120, 40])
    expect(size(within('rotate(90)'))).toEqual([80, 60])
    // rotate(90) turns clockwise on screen: the cloth, at the upper right, comes to the lower right.
    expect(holdsPoint(within('rotate(90)'), [35, -25])).toBe(true)
    expect(holdsPoint(within('rotate(90)'), [-35, -25])).toBe(false)
    // Mirrored: the pole comes to the right.
    expect(holdsPoint(within('scale(-1 1)'), [25, -35])).toBe(true)
    expect(areaOf(within('matrix(1 0 0.5 1 3 4)'))).toBeCloseTo(2300, 6)
    // Nested: the outer one last.
    const nested = `<svg><g transform="scale(2)"><g transform="translate(5) scale(3 1)"><path d="${flag}"/></g></g></svg>`
    expect(size(read(nested, 'mm'))).toEqual([360, 160])
  })

  test('an arc that is mirrored or stretched bends the right way', () => {
    const half = 'M0 0 A20 20 0 0 1 40 0 Z'
    const within = (transform: string): ClosedPath =>
      read(`<svg><path transform="${transform}" d="${half}"/></svg>`, 'mm')
    expect(areaOf(within('scale(1 -1)'))).toBeCloseTo(200 * Math.PI, 6)
    // Hanging down: nearer to the upper edge it is wider.
    expect(holdsPoint(within('scale(1 -1)'), [18, 8])).toBe(true)
    expect(holdsPoint(within('scale(1 -1)'), [18, -8])).toBe(false)
    expect(areaOf(within('scale(2 1)'))).toBeCloseTo(400 * Math.PI, 0)
    expect(size(within('scale(2 1)'))).toEqual([80, 20])
  })
})

describe('any path', () => {
  const spot = fc.integer({ min: 5, max: 60 })

  /** Points of a cubic curve, by its Bernstein polynomials. */
  const along = (p: readonly (readonly [number, number])[]): (readonly [number, number])[] =>
    Array.from({ length: 4000 }, (_, k) => {
      const u = (k + 1) / 4000
      const weights = [(1 - u) ** 3, 3 * (1 - u) ** 2 * u, 3 * (1 - u) * u * u, u ** 3]
      const sum = (axis: 0 | 1): number => p.reduce((all, at, i) => all + at[axis] * (weights[i] ?? 0), 0)
      return [sum(0), sum(1)] as const
    })

  test('has the area of its curve, and nearly that which makerjs finds, which reads the same words by itself', () => {
    fc.assert(
      fc.property(spot, spot, spot, spot, spot, (a, b, c, d, r) => {
        const text = `M0 0 H${a + 60} V${b + 60} C${a + 50} ${b + 60 + c} ${30 + d} ${b + 90} 20 ${b + 70} L0 ${b + 70 + r / 10} Z`
        const contour = contourOf(text, { unit: 'mm', scale: 1 })
        fc.pre('path' in contour)
        const [x, y] = [a + 60, b + 60]
        const curve = along([
          [x, y],
          [a + 50, y + c],
          [30 + d, b + 90],
          [20, b + 70],
        ])
        const outline = [[0, 0], [x, 0], [x, y], ...curve, [0, b + 70 + r / 10]]
        const spanned = outline.reduce((sum, [u = 0, v = 0], k) => {
          const [p = 0, q = 0] = outline[(k + 1) % outline.length] ?? []
          return sum + u * q - p * v
        }, 0)
        const area = Math.abs(areaOf(read(text, 'mm')))
        // Arcs within 0.005 mm of a curve shorter than 150 mm: less than 0.75 mm².
        expect(Math.abs(area - Math.abs(spanned) / 2)).toBeLessThan(0.75)
        const model = makerjs.importer.fromSVGPathData(text, { bezierAccuracy: 0.001 })
        const chain = makerjs.model.findSingleChain(model)
        const points = makerjs.chain.toPoints(chain, 0.5)
        const at = (k: number, axis: 0 | 1): number => points[k % points.length]?.[axis] ?? 0
        const twice = points.reduce((sum, _, k) => sum + at(k, 0) * at(k + 1, 1) - at(k + 1, 0) * at(k, 1), 0)
        // Its own arcs for a curve are coarser.
        expect(Math.abs(area / (Math.abs(twice) / 2) - 1)).toBeLessThan(0.01)
      }),
      { numRuns: 10 },
    )
  })

  test('no text makes it throw', () => {
    const word = fc.constantFrom(
      'M',
      'L',
      'c',
      'A',
      'z',
      ' ',
      '0',
      '10',
      '-5',
      '1e9',
      '.',
      ',',
      '1',
      '<svg>',
      '</svg>',
      '<path d="',
      '"/>',
      'NaN',
      'e',
    )
    fc.assert(
      fc.property(fc.array(word, { maxLength: 30 }), (words) => {
        const contour = contourOf(words.join(''), { unit: 'mm', scale: 1 })
        if ('path' in contour) expect(areaOf(contour.path)).toBeGreaterThanOrEqual(1)
      }),
      { numRuns: 100 },
    )
  })
})
