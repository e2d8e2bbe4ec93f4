import type { IArcEntity, ICircleEntity, ILwpolylineEntity } from 'dxf-parser'
import fc from 'fast-check'
import { type INode, parseSync } from 'svgson'
import { expect, test } from 'vitest'
import type { Circle, ClosedPath, Drawing, Point } from '../../src/drawing/index.ts'
import { type DxfOptions, dxfOf, lintDxf, svgOf } from '../../src/writers/index.ts'
import { entitiesOf, readDxf } from './read-dxf.ts'

/** What the files promise, mm. */
const TOLERANCE = 0.001
/** SVG arcs have rounded ends and a rounded radius, see svg.ts. */
const ARC_TOLERANCE = 0.0013

const length = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** A star-shaped contour about a centre, counter-clockwise or clockwise, its segments bulging either way. */
const contour = fc
  .record({
    middle: fc.tuple(length(300, 700), length(250, 350)),
    spokes: fc.array(fc.record({ reach: length(60, 120), bulge: length(-0.4, 1.6), straight: fc.boolean() }), {
      minLength: 3,
      maxLength: 8,
    }),
    clockwise: fc.boolean(),
  })
  .map(({ middle, spokes, clockwise }): ClosedPath => {
    const vertices = spokes.map(({ reach, bulge, straight }, i) => {
      const angle = ((clockwise ? -1 : 1) * 2 * Math.PI * i) / spokes.length
      const at: Point = [middle[0] + reach * Math.cos(angle), middle[1] + reach * Math.sin(angle)]
      // Flat arcs have their centre far away, where no reader can find it from rounded figures.
      const round = Math.abs(bulge) < 0.1 ? 0.1 : bulge
      return { at, bulge: straight ? 0 : clockwise ? -round : round }
    })
    return { kind: 'path', vertices }
  })

const bore = fc
  .record({ at: fc.tuple(length(0, 1000), length(0, 600)), radius: length(0.5, 20) })
  .map((c): Circle => ({ kind: 'circle', ...c }))

/** Two holes in one place would be one hole drilled twice, which the linter must refuse. */
const tooNear = (a: Circle, b: Circle): boolean => apart(a.at, b.at) < 0.01

const drawings = fc
  .record({ cutout: contour, bores: fc.uniqueArray(bore, { maxLength: 20, comparator: tooNear }) })
  .map(({ cutout, bores }): Drawing => {
    const corners: Point[] = [
      [0, 0],
      [1000, 0],
      [1000, 600],
      [0, 600],
    ]
    const outline: ClosedPath = { kind: 'path', vertices: corners.map((at) => ({ at, bulge: 0 })) }
    return {
      title: 'random',
      view: { min: [-500, -500], max: [1500, 1100] },
      flipHeight: 600,
      layers: [
        { name: 'OUTLINE', operation: 'outline', entities: [outline] },
        { name: 'CUTOUT', operation: 'cutout', entities: [cutout] },
        { name: 'BORE-X', operation: 'bore', entities: bores },
      ],
    }
  })

const on = <T>(drawing: Drawing, name: string): T[] =>
  (drawing.layers.find((layer) => layer.name === name)?.entities ?? []) as unknown as T[]
const cutoutOf = (drawing: Drawing): ClosedPath =>
  on<ClosedPath>(drawing, 'CUTOUT')[0] ?? { kind: 'path', vertices: [] }

const apart = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1])

/** Ends and highest point of each segment: the highest point stands bulge × chord / 2 off the chord's middle. */
function segments(path: ClosedPath): { from: Point; to: Point; top: Point; bulge: number }[] {
  return path.vertices.map(({ at: from, bulge }, i) => {
    const to = path.vertices[(i + 1) % path.vertices.length]?.at ?? from
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
    const top: Point = [(from[0] + to[0]) / 2 + (dy * bulge) / 2, (from[1] + to[1]) / 2 - (dx * bulge) / 2]
    return { from, to, top, bulge }
  })
}

/** Centre of the circle through three points, by the bisectors' equations. */
function centreOf([a, b, c]: readonly [Point, Point, Point]): Point {
  const d = 2 * (a[0] * (b[1] - c[1]) + b[0] * (c[1] - a[1]) + c[0] * (a[1] - b[1]))
  const [s, t, u] = [a, b, c].map(([x, y]) => x * x + y * y) as [number, number, number]
  return [
    (s * (b[1] - c[1]) + t * (c[1] - a[1]) + u * (a[1] - b[1])) / d,
    (s * (c[0] - b[0]) + t * (a[0] - c[0]) + u * (b[0] - a[0])) / d,
  ]
}

/**
 * A drawing with cuts beyond the panel, or crossing itself, can be written all the same; only `place`, which looks at
 * the panel, may find fault with a random one.
 */
const otherFaults = (text: string) => lintDxf(text).filter((fault) => !fault.startsWith('place:'))

const PLAIN: DxfOptions = { units: 'mm', version: '2007', contours: 'bulges', notes: true, name: 'random.dxf' }

test('a random drawing comes back from its DXF, in millimetres and in inches', () => {
  fc.assert(
    fc.property(drawings, fc.constantFrom('mm' as const, 'in' as const), (drawing, units) => {
      const text = dxfOf(drawing, { ...PLAIN, units })
      expect(otherFaults(text)).toEqual([])
      const mm = units === 'in' ? 25.4 : 1
      const dxf = readDxf(text)
      const circles = entitiesOf<ICircleEntity>(dxf, 'CIRCLE', 'BORE-X')
      const bores = on<Circle>(drawing, 'BORE-X')
      expect(circles).toHaveLength(bores.length)
      bores.forEach((b, i) => {
        const c = circles[i]
        const at: Point = [(c?.center.x ?? Number.NaN) * mm, (c?.center.y ?? Number.NaN) * mm]
        expect(apart(at, b.at)).toBeLessThan(TOLERANCE)
        expect(Math.abs((c?.radius ?? Number.NaN) * mm - b.radius)).toBeLessThan(TOLERANCE)
      })
      const [found, ...others] = entitiesOf<ILwpolylineEntity>(dxf, 'LWPOLYLINE', 'CUTOUT')
      expect(others).toEqual([])
      const read: ClosedPath = {
        kind: 'path',
        vertices: (found?.vertices ?? []).map((v) => ({ at: [v.x * mm, v.y * mm], bulge: v.bulge ?? 0 })),
      }
      const wanted = segments(cutoutOf(drawing))
      expect(read.vertices).toHaveLength(wanted.length)
      segments(read).forEach((s, i) => {
        expect(apart(s.from, wanted[i]?.from ?? [0, 0])).toBeLessThan(TOLERANCE)
        expect(apart(s.top, wanted[i]?.top ?? [0, 0])).toBeLessThan(TOLERANCE)
      })
    }),
    { numRuns: 200 },
  )
})

test('as lines and arcs, each arc has the centre and radius of its bulge within 1e-5 mm, and passes its highest point', () => {
  fc.assert(
    fc.property(drawings, (drawing) => {
      const text = dxfOf(drawing, { ...PLAIN, contours: 'lines and arcs' })
      expect(otherFaults(text)).toEqual([])
      const arcs = entitiesOf<IArcEntity>(readDxf(text), 'ARC', 'CUTOUT')
      const wanted = segments(cutoutOf(drawing)).filter((s) => s.bulge !== 0)
      expect(arcs).toHaveLength(wanted.length)
      wanted.forEach(({ from, to, top, bulge }, i) => {
        const arc = arcs[i]
        if (arc === undefined) throw new Error('an arc is missing')
        const centre = centreOf([from, top, to])
        const at: Point = [arc.center.x, arc.center.y]
        expect(apart(at, centre)).toBeLessThan(1e-5)
        expect(Math.abs(arc.radius - apart(centre, top))).toBeLessThan(1e-5)
        const [start, end] = bulge > 0 ? [from, to] : [to, from]
        const ray = (angle: number): Point => [
          at[0] + arc.radius * Math.cos(angle),
          at[1] + arc.radius * Math.sin(angle),
        ]
        expect(apart(ray(arc.startAngle), start)).toBeLessThan(1e-5)
        expect(apart(ray(arc.endAngle), end)).toBeLessThan(1e-5)
        const turn = (arc.endAngle - arc.startAngle + 4 * Math.PI) % (2 * Math.PI)
        expect(apart(ray(arc.startAngle + turn / 2), top)).toBeLessThan(1e-5)
      })
    }),
    { numRuns: 200 },
  )
})

const all = (node: INode, name: string): INode[] =>
  node.children.flatMap((child) => (child.name === name ? [child, ...all(child, name)] : all(child, name)))

/** Path data as points and arcs; y up again, from 600. */
function pieces(d: string): { to: Point; arc?: { radius: number; sweep: number } }[] {
  return [...d.matchAll(/([MLA])([^MLAZ]*)/g)].map(([, command, figures]) => {
    const n = (figures ?? '').trim().split(/[ ,]+/).map(Number)
    const [x, y] = n.slice(-2)
    const to: Point = [x ?? Number.NaN, 600 - (y ?? Number.NaN)]
    return command === 'A' ? { to, arc: { radius: n[0] ?? Number.NaN, sweep: n[4] ?? Number.NaN } } : { to }
  })
}

/** The middle of an SVG arc of less than half a turn. Sweep 0 is counter-clockwise for the eye: it rises to the right. */
function middle(from: Point, to: Point, arc: { radius: number; sweep: number }): Point {
  const chord = apart(from, to)
  const rise = arc.radius - Math.sqrt(Math.max(0, arc.radius ** 2 - (chord / 2) ** 2))
  const side = (arc.sweep === 0 ? 1 : -1) * (rise / chord)
  return [(from[0] + to[0]) / 2 + (to[1] - from[1]) * side, (from[1] + to[1]) / 2 - (to[0] - from[0]) * side]
}

test('a random drawing comes back from its SVG', () => {
  fc.assert(
    fc.property(drawings, (drawing) => {
      const root = parseSync(svgOf(drawing))
      const circles = all(root, 'circle').map(({ attributes: a }) => ({
        at: [Number(a.cx), 600 - Number(a.cy)] as const,
        diameter: Number(a['data-diameter']),
        radius: Number(a.r),
      }))
      const bores = on<Circle>(drawing, 'BORE-X')
      expect(circles).toHaveLength(bores.length)
      bores.forEach(({ at, radius }, i) => {
        expect(apart(circles[i]?.at ?? [0, 0], at)).toBeLessThan(TOLERANCE)
        expect(Math.abs((circles[i]?.diameter ?? 0) - 2 * radius)).toBeLessThan(TOLERANCE)
        expect(Math.abs((circles[i]?.radius ?? 0) - radius)).toBeLessThan(TOLERANCE)
      })
      const found = pieces(all(root, 'path')[1]?.attributes.d ?? '')
      let seen = 0
      for (const { from, to, top, bulge } of segments(cutoutOf(drawing))) {
        expect(apart(found[seen]?.to ?? [0, 0], from)).toBeLessThan(TOLERANCE)
        const centre = bulge === 0 ? undefined : centreOf([from, top, to])
        while (found[seen + 1]?.arc !== undefined && centre !== undefined) {
          const start: Point = found[seen]?.to ?? [0, 0]
          const next = found[seen + 1]
          if (next?.arc === undefined) break
          const half = middle(start, next.to, next.arc)
          expect(Math.abs(apart(half, centre) - apart(top, centre))).toBeLessThan(ARC_TOLERANCE)
          seen += 1
          if (apart(next.to, to) < TOLERANCE) break
        }
        if (bulge === 0) seen += 1
      }
      // All pieces were used; the closing segment of a contour is Z when it is straight.
      expect([found.length - 1, found.length]).toContain(seen)
    }),
    { numRuns: 200 },
  )
})
