import { describe, expect, test } from 'vitest'
import type { Drawing, Entity, Text } from '../../src/drawing/index.ts'
import { areaOfEntity, overlaps, pageDrawings, panelDrawing, textArea } from '../../src/drawing/index.ts'
import type { Panel } from '../../src/panel/index.ts'
import { PATTERNS, panelOf } from './fixture.ts'

const entities = (drawing: Drawing): Entity[] => drawing.layers.flatMap((layer) => layer.entities)
const texts = (drawing: Drawing): Text[] => entities(drawing).filter((one) => one.kind === 'text')
const drawn = (panel: Panel): Drawing => panelDrawing(panel, 'A', { patterns: PATTERNS, units: 'mm' })

/** A strip of packing, its front edge 45 long; distances are from its bottom and its front. */
const STRIP = { length: 550, width: 45, datum: { x: 'x1', y: 'y0' } } as const
const EDGES = { x0: 'back', x1: 'front', y0: 'bottom', y1: 'top' } as const

describe('panels with a short edge', () => {
  test.each([
    ['x0', { ...EDGES, x0: 'front', x1: 'back' }],
    ['x1', EDGES],
  ] as const)('the name of a front of 45 mm keeps off the arrow at the datum corner (%s)', (x, edges) => {
    const drawing = drawn(panelOf({ ...STRIP, datum: { x, y: 'y0' }, edges, lipping: { [x]: 2 } }))
    const name = texts(drawing).find(({ text }) => text === 'FRONT, LIPPED 2')
    if (name === undefined) throw new Error('no name')
    const shapes = entities(drawing).filter((one) => one.kind === 'path' && one.filled)
    expect(shapes.filter((one) => overlaps(areaOfEntity(one), textArea(name)))).toEqual([])
  })

  test('a panel 134 wide along its grain still has its grain arrow', () => {
    expect(texts(drawn(panelOf({ length: 134, width: 797 }))).map(({ text }) => text)).toContain('grain')
  })

  test('full-size pages name an edge that is too short for all the words', () => {
    const bore = { surface: 'A', diameter: 5, depth: 10, purpose: 'pin' } as const
    const bores = [30, 520].map((x) => ({ ...bore, at: [x, 20, 0] as const }))
    const words = pageDrawings(panelOf({ ...STRIP, edges: EDGES, bores }), 'A', 'A4', 'mm').flatMap(texts)
    expect(words.map(({ text }) => text)).toEqual(expect.arrayContaining(['back: fold here', 'FRONT: fold here']))
  })
})

test('a small hole in a large panel has a cross to find it by, and a larger one none', () => {
  // Text on a panel of 2300 is 20 high at most: holes under 4 wide get arms of 0.35 × 20 = 7.
  const bore = { surface: 'A', depth: 10, purpose: 'screw pilot' } as const
  const drawing = drawn(
    panelOf({
      length: 2300,
      width: 620,
      bores: [
        { ...bore, at: [400, 100, 0], diameter: 2.8 },
        { ...bore, at: [900, 100, 0], diameter: 5 },
      ],
    }),
  )
  const lines = entities(drawing).filter((one) => one.kind === 'line' && one.pen === 'hair' && one.from[1] > 0)
  expect(lines).toEqual([
    { kind: 'line', pen: 'hair', from: [393, 100], to: [407, 100] },
    { kind: 'line', pen: 'hair', from: [400, 93], to: [400, 107] },
  ])
})
