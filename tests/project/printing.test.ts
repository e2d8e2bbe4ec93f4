import { describe, expect, test } from 'vitest'
import { LONGEST_CUT_MM, paperSize } from '../../src/project/index.ts'
import { projectOf, ROUND_STOCK } from '../support/define.ts'

const outputsOf = (lines: string) =>
  projectOf(`${ROUND_STOCK}
modules: { box: { width: 600, depth: 400, carcase height: 700, stock: board } }
outputs: { ${lines} }
`).outputs

describe('rolls', () => {
  // 24 × 25.4 = 609.6; 36 × 25.4 = 914.4 (NIST SP 811, B.8: an inch is 25.4 mm exactly).
  test.each([
    ['roll 610', 610],
    ['roll 914', 914],
    ['roll 24 in', 609.6],
    ['roll 36 in', 914.4],
  ] as const)('%s is %f mm wide, and its pages are at most 5 m long', (name, width) => {
    expect(outputsOf(`paper: ${name}`).paper).toBe(name)
    const size = paperSize(name)
    expect(size.width).toBeCloseTo(width, 9)
    expect(size).toMatchObject({ height: 5000, roll: true })
  })

  test('the longest page is shorter than a PDF page may be', () => {
    // ISO 32000-1, annex C.2: 14 400 units; × 25.4 / 72 = 5080 mm.
    expect(LONGEST_CUT_MM).toBeLessThan((14_400 * 25.4) / 72)
    expect(paperSize('A4')).toEqual({ width: 210, height: 297 })
  })
})

describe('overlap and page budget', () => {
  test('are read, and have their defaults', () => {
    expect(outputsOf('overlap: 20, page budget: 3')).toMatchObject({ overlap: 20, pageBudget: 3 })
    // 5/8 × 25.4 = 15.875
    expect(outputsOf('overlap: 5/8 in').overlap).toBeCloseTo(15.875, 9)
    expect(outputsOf('paper: A3').overlap).toBe(14)
    expect(outputsOf('paper: A3')).not.toHaveProperty('pageBudget')
  })

  test('their limits are allowed', () => {
    expect(outputsOf('overlap: 12, page budget: 1')).toMatchObject({ overlap: 12, pageBudget: 1 })
    expect(outputsOf('overlap: 50, page budget: 50')).toMatchObject({ overlap: 50, pageBudget: 50 })
  })
})
