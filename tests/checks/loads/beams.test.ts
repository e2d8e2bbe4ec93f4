import { describe, expect, test } from 'vitest'
import {
  compositeInertia,
  kitchenSag,
  longestSpan,
  middleSag,
  rectangleInertia,
  uniformSag,
} from '../../../src/checks/loads/index.ts'

describe('sag of a shelf', () => {
  // b 300, g 9.81, own mass left out; w = W g / L, I = b t³ / 12, 5 w L⁴ / (384 E I).
  test.each([
    ['birch', 764, 18, 8000, 40, 145_800, 1.953, 391],
    ['the same by the callipers', 764, 17.7, 8000, 40, 138_631, 2.054, 372],
    ['particleboard', 768, 16, 1600, 20, 102_400, 7.063, 109],
    ['MDF', 764, 18, 2200, 30, 145_800, 5.328, 143],
    ['birch, long', 1164, 18, 8000, 40, 145_800, 6.908, 168],
  ])('%s', (_, span, thickness, stiffness, mass, inertia, sag, ratio) => {
    const beam = { span, stiffness, inertia: rectangleInertia(300, thickness) }
    expect(beam.inertia).toBeCloseTo(inertia, -1)
    expect(uniformSag(beam, mass)).toBeCloseTo(sag, 3)
    expect(Math.round(span / uniformSag(beam, mass))).toBe(ratio)
  })

  test('with all of it in the middle it is W L³ / 48 E I, 8/5 of the other', () => {
    // 10 kg, 1000 mm, E 10 000, I 100 000: 98.1 × 1e9 / (48 × 1e9) = 2.04375; 5 × 0.0981 × 1e12 / (384 × 1e9) = 1.27734.
    const beam = { span: 1000, stiffness: 10_000, inertia: 100_000 }
    expect(middleSag(beam, 10)).toBeCloseTo(2.04375, 9)
    expect(uniformSag(beam, 10)).toBeCloseTo(1.27734375, 9)
  })

  test.each([
    [764, 4.008],
    [1220, 6.4],
    [1500, 6.4],
  ])('kitchen cabinets are allowed 1.6 for each 305, not over 6.4: %s', (span, sag) => {
    expect(kitchenSag(span)).toBeCloseTo(sag, 3)
  })
})

describe('longest spans for L/144, as the Architectural Woodwork Standards of 2009, p. 253, print them', () => {
  const PSI = 4.4482216152605 / 25.4 ** 2
  test.each([
    [950_000, 0.75, 40, 40],
    [950_000, 0.75, 50, 37],
    [950_000, 1, 40, 53],
    [950_000, 1, 50, 49],
    [1_800_000, 0.75, 40, 49],
    [1_800_000, 0.75, 50, 46],
    [1_800_000, 1, 40, 66],
    [1_800_000, 1, 50, 61],
  ])('E %s psi, %s in, %s lb/ft²: %s in', (psi, inches, load, printed) => {
    const span = longestSpan(psi * PSI, inches * 25.4, (load / 144) * PSI, 144)
    expect(Math.abs(span / 25.4 - printed)).toBeLessThanOrEqual(0.6)
  })

  test('in mm', () => {
    expect(longestSpan(6550, 19.05, 0.0019152, 144)).toBeCloseTo(1016.7, 1)
  })

  test('is the span at which the beam sags so far', () => {
    const span = longestSpan(8000, 18, 0.002, 200)
    const beam = { span, stiffness: 8000, inertia: rectangleInertia(300, 18) }
    expect(span / uniformSag(beam, (0.002 * span * 300) / 9.81)).toBeCloseTo(200, 6)
  })
})

describe('a section of several boards', () => {
  test('a shelf 282 × 18 of E 8000 with a strip 18 × 40 of E 10 000, flush above', () => {
    // Strip as wide as 18 × 10/8 = 22.5. Areas 5076 and 900, middles 9 and 20 down, 11 apart.
    // 282 × 18³ / 12 = 137 052; 22.5 × 40³ / 12 = 120 000; 5076 × 900 / 5976 × 11² = 92 499.4. In all 349 551.4.
    const board = { width: 282, height: 18, down: 0, stiffness: 8000 }
    const strip = { width: 18, height: 40, down: 0, stiffness: 10_000 }
    expect(compositeInertia([board, strip], 8000)).toBeCloseTo(349_551.4, 1)
    // The stiffness E I is the same, whichever board it is reckoned in.
    expect(compositeInertia([board, strip], 10_000) * 10_000).toBeCloseTo(349_551.4 * 8000, -4)
  })

  test('two halves make the whole', () => {
    const half = (down: number) => ({ width: 100, height: 9, down, stiffness: 7000 })
    expect(compositeInertia([half(0), half(9)], 7000)).toBeCloseTo(rectangleInertia(100, 18), 6)
  })
})
