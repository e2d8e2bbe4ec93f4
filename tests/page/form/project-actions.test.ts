import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  addModule,
  addRow,
  addStock,
  addToRow,
  duplicateModule,
  freeName,
  looseModules,
  nameFault,
  removeFromRow,
  removeModule,
  usesOfStock,
} from '../../../src/page/form/project-actions.ts'
import { dataAt, dataNames } from '../../../src/project/index.ts'
import { sampleText } from '../../support/samples.ts'
import { changed, dataOf, definitions } from './support.ts'

const STUDIO = sampleText('pottery-studio')
const studio = dataOf(STUDIO)

describe('modules of the pottery studio', () => {
  test('a new one takes from common what it can, and stands alone', () => {
    const { data, problems } = changed(STUDIO, addModule(studio, 'kiln stand', 'mm'))
    expect(problems).toEqual([])
    // Depth, working height and stock are common.
    expect(dataAt(data, ['modules', 'kiln stand'])).toEqual({ width: 600 })
    expect(looseModules(data)).toEqual(['kiln stand'])
  })

  test('one is duplicated behind all others, and all comments stay', () => {
    const { data, text, problems } = changed(STUDIO, duplicateModule(studio, 'tool locker', 'tool locker 2'))
    expect(problems).toEqual([])
    expect(dataNames(data, 'modules').at(-1)).toBe('tool locker 2')
    expect(dataAt(data, ['modules', 'tool locker 2'])).toEqual(dataAt(studio, ['modules', 'tool locker']))
    const comments = (source: string) => source.match(/#.*/g)
    expect(comments(text)).toEqual(comments(STUDIO))
  })

  test('one is renamed wherever it is named', () => {
    const { data, problems } = changed(STUDIO, [{ path: ['modules', 'tool locker'], rename: 'first aid' }])
    expect(problems).toEqual([])
    expect(dataAt(data, ['floor plan', 0, 'row', 3])).toBe('first aid')
    expect(dataAt(data, ['floor plan', 1, 'stands', 'against'])).toBe('first aid')
  })

  test('one is taken out of the floor plan, too, and what stood against it stands by itself', () => {
    const { data, problems } = changed(STUDIO, removeModule(studio, 'tool locker'))
    expect(problems).toEqual([])
    expect(dataAt(data, ['floor plan', 0, 'row'])).toEqual(['glaze store', 'bisque shelves', 'bucket bay'])
    expect(dataAt(data, ['floor plan', 1, 'stands'])).toBeUndefined()
  })

  test('with its last module a row goes', () => {
    const { data, problems } = changed(STUDIO, removeModule(studio, 'forming stand'))
    expect(problems).toEqual([])
    expect(dataAt(data, ['floor plan', 2, 'row'])).toEqual(['ware trolley', 'mould store'])
  })
})

describe('rows', () => {
  test('a module is taken out of its row and put into another', () => {
    const out = changed(STUDIO, removeFromRow(studio, 1, 1))
    expect(looseModules(out.data)).toEqual(['grinding bench'])
    const back = changed(out.text, addToRow(out.data, 3, 'grinding bench'))
    expect(dataAt(back.data, ['floor plan', 3, 'row'])).toEqual(['ware trolley', 'mould store', 'grinding bench'])
  })

  test('the first row of a definition without a floor plan', () => {
    const text = `storyrod: 1
stock: { ply: { thickness: 18 } }
modules: { box: { width: 600, depth: 400, carcase height: 700, stock: ply } }
`
    const { data, problems } = changed(text, addRow(dataOf(text), 'box'))
    expect(problems).toEqual([])
    expect(dataAt(data, ['floor plan'])).toEqual([{ row: ['box'] }])
  })
})

describe('of two modules that are joined and level one goes', () => {
  const text = (row: string) => `storyrod: 1
stock: { ply: { thickness: 18 } }
common: { depth: 400, carcase height: 700, stock: ply, width: 600 }
modules: { a: {}, b: {}, c: {} }
floor plan:
  - row: [c]
  - row: [a, b]
${row}`
  const rowAfter = (source: string, edits: (data: ReturnType<typeof dataOf>) => Parameters<typeof changed>[1]) => {
    const { data, problems } = changed(source, edits(dataOf(source)))
    expect(problems).toEqual([])
    return dataAt(data, ['floor plan', 1])
  }
  const bolted = text('    join: bolted\n    level: tops\n')

  test('what needs two goes, too', () => {
    expect(rowAfter(bolted, (data) => removeFromRow(data, 1, 0))).toEqual({ row: ['b'] })
    expect(rowAfter(bolted, (data) => removeModule(data, 'b'))).toEqual({ row: ['a'] })
  })

  test('one that touches another row stays joined to that, until that goes', () => {
    const against = text('    join: bolted\n    stands: { against: c, at its: right }\n')
    expect(rowAfter(against, (data) => removeFromRow(data, 1, 1))).toMatchObject({ row: ['a'], join: 'bolted' })
    const one = changed(against, removeFromRow(dataOf(against), 1, 1)).text
    const { data, problems } = changed(one, removeModule(dataOf(one), 'c'))
    expect(problems).toEqual([])
    expect(dataAt(data, ['floor plan'])).toEqual([{ row: ['a'] }])
    const apart = against.replace('at its: right', 'at its: right, gap: 20 mm')
    expect(rowAfter(apart, (data) => removeFromRow(data, 1, 1))).not.toHaveProperty('join')
  })
})

test('a stock is found wherever it is named, and not in a name that happens to be the same', () => {
  const data = dataOf(`storyrod: 1
title: ply
stock: { ply: { thickness: 18 }, thin: { thickness: 6 } }
common: { stock: ply, carcase: { back: { stock: thin } } }
modules:
  ply: { width: 600, depth: 400, carcase height: 700, base: { plinth: { height: 90, stock: ply } } }
  b: { width: 600, depth: 400, carcase height: 700, inside: { stacked: [{ front: { kind: door, stock: ply } }, {}] } }
`)
  expect(usesOfStock(data, 'ply')).toEqual([
    ['common', 'stock'],
    ['modules', 'ply', 'base', 'plinth', 'stock'],
    ['modules', 'b', 'inside', 'stacked', 0, 'front', 'stock'],
  ])
  expect(usesOfStock(data, 'thin')).toEqual([['common', 'carcase', 'back', 'stock']])
  expect(usesOfStock(data, 'none')).toEqual([])
})

test('names', () => {
  expect(freeName('module', ['module', 'module 2'])).toBe('module 3')
  expect(freeName('shelf 2', ['shelf 2', 'shelf 3'])).toBe('shelf 4')
  expect(nameFault(' ', [])).toBe('a name')
  expect(nameFault('box', ['box'])).toBe('a name that no other has')
  expect(nameFault('box', ['other'])).toBeUndefined()
})

test('modules and stocks are added, duplicated and taken out of any definition without a mistake elsewhere', () => {
  fc.assert(
    fc.property(definitions, fc.nat(), (text, which) => {
      const data = dataOf(text)
      const names = dataNames(data, 'modules')
      const name = names[which % names.length] ?? ''
      const units = dataAt(data, ['units']) === 'in' ? 'in' : 'mm'

      const added = changed(text, addModule(data, 'quite new', units))
      expect(added.problems).toEqual([])
      expect(dataNames(added.data, 'modules')).toEqual([...names, 'quite new'])

      const copy = freeName(name, names)
      const twice = changed(text, duplicateModule(data, name, copy))
      expect(twice.problems).toEqual([])
      expect(dataNames(twice.data, 'modules')).toEqual([...names, copy])

      const stocked = changed(text, addStock('quite new', units))
      expect(stocked.problems).toEqual([])

      if (names.length < 2) return
      const fewer = changed(text, removeModule(data, name))
      expect(dataNames(fewer.data, 'modules')).toEqual(names.filter((one) => one !== name))
      expect(looseModules(fewer.data)).toEqual(looseModules(data).filter((one) => one !== name))
      // Rows that come too early then, or a stock that nothing uses, may be left: never the module itself.
      expect(fewer.problems.filter(({ message }) => message.includes(`"${name}"`))).toEqual([])
    }),
    { numRuns: 20 },
  )
})
