import { describe, expect, test } from 'vitest'
import { applyEdits, type Edit, readDefinition } from '../../src/project/index.ts'

const TEXT = `# our studio
storyrod: 1
stock:
  board: { thickness: 18 } # measured in June
common:
  stock: board
  depth: 400
  base: { casters: caster 75, inset: 90 }
  carcase: { joint: { fasten: dowel, spacing: 128 } }
modules:
  box:
    width: 600 # as the wall allows
    carcase height: 720
    inside: { loose shelves: 3 }
  other: { width: 500, carcase height: 720 }
`
const MODULE = ['modules', 'box'] as const

test('a value is set where it stands, and all comments stay', () => {
  const text = applyEdits(TEXT, [{ path: [...MODULE, 'width'], value: '610 mm' }])
  expect(text).toBe(TEXT.replace('width: 600 #', 'width: 610 mm #'))
})

test('a short form is written out when a part of it is set', () => {
  const text = applyEdits(TEXT, [{ path: [...MODULE, 'inside', 'loose shelves', 'pins', 'datum'], value: '7.5 mm' }])
  expect(text).toContain('inside: { loose shelves: { count: 3, pins: { datum: 7.5 mm } } }')
  expect(readDefinition(text, 'test.yaml').ok).toBe(true)
})

test('what a module has from common is copied before a part of it is changed, and common stays', () => {
  const text = applyEdits(TEXT, [{ path: [...MODULE, 'base', 'inset'], value: 110 }])
  expect(text).toContain('  base: { casters: caster 75, inset: 90 }\n')
  expect(text).toContain('    base: { casters: caster 75, inset: 110 }\n')
})

test('of a group that is merged key by key, only the part that is changed is copied', () => {
  const text = applyEdits(TEXT, [{ path: [...MODULE, 'carcase', 'joint', 'spacing'], value: 96 }])
  expect(text).toContain('    carcase: { joint: { fasten: dowel, spacing: 96 } }\n')
})

test('what is taken out is gone, and the rest of its group stays', () => {
  const text = applyEdits(TEXT, [{ path: ['modules', 'other'], value: undefined }])
  expect(text).not.toContain('other')
  expect(text).toContain('loose shelves: 3')
})

test('what stands behind an alias is copied, so that nothing else changes', () => {
  const shared = TEXT.replace('inside: { loose shelves: 3 }', 'inside: &shelves { loose shelves: 3 }').replace(
    'other: { width: 500,',
    'other: { width: 500, inside: *shelves,',
  )
  const text = applyEdits(shared, [{ path: ['modules', 'other', 'inside', 'loose shelves'], value: 2 }])
  expect(text).toContain('inside: &shelves { loose shelves: 3 }')
  expect(text).toContain('inside: { loose shelves: 2 }')
  expect(readDefinition(text, 'test.yaml').ok).toBe(true)
})

test('a list keeps its order, and an entry of it can be changed', () => {
  const split = TEXT.replace('{ loose shelves: 3 }', '{ side by side: [{}, { size: 200 }] }')
  const text = applyEdits(split, [{ path: [...MODULE, 'inside', 'side by side', 1, 'size'], value: 210 }])
  expect(text).toBe(split.replace('size: 200', 'size: 210'))
})

const changed = (text: string, ...edits: Edit[]): string => applyEdits(text, edits)

describe('what is added is written like its neighbours', () => {
  const LONG = `modules:
  one: # the first
    width: 600   # wide

  # the second
  two:
    width:     # not measured yet
    floor: {a: 1,
      b: 2, # two
    }
`

  test('a key goes behind the last line of its group, before the blank line and the comment of what follows', () => {
    expect(changed(LONG, { path: ['modules', 'one', 'depth'], value: 400 })).toBe(
      LONG.replace('# wide\n', '# wide\n    depth: 400\n'),
    )
  })

  test('a key without a value gets one, and the comment behind it stays a comment', () => {
    expect(changed(LONG, { path: ['modules', 'two', 'width'], value: '5 in' })).toBe(
      LONG.replace('width:     #', 'width:     5 in #'),
    )
  })

  test('in brackets on several lines, a key gets a line of its own', () => {
    expect(changed(LONG, { path: ['modules', 'two', 'floor', 'c'], value: 3 })).toBe(
      LONG.replace('# two\n', '# two\n      c: 3,\n'),
    )
  })

  test('a group that is too wide for one line is written in block style', () => {
    const words = 'x'.repeat(60)
    expect(changed('a:\n   b: 1\n', { path: ['a', 'c'], value: { d: words, e: { f: words, g: [1, words] } } })).toBe(
      `a:\n   b: 1\n   c:\n      d: ${words}\n      e:\n         f: ${words}\n         g: [1, ${words}]\n`,
    )
  })

  test('lines end as the others do, and a mark in front of the text stays', () => {
    expect(changed('\ufeffa: 1\r\nb: 2', { path: ['c', 'd'], value: [true] })).toBe(
      '\ufeffa: 1\r\nb: 2\r\nc: { d: [true] }',
    )
  })

  test('quotes stay where they can, and come where a text needs them', () => {
    const text = `a: 'x'\nb: "y"\nc: z\n`
    expect(
      changed(text, { path: ['a'], value: "it's" }, { path: ['b'], value: 'so' }, { path: ['c'], value: '600' }),
    ).toBe(`a: 'it''s'\nb: "so"\nc: "600"\n`)
  })
})

describe('what is taken out goes with its line', () => {
  test('and the comment above it stays', () => {
    expect(changed('a: 1\n# of b\nb: 2 # two\n\nc: 3\n', { path: ['b'], value: undefined })).toBe(
      'a: 1\n# of b\n\nc: 3\n',
    )
  })

  test('of the keys of an item, the next takes the place behind the dash', () => {
    const text = 'a:\n  - b: 1 # one\n    c: 2\n'
    expect(changed(text, { path: ['a', 0, 'b'], value: undefined })).toBe('a:\n  - c: 2\n')
    expect(changed(text, { path: ['a', 0, 'c'], value: undefined })).toBe('a:\n  - b: 1 # one\n')
  })

  test('the last key leaves an empty group, and a list that needs an item goes with its key', () => {
    expect(changed('a:\n  b: 1\nc: 2\n', { path: ['a', 'b'], value: undefined })).toBe('a: {}\nc: 2\n')
    const text = 'bits:\n  - { kind: twist, diameter: 5 }\nkerf: 3\n'
    expect(changed(text, { path: ['bits', 0], value: undefined })).toBe('kerf: 3\n')
    expect(changed('floor plan: [{ row: [a] }]\n', { path: ['floor plan', 0], value: undefined })).toBe(
      'floor plan: []\n',
    )
  })
})

describe('lists and the order of things', () => {
  const BAYS = `inside:
  stacked:
    # the drawer
    - size: 150

    # open
    - {}
    - front:
        kind: door
`
  const path = ['inside', 'stacked'] as const

  test('an item is put in before the comment of the one that follows', () => {
    expect(changed(BAYS, { path: [...path, 1], insert: { size: 20 } })).toBe(
      BAYS.replace('150\n', '150\n    - { size: 20 }\n'),
    )
    expect(changed(BAYS, { path: [...path, 0], insert: {} })).toBe(BAYS.replace('stacked:\n', 'stacked:\n    - {}\n'))
    expect(changed(BAYS, { path: [...path, 3], insert: 'x' })).toBe(`${BAYS}    - x\n`)
    expect(changed('a: [1, 2]\n', { path: ['a', 1], insert: 5 }, { path: ['a', 3], insert: 6 })).toBe(
      'a: [1, 5, 2, 6]\n',
    )
    expect(changed('a: 1\n', { path: ['bits', 0], insert: 5 })).toBe('a: 1\nbits: [5]\n')
  })

  test('what is moved takes the comment above it along, and blank lines stay', () => {
    expect(changed(BAYS, { path: [...path, 0], move: 2 })).toBe(`inside:
  stacked:
    # open
    - {}

    - front:
        kind: door
    # the drawer
    - size: 150
`)
    expect(changed('{ a: 1, b: 2,\n  c: 3 } # end\n', { path: ['c'], move: 0 })).toBe('{ c: 3, a: 1,\n  b: 2 } # end\n')
    const list = 'a: [\n  1, # one\n  22,\n  3 # three\n]\n'
    expect(changed(list, { path: ['a', 0], move: 2 })).toBe('a: [\n  22,\n  3, # three\n  1 # one\n]\n')
  })
})

describe('a name is changed wherever it is used', () => {
  const NAMES = `stock:
  01: { thickness: 18 } # ours
  'thin one': { thickness: 6 }
common: { stock: 01, carcase: { back: { sits: inset, stock: &t thin one } } }
hardware:
  grip: { like: pull 128 }
modules:
  01:
    title: 01
    inside:
      drawers: { stack: 2, packing: 01, box: { bottom stock: *t }, fronts: { pull: { item: grip } } }
  other: { stock: thin one }
floor plan:
  - row: ["01"]
  - row: [other]
    stands: { against: 01, at its: left }
findings: { caster-heights: { in: [other, 01], silence: so be it } }
`

  test('of a stock', () => {
    expect(changed(NAMES, { path: ['stock', '01'], rename: 'birch: 18' })).toBe(
      NAMES.replace('  01: { thick', '  "birch: 18": { thick')
        .replace('stock: 01', 'stock: "birch: 18"')
        .replace('packing: 01', 'packing: "birch: 18"'),
    )
    expect(changed(NAMES, { path: ['stock', 'thin one'], rename: "it's 6" })).toBe(
      NAMES.replace("'thin one'", "'it''s 6'")
        .replace('&t thin one', "&t it's 6")
        .replace('stock: thin one', "stock: it's 6"),
    )
  })

  test('of a module', () => {
    expect(changed(NAMES, { path: ['modules', '01'], rename: 'glaze store' })).toBe(
      NAMES.replace('  01:\n', '  glaze store:\n')
        .replace('["01"]', '["glaze store"]')
        .replace('against: 01', 'against: glaze store')
        .replace('[other, 01]', '[other, glaze store]'),
    )
  })

  test('of a piece of hardware', () => {
    expect(changed(NAMES, { path: ['hardware', 'grip'], rename: 'handle' })).toBe(
      NAMES.replace('  grip:', '  handle:').replace('item: grip', 'item: handle'),
    )
  })

  test('not where it is taken, and nowhere where nothing has it', () => {
    expect(() => changed(NAMES, { path: ['modules', '01'], rename: 'other' })).toThrow('the name other is taken')
    expect(() => changed(NAMES, { path: ['modules', 'none'], rename: 'x' })).toThrow(
      'there is nothing to rename at modules › none',
    )
    expect(changed(NAMES, { path: ['modules', '01'], rename: '01' })).toBe(NAMES)
  })
})

test('of what aliases share, the first alias takes over what an edit would change', () => {
  const text = 'a: &x { b: 1 } # here\nc: *x\nd: [*x]\n'
  expect(changed(text, { path: ['a', 'b'], value: 2 })).toBe('a: { b: 2 } # here\nc: &x { b: 1 }\nd: [*x]\n')
  expect(changed(text, { path: ['a'], value: undefined })).toBe('c: &x { b: 1 }\nd: [*x]\n')
})

describe('what an alias stands for, written out', () => {
  const BOX = `  # ours
  width: 600 # the wall

  inside: { shelves: 3,
    front: &f { kind: door } } # so
  depth: 500
`

  test('keeps its lines and comments, and its anchor stays with the value that is changed', () => {
    const text = `a: &a # first\n${BOX}c: *a # the same\nd: 1\n`
    expect(changed(text, { path: ['a', 'width'], value: 610 })).toBe(
      `a: &a # first\n${BOX.replace('600', '610')}c: # the same\n${BOX.replace('&f ', '')}d: 1\n`,
    )
  })

  test('is moved to its place in a list, and to the column of another group', () => {
    const text = `a: &a\n${BOX}c:\n    - *a\n    - 2\n`
    const there = BOX.replace('&f ', '')
      .replace(/^(?=.)/gm, '    ')
      .trimStart()
    expect(changed(text, { path: ['a', 'depth'], value: 1 })).toBe(
      `a: &a\n${BOX.replace('depth: 500', 'depth: 1')}c:\n    - ${there}    - 2\n`,
    )
  })

  test('is what an edit through the alias changes; the other one stays as it is', () => {
    const text = `a: &a\n${BOX}c: *a\n`
    expect(changed(text, { path: ['c', 'width'], value: 610 })).toBe(
      `a: &a\n${BOX}c:\n${BOX.replace('&f ', '').replace('600', '610')}`,
    )
  })

  test('goes on being shared by those that shared it', () => {
    const text = `a: &a\n${BOX}c: *a\nd: [*a]\n`
    expect(changed(text, { path: ['a', 'width'], value: 610 })).toBe(
      `a:\n${BOX.replace('600', '610')}c: &a\n${BOX.replace('&f ', '')}d: [*a]\n`,
    )
  })

  test('stands in one line within brackets', () => {
    expect(changed('a: &a\n  k: 1 # one\nc: { d: *a }\n', { path: ['a', 'k'], value: 2 })).toBe(
      'a: &a\n  k: 2 # one\nc: { d: { k: 1 } }\n',
    )
  })
})

test.each([
  [{ path: [], value: 1 }, 'an edit needs a path'],
  [{ path: [...MODULE, 'width', 'a'], value: 1 }, 'a plain value stands at width'],
  [{ path: [...MODULE, 'openings', 'a'], insert: 1 }, 'an item is put in by its index, not by a'],
  [{ path: [...MODULE, 'height'], move: 0 }, 'there is nothing to move at modules › box › height'],
  [{ path: ['modules', 'box'], move: 2 }, 'there is nothing to move from 0 to 2'],
] as const)('%j cannot be made', (edit, message) => {
  expect(() => applyEdits(TEXT, [edit])).toThrow(message)
})
