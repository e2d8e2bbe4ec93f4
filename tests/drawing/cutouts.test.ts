import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Drawing, ClosedPath as DrawnPath, Layer, Text } from '../../src/drawing/index.ts'
import { facesDrawn, lineMeets, pageDrawings, panelDrawing, textArea } from '../../src/drawing/index.ts'
import {
  areaOf,
  boundsOf,
  circlePath,
  distanceToContour,
  holdsPoint,
  type PathVertex,
  pointsAlong,
  rectanglePath,
  slotPath,
} from '../../src/geometry/index.ts'
import type { Cutout, Panel } from '../../src/panel/index.ts'
import { checkDrawing } from '../../src/writers/check-drawing.ts'
import { dxfOf, lintDxf, svgOf } from '../../src/writers/index.ts'
import { PATTERNS, panelOf } from './fixture.ts'

const cutout = (path: readonly PathVertex[], more: Partial<Cutout> = {}): Cutout => ({
  id: 'opening-1',
  face: 'A',
  path,
  depth: 18,
  through: true,
  purpose: 'port',
  ...more,
})
const drawn = (panel: Panel, face: 'A' | 'B' = 'A', units: 'mm' | 'in' = 'mm'): Drawing =>
  panelDrawing(panel, face, { patterns: PATTERNS, units })
const layer = (drawing: Drawing, name: string): Layer | undefined => drawing.layers.find((one) => one.name === name)
const pathOn = (drawing: Drawing, name: string): DrawnPath => {
  const [entity] = layer(drawing, name)?.entities ?? []
  if (entity?.kind !== 'path') throw new Error(`no path on ${name}`)
  return entity
}
const texts = (drawing: Drawing): Text[] =>
  drawing.layers.flatMap(({ entities }) => entities.filter((one): one is Text => one.kind === 'text'))
const words = (drawing: Drawing): string[] => texts(drawing).map(({ text }) => text)

describe('a panel with cutouts', () => {
  test('has those right through on CUTOUT and recesses by their depth', () => {
    const panel = panelOf({
      cutouts: [
        cutout(circlePath([200, 100], 30)),
        cutout(rectanglePath([300, 200], [420, 280], 10), {
          id: 'opening-2',
          through: false,
          depth: 6.5,
          purpose: 'ledge',
        }),
        cutout(circlePath([500, 400], 40), { id: 'opening-3', face: 'B', through: false, depth: 4, purpose: 'seat' }),
      ],
    })
    expect(facesDrawn(panel)).toEqual(['A', 'B'])
    const a = drawn(panel)
    expect(a.layers.map(({ name, operation }) => `${name} ${operation}`)).toEqual([
      'OUTLINE outline',
      'CUTOUT cutout',
      'POCKET-DEEP6P5 pocket',
      'NOTE note',
    ])
    expect(pathOn(a, 'CUTOUT')).toMatchObject({
      id: 'opening-1',
      // Datum edges: bottom at x = 0, front at y = 0.
      title: 'port, 60 round, through, middle 100 from front, middle 200 from bottom',
      vertices: circlePath([200, 100], 30),
    })
    expect(pathOn(a, 'POCKET-DEEP6P5').title).toBe(
      'ledge, 120 × 80, radius 10, 6.5 deep, 200 to 280, middle 240 from front, 300 to 420, middle 360 from bottom',
    )
    expect(words(a)).toEqual(
      expect.arrayContaining(['port, 60 round, through', 'ledge, 120 × 80, radius 10, 6.5 deep']),
    )
    expect(words(a).some((text) => text.includes('1 opening, 1 recess'))).toBe(true)
    expect(words(a).some((text) => text.includes('face B has a drawing of its own: 1 recess'))).toBe(true)
    const b = drawn(panel, 'B')
    expect(b.layers.map(({ name }) => name)).toEqual(['OUTLINE', 'POCKET-DEEP4', 'NOTE'])
    // Seen on face B, x becomes 720 − 500 = 220.
    expect(boundsOf(pathOn(b, 'POCKET-DEEP4').vertices)).toEqual({ min: [180, 360], max: [260, 440] })
  })

  test('in the table: size, depth and places', () => {
    const panel = panelOf({
      cutouts: [cutout(slotPath([100, 50], [160, 50], 20)), cutout(circlePath([300, 200], 30), { id: 'opening-2' })],
    })
    expect(words(drawn(panel))).toEqual(
      expect.arrayContaining([
        '80 × 20, radius 10',
        'through',
        '40 to 60, middle 50',
        '90 to 170, middle 130',
        '60 round',
        'middle 200',
      ]),
    )
  })

  test('face B shows bulges mirrored: the same shape, turned over', () => {
    // A quarter disc of 40 with its corner at (100, 100), its round side to the upper right.
    const quarter: PathVertex[] = [
      { at: [100, 100], bulge: 0 },
      { at: [140, 100], bulge: Math.tan(Math.PI / 8) },
      { at: [100, 140], bulge: 0 },
    ]
    const panel = panelOf({ cutouts: [cutout(quarter, { face: 'B', through: false, depth: 5 })] })
    const { vertices } = pathOn(drawn(panel, 'B'), 'POCKET-DEEP5')
    expect(areaOf(vertices)).toBeCloseTo(400 * Math.PI, 6)
    // 720 − (100 + 27) = 593: inside the disc as (127, 127) is, √(27² + 27²) = 38.2 from the corner; 30 each way is 42.4.
    expect(holdsPoint(vertices, [593, 127])).toBe(true)
    expect(holdsPoint(vertices, [590, 130])).toBe(false)
    expect(holdsPoint(vertices, [127, 127])).toBe(false)
  })

  test('one that leaves the panel is a mark, so that no tool runs', () => {
    const drawing = drawn(panelOf({ cutouts: [cutout(circlePath([10, 100], 30))] }))
    expect(layer(drawing, 'CUTOUT')).toBeUndefined()
    expect(pathOn(drawing, 'MARK').id).toBe('opening-1')
    checkDrawing(drawing)
  })

  test('is written by the linter’s rules, with bulges and with lines and arcs', () => {
    const drawing = drawn(panelOf({ cutouts: [cutout(rectanglePath([300, 200], [420, 280], 10))] }))
    for (const contours of ['bulges', 'lines and arcs'] as const) {
      for (const units of ['mm', 'in'] as const) {
        const text = dxfOf(drawing, { units, version: '2007', contours, notes: true, name: 'store/left-side face A' })
        expect(lintDxf(text)).toEqual([])
        expect(text).toContain('CUTOUT')
      }
    }
    expect(svgOf(drawing)).toContain('data-layer="CUTOUT"')
  })
})

const at = fc.tuple(fc.integer({ min: 60, max: 640 }), fc.integer({ min: 60, max: 480 }))
const anyCutout = fc.oneof(
  fc.tuple(at, fc.integer({ min: 3, max: 55 })).map(([[x, y], r]) => circlePath([x, y], r)),
  fc
    .tuple(at, fc.integer({ min: 10, max: 300 }), fc.integer({ min: 10, max: 200 }))
    .map(([[x, y], w, h]) => rectanglePath([x, y], [Math.min(700, x + w), Math.min(540, y + h)], 4)),
)

/** Texts that lie across a contour. */
function across(drawing: Drawing, contours: readonly (readonly PathVertex[])[]): string[] {
  return texts(drawing)
    .filter((one) => {
      const area = textArea(one)
      return contours.some((path) => {
        const points = pointsAlong(path, 1)
        return points.some((from, k) => lineMeets(area, from, points[(k + 1) % points.length] ?? from))
      })
    })
    .map(({ text }) => text)
}

describe('any cutouts', { timeout: 120_000 }, () => {
  test('no text lies across a contour', () => {
    fc.assert(
      fc.property(fc.array(anyCutout, { maxLength: 4 }), fc.constantFrom('mm', 'in'), (paths, units) => {
        const cutouts = paths.map((path, k) => cutout(path, { id: `opening-${k + 1}` }))
        const drawing = drawn(panelOf({ cutouts }), 'A', units)
        checkDrawing(drawing)
        expect(across(drawing, paths)).toEqual([])
      }),
      { numRuns: 60 },
    )
  })

  test('full-size pages show all of every contour, at its place and size', () => {
    fc.assert(
      fc.property(anyCutout, fc.constantFrom('A', 'B'), (path, face) => {
        const panel = panelOf({ cutouts: [cutout(path, { face, through: false, depth: 5 })] })
        const pages = pageDrawings(panel, face, 'A4', 'mm')
        // Each sheet's title names its place in the grid; what it shows is found by the lines on CUTOUT.
        const long = pages.flatMap((page) =>
          (layer(page, 'CUTOUT')?.entities ?? []).flatMap((one) =>
            one.kind === 'line' && one.pen === 'thin'
              ? [Math.hypot(one.to[0] - one.from[0], one.to[1] - one.from[1])]
              : [],
          ),
        )
        const round = pointsAlong(path, 0.5)
        const length = round.reduce((sum, [x, y], k) => {
          const [u, v] = round[(k + 1) % round.length] ?? [x, y]
          return sum + Math.hypot(u - x, v - y)
        }, 0)
        // Sheets overlap, so that together they show no less than the whole contour.
        expect(long.reduce((sum, one) => sum + one, 0)).toBeGreaterThan(length * 0.999 - 0.5)
        expect(pages.some((page) => words(page).some((text) => text.startsWith('port')))).toBe(true)
      }),
      { numRuns: 20 },
    )
  })

  test('words find their place beside one that is smaller than a cross', () => {
    const pages = pageDrawings(panelOf({ cutouts: [cutout(circlePath([60, 60], 3))] }), 'A', 'A4', 'mm')
    expect(pages.flatMap(words)).toEqual(
      expect.arrayContaining(['port, 6 round, through', 'middle 60 from front', 'middle 60 from bottom']),
    )
  })

  test('a small one is whole on one page, its lines within 0.05 mm of its contour', () => {
    const path = circlePath([300, 250], 25)
    const pages = pageDrawings(panelOf({ cutouts: [cutout(path)] }), 'A', 'A4', 'mm')
    const whole = pages.map((page) =>
      (layer(page, 'CUTOUT')?.entities ?? []).flatMap((one) =>
        one.kind === 'line' && one.pen === 'thin' ? [one] : [],
      ),
    )
    const most = whole.reduce((a, b) => (b.length > a.length ? b : a), [])
    const { min, max } = {
      min: [0, 1].map((axis) => Math.min(...most.map(({ from }) => from[axis] ?? 0))),
      max: [0, 1].map((axis) => Math.max(...most.map(({ from }) => from[axis] ?? 0))),
    }
    expect((max[0] ?? 0) - (min[0] ?? 0)).toBeCloseTo(50, 1)
    const middle = [((max[0] ?? 0) + (min[0] ?? 0)) / 2, ((max[1] ?? 0) + (min[1] ?? 0)) / 2] as const
    for (const { from } of most) expect(distanceToContour(circlePath(middle, 25), from)).toBeLessThan(0.05)
  })
})
