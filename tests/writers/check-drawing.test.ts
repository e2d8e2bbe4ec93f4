import { describe, expect, test } from 'vitest'
import type { Circle, ClosedPath, Drawing, Layer } from '../../src/drawing/index.ts'
import { checkDrawing } from '../../src/writers/check-drawing.ts'
import { blankWith, EVERYTHING, polygon, SLOT } from './drawings.ts'

const bore = (change: Partial<Circle> = {}, name = 'BORE-D5-DEEP13'): Layer => ({
  name,
  operation: 'bore',
  entities: [{ kind: 'circle', at: [37, 60], radius: 2.5, ...change }],
})

const cutout = (path: ClosedPath): Drawing => blankWith({ name: 'CUTOUT', operation: 'cutout', entities: [path] })
const bulged = (bulge: number): ClosedPath => ({
  kind: 'path',
  vertices: [
    { at: [0, 0], bulge },
    { at: [100, 0], bulge: 0 },
    { at: [100, 100], bulge: 0 },
  ],
})

test('a sound drawing passes', () => {
  expect(() => checkDrawing(EVERYTHING)).not.toThrow()
})

describe('refused, with the place and the value', () => {
  test.each<[string, Drawing]>([
    ['layer name "bore d5" is not', blankWith(bore({}, 'bore d5'))],
    ['layer name "__proto__" is not', blankWith(bore({}, '__proto__'))],
    [`layer name "${'A'.repeat(32)}" is not`, blankWith(bore({}, 'A'.repeat(32)))],
    ['two layers are named BORE-D5-DEEP13', blankWith(bore(), bore())],
    ['centre y is Infinity', blankWith(bore({ at: [1, Number.POSITIVE_INFINITY] }))],
    ['centre x is 1e+21', blankWith(bore({ at: [1e21, 1] }))],
    ['radius is NaN', blankWith(bore({ radius: Number.NaN }))],
    ['radius is 0, at least 0.05 mm', blankWith(bore({ radius: 0 }))],
    ['radius is -2.5', blankWith(bore({ radius: -2.5 }))],
    ['id "Bore 1" cannot be used', blankWith(bore({ id: 'Bore 1' }))],
    ['id bore-1 is used twice', blankWith(bore({ id: 'bore-1' }), bore({ id: 'bore-1' }, 'BORE-2'))],
    ['1.5 mm outside the view', blankWith(bore({ at: [459, 60] }))],
    ['1 vertices do not make a contour', cutout(polygon([0, 0]))],
    ['a segment without length at 5,5', cutout(polygon([0, 0], [5, 5], [5, 5], [0, 9]))],
    ['bulge is NaN', cutout(bulged(Number.NaN))],
    ['bulge is 30', cutout(bulged(30))],
    ['bulge 0.0001 at 0,0 is too flat', cutout(bulged(0.0001))],
    // 1 × 0.5 triangle: 0.25 mm².
    ['area is 0.25 mm²', cutout(polygon([0, 0], [1, 0], [0, 0.5]))],
    ['filled shapes stand only on', cutout({ ...SLOT, filled: true })],
    [
      'not allowed on a layer for bore',
      blankWith({ name: 'B', operation: 'bore', entities: [{ kind: 'line', from: [0, 0], to: [9, 0] }] }),
    ],
    [
      'text stands only on layers of notes and findings',
      blankWith({
        name: 'MARK',
        operation: 'mark',
        entities: [{ kind: 'text', at: [0, 0], height: 3, anchor: 'start', text: 'x' }],
      }),
    ],
    ['the view from', { ...blankWith(), view: { min: [0, 0], max: [0, 5] } }],
  ])('%s', (message, drawing) => {
    expect(() => checkDrawing(drawing)).toThrow(message)
  })
})
