import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { slug, uniqueKeys } from '../../src/project/index.ts'
import { nearestName } from '../../src/project/nearest.ts'

describe('keys', () => {
  test.each([
    ['glaze store', 'glaze-store'],
    ['Glaze Store №2', 'glaze-store-no2'],
    ['Töpferschrank', 'topferschrank'],
    ['Maßschrank', 'massschrank'],
    ['skåp på hjul', 'skap-pa-hjul'],
    ['../../etc/passwd', 'etc-passwd'],
    ['..\\..\\boot', 'boot'],
    ['a\u0000b', 'a-b'],
    ['', 'module'],
    ['...', 'module'],
    ['戸棚', 'module'],
    ['Шкаф для щёток', 'shkaf-dlya-shchyotok'],
    ['ΞΎΛΙΝΗ ντουλάπα', 'xylini-ntoulapa'],
    ['CON', 'con-module'],
    ['nul', 'nul-module'],
    ['com1', 'com1-module'],
    ['com1.txt', 'com1-txt'],
    ['-rf', 'rf'],
    ['*floor', 'floor'],
    ['an exceedingly long name of a cabinet in the studio', 'an-exceedingly-long-name-of-a-cabinet-in'],
  ])('%j becomes %s', (name, key) => {
    expect(slug(name)).toBe(key)
  })

  test('the same key twice gets a number', () => {
    expect(uniqueKeys(['a', 'A', 'a!', 'a-2', 'b'])).toEqual(['a', 'a-2', 'a-3', 'a-2-2', 'b'])
    const long = 'an exceedingly long name of a cabinet in the studio'
    expect(uniqueKeys([long, long])).toEqual([
      'an-exceedingly-long-name-of-a-cabinet-in',
      'an-exceedingly-long-name-of-a-cabinet-2',
    ])
  })

  test('any names: safe, short, each once', () => {
    const name = fc.oneof(fc.string({ unit: 'binary' }), fc.constantFrom('a', 'A', 'a-2', 'con', '..', ''))
    fc.assert(
      fc.property(fc.array(name, { maxLength: 30 }), (names) => {
        const keys = uniqueKeys(names)
        expect(keys.length).toBe(names.length)
        expect(new Set(keys).size).toBe(keys.length)
        for (const key of keys) {
          expect(key).toMatch(/^[a-z0-9][a-z0-9-]*$/)
          expect(key.length).toBeLessThanOrEqual(40)
          expect(key).not.toMatch(/^(con|prn|aux|nul|com\d|lpt\d)$/)
        }
      }),
      { numRuns: 500 },
    )
  })
})

describe('the nearest name', () => {
  const known = ['width', 'depth', 'carcase height', 'working height', 'stock']
  test.each([
    ['widht', 'width'],
    ['Width', 'width'],
    ['carcass height', 'carcase height'],
    ['stok', 'stock'],
    ['colour', undefined],
    ['', undefined],
    ['x'.repeat(1000), undefined],
  ])('%s: %s', (written, nearest) => {
    expect(nearestName(written, known)).toBe(nearest)
  })
})
