import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Stock } from '../../src/project/index.ts'
import { fewestSheets, type LaidPart, layOut, type Part } from '../../src/sheets/index.ts'

const stock = (length: number, width: number, grain: Stock['grain'] = 'along length', edgeTrim = 0): Stock => ({
  name: 'board',
  readings: [18],
  thickness: 18,
  thickest: 18,
  sheet: { length, width },
  grain,
  edgeTrim,
  density: 680,
  stiffness: 7000,
  at: ['stock', 'board'],
})

const part = (panel: string, length: number, width: number): Part => ({ panel, length, width })

interface Extent {
  readonly x0: number
  readonly x1: number
  readonly y0: number
  readonly y1: number
}

const extentOf = (one: LaidPart): Extent => ({
  x0: one.x,
  x1: one.x + (one.turned ? one.width : one.length),
  y0: one.y,
  y1: one.y + (one.turned ? one.length : one.width),
})

/** Whether straight cuts from edge to edge, each as wide as the kerf, take all parts apart: tried at every part's end. */
function cutsApart(parts: readonly Extent[], kerf: number): boolean {
  if (parts.length < 2) return true
  for (const [low, high] of [
    ['x0', 'x1'],
    ['y0', 'y1'],
  ] as const) {
    for (const at of parts.map((one) => one[high])) {
      const before = parts.filter((one) => one[high] <= at + 1e-6)
      const after = parts.filter((one) => one[low] >= at + kerf - 1e-6)
      if (before.length + after.length === parts.length && after.length > 0) {
        return cutsApart(before, kerf) && cutsApart(after, kerf)
      }
    }
  }
  return false
}

describe('parts on sheets', () => {
  test('the kerf counts between parts and not at the edges', () => {
    // Two parts of 498 and a cut of 4: 498 + 4 + 498 = 1000, the whole sheet.
    const two = [part('a', 498, 300), part('b', 498, 300)]
    expect(layOut(two, stock(1000, 300), 4, 1)?.sheets).toEqual([
      [
        { ...two[0], x: 0, y: 0, turned: false },
        { ...two[1], x: 502, y: 0, turned: false },
      ],
    ])
    expect(layOut(two, stock(1000, 300), 4.1, 1)).toBeUndefined()
  })

  test('edge trim is taken off both edges', () => {
    // 1020 − 2 × 10 = 1000 long, 320 − 20 = 300 wide.
    expect(layOut([part('a', 1000, 300)], stock(1020, 320, 'along length', 10), 3, 1)).toBeDefined()
    expect(layOut([part('a', 1000.1, 300)], stock(1020, 320, 'along length', 10), 3, 1)).toBeUndefined()
  })

  test('parts are turned only where there is no grain', () => {
    const tall = [part('a', 300, 900)]
    expect(layOut(tall, stock(1000, 400, 'none'), 3, 1)?.sheets[0]?.[0]?.turned).toBe(true)
    expect(layOut(tall, stock(1000, 400), 3, 1)).toBeUndefined()
  })

  test('the bare area is the least number of sheets', () => {
    // 5 × 600 × 400 = 1.2 m² on sheets of 1 m²: 2.
    const five = ['a', 'b', 'c', 'd', 'e'].map((name) => part(name, 600, 400))
    expect(fewestSheets(five, stock(1000, 1000))).toBe(2)
    expect(fewestSheets([], stock(1000, 1000))).toBe(0)
  })

  test('whatever the parts: each once, with the grain, inside, a kerf apart, and taken apart by straight cuts', () => {
    let laid = 0
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 50, max: 1200 }), fc.integer({ min: 50, max: 900 })), {
          minLength: 1,
          maxLength: 25,
        }),
        fc.constantFrom('along length', 'none'),
        fc.constantFrom(0, 1.8, 3.2),
        (sizes, grain, kerf) => {
          const parts = sizes.map(([length, width], k) => part(`p${k}`, length, width))
          const layout = layOut(parts, stock(2440, 1220, grain, 10), kerf, parts.length)
          expect(layout).toBeDefined()
          const sheets = layout?.sheets ?? []
          expect(
            sheets
              .flat()
              .map((one) => one.panel)
              .sort(),
          ).toEqual(parts.map((one) => one.panel).sort())
          expect(sheets.length).toBeGreaterThanOrEqual(fewestSheets(parts, stock(2440, 1220, grain, 10)))
          for (const sheet of sheets) {
            const extents = sheet.map(extentOf)
            for (const one of extents) {
              expect(one.x0).toBeGreaterThanOrEqual(0)
              expect(one.y0).toBeGreaterThanOrEqual(0)
              expect(one.x1).toBeLessThanOrEqual(2420 + 1e-6)
              expect(one.y1).toBeLessThanOrEqual(1200 + 1e-6)
            }
            extents.forEach((a, k) => {
              for (const b of extents.slice(k + 1)) {
                const apart = Math.max(a.x0 - b.x1, b.x0 - a.x1, a.y0 - b.y1, b.y0 - a.y1)
                expect(apart).toBeGreaterThanOrEqual(kerf - 1e-6)
              }
            })
            expect(cutsApart(extents, kerf)).toBe(true)
            if (grain !== 'none') expect(sheet.some((one) => one.turned)).toBe(false)
            laid += sheet.length
          }
        },
      ),
      { numRuns: 150 },
    )
    expect(laid).toBeGreaterThan(500)
  })
})
