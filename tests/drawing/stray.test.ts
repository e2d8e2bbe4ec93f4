import { describe, expect, test } from 'vitest'
import type { Circle, Drawing, Line } from '../../src/drawing/index.ts'
import { panelDrawing } from '../../src/drawing/index.ts'
import { checkDrawing } from '../../src/writers/check-drawing.ts'
import { type BoreFigures, PATTERNS, panelOf, row } from './fixture.ts'

const OPTIONS = { patterns: PATTERNS, units: 'mm' } as const

const layer = (drawing: Drawing, name: string) => drawing.layers.find((one) => one.name === name)?.entities ?? []
const circles = (drawing: Drawing, name: string) =>
  layer(drawing, name).filter((one): one is Circle => one.kind === 'circle')
const lines = (drawing: Drawing, name: string) => layer(drawing, name).filter((one): one is Line => one.kind === 'line')

// A side 720 × 560. A bore of 35 needs its centre 17.5 from each edge: at 17.5 it just fits, at 17.4 it is 0.1 over.
describe('a bore that leaves the panel', () => {
  const cup = (x: number, y: number, surface: 'A' | 'B' = 'A'): BoreFigures => ({
    surface,
    at: [x, y, surface === 'A' ? 0 : -18],
    diameter: 35,
    depth: 12.5,
    purpose: 'hinge cup',
  })
  const ids = (drawing: Drawing, name: string) => circles(drawing, name).map((one) => one.id)

  test.each([
    ['left', 17.4, 300],
    ['right', 702.6, 300],
    ['low', 300, 17.4],
    ['high', 300, 542.6],
    ['quite', -40, 300],
  ])('%s of it, is a cross and a circle on MARK and nowhere else', (_where, x, y) => {
    const drawing = panelDrawing(panelOf({ bores: [cup(x, y)] }), 'A', OPTIONS)
    expect(drawing.layers.map((one) => one.name)).toEqual(['OUTLINE', 'MARK', 'NOTE'])
    expect(circles(drawing, 'MARK')).toMatchObject([{ at: [x, y], radius: 17.5, id: 'bore-1' }])
    expect(circles(drawing, 'MARK')[0]?.title).toMatch(/^hinge cup 35 /)
    // The text height is 720 / 60 = 12, the cross reaches 0.6 of it to each side.
    expect(lines(drawing, 'MARK')).toEqual([
      { kind: 'line', pen: 'thin', from: [x - 7.2, y], to: [x + 7.2, y] },
      { kind: 'line', pen: 'thin', from: [x, y - 7.2], to: [x, y + 7.2] },
    ])
    expect(() => checkDrawing(drawing)).not.toThrow()
  })

  test.each([
    [17.5, 300],
    [702.5, 300],
    [300, 17.5],
    [300, 542.5],
  ])('does not, where it just fits at %d, %d', (x, y) => {
    const drawing = panelDrawing(panelOf({ bores: [cup(x, y)] }), 'A', OPTIONS)
    expect(drawing.layers.map((one) => one.name)).toEqual(['OUTLINE', 'BORE-D35-DEEP12P5', 'NOTE'])
  })

  test('on face B is mirrored with the rest', () => {
    const panel = panelOf({ bores: [cup(10, 300, 'B'), cup(100, 300, 'B')] })
    const drawing = panelDrawing(panel, 'B', OPTIONS)
    expect(circles(drawing, 'MARK')).toMatchObject([{ at: [710, 300], id: 'bore-1' }])
    expect(circles(drawing, 'BORE-D35-DEEP12P5')).toMatchObject([{ at: [620, 300], id: 'bore-2' }])
  })

  // The screw of 5 stands 4 from the edge and would fit, its head of 9 would not: neither is drilled.
  test('by its sink alone, takes its hole along', () => {
    const screw: BoreFigures = {
      surface: 'A',
      at: [4, 50, 0],
      diameter: 5,
      depth: 'through',
      purpose: 'screw',
      sink: { shape: 'cone', diameter: 9, angleDeg: 90 },
    }
    const drawing = panelDrawing(panelOf({ bores: [screw] }), 'A', OPTIONS)
    expect(drawing.layers.map((one) => one.name)).toEqual(['OUTLINE', 'MARK', 'NOTE'])
    expect(circles(drawing, 'MARK').map((one) => [one.id, one.radius])).toEqual([
      ['bore-1', 2.5],
      ['bore-1-sink', 4.5],
    ])
  })

  test('keeps its label and its place in the table, in the row that it is one of', () => {
    const drawing = panelDrawing(panelOf({ bores: row(3, 'x', 200, cup(10, 300)) }), 'A', OPTIONS)
    expect(ids(drawing, 'MARK')).toEqual(['bore-1'])
    expect(ids(drawing, 'BORE-D35-DEEP12P5')).toEqual(['bore-2', 'bore-3'])
    const words = layer(drawing, 'NOTE').flatMap((one) => (one.kind === 'text' ? [one.text] : []))
    // Three in a row from 10 by 200: one label, one line of the table.
    expect(words).toContain('10, 210, 410')
    expect(words.filter((text) => text === 'hinge cup')).toHaveLength(1)
  })
})

// A rebate 6 wide in the back edge of a panel 560 wide: a screw in that edge enters at 554 and ends 20 deeper, at 534.
test('a bore in the floor of a rebate ends as deep as it is bored, not as deep from the edge', () => {
  const panel = panelOf({
    bores: [{ surface: 'y1', at: [100, 554, -9], diameter: 3, depth: 20, purpose: 'screw pilot' }],
    grooves: [
      { kind: 'rebate', face: 'A', min: [0, 554], max: [720, 560], depth: 6, roundEnds: false, purpose: 'rebate' },
    ],
  })
  const drawing = panelDrawing(panel, 'A', OPTIONS)
  const hole = layer(drawing, 'MARK').flatMap((one) => (one.kind === 'path' ? one.vertices.map(({ at }) => at) : []))
  expect(hole).toEqual([
    [98.5, 534],
    [101.5, 534],
    [101.5, 554],
    [98.5, 554],
  ])
  expect(lines(drawing, 'MARK').map((one) => one.to)).toEqual([[100, 534]])
})
