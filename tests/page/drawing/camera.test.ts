import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type Camera,
  fitted,
  keptFitted,
  MARGIN_PX,
  panned,
  toScene,
  toScreen,
  zoomed,
} from '../../../src/page/drawing/camera.ts'

const SHEET = { width: 800, height: 600 }
const mm = fc.double({ min: -5000, max: 5000, noNaN: true })
const area = fc
  .tuple(mm, mm, fc.double({ min: 5, max: 4000, noNaN: true }), fc.double({ min: 5, max: 4000, noNaN: true }))
  .map(([x, y, width, height]) => ({ min: [x, y], max: [x + width, y + height] }) as const)
const camera = fc.record({ scale: fc.double({ min: 0.01, max: 30, noNaN: true }), x: mm, y: mm })

describe('a drawing on the sheet', () => {
  // 800 × 600 px less 16 px on each side: 768 × 568. 384 × 100 mm: 768 / 384 = 2 px a mm, 568 / 100 = 5.68; the smaller counts.
  // The middle of the drawing, (192, 50), comes to (400, 300): 400 − 2 · 192 = 16, 300 − 2 · 50 = 200.
  test('fitted, it fills the sheet but for the margin, in its middle', () => {
    expect(MARGIN_PX).toBe(16)
    expect(fitted({ min: [0, 0], max: [384, 100] }, SHEET)).toEqual({ scale: 2, x: 16, y: 200 })
  })

  test('without size it is shown at 1 px a mm, without NaN', () => {
    expect(fitted({ min: [3, 3], max: [3, 3] }, { width: 0, height: 0 })).toEqual({ scale: 1, x: -3, y: -3 })
  })

  test('what is fitted lies on the sheet', () => {
    fc.assert(
      fc.property(area, (bounds) => {
        const fit = fitted(bounds, SHEET)
        const [left, top] = toScreen(fit, bounds.min)
        const [right, bottom] = toScreen(fit, bounds.max)
        expect(Math.min(left, top)).toBeGreaterThan(0)
        expect(right).toBeLessThan(SHEET.width)
        expect(bottom).toBeLessThan(SHEET.height)
      }),
    )
  })

  test('from the drawing to the screen and back', () => {
    fc.assert(
      fc.property(camera, mm, mm, (view, x, y) => {
        const [backX, backY] = toScene(view, toScreen(view, [x, y]))
        expect(backX).toBeCloseTo(x, 5)
        expect(backY).toBeCloseTo(y, 5)
      }),
    )
  })

  test('zoomed, the point under the pointer stays where it is', () => {
    fc.assert(
      fc.property(area, fc.integer({ min: 0, max: 800 }), fc.integer({ min: 0, max: 600 }), (bounds, px, py) => {
        const fit = fitted(bounds, SHEET)
        for (const factor of [0.8, 1.7]) {
          const [x, y] = toScreen(zoomed(fit, [px, py], factor, bounds, SHEET), toScene(fit, [px, py]))
          expect(x).toBeCloseTo(px, 4)
          expect(y).toBeCloseTo(py, 4)
        }
      }),
    )
  })

  // The fit of 384 mm is 2 px a mm; four tenths of that are the farthest: 0.8. The nearest is 40.
  test('zoom ends where it is of no use', () => {
    const bounds = { min: [0, 0], max: [384, 100] } as const
    const fit = fitted(bounds, SHEET)
    expect(zoomed(fit, [0, 0], 1e-9, bounds, SHEET).scale).toBeCloseTo(0.8, 9)
    expect(zoomed(fit, [0, 0], 1e9, bounds, SHEET).scale).toBe(40)
  })

  // The drawing is 768 px wide; moved right by 5000 px, 44 px of it stay: its left edge at 800 − 44 = 756.
  test('it cannot be lost', () => {
    const bounds = { min: [0, 0], max: [384, 100] } as const
    const fit = fitted(bounds, SHEET)
    expect(toScreen(panned(fit, [5000, 0], bounds, SHEET), [0, 0])[0]).toBe(756)
    expect(toScreen(panned(fit, [-5000, 0], bounds, SHEET), [384, 0])[0]).toBe(44)
    expect(panned(fit, [7, -9], bounds, SHEET)).toEqual({ scale: 2, x: 23, y: 191 })
  })

  test('a fitted drawing that grows a little stays; one that outgrows the sheet or shrinks is fitted anew', () => {
    const fit: Camera = fitted({ min: [0, 0], max: [384, 100] }, SHEET)
    expect(keptFitted(fit, { min: [0, 0], max: [385, 110] }, SHEET)).toBe(fit)
    const wider = { min: [0, 0], max: [500, 100] } as const
    expect(keptFitted(fit, wider, SHEET)).toEqual(fitted(wider, SHEET))
    const smaller = { min: [0, 0], max: [100, 40] } as const
    expect(keptFitted(fit, smaller, SHEET)).toEqual(fitted(smaller, SHEET))
  })
})
