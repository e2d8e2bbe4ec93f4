import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Control, fieldReader } from '../../../src/page/form/control.ts'
import { defaultWords } from '../../../src/page/form/default-words.ts'
import { emptyField } from '../../../src/page/form/empty.ts'
import { inheritedAt } from '../../../src/page/form/inherited.ts'
import { namesFor } from '../../../src/page/form/names.ts'
import { shownValue, typedValue } from '../../../src/page/form/written.ts'
import { acceptedAt, type Data, type DefinitionPath, dataAt, dataNames } from '../../../src/project/index.ts'
import { dataOf, definitions } from './support.ts'

const fieldAt = fieldReader()
const MODULE = ['modules', 'any'] as const
const controlAt = (...path: DefinitionPath): Control => {
  const control = fieldAt(path)?.control
  if (control === undefined) throw new Error(`no control at ${path.join(' › ')}`)
  return control
}

describe('how a key is filled in', () => {
  test.each<[DefinitionPath, Control['kind']]>([
    [['title'], 'text'],
    [['units'], 'choice'],
    [['stock', 'ply', 'thickness'], 'list'],
    [['stock', 'ply', 'density'], 'number'],
    [[...MODULE, 'width'], 'length'],
    [[...MODULE, 'stock'], 'choice'],
    [[...MODULE, 'base'], 'choice'],
    [[...MODULE, 'base', 'inset'], 'length'],
    [[...MODULE, 'carcase', 'joint'], 'choice'],
    [[...MODULE, 'loads', 'on the top'], 'number'],
    [[...MODULE, 'inside', 'stacked', 4, 'side by side', 0, 'front', 'hinges'], 'list'],
    [[...MODULE, 'inside', 'loose shelves'], 'number'],
    [[...MODULE, 'openings', 3, 'svg'], 'text'],
    [['outputs', 'paper'], 'choice'],
    [['floor plan', 2, 'stands', 'shift'], 'length'],
  ])('%j: %s', (path, kind) => {
    expect(controlAt(...path).kind).toBe(kind)
  })

  test('every key of the schema has a control, keys of its own or items', () => {
    const lost: string[] = []
    const walk = (path: DefinitionPath, depth: number): void => {
      const field = fieldAt(path)
      if (field === undefined || (field.control === undefined && field.keys.length === 0 && !field.items)) {
        if (!acceptedAt(path)?.freeKeys) lost.push(path.join(' › '))
        return
      }
      if (depth > 7) return
      const below = field.items ? [...path, 0] : path
      for (const key of field.items ? (fieldAt(below)?.keys ?? []) : field.keys) walk([...below, key], depth + 1)
    }
    walk(['stock', 'a'], 0)
    walk([...MODULE], 0)
    walk(['common'], 0)
    for (const key of ['floor plan', 'bits', 'fit', 'outputs', 'kerf', 'title']) walk([key], 0)
    expect(lost).toEqual([])
  })
})

describe('what is typed', () => {
  const length: Control = { kind: 'length', words: ['auto'], negative: false }
  test.each<[string, unknown]>([
    ['600', 600],
    [' 23 7/16" ', '23 7/16"'],
    ['18mm', '18mm'],
    ['1.8 cm', '1.8 cm'],
    ['auto', 'auto'],
    ['', undefined],
  ])('the length %j is written as %j', (text, value) => {
    expect(typedValue(length, text, 'mm')).toEqual({ ok: true, value })
  })

  test.each(['60O', '1,5', '-3', 'aut', '3/4', '3/0 in'])(
    '%j is no length, and what would be right is said',
    (text) => {
      const typed = typedValue(length, text, 'mm')
      expect(typed.ok ? '' : typed.expected).toMatch(/such as|above 0|or more/)
    },
  )

  test('a bare fraction is a length in an inch project', () => {
    expect(typedValue(length, '3/4', 'in')).toEqual({ ok: true, value: '3/4' })
  })

  test('several readings are a list, one is not', () => {
    const thickness = controlAt('stock', 'ply', 'thickness')
    expect(typedValue(thickness, '17.8, 17.7; 17.9', 'mm')).toEqual({ ok: true, value: [17.8, 17.7, 17.9] })
    expect(typedValue(thickness, '17.8', 'mm')).toEqual({ ok: true, value: 17.8 })
    expect(typedValue(thickness, '17.8,', 'mm')).toEqual({
      ok: false,
      expected: 'something before and behind each comma',
    })
    expect(typedValue(controlAt('stock', 'ply', 'sheet'), '8 ft, 4 ft', 'mm')).toEqual({
      ok: true,
      value: ['8 ft', '4 ft'],
    })
  })

  test.each(['17,8', '17,8 mm', '17.7, 17,8', '18 ,1', '23 7/16,23 1/2'])(
    '%j may mean decimals, so it is refused and never becomes two readings',
    (text) => {
      expect(typedValue(controlAt('stock', 'ply', 'thickness'), text, 'mm')).toEqual({
        ok: false,
        expected: 'a length with a decimal point, such as 17.8; between two of them a comma and a space',
      })
    },
  )

  test('heights of hinges too; a sheet has two lengths, so a comma can only stand between them', () => {
    expect(typedValue(controlAt(...MODULE, 'inside', 'front', 'hinges'), '80,620', 'mm').ok).toBe(false)
    expect(typedValue(controlAt(...MODULE, 'inside', 'front', 'hinges'), '80;620', 'mm')).toEqual({
      ok: true,
      value: [80, 620],
    })
    expect(typedValue(controlAt('stock', 'ply', 'sheet'), '2440,1220', 'mm')).toEqual({ ok: true, value: [2440, 1220] })
  })

  test('one hinge number is a number; heights are a list', () => {
    const hinges = controlAt(...MODULE, 'inside', 'front', 'hinges')
    expect(typedValue(hinges, '3', 'mm')).toEqual({ ok: true, value: 3 })
    expect(typedValue(hinges, '80, 620', 'mm')).toEqual({ ok: true, value: [80, 620] })
    expect(typedValue(hinges, 'auto', 'mm')).toEqual({ ok: true, value: 'auto' })
  })

  test('a mass may have its unit, a count may not', () => {
    expect(typedValue(controlAt(...MODULE, 'loads', 'on the top'), '90 lb', 'mm')).toEqual({ ok: true, value: '90 lb' })
    expect(typedValue(controlAt('stock', 'ply', 'sheets'), '3 kg', 'mm').ok).toBe(false)
  })

  test('words that stand for numbers, true and false are written as such', () => {
    expect(typedValue(controlAt('outputs', 'dxf', 'version'), '2000', 'mm')).toEqual({ ok: true, value: 2000 })
    expect(typedValue(controlAt('outputs', 'dxf', 'notes'), 'false', 'mm')).toEqual({ ok: true, value: false })
    expect(typedValue(controlAt(...MODULE, 'stock'), '18', 'mm')).toEqual({ ok: true, value: '18' })
  })

  test('what a field shows of a definition, typed anew, is the same value', () => {
    let seen = 0
    const walk = (data: Data, path: DefinitionPath, units: 'mm' | 'in'): void => {
      const field = path.length > 1 ? fieldAt(path) : undefined
      const shown = shownValue(data)
      if (field?.control !== undefined && shown !== undefined && shown !== '') {
        const typed = typedValue(field.control, shown, units)
        // A list of one is written without its brackets where that says the same.
        const same =
          Array.isArray(data) && data.length === 1 && typed.ok && !Array.isArray(typed.value) ? data[0] : data
        expect([path, typed]).toEqual([path, { ok: true, value: same }])
        seen += 1
      } else if (Array.isArray(data)) {
        for (const [k, item] of data.entries()) walk(item, [...path, k], units)
      } else if (typeof data === 'object' && data !== null) {
        for (const [key, item] of Object.entries(data)) {
          // The project's own hardware is for the text.
          if (path.length === 0 && key === 'hardware') continue
          walk(item, [...path, path.length === 1 && key.startsWith('=') ? key.slice(1) : key], units)
        }
      }
    }
    fc.assert(
      fc.property(definitions, (text) => {
        const data = dataOf(text)
        walk(data, [], dataAt(data, ['units']) === 'in' ? 'in' : 'mm')
      }),
      { numRuns: 20 },
    )
    expect(seen).toBeGreaterThan(200)
  })
})

describe('what an empty field means', () => {
  test.each([
    ['Of it. Default 50 mm, or 2 in.', 'default 50 mm', 'default 2 in'],
    ['Default 2 mm, or 1/16 in.', 'default 2 mm', 'default 1/16 in'],
    [
      'Default 5 mm (1/4 in); behind a front 20 mm (3/4 in).',
      'default 5 mm; behind a front 20 mm',
      'default 1/4 in; behind a front 3/4 in',
    ],
    ['Default [2440, 1220], or [96, 48] in inches.', 'default 2440, 1220', 'default 96, 48'],
    ["The stock. Default: the module's stock.", "default the module's stock", "default the module's stock"],
    ['Outside width. Every module needs one.', '', ''],
  ])('%j', (about, mm, inches) => {
    expect([defaultWords(about, 'mm'), defaultWords(about, 'in')]).toEqual([mm, inches])
  })

  test.each<DefinitionPath>([['worktop'], ['base', 'casters'], ['base', 'fixed casters'], ['base', 'feet']])(
    '%j: none',
    (...within) => {
      expect(defaultWords(fieldAt([...MODULE, ...within])?.about ?? '', 'mm')).toBe('default none')
    },
  )

  const COMMON = dataOf(`storyrod: 1
stock: { ply: { thickness: 18 } }
common:
  depth: 560
  working height: 850
  base: { casters: caster 75, inset: 85 }
  carcase: { joint: dowel, back: { sits: applied, stock: ply } }
modules:
  one: {}
  two: { depth: 400, carcase height: 700, base: { feet: foot M8 }, carcase: { back: inset } }
`)
  test.each<[string, DefinitionPath, Data | undefined]>([
    ['one', ['depth'], 560],
    ['one', ['base', 'inset'], 85],
    ['one', ['carcase', 'back', 'sits'], 'applied'],
    ['two', ['depth'], undefined],
    // One of the two heights is its own, so the other does not hold.
    ['two', ['working height'], undefined],
    // The base is its own as a whole.
    ['two', ['base', 'inset'], undefined],
    // Carcase and back are merged key by key.
    ['two', ['carcase', 'joint'], 'dowel'],
    ['two', ['carcase', 'back', 'stock'], 'ply'],
  ])('%s %j from common: %j', (module, within, value) => {
    expect(inheritedAt(COMMON, ['modules', module, ...within])).toEqual(value)
  })
})

test.each([
  // What holds stands beneath, whole; 12 characters have room in the field.
  ['from common: 571.3', 'from common', '571.3'],
  ['from common: birch 18', 'from common', 'birch 18'],
  ['default through screws', 'default', 'through screws'],
  ['default 5 mm; behind a front 20 mm', 'default', '5 mm; behind a front 20 mm'],
  ['default none', 'default none', ''],
  ['now 364.4 mm', 'now 364.4 mm', ''],
  ['now 14 11/32 in', '', 'now 14 11/32 in'],
  ['', '', ''],
])('an empty field of which %j holds says %j, and beneath %j', (words, inside, beneath) => {
  expect(emptyField(words)).toEqual({ inside, beneath })
})

test('names to choose from: own hardware by the kind of what it is like, in the end', () => {
  const data = dataOf(`storyrod: 1
stock: { ply: { thickness: 18 } }
hardware:
  handle: { like: pull 128, centres: 120 }
  long handle: { like: handle, centres: 200 }
  roller: { like: caster 75 }
  pin 5: { hole depth: 11 }
modules: { box: { width: 600, depth: 400, carcase height: 700, stock: ply } }
`)
  const pull = controlAt(...MODULE, 'inside', 'front', 'pull', 'item')
  if (pull.kind !== 'choice') throw new Error('no choice')
  const groups = namesFor(data, pull, ['modules', 'a', 'inside', 'front', 'pull', 'item'])
  expect(groups.map(({ title }) => title)).toEqual(['of this project', 'pull'])
  expect(groups[0]?.names).toEqual(['handle', 'long handle'])
  expect(groups[1]?.names).toContain('pull 128')
  const stock = controlAt(...MODULE, 'stock')
  if (stock.kind !== 'choice') throw new Error('no choice')
  expect(namesFor(data, stock, ['common', 'stock'])).toEqual([{ title: 'stock', names: dataNames(data, 'stock') }])
})

test('casters are offered where they can stand, as what they are', () => {
  const data = dataOf(
    'storyrod: 1\nhardware:\n  own: { like: caster 75 }\n  stiff: { like: own2 }\n  own2: { like: fixed caster 75 }\nmodules: { a: {} }\n',
  )
  const titles = (key: string) => {
    const path = [...MODULE, 'base', key]
    const control = controlAt(...path)
    return control.kind === 'choice' ? namesFor(data, control, path) : []
  }
  const casters = titles('casters')
  expect(casters.map(({ title }) => title)).toEqual(['of this project', 'caster', 'levelling caster'])
  expect(casters[0]?.names).toEqual(['own'])
  expect(casters[2]?.names).toEqual(['levelling caster 50'])
  expect(casters.flatMap(({ names }) => names).filter((name) => name.startsWith('fixed'))).toEqual([])
  const fixed = titles('fixed casters')
  expect(fixed.map(({ title }) => title)).toEqual(['of this project', 'fixed caster'])
  expect(fixed[0]?.names).toEqual(['stiff', 'own2'])
})
