import { describe, expect, test } from 'vitest'
import { catalogue, findItem } from '../../src/hardware/index.ts'

describe('the catalogue', () => {
  test('ids are unique and found', () => {
    expect(new Set(catalogue.map((item) => item.id)).size).toBe(catalogue.length)
    for (const item of catalogue) expect(findItem(item.id)).toBe(item)
    expect(findItem('no such thing')).toBeUndefined()
  })

  test('every item says where its figures come from', () => {
    for (const item of catalogue) expect(item.source, item.id).toMatch(/S\d+|common practice|from memory/)
  })

  test('drillings have unique keys within their part, and sizes that a bit can have', () => {
    for (const item of catalogue) {
      for (const drillings of Object.values(item.parts)) {
        expect(new Set(drillings.map((one) => one.key)).size, item.id).toBe(drillings.length)
        for (const one of drillings) {
          expect(one.diameter, item.id).toBeGreaterThan(1)
          expect(one.diameter, item.id).toBeLessThanOrEqual(40)
        }
      }
    }
  })

  test('mates name parts and drillings that are there', () => {
    for (const item of catalogue) {
      for (const mate of item.mates) {
        if (mate.relation === 'level')
          expect(
            [item.parts[mate.a]?.length, item.parts[mate.b]?.length].every((n) => (n ?? 0) > 0),
            item.id,
          ).toBe(true)
        else
          for (const [part, key] of [mate.a, mate.b])
            expect(
              item.parts[part]?.some((one) => one.key === key),
              `${item.id} ${part} ${key}`,
            ).toBe(true)
      }
    }
  })

  test('screws are as long as they say: the one-piece screw leaves 35 mm for an 18 mm board (50 − 18 + 3, common practice)', () => {
    const screw = findItem('one-piece screw 7x50')
    expect(screw?.parts.tip?.[0]?.depth).toEqual({ reach: 53, from: 'head' })
  })

  test('slides: 37, 165, 261, 389, 517, 645 from the front edge (conduct.edu.vn/drawer-guide), as long as they lie on it', () => {
    const holes = (id: string): number[] => {
      const slide = findItem(id)
      if (slide?.kind !== 'drawer slide') throw new Error(`${id} is no slide`)
      return (slide.parts.cabinet ?? []).map((hole) => hole.x + slide.setback)
    }
    expect(holes('slide 700')).toEqual([37, 165, 261, 389, 517, 645])
    // 2 + 450 ends before 517; 10 in: 2 + 254 before 261.
    expect(holes('slide 450')).toEqual([37, 165, 261, 389])
    expect(holes('slide 10 in')).toEqual([37, 165])
    expect(holes('slide 700').map((x) => x % 32)).toEqual([5, 5, 5, 5, 5, 5])
  })

  test('caster: swivel radius = wheel radius + offset: 37.5 + 29.5 = 67 without brake, 75 with (data sheet of a 75 mm wheel)', () => {
    const caster = findItem('caster 75')
    expect(caster?.kind === 'caster' && [caster.swivelRadius, caster.overallHeight, caster.loadKg]).toEqual([
      75, 100, 75,
    ])
  })
})
