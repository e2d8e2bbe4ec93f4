import { describe, expect, test } from 'vitest'
import { isSeq, parseDocument } from 'yaml'
import { type Project, readDefinition, renderProblems } from '../../src/project/index.ts'
import { toData } from '../../src/project/to-data.ts'

/** The project that a text gives; the problems as text when there are any. */
function project(text: string): Project {
  const read = readDefinition(text, 'x.yaml')
  if (!read.ok) throw new Error(renderProblems(read.problems))
  return read.project
}

/** What is wrong, without file and expectation. */
function messages(text: string): string[] {
  const read = readDefinition(text, 'x.yaml')
  return read.ok ? [] : read.problems.map((problem) => problem.message)
}

const LEAST = `storyrod: 1
stock: {ply: {thickness: 18}}
modules: {box: {width: 600, depth: 400, carcase height: 700, stock: ply}}
`

const FULL = `inside:
      stacked:
        - front: {kind: door, pull: {item: knob}}
          loose shelves: 1
        - loose shelves: 2
`
const defaults = (units: string, thickness: string, sizes: string) => `storyrod: 1
units: ${units}
stock: {ply: {thickness: ${thickness}}}
modules:
  one:
    {width: ${sizes}, depth: ${sizes}, carcase height: ${sizes}, stock: ply, base: {casters: caster 75}}
  two:
    width: ${sizes}
    depth: same as width
    working height: ${sizes}
    stock: ply
    ${FULL}
floor plan:
  - {row: [one, two], join: bolted}
`

describe('defaults, as the README names them', () => {
  test('in millimetres', () => {
    const { stocks, modules, rows, outputs, title } = project(defaults('mm', '18', '800'))
    const [one, two] = modules
    expect(title).toBe('')
    expect(stocks).toEqual([
      {
        name: 'ply',
        readings: [18],
        thickness: 18,
        thickest: 18,
        sheet: { length: 2440, width: 1220 },
        grain: 'along length',
        edgeTrim: 10,
        density: 680,
        stiffness: 7000,
        at: ['stock', 'ply'],
      },
    ])
    expect(one?.carcase).toMatchObject({
      top: 'between',
      bottom: 'between',
      joint: { item: { id: 'one-piece screw 7x50' }, endDistance: 50, spacing: 160 },
      back: {
        sits: 'applied',
        stock: { name: 'ply' },
        recess: 0,
        grooveDepth: 8,
        grooveSetback: 10,
        groovePlay: 0.2,
        rebateWidth: 9,
        edgePlay: 0.5,
        // The back is of the module's own 18 mm stock: the longer screw.
        joint: { item: { id: 'screw 4.5x45' }, endDistance: 50, spacing: 150 },
      },
    })
    expect(one).toMatchObject({ frontGap: 2, height: { of: 'carcase', mm: 800 } })
    expect(one?.base).toMatchObject({ kind: 'casters', inset: 'auto', footprintGap: 5 })
    expect(one?.inside).toEqual({
      size: undefined,
      share: 1,
      split: undefined,
      looseShelves: undefined,
      front: undefined,
      at: ['modules', 'one', 'inside'],
    })
    expect(two).toMatchObject({ depth: 800, height: { of: 'working', mm: 800 }, base: { kind: 'none' } })
    const [behind, open] = two?.inside.split?.bays ?? []
    expect(two?.inside.split).toMatchObject({ stock: { name: 'ply' }, joint: { item: { kind: 'one-piece screw' } } })
    expect(behind?.front).toMatchObject({
      kind: 'door',
      hang: 'left',
      lay: 'overlay',
      cover: { left: 'auto', right: 'auto', top: 'auto', bottom: 'auto' },
      stock: { name: 'ply' },
      reveal: { left: 1.5, right: 1.5, top: 1.5, bottom: 1.5 },
      gap: 3,
      insetGap: 2,
      hinge: [{ id: 'hinge 35 full' }, { id: 'hinge 35 half' }],
      hinges: 'auto',
      hingeEnd: 80,
      pull: { item: { id: 'knob' }, edgeDistance: 40, end: 'top', endDistance: 60 },
    })
    expect(behind?.looseShelves?.frontSetback).toBe(20)
    expect(open?.looseShelves).toMatchObject({
      count: 2,
      clearance: 1.2,
      frontSetback: 5,
      rearGap: 2,
      stock: { name: 'ply' },
      pins: {
        item: { id: 'pin 5' },
        pitch: 32,
        datum: 0,
        frontSetback: 37,
        rearSetback: 37,
        keepClear: 64,
        bothFaces: 'share',
      },
    })
    expect(rows).toMatchObject([
      { modules: ['one', 'two'], join: { item: { id: 'bolt M6' }, endInset: 64, sideInset: 96 } },
    ])
    expect(outputs).toEqual({
      paper: 'A4',
      margin: 10,
      overlap: 14,
      dxf: {
        units: 'mm',
        version: '2007',
        contours: 'bulges',
        notes: true,
        layers: {
          outline: 'OUTLINE',
          bore: 'BORE-D{diameter}-DEEP{depth}',
          boreThrough: 'BORE-D{diameter}-THROUGH',
          countersink: 'COUNTERSINK-D{diameter}-DEG{angle}',
          groove: 'GROOVE-W{width}-DEEP{depth}',
          rebate: 'REBATE-W{width}-DEEP{depth}',
          cutout: 'CUTOUT',
          pocket: 'POCKET-DEEP{depth}',
          mark: 'MARK',
          note: 'NOTE',
        },
      },
    })
  })

  // By hand, × 25.4: 96 in 2438.4, 48 in 1219.2, 1/2 in 12.7, 2 in 50.8, 6 in 152.4, 1/16 in 1.5875, 3/8 in 9.525,
  // 1/4 in 6.35, 3/4 in 19.05, 1 1/2 in 38.1, 2 1/2 in 63.5, 1/8 in 3.175, 3/32 in 2.38125, 3 3/4 in 95.25.
  test('in inches', () => {
    const { stocks, modules, rows, outputs } = project(defaults('in', '3/4', '32'))
    const [one, two] = modules
    expect(stocks[0]).toMatchObject({
      thickness: expect.closeTo(19.05, 9),
      sheet: { length: expect.closeTo(2438.4, 9), width: expect.closeTo(1219.2, 9) },
      edgeTrim: 12.7,
    })
    expect(one).toMatchObject({ width: expect.closeTo(812.8, 9), frontGap: 1.5875 })
    expect(one?.carcase.joint).toMatchObject({ endDistance: 50.8, spacing: expect.closeTo(152.4, 9) })
    expect(one?.carcase.back).toMatchObject({
      grooveSetback: expect.closeTo(9.525, 9),
      joint: { item: { id: 'screw #8x1-3/4' }, endDistance: 50.8, spacing: expect.closeTo(152.4, 9) },
    })
    const [behind, open] = two?.inside.split?.bays ?? []
    expect(behind?.front).toMatchObject({
      reveal: { left: 1.5875 },
      gap: 3.175,
      insetGap: expect.closeTo(2.38125, 9),
      pull: { edgeDistance: expect.closeTo(38.1, 9), endDistance: 63.5 },
    })
    expect(behind?.looseShelves?.frontSetback).toBeCloseTo(19.05, 9)
    expect(open?.looseShelves).toMatchObject({
      frontSetback: 6.35,
      pins: {
        item: { id: 'pin 1/4 in' },
        pitch: 25.4,
        frontSetback: expect.closeTo(38.1, 9),
        rearSetback: expect.closeTo(38.1, 9),
        keepClear: 63.5,
      },
    })
    expect(rows[0]?.join).toMatchObject({ item: { id: 'bolt 1/4 in' }, endInset: 63.5, sideInset: 95.25 })
    expect(outputs).toMatchObject({ paper: 'Letter', dxf: { units: 'in' } })
  })

  test('a 5 mm pin keeps the 32 mm pitch and 37 mm setback in an inch project', () => {
    const text = defaults('in', '3/4', '32').replace(
      'loose shelves: 2',
      'loose shelves: {count: 2, pins: {item: pin 5}}',
    )
    const pins = project(text).modules[1]?.inside.split?.bays[1]?.looseShelves?.pins
    expect(pins).toMatchObject({ pitch: 32, frontSetback: 37, rearSetback: 37 })
  })
})

const withCarcase = (carcase: string, common = '') =>
  LEAST.replace('stock: ply}}', `stock: ply, carcase: ${carcase}}}`).replace(
    'modules:',
    common === '' ? 'modules:' : `common: ${common}\nmodules:`,
  )

describe('what is said', () => {
  test('thickness: the mean sizes panels, the largest reading sizes grooves', () => {
    // (17.8 + 17.6 + 18.0) / 3 = 17.8
    const [stock] = project(LEAST.replace('thickness: 18', 'thickness: [17.8, 17.6, 18.0]')).stocks
    expect(stock?.thickness).toBeCloseTo(17.8, 9)
    expect(stock?.thickest).toBe(18)
  })

  test('the default groove is never deeper than half the side', () => {
    const text = withCarcase('{back: grooved}').replace('thickness: 18', 'thickness: 12')
    expect(project(text).modules[0]?.carcase.back).toMatchObject({ sits: 'grooved', grooveDepth: 6, joint: undefined })
  })

  test('carcase and back are taken from common key by key', () => {
    const text = withCarcase(
      '{top: over, back: {recess: 20}}',
      '{carcase: {bottom: over, back: {sits: inset, joint: none}}}',
    )
    expect(project(text).modules[0]?.carcase).toMatchObject({
      top: 'over',
      bottom: 'over',
      back: { sits: 'inset', recess: 20, joint: undefined },
    })
  })

  test('a module that says how its back sits leaves what common says of another kind of back', () => {
    const text = withCarcase('{back: applied}', '{carcase: {back: {sits: grooved, groove depth: 6}}}')
    expect(project(text).modules[0]?.carcase.back).toMatchObject({ sits: 'applied' })
  })

  test("a module's height stands before the one in common", () => {
    const text = withCarcase('{}', '{working height: 900}')
    expect(project(text).modules[0]?.height).toEqual({ of: 'carcase', mm: 700 })
  })

  test('pocket screws are chosen by the board, for the back by its own', () => {
    const text = withCarcase('{joint: pocket screw, back: {sits: inset, stock: ply 12}}').replace(
      'thickness: 18}',
      'thickness: 18}, ply 12: {thickness: 12.4}',
    )
    expect(project(text).modules[0]?.carcase).toMatchObject({
      joint: { item: { id: 'pocket screw 32' } },
      back: { joint: { item: { id: 'pocket screw 25' } } },
    })
  })

  test('a through screw suits the units', () => {
    const id = (text: string) => {
      const joint = project(text).modules[0]?.carcase.joint
      return joint && 'item' in joint && joint.item.id
    }
    expect(id(withCarcase('{joint: through screw}'))).toBe('screw 4.5x45')
    const inches = withCarcase('{joint: through screw}').replace('stock:', 'units: in\nstock:').replace('18}', '3/4}')
    expect(id(inches.replace('600', '24').replace('400', '16').replace('700', '28'))).toBe('screw #8x1-3/4')
  })

  test('edges of a front that say nothing keep the default', () => {
    const text = LEAST.replace(
      'stock: ply}}',
      'stock: ply, inside: {front: {kind: pair, reveal: {top: 3}, cover: {left: half}}}}}',
    )
    expect(project(text).modules[0]?.inside.front).toMatchObject({
      reveal: { left: 1.5, right: 1.5, top: 3, bottom: 1.5 },
      cover: { left: 'half', right: 'auto' },
    })
  })

  test('modules in no row stand alone behind the rows, in order', () => {
    const box = '{width: 600, depth: 400, carcase height: 700, stock: ply}'
    const text = `${LEAST.split('modules')[0] ?? ''}modules: {c: ${box}, b: ${box}, a: ${box}}\nfloor plan: [{row: [b]}]\n`
    expect(project(text).rows.map((row) => row.modules)).toEqual([['b'], ['c'], ['a']])
  })
})

describe('names', () => {
  const box = '{width: 600, depth: 400, carcase height: 700, stock: ply}'
  const named = (names: readonly string[], tail = '') =>
    project(
      `storyrod: 1\nstock: {ply: {thickness: 18}}\nmodules:\n${names.map((n) => `  ${n}: ${box}\n`).join('')}${tail}`,
    )

  test('names that look like numbers keep their writing and their order', () => {
    const { modules, rows } = named(['10', '2', '01'], 'floor plan: [{row: [2, 01, 10]}]\n')
    expect(modules.map((module) => module.name)).toEqual(['10', '2', '01'])
    expect(rows.map((row) => row.modules)).toEqual([['2', '01', '10']])
  })

  test('names of the language are names like any other', () => {
    const { modules } = named(['__proto__', 'constructor', 'toString', 'hasOwnProperty'])
    expect(modules.map((module) => module.name)).toEqual(['__proto__', 'constructor', 'toString', 'hasOwnProperty'])
    expect(modules.map((module) => module.key)).toEqual(['proto', 'constructor', 'tostring', 'hasownproperty'])
    expect(Object.hasOwn(Object.prototype, 'width')).toBe(false)
  })

  test('stock may be called __proto__ as well', () => {
    const text = LEAST.replace('{ply:', '{__proto__:').replace('stock: ply', 'stock: __proto__')
    expect(project(text).modules[0]?.stock).toMatchObject({ name: '__proto__', thickness: 18 })
  })

  test('control characters in a name reach no drawing', () => {
    expect(named(['"a\\0b\\n../c"']).modules[0]).toMatchObject({ name: 'a b ../c', key: 'a-b-c' })
  })

  test('stock named by a number', () => {
    expect(project(LEAST.replace('{ply:', '{18:').replace('stock: ply', 'stock: 18')).stocks[0]?.name).toBe('18')
  })
})

describe('the text', () => {
  test('a byte order mark, CRLF, lone CR and JSON are read', () => {
    const wanted = project(LEAST).modules
    expect(project(`\ufeff${LEAST}`).modules).toEqual(wanted)
    expect(project(LEAST.replaceAll('\n', '\r\n')).modules).toEqual(wanted)
    expect(project(LEAST.replaceAll('\n', '\r')).modules).toEqual(wanted)
    const json = {
      storyrod: 1,
      stock: { ply: { thickness: 18 } },
      modules: { box: { width: 600, depth: 400, 'carcase height': 700, stock: 'ply' } },
    }
    expect(project(JSON.stringify(json)).modules).toEqual(wanted)
  })

  test('anchors and aliases are followed', () => {
    const text = LEAST.replace('{box: {', '{one: &it {').replace('ply}}', 'ply}, two: *it}')
    expect(project(text).modules.map(({ key, width, at }) => [key, width, at])).toEqual([
      ['one', 600, ['modules', 'one']],
      ['two', 600, ['modules', 'two']],
    ])
  })

  test('more than 4 MiB is refused, and 4 MiB is read', () => {
    const most = 4 * 1024 * 1024
    const padded = (bytes: number) => `${LEAST}#${'x'.repeat(bytes - LEAST.length - 2)}\n`
    expect(messages(padded(most))).toEqual([])
    expect(messages(padded(most + 1))).toEqual(['the file is larger than 4 MiB'])
    // Two bytes each in UTF-8.
    expect(messages(`#${'é'.repeat(most / 2)}\n`)).toEqual(['the file is larger than 4 MiB'])
  })

  test('2,000 modules are read and 2,001 are refused', () => {
    const box = '{width: 600, depth: 400, carcase height: 700, stock: ply}'
    const many = (count: number) =>
      `storyrod: 1\nstock: {ply: {thickness: 18}}\nmodules:\n${Array.from({ length: count }, (_, i) => `  m${i}: ${box}\n`).join('')}`
    expect(project(many(2000)).modules.length).toBe(2000)
    expect(messages(many(2001))).toEqual(['modules: 2001 modules are more than are read'])
  })

  test('bays are read 40 deep and refused 41 deep', () => {
    const deep = (levels: number) => {
      let inside = '{}'
      for (let i = 0; i < levels; i++) inside = `{stacked: [{size: 20}, ${inside}]}`
      return LEAST.replace('carcase height: 700', 'carcase height: 9000').replace('ply}}', `ply, inside: ${inside}}}`)
    }
    expect(messages(deep(40))).toEqual([])
    expect(messages(deep(41)).map((message) => message.replace(/^.*: /, ''))).toEqual([
      'bays lie more than 40 deep within each other',
    ])
  })

  test('more than 500,000 values are refused', () => {
    // One value in so many places: the YAML of so long a text takes seconds to read.
    const text = 'storyrod: [1]\n'
    const document = parseDocument(text)
    const list = document.get('storyrod')
    if (!isSeq(list)) throw new Error('no list')
    const holds = (count: number): string | undefined => {
      list.items = Array(count).fill(list.items[0])
      return toData(document, text).bomb?.message
    }
    // The group of the root and the list are two more.
    expect(holds(499_998)).toBeUndefined()
    expect(holds(499_999)).toBe('the file holds more than 500000 values')
  })

  test('at most 1,000 problems are collected, and 200 shown', () => {
    const keys = Array.from({ length: 1500 }, (_, i) => `unknown ${i}: 1\n`).join('')
    const read = readDefinition(keys, 'x.yaml')
    const problems = read.ok ? [] : read.problems
    expect(problems.length).toBe(1000)
    expect(renderProblems(problems)).toMatch(/\nand 800 more problems\n$/)
  })
})

describe('where things stand', () => {
  const text = `storyrod: 1
stock: {ply: {thickness: 18}}
common:
  base: {casters: caster 75}
modules:
  box:
    width: 600
    depth: 400
    carcase height: 700
    stock: ply
    inside:
      side by side:
        - loose shelves: 2
        - front: {kind: door}
`
  const read = readDefinition(text, 'studio.yaml')
  const at = (...path: (string | number)[]) => {
    if (!read.ok) throw new Error(renderProblems(read.problems))
    const { file, line, column } = read.locate(path)
    return `${file}:${line}:${column}`
  }

  test.each([
    [['modules', 'box', 'width'], 'studio.yaml:7:12'],
    [['modules', 'box'], 'studio.yaml:6:3'],
    [['modules', 'box', 'inside', 'side by side', 0, 'loose shelves'], 'studio.yaml:13:26'],
    [['modules', 'box', 'inside', 'side by side', 1], 'studio.yaml:14:11'],
    [['modules', 'box', 'inside', 'side by side', 1, 'front', 'kind'], 'studio.yaml:14:25'],
    // What is not said is found at what holds it.
    [['modules', 'box', 'carcase', 'joint'], 'studio.yaml:6:3'],
    [['common', 'base'], 'studio.yaml:4:9'],
    [[], 'studio.yaml:1:1'],
    [['no', 'such', 'thing'], 'studio.yaml:1:1'],
  ] as const)('%j stands at %s', (path, expected) => {
    expect(at(...path)).toBe(expected)
  })

  test('a base from common is located there', () => {
    expect(read.ok && read.project.modules[0]?.base).toMatchObject({ at: ['common', 'base'] })
  })
})

describe('the back by its own thickness and the board around it', () => {
  const back = (thickness: number, rest: string, board = 18): string =>
    `storyrod: 1\nstock: { board: { thickness: ${board} }, back: { thickness: ${thickness} } }\nmodules:\n  box: { width: 600, depth: 500, carcase height: 700, stock: board, carcase: { back: { stock: back, ${rest} } } }\n`

  test('a thin one is held by a short screw, one over 10 mm by a long one', () => {
    const item = (text: string) => {
      const spec = project(text).modules[0]?.carcase.back
      return spec?.sits === 'applied' ? spec.joint?.item.id : undefined
    }
    expect(item(back(6, 'sits: applied'))).toBe('screw 3.5x25')
    expect(item(back(10, 'sits: applied'))).toBe('screw 3.5x25')
    expect(item(back(10.5, 'sits: applied'))).toBe('screw 4.5x45')
  })

  test('a pocket screw goes by the board whose edge is joined', () => {
    const spec = project(back(6, 'sits: applied, joint: pocket screw')).modules[0]?.carcase.back
    expect(spec?.sits === 'applied' && spec.joint?.item.id).toBe('pocket screw 32')
  })

  test('a rebate takes 9 mm, or half, and leaves 6', () => {
    // 18: 9. 16: half is 8, so 9. 12: 9 would leave 3, so half, 6. 24: half, 12.
    const width = (board: number) => {
      const spec = project(back(6, 'sits: rebated', board)).modules[0]?.carcase.back
      return spec?.sits === 'rebated' ? spec.rebateWidth : undefined
    }
    expect([18, 16, 12, 24].map(width)).toEqual([9, 9, 6, 12])
  })
})
