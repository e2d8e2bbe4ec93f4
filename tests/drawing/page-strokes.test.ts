import { expect, test } from 'vitest'
import { strokeIn } from '../../src/drawing/page-strokes.ts'

const area = { min: [0, 0], max: [10, 10] } as const

test('a stroke is cut off at the edges of an area', () => {
  expect(strokeIn(area, [-5, 5], [5, 5], 'thin')).toEqual([{ kind: 'line', from: [0, 5], to: [5, 5], pen: 'thin' }])
})

test('a stroke that only grazes a corner is none: a line without a length cannot be drawn', () => {
  // From (−5, 5 − 10⁻⁷) up at 45° it enters at the corner (0, 10) and leaves there, 10⁻⁷ further.
  expect(strokeIn(area, [-5, 5 - 1e-7], [5, 15 - 1e-7], 'hair')).toEqual([])
})
