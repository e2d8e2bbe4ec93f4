import { expect, test } from 'vitest'
import { strokeIn } from '../../src/drawing/pages/strokes.ts'

const WINDOW = { min: [0, 0], max: [10, 10] } as const

test('a line that only grazes the corner of a window is not drawn: no writer takes one without length', () => {
  // Through (10, 10) less a millionth: the piece inside is 1.4 millionths of a millimetre long.
  expect(strokeIn(WINDOW, [0, 20 - 1e-6], [20 - 1e-6, 0], 'hair')).toEqual([])
  expect(strokeIn(WINDOW, [0, 18], [18, 0], 'hair')).toEqual([
    { kind: 'line', from: [8, 10], to: [10, 8], pen: 'hair' },
  ])
})

test('a stroke is cut off at the edges of an area', () => {
  expect(strokeIn(WINDOW, [-5, 5], [5, 5], 'thin')).toEqual([{ kind: 'line', from: [0, 5], to: [5, 5], pen: 'thin' }])
})
