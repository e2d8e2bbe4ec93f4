import { describe, expect, test } from 'vitest'
import { acceptedAt, definitionJsonSchema, namingAt } from '../../src/project/index.ts'

const keysAt = (...path: (string | number)[]): string[] => (acceptedAt(path)?.keys ?? []).map(({ key }) => key)

describe('what may stand at a place of a definition', () => {
  test('at the root: the keys of the schema, each with its sentence', () => {
    const root = acceptedAt([])
    expect(root?.keys.map(({ key }) => key)).toEqual(Object.keys(definitionJsonSchema().properties as object))
    expect(root?.keys.filter(({ required }) => required).map(({ key }) => key)).toEqual([
      'storyrod',
      'stock',
      'modules',
    ])
    expect(root?.keys.filter(({ about }) => !about.endsWith('.'))).toEqual([])
  })

  test('under names: what belongs to each, however the name reads', () => {
    for (const name of ['a', '10', '__proto__', 'constructor']) {
      expect(keysAt('stock', name)).toContain('edge trim')
      expect(keysAt('modules', name)).toContain('flip-over top')
    }
    expect(acceptedAt(['modules'])).toMatchObject({ freeKeys: true, keys: [] })
  })

  test('in bays again and again, in block lists, and in choices of a word or a group', () => {
    expect(keysAt('modules', 'a', 'inside', 'stacked', 0, 'side by side', 3)).toEqual(keysAt('modules', 'a', 'inside'))
    expect(acceptedAt(['modules', 'a', 'carcase', 'joint'])).toMatchObject({
      about: expect.stringContaining('How top, bottom and sides are fastened'),
      words: ['through screw', 'one-piece screw', 'dowel', 'pocket screw', 'cam and dowel', 'housing'],
      namings: [{ of: 'hardware' }],
    })
    expect(keysAt('modules', 'a', 'carcase', 'joint')).toContain('end distance')
    expect(acceptedAt(['modules', 'a', 'inside', 'front', 'kind'])?.words).toEqual(['door', 'pair', 'flap', 'fixed'])
    expect(acceptedAt(['modules', 'a', 'depth'])?.words).toEqual(['same as width', 'as large as fits'])
    expect(acceptedAt(['modules', 'a', 'inside', 'loose shelves'])).toMatchObject({ plain: true })
    expect(acceptedAt(['modules', 'a', 'inside'])).toMatchObject({ plain: false })
    expect(acceptedAt(['kerf'])?.expected).toBe('a length such as 600, 600 mm, 23 7/16 in')
  })

  test('names: of stock, modules and hardware, with the words that may stand in their place', () => {
    expect(namingAt(['common', 'stock'])).toMatchObject([{ of: 'stock' }])
    expect(namingAt(['modules', 'a', 'inside', 'drawers', 'packing'])).toMatchObject([
      { of: 'stock', words: ['auto', 'none'] },
    ])
    expect(namingAt(['floor plan', 0, 'row', 1])).toMatchObject([{ of: 'module' }])
    expect(namingAt(['findings', 'caster-heights', 'in', 0])).toMatchObject([{ of: 'module' }])
    expect(namingAt(['floor plan', 0, 'stands', 'against'])).toMatchObject([{ of: 'module' }])
    expect(namingAt(['common', 'base', 'casters'])).toMatchObject([{ of: 'hardware', kinds: ['caster'] }])
    expect(namingAt(['modules', 'a', 'openings', 0, 'panel'])).toEqual([])
  })

  test('nothing where no definition has such a path', () => {
    expect(acceptedAt(['modules', 'a', 'colour'])).toBeUndefined()
    expect(acceptedAt(['toString'])).toBeUndefined()
    expect(acceptedAt(['modules', 'a', 'width', 'x'])).toBeUndefined()
    expect(acceptedAt(['floor plan', 'x'])).toBeUndefined()
  })

  test('a list that needs an item is told from one that does not', () => {
    expect(acceptedAt(['bits'])).toMatchObject({ list: true, emptyList: false })
    expect(acceptedAt(['floor plan'])).toMatchObject({ list: true, emptyList: true })
  })
})
