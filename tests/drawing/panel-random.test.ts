import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Circle, Drawing, Entity, Text } from '../../src/drawing/index.ts'
import {
  areaOfEntity,
  discMeets,
  facesDrawn,
  holds,
  layerName,
  overlaps,
  panelDrawing,
  textArea,
} from '../../src/drawing/index.ts'
import type { Bore, Panel } from '../../src/panel/index.ts'
import { checkDrawing } from '../../src/writers/check-drawing.ts'
import { type BoreFigures, PATTERNS, panelOf, row } from './fixture.ts'

/** Rows of bores as shares of the panel, so that they lie in it whatever its size. */
const rowOf = fc.record({
  surface: fc.constantFrom<BoreFigures['surface']>('A', 'A', 'A', 'B', 'x0', 'x1', 'y0', 'y1'),
  x: fc.double({ min: 0.02, max: 0.98, noNaN: true }),
  y: fc.double({ min: 0.02, max: 0.98, noNaN: true }),
  count: fc.integer({ min: 1, max: 9 }),
  along: fc.constantFrom<'x' | 'y'>('x', 'y'),
  diameter: fc.constantFrom(3, 5, 8, 35),
  depth: fc.constantFrom<number | 'through'>(8, 12.5, 13, 'through'),
  sink: fc.constantFrom('none', 'cone', 'counterbore'),
  lean: fc.boolean(),
})

const figures = fc.record({
  length: fc.double({ min: 60, max: 2500, noNaN: true }),
  width: fc.double({ min: 40, max: 1250, noNaN: true }),
  datumX: fc.constantFrom<'x0' | 'x1'>('x0', 'x1'),
  datumY: fc.constantFrom<'y0' | 'y1'>('y0', 'y1'),
  front: fc.boolean(),
  rows: fc.array(rowOf, { maxLength: 12 }),
  groove: fc.constantFrom<'none' | 'A' | 'B'>('none', 'A', 'B'),
  units: fc.constantFrom<'mm' | 'in'>('mm', 'in'),
  stamp: fc.boolean(),
})
type Figures = typeof figures extends fc.Arbitrary<infer T> ? T : never

function boresOf(one: Figures['rows'][number], length: number, width: number): BoreFigures[] {
  const { surface } = one
  const along = surface === 'x0' || surface === 'x1' ? 'y' : surface === 'y0' || surface === 'y1' ? 'x' : one.along
  const x = surface === 'x0' ? 0 : surface === 'x1' ? length : one.x * length
  const y = surface === 'y0' ? 0 : surface === 'y1' ? width : one.y * width
  const z = surface === 'A' ? 0 : surface === 'B' ? -18 : -9
  const room = along === 'x' ? length * 0.98 - x : width * 0.98 - y
  const onFace = surface === 'A' || surface === 'B'
  const leans = onFace && one.lean && one.diameter === 8
  const sink =
    !onFace || leans || one.sink === 'none'
      ? {}
      : one.sink === 'cone'
        ? { sink: { shape: 'cone', diameter: one.diameter * 2, angleDeg: 90 } as const }
        : { sink: { shape: 'counterbore', diameter: one.diameter + 4, depth: 3 } as const }
  return row(one.count, along, room / one.count, {
    surface,
    at: [x, y, z],
    diameter: one.diameter,
    depth: onFace ? one.depth : 21,
    purpose: 'shelf pin',
    ...sink,
    ...(leans && { lean: { deg: 15, axis: [0.966, 0, surface === 'A' ? -0.259 : 0.259] as const } }),
  })
}

function panelFrom(one: Figures): Panel {
  const { length, width } = one
  const edges = one.front
    ? ({ x0: 'bottom', x1: 'top', y0: 'front', y1: 'back' } as const)
    : ({ x0: 'bottom', x1: 'top', y0: 'left', y1: 'right' } as const)
  const face = one.groove
  return panelOf({
    length,
    width,
    datum: { x: one.datumX, y: one.datumY },
    edges,
    bores: one.rows.flatMap((figure) => boresOf(figure, length, width)),
    grooves:
      face === 'none'
        ? []
        : [
            {
              kind: 'groove',
              face,
              min: [9, width - 20],
              max: [length, width - 13.8],
              depth: 8,
              roundEnds: true,
              purpose: 'groove for the back',
            },
          ],
  })
}

const entitiesOf = (drawing: Drawing): Entity[] => drawing.layers.flatMap((layer) => layer.entities)
const textsOf = (drawing: Drawing): Text[] => entitiesOf(drawing).filter((one): one is Text => one.kind === 'text')
const holesOf = (drawing: Drawing): Circle[] =>
  drawing.layers
    .filter((layer) => layer.operation === 'bore' || layer.operation === 'countersink')
    .flatMap((layer) => layer.entities.filter((one): one is Circle => one.kind === 'circle'))

function expectClear(drawing: Drawing): void {
  const texts = textsOf(drawing).map((one) => ({ text: one.text, area: textArea(one) }))
  const holes = holesOf(drawing)
  texts.forEach((one, k) => {
    const onText = texts.slice(k + 1).filter((other) => overlaps(one.area, other.area))
    expect([one.text, onText.map((other) => other.text)]).toEqual([one.text, []])
    const onHole = holes.filter((hole) => discMeets(one.area, hole.at, hole.radius))
    expect([one.text, onHole.map((hole) => hole.id)]).toEqual([one.text, []])
  })
}

/** The widest circle of a bore reaches over an edge of the panel by more than float noise. */
function overEdge(panel: Panel, bore: Bore): boolean {
  const wide = Math.max(bore.diameter, bore.sink ? bore.sink.diameter : 0)
  const [x, y] = bore.at
  return (
    [x - wide / 2, y - wide / 2].some((low) => low < -1e-6) ||
    x + wide / 2 > panel.length + 1e-6 ||
    y + wide / 2 > panel.width + 1e-6
  )
}

/** The layer that a bore belongs on, by its own figures. */
function layerFor(panel: Panel, bore: Bore): string {
  if (bore.leanDeg !== undefined || (bore.surface !== 'A' && bore.surface !== 'B')) return 'MARK'
  if (overEdge(panel, bore)) return 'MARK'
  return bore.through
    ? layerName(PATTERNS.boreThrough, { diameter: bore.diameter })
    : layerName(PATTERNS.bore, { diameter: bore.diameter, depth: bore.depth })
}

// Generous: three runs of whole drawings on a machine that may be busy.
const TIME_MS = 120_000

describe('any panel', { timeout: TIME_MS }, () => {
  test('no text lies on another or on a hole, and all is in the view', () => {
    fc.assert(
      fc.property(figures, (one) => {
        const panel = panelFrom(one)
        for (const face of facesDrawn(panel)) {
          const stamp = one.stamp ? { stamp: 'Do not make this panel: two of its bores meet each other' } : {}
          const drawing = panelDrawing(panel, face, { patterns: PATTERNS, units: one.units, ...stamp })
          checkDrawing(drawing)
          expectClear(drawing)
          for (const entity of entitiesOf(drawing)) expect(holds(drawing.view, areaOfEntity(entity))).toBe(true)
          expect(holds(drawing.view, { min: [0, 0], max: [panel.length, panel.width] })).toBe(true)
        }
      }),
      { numRuns: 200 },
    )
  })

  test('every bore is drawn once, on one face, on the layer of its bit and depth, at its place', () => {
    fc.assert(
      fc.property(figures, (one) => {
        const panel = panelFrom(one)
        const faces = facesDrawn(panel).map((face) => ({
          face,
          drawing: panelDrawing(panel, face, { patterns: PATTERNS, units: one.units }),
        }))
        const ids = faces.flatMap(({ drawing }) =>
          drawing.layers.flatMap((layer) =>
            layer.entities.flatMap((entity) => ('id' in entity && entity.id ? [`${entity.id} ${layer.name}`] : [])),
          ),
        )
        for (const bore of panel.bores) {
          expect(ids.filter((id) => id.startsWith(`${bore.id} `))).toEqual([`${bore.id} ${layerFor(panel, bore)}`])
        }
        for (const { face, drawing } of faces) {
          const own = panel.bores.filter(
            (bore) => bore.surface === face && bore.leanDeg === undefined && !overEdge(panel, bore),
          )
          const holes = holesOf(drawing)
          expect(holes).toHaveLength(own.length + own.filter((bore) => bore.sink).length)
          for (const bore of own) {
            const x = face === 'A' ? bore.at[0] : panel.length - bore.at[0]
            expect(holes.find((hole) => hole.id === bore.id)?.at).toEqual([x, bore.at[1]])
          }
        }
      }),
      { numRuns: 120 },
    )
  })

  test('every row of bores has its line in the table, and nothing else has', () => {
    fc.assert(
      fc.property(figures, (one) => {
        const panel = panelFrom(one)
        const drawing = panelDrawing(panel, 'A', { patterns: PATTERNS, units: 'mm' })
        const head = textsOf(drawing).find((text) => text.text === 'holes')
        const here = panel.bores.filter((bore) => bore.surface !== 'B')
        const counts = textsOf(drawing)
          .filter((text) => text.at[0] === head?.at[0] && text.at[1] < head.at[1])
          .map((text) => Number(text.text))
        expect(counts.reduce((sum, count) => sum + count, 0)).toBe(here.length)
      }),
      { numRuns: 200 },
    )
  })
})
