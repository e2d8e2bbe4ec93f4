import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { formatInch, MM_PER_INCH, parseLength } from '../../src/length/index.ts'

const mm = (input: number | string, units: 'mm' | 'in' = 'mm') => {
  const parsed = parseLength(input, units)
  return parsed.ok ? parsed.mm : parsed.expected
}

describe('lengths that are read', () => {
  // One inch is 25.4 mm exactly: NIST SP 811 (2008), B.8. Fractions by hand: 23 7/16 = 23.4375; × 25.4 = 595.3125.
  test.each([
    [600, 'mm', 600],
    ['600', 'mm', 600],
    [' 600.5 ', 'mm', 600.5],
    [2, 'in', 50.8],
    ['2.5', 'in', 63.5],
    ['.5', 'in', 12.7],
    ['18 mm', 'in', 18],
    ['18mm', 'mm', 18],
    ['18 MM', 'mm', 18],
    ['1.8cm', 'mm', 18],
    ['1.1 cm', 'mm', 11],
    ['2.44 m', 'mm', 2440],
    ['23 7/16"', 'mm', 595.3125],
    ['23-7/16 in', 'mm', 595.3125],
    ['23 - 7/16 inches', 'mm', 595.3125],
    ['23 7/16', 'in', 595.3125],
    ['3/4 in', 'mm', 19.05],
    ['3/4', 'in', 19.05],
    ['5/4"', 'mm', 31.75],
    ['¾"', 'mm', 19.05],
    ['1½ in', 'mm', 38.1],
    ['2 ft', 'mm', 609.6],
    ["2'", 'mm', 609.6],
    // 12 + 6.5 = 18.5 in; × 25.4 = 469.9.
    [`1' 6 1/2"`, 'mm', 469.9],
    [`1'-6 1/2"`, 'mm', 469.9],
    ['1 ft 6 1/2 in', 'mm', 469.9],
    ['1′ 6 1/2″', 'mm', 469.9],
    [0, 'mm', 0],
    ['0', 'in', 0],
    [-0, 'mm', 0],
  ] as const)('%s in %s is %s mm', (input, units, expected) => {
    expect(mm(input, units)).toBeCloseTo(expected, 9)
  })

  test('centimetres are exact: 1.1 cm is 11 mm and not 11.000000000000002', () => {
    expect(mm('1.1 cm')).toBe(11)
  })

  test('a minus sign is read where it is allowed', () => {
    expect(parseLength('-5 mm', 'mm', { negative: true })).toEqual({ ok: true, mm: -5 })
    expect(parseLength(-5, 'mm', { negative: true })).toEqual({ ok: true, mm: -5 })
    expect(parseLength('-0', 'mm', { negative: true })).toEqual({ ok: true, mm: 0 })
  })
})

const USUAL = 'a length such as 600, 600 mm, 23 7/16 in'

describe('what is no length says what would be right', () => {
  test.each([
    ['60O', USUAL],
    ['', USUAL],
    ['mm', USUAL],
    ['six', USUAL],
    ['600 px', USUAL],
    ['600 constructor', USUAL],
    ['1 2 3', USUAL],
    ['1.2.3', USUAL],
    ['1e3', USUAL],
    ['0x10', USUAL],
    ['1'.repeat(400), USUAL],
    [Number.NaN, USUAL],
    [Number.POSITIVE_INFINITY, USUAL],
    [1e308 * 10, USUAL],
    ['1,5', 'a length with a decimal point, such as 1.5'],
    ['1,5 mm', 'a length with a decimal point, such as 1.5'],
    [-5, 'a length of 0 or more'],
    ['-5 mm', 'a length of 0 or more'],
    ['3/4', 'a decimal number such as 0.75, or a fraction of an inch such as 3/4 in'],
    ['3/4 mm', 'a decimal number such as 0.75, or a fraction of an inch such as 3/4 in'],
    ['3/0 in', 'a fraction with a number above 0 below the line, such as 3/4 in'],
    ['2 3/0 in', 'a fraction with a number above 0 below the line, such as 3/4 in'],
    ['23 17/16 in', 'a fraction smaller than one after the whole number, such as 23 7/16 in'],
    ['2.5 1/2 in', 'a fraction smaller than one after the whole number, such as 23 7/16 in'],
  ])('%s', (input, expected) => {
    expect(parseLength(input, 'mm')).toEqual({ ok: false, expected })
  })

  test('no text throws, and what is ok is finite and not below zero', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), fc.string({ unit: fc.constantFrom(...'0123456789 ./-,\'"mincft½″') }), fc.double()),
        fc.constantFrom('mm' as const, 'in' as const),
        (input, units) => {
          const parsed = parseLength(input, units)
          expect(parsed.ok ? Number.isFinite(parsed.mm) && parsed.mm >= 0 : parsed.expected !== '').toBe(true)
        },
      ),
      { numRuns: 2000 },
    )
  })

  test('a whole number of 64ths survives writing and reading', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 64 * 400 }), (steps) => {
        const exact = (steps / 64) * MM_PER_INCH
        const parsed = parseLength(formatInch(exact), 'mm')
        expect(parsed.ok && Math.abs(parsed.mm - exact) < 1e-9).toBe(true)
      }),
    )
  })
})
