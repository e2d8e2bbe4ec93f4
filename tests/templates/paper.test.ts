import { describe, expect, test } from 'vitest'
import { paperSize } from '../../src/project/index.ts'
import { markLetters, pageLabel, planWhole } from '../../src/templates/index.ts'

const A4 = paperSize('A4')
const RESERVE = { left: 9, bottom: 24 }
const NO_SURROUND = { x0: 0, x1: 0, y0: 0, y1: 0 }

describe('paper', () => {
  test('ISO 216: A4 is 210 × 297, A3 is 297 × 420', () => {
    expect(A4).toEqual({ width: 210, height: 297 })
    expect(paperSize('A3')).toEqual({ width: 297, height: 420 })
  })

  test('ASME Y14.1 sizes A and B are 8.5 × 11 and 11 × 17 in; Legal is 8.5 × 14 in; an inch is 25.4 mm', () => {
    // 8.5 × 25.4 = 215.9; 11 × 25.4 = 279.4; 14 × 25.4 = 355.6; 17 × 25.4 = 431.8
    expect(paperSize('Letter').width).toBeCloseTo(215.9, 12)
    expect(paperSize('Letter').height).toBeCloseTo(279.4, 12)
    expect(paperSize('Legal').height).toBeCloseTo(355.6, 12)
    expect(paperSize('Tabloid').width).toBeCloseTo(279.4, 12)
    expect(paperSize('Tabloid').height).toBeCloseTo(431.8, 12)
  })
})

test('labels go on after Z, letters of marks after z', () => {
  expect([pageLabel(0, 0), pageLabel(1, 2), pageLabel(25, 0), pageLabel(26, 9)]).toEqual(['A1', 'B3', 'Z1', 'AA10'])
  expect([0, 1, 25, 26, 27].map(markLetters)).toEqual(['a', 'b', 'z', 'aa', 'ab'])
})

test('margins and overlaps that a printer or a mark cannot do are refused', () => {
  const face = { width: 100, height: 100, surround: NO_SURROUND, things: [{ at: [50, 50], radius: 4 }] } as const
  const plan = (margin: number, overlap: number) => planWhole(face, A4, { margin, overlap, reserve: RESERVE })
  expect(() => plan(1, 14)).toThrow('margin 1 mm is less than 1.5 mm')
  expect(() => plan(10, 11)).toThrow('overlap 11 mm is less than 12 mm')
  // 210 − 2 × 75 − 9 = 51 and 297 − 150 − 24 = 123; four overlaps are 56.
  expect(() => plan(75, 14)).toThrow('a window of 51 × 123 mm is too small for an overlap of 14 mm')
})
