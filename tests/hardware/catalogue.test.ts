import { describe, expect, test } from 'vitest'
import { builderOf, builders, catalogue, findItem, itemsOfKind, USUAL_HINGES } from '../../src/hardware/index.ts'

/** What a figure of each form is in the code. */
const TYPES = {
  length: 'number',
  kilograms: 'number',
  degrees: 'number',
  size: 'object',
  range: 'object',
  limits: 'object',
  lengths: 'lengths',
  word: 'string',
  text: 'string',
} as const

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

  test('holds at least 40 items more than the first 25, of every kind several', () => {
    expect(catalogue.length).toBeGreaterThanOrEqual(65)
    for (const { kind } of builders) expect(itemsOfKind(kind).length, kind).toBeGreaterThan(2)
  })

  test('titles are generic: no name of a maker: no capital before a small letter', () => {
    const named = catalogue.filter((item) => /[A-Z][a-z]|[®™]/.test(item.title))
    expect(named.map((item) => item.title)).toEqual([])
  })

  test('every item is what its builder makes of its figures, and nothing about them is wrong', () => {
    for (const item of catalogue) {
      const { builder, figures } = builderOf(item)
      expect(builder.build({ id: item.id, title: item.title, source: item.source }, figures)).toEqual(item)
      expect(builder.faults(figures, String), item.id).toEqual([])
    }
  })

  test('figures have the form that their kind says', () => {
    for (const item of catalogue) {
      const { builder, figures } = builderOf(item)
      const fields = Object.values(builder.figures).map((spec) => spec.field)
      expect(
        Object.keys(figures).filter((field) => !fields.includes(field)),
        item.id,
      ).toEqual([])
      for (const { field, form, sign, words } of Object.values(builder.figures)) {
        const value = figures[field]
        if (value === undefined) continue
        const numbers = typeof value === 'object' ? Object.values(value) : typeof value === 'number' ? [value] : []
        expect(Array.isArray(value) ? 'lengths' : typeof value, `${item.id} ${field}`).toBe(TYPES[form])
        if (sign === 'above 0') expect(Math.min(...numbers), `${item.id} ${field}`).toBeGreaterThan(0)
        if (sign === '0 or more') expect(Math.min(...numbers), `${item.id} ${field}`).toBeGreaterThanOrEqual(0)
        if (words !== undefined) expect(words).toContain(value)
      }
    }
  })

  test('one word is written in one way in every kind', () => {
    const forms = new Map<string, string>()
    for (const builder of builders) {
      for (const [word, { form, about }] of Object.entries(builder.figures)) {
        expect(forms.get(word) ?? `${form} ${about}`, word).toBe(`${form} ${about}`)
        forms.set(word, `${form} ${about}`)
      }
    }
    expect(forms.size).toBeGreaterThan(30)
  })

  test('the holes of a caster lie on its plate', () => {
    for (const { id, plate, parts } of itemsOfKind('caster')) {
      for (const { x, y, diameter } of parts.plate ?? []) {
        expect(Math.abs(x) + diameter / 2, id).toBeLessThan(plate.x / 2)
        expect(Math.abs(y) + diameter / 2, id).toBeLessThan(plate.y / 2)
      }
    }
  })

  test('the holes beside a cup stay clear of it, and of the edge of the door at the least cup distance', () => {
    for (const { id, cupDiameter, cupDistance, parts } of itemsOfKind('cup hinge')) {
      const [cup, ...small] = parts.cup ?? []
      expect(cup?.diameter, id).toBe(cupDiameter)
      expect(small.length, id).toBe(2)
      for (const { x, y, diameter } of small) {
        expect(Math.hypot(x, y), id).toBeGreaterThan(cupDiameter / 2 + diameter / 2)
        expect(cupDistance.min + cupDiameter / 2 + x, id).toBeGreaterThan(diameter)
      }
    }
  })

  test('a hinge takes the heights of the plates of its system, and there is a usual hinge for every lay', () => {
    for (const hinge of itemsOfKind('cup hinge')) {
      const heights = itemsOfKind('hinge plate')
        .filter((plate) => plate.system === hinge.system)
        .map((plate) => plate.height)
      expect(
        hinge.plateHeights.filter((height) => !heights.includes(height)),
        hinge.id,
      ).toEqual([])
    }
    const usual = itemsOfKind('cup hinge').filter((hinge) => USUAL_HINGES.includes(hinge.id))
    expect(usual.map((hinge) => hinge.lay)).toEqual(['full', 'half', 'inset'])
  })

  test('pocket screws follow on each other without a gap, from 12 mm boards to 41', () => {
    const ranges = itemsOfKind('pocket screw').map((screw) => screw.board)
    expect(ranges.map(({ min }) => min)).toEqual([12, 17, 19.6, 26, 35])
    expect(ranges.map(({ max }) => max)).toEqual([17, 19.6, 26, 35, 41])
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
