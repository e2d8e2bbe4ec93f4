import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { packPieces, type Rooms, type Size } from '../../src/templates/index.ts'
import '../support/seed.ts'

const ROOMS: Rooms = { upright: { width: 180, height: 240 }, lying: { width: 265, height: 155 } }
const strip = (width: number, height: number): Size => ({ width, height })

describe('hand-worked', () => {
  test('two strips of 260 × 50 lie one above the other on a sheet on its side: 50 + 4 + 50 of 155', () => {
    expect(packPieces([strip(260, 50), strip(260, 50)], ROOMS, 4)).toEqual([
      { sheet: 0, landscape: true, at: [0, 105] },
      { sheet: 0, landscape: true, at: [0, 51] },
    ])
  })
  test('three upright strips of 50 × 230 stand beside each other: 50 + 4 + 50 + 4 + 50 = 158 of 180', () => {
    expect(packPieces([strip(50, 230), strip(50, 230), strip(50, 230)], ROOMS, 4)).toEqual([
      { sheet: 0, landscape: false, at: [0, 10] },
      { sheet: 0, landscape: false, at: [54, 10] },
      { sheet: 0, landscape: false, at: [108, 10] },
    ])
  })
  test('a level strip and an upright one that suit no common sheet take a sheet each, in their order', () => {
    expect(packPieces([strip(260, 100), strip(100, 230)], ROOMS, 4)).toEqual([
      { sheet: 0, landscape: true, at: [0, 55] },
      { sheet: 1, landscape: false, at: [0, 10] },
    ])
  })
  test('small pieces fill the row of a taller one', () => {
    // 60 high: 120 + 2 + 58 = 180 wide, level with the room; below it 100 wide.
    const packed = packPieces([strip(120, 60), strip(58, 40), strip(100, 60)], ROOMS, 2)
    expect(packed.map(({ sheet }) => sheet)).toEqual([0, 0, 0])
  })
  test('no pieces take no sheet', () => expect(packPieces([], ROOMS, 4)).toEqual([]))
  test('a piece larger than any sheet is refused', () => {
    expect(() => packPieces([strip(266, 50)], ROOMS, 4)).toThrow('a piece of 266 × 50 mm is larger than the room')
    expect(() => packPieces([strip(170, 241)], ROOMS, 4)).toThrow('a piece of 170 × 241 mm is larger than the room')
  })
})

describe('any pieces', () => {
  const upright = fc.record({ width: fc.integer({ min: 5, max: 180 }), height: fc.integer({ min: 5, max: 240 }) })
  const lying = fc.record({ width: fc.integer({ min: 5, max: 265 }), height: fc.integer({ min: 5, max: 155 }) })
  const pieces = fc.array(fc.oneof(upright, lying), { minLength: 1, maxLength: 24 })

  test('lie inside their rooms, a gap apart, one way round a sheet, on no fewer sheets than their areas need', () => {
    fc.assert(
      fc.property(pieces, fc.integer({ min: 0, max: 6 }), (sizes, gap) => {
        const packed = packPieces(sizes, ROOMS, gap)
        expect(packed.length).toBe(sizes.length)
        const boxes = packed.map(({ at, sheet, landscape }, k) => {
          const { width, height } = sizes[k] ?? { width: 0, height: 0 }
          const room = landscape ? ROOMS.lying : ROOMS.upright
          expect(at[0]).toBeGreaterThanOrEqual(-1e-9)
          expect(at[1]).toBeGreaterThanOrEqual(-1e-9)
          expect(at[0] + width).toBeLessThanOrEqual(room.width + 1e-9)
          expect(at[1] + height).toBeLessThanOrEqual(room.height + 1e-9)
          return { x: at[0], y: at[1], width, height, sheet, landscape }
        })
        boxes.forEach((a, k) => {
          for (const b of boxes.slice(k + 1)) {
            if (a.sheet !== b.sheet) continue
            expect(a.landscape).toBe(b.landscape)
            const apart = Math.max(b.x - a.x - a.width, a.x - b.x - b.width, b.y - a.y - a.height, a.y - b.y - b.height)
            expect(apart).toBeGreaterThanOrEqual(gap - 1e-9)
          }
        })
        const sheets = 1 + Math.max(...packed.map(({ sheet }) => sheet))
        const least = sizes.reduce((sum, { width, height }) => sum + width * height, 0) / (180 * 240)
        expect(sheets).toBeGreaterThanOrEqual(Math.ceil(least - 1e-9))
        expect(sheets).toBeLessThanOrEqual(sizes.length)
        // Every sheet holds a piece, and sheets are numbered as their first pieces come.
        const firsts = Array.from({ length: sheets }, (_, sheet) => packed.findIndex((one) => one.sheet === sheet))
        expect(firsts).toEqual([...firsts].sort((a, b) => a - b))
        expect(firsts[0]).toBe(0)
      }),
    )
  })
  test('are laid alike each time', () => {
    fc.assert(
      fc.property(pieces, (sizes) => {
        expect(packPieces([...sizes], ROOMS, 3)).toEqual(packPieces(sizes, ROOMS, 3))
      }),
      { numRuns: 20 },
    )
  })
})
