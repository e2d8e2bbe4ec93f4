import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { formatInch, formatLength, formatMm } from '../../src/length/index.ts'

describe('millimetres', () => {
  test.each([
    [600, '600'],
    [0, '0'],
    [-0, '0'],
    [-0.0001, '0'],
    [0.0004, '0'],
    [0.0006, '0.001'],
    [17.95, '17.95'],
    [595.3125, '595.313'],
    [-12.5, '-12.5'],
    [1e-9, '0'],
    [100, '100'],
    [1e20, '100000000000000000000'],
    [123456789.1235, '123456789.124'],
  ])('%s is written %s', (mm, text) => {
    expect(formatMm(mm)).toBe(text)
  })

  test('NaN and infinities are our own mistake', () => {
    expect(() => formatMm(Number.NaN)).toThrow('not a length that can be written: NaN')
    expect(() => formatMm(Number.POSITIVE_INFINITY)).toThrow('not a length that can be written: Infinity')
    expect(() => formatMm(1e21)).toThrow('not a length that can be written: 1e+21')
  })

  test('any length has at most three decimals, no exponent, no -0, and is right to 0.0005', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e9, max: 1e9, noNaN: true }), (mm) => {
        const text = formatMm(mm)
        expect(text).toMatch(/^-?\d+(\.\d{1,3})?$/)
        expect(text).not.toBe('-0')
        expect(Math.abs(Number(text) - mm)).toBeLessThanOrEqual(0.0005 + 1e-6)
      }),
    )
  })
})

describe('inches', () => {
  // By hand: 595.3125 / 25.4 = 23.4375 = 23 7/16. 600 / 25.4 = 23.622047 = 23 + 39.81/64: 40/64 = 5/8 is 600.075, off by
  // -0.075. 18 / 25.4 = 0.708661 = 45.35/64: 45/64 is 17.859, off by 0.141. In 1/16: 11.34: 11/16 is 17.4625, off by
  // 0.5375.
  test.each([
    [595.3125, 64, '23 7/16 in'],
    [600, 64, '23 5/8 in − 0.1 mm'],
    [18, 64, '45/64 in + 0.1 mm'],
    [18, 16, '11/16 in + 0.5 mm'],
    [19.05, 16, '3/4 in'],
    [25.4, 64, '1 in'],
    [0, 64, '0 in'],
    [-0, 64, '0 in'],
    [0.04, 64, '0 in'],
    [0.19, 64, '0 in + 0.2 mm'],
    [-19.05, 64, '−3/4 in'],
    // 25.4 - 0.05 and a hair: still 1 in.
    [25.3501, 64, '1 in'],
    [25.3, 64, '1 in − 0.1 mm'],
  ] as const)('%s mm to the nearest 1/%s is %s', (mm, denominator, text) => {
    expect(formatInch(mm, denominator)).toBe(text)
  })

  test('what is taken off stands behind a true minus sign, U+2212: a hyphen between lengths reads as a range', () => {
    expect(formatInch(25.3).charCodeAt('1 in '.length)).toBe(0x2212)
  })

  test('what is read is never off by more than 0.05 mm', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 5000, noNaN: true }),
        fc.constantFrom(64 as const, 32 as const, 16 as const),
        (mm, denominator) => {
          const found = /^(?:(\d+)(?: |$))?(?:(\d+)\/(\d+) )?in(?: ([+−]) ([\d.]+) mm)?$/.exec(
            formatInch(mm, denominator),
          )
          const [, whole = '0', over = '0', under = '1', sign = '+', rest = '0'] = found ?? []
          const read = (Number(whole) + Number(over) / Number(under)) * 25.4 + (sign === '−' ? -1 : 1) * Number(rest)
          expect(found).not.toBeNull()
          expect(Math.abs(read - mm)).toBeLessThanOrEqual(0.05 + 1e-9)
          // Lowest terms: a fraction over a power of two has an odd upper number.
          expect(over === '0' || Number(over) % 2 === 1).toBe(true)
        },
      ),
      { numRuns: 1000 },
    )
  })
})

test('a length with its unit', () => {
  expect(formatLength(600, 'mm')).toBe('600 mm')
  expect(formatLength(609.6, 'in')).toBe('24 in')
})
