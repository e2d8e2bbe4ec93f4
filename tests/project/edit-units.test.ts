import fc from 'fast-check'
import { afterEach, describe, expect, test, vi } from 'vitest'
import { MM_PER_INCH } from '../../src/length/index.ts'
import { layOutDefinition } from '../../src/outputs/index.ts'
import { Context } from '../../src/project/context.ts'
import { applyEdits, type Data, type DefinitionPath, type Project, readDefinition } from '../../src/project/index.ts'
import { anyDefinition } from '../support/random.ts'
import { sampleStems, sampleText } from '../support/samples.ts'

const FILES = new Map([['studio-mark.svg', '<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0H9V9Z"/></svg>']])
const toUnits = (text: string, units: 'mm' | 'in'): string => applyEdits(text, [{ path: ['units'], units }])
const inOther = (text: string): string => toUnits(text, unitsOf(text) === 'mm' ? 'in' : 'mm')

function projectOf(text: string): Project {
  const read = readDefinition(text, 'test.yaml', FILES)
  if (!read.ok) throw new Error(`${read.problems.map(({ message }) => message).join('\n')}\n${text}`)
  return read.project
}
const unitsOf = (text: string): 'mm' | 'in' => projectOf(text).units

/** The project without what its units are meant to change. */
function withoutUnits({ units: _, outputs, ...rest }: Project): unknown {
  const { units: __, ...dxf } = outputs.dxf
  return { ...rest, outputs: { ...outputs, dxf } }
}

/** Lengths of random definitions carry their unit; here as many as can be are bare numbers. */
function bare(text: string): string {
  const units = unitsOf(text)
  const own = (mm: number): string => String(units === 'mm' ? mm : mm / MM_PER_INCH)
  const stripped = text.replace(/"(-?\d+(?:\.\d+)?) mm"/g, (_, figure: string) => own(Number(figure)))
  return readDefinition(stripped, 'test.yaml').ok ? stripped : text
}
const definitions = fc.oneof(
  { arbitrary: anyDefinition.map(bare), weight: 6 },
  { arbitrary: fc.constantFrom(...sampleStems.map(sampleText)), weight: 1 },
)

const HEAD = `storyrod: 1
title: a box
units: mm # as we measure

# the boards
stock:
  board: { thickness: [17.8, 18.1], sheet: [2440, 1220], density: 680, sheets: 3 }
`
const BOX = `modules:
  box: { width: 600, depth: 500, carcase height: 720, stock: board }
`

describe('other units', () => {
  test('give each bare length the unit that it had, and leave counts, masses and what carries a unit', () => {
    expect(
      toUnits(
        `${HEAD}modules:
  box:
    width: 600 # the wall
    depth: "500"
    carcase height: 72 cm
    stock: board
    loads: { on the top: 40 }
    inside:
      loose shelves: 3
      front: { kind: door, hinges: [80, 620], reveal: { left: 0 } }
outputs: { check bars: [179.5, 180], page budget: 4, margin: 12.0 }
`,
        'in',
      ),
    ).toBe(`storyrod: 1
title: a box
units: in # as we measure
usual sizes: mm

# the boards
stock:
  board: { thickness: [17.8 mm, 18.1 mm], sheet: [2440 mm, 1220 mm], density: 680, sheets: 3 }
modules:
  box:
    width: 600 mm # the wall
    depth: "500 mm"
    carcase height: 72 cm
    stock: board
    loads: { on the top: 40 }
    inside:
      loose shelves: 3
      front: { kind: door, hinges: [80 mm, 620 mm], reveal: { left: 0 } }
outputs: { check bars: [179.5 mm, 180 mm], page budget: 4, margin: 12.0 mm }
`)
  })

  test('fractions without a mark are inches; back again, only the word of the units is changed', () => {
    const text = 'storyrod: 1\nunits: in\nstock: { b: { thickness: 0.7 } }\nkerf: 1/8\ncommon: { width: 23 7/16 }\n'
    const there = toUnits(text, 'mm')
    expect(there).toBe(
      'storyrod: 1\nunits: mm\nusual sizes: in\nstock: { b: { thickness: 0.7 in } }\nkerf: 1/8 in\ncommon: { width: 23 7/16 in }\n',
    )
    expect(toUnits(there, 'in')).toBe(there.replace('units: mm\nusual sizes: in\n', 'units: in\n'))
    expect(toUnits(text, 'in')).toBe(text)
  })

  test('are said where they were not, behind the title', () => {
    expect(toUnits(`storyrod: 1\r\ntitle: a\r\n${BOX}`, 'in')).toBe(
      `storyrod: 1\r\ntitle: a\r\nunits: in\r\nusual sizes: mm\r\n${BOX.replace('600', '600 mm').replace('500', '500 mm').replace('720', '720 mm')}`,
    )
    const json = '{\n "storyrod": 1,\n "kerf": 3e0\n}'
    expect(toUnits(json, 'in')).toBe('{\n "storyrod": 1,\n "units": "in",\n "usual sizes": "mm",\n "kerf": "3 mm"\n}')
    expect(toUnits('{ storyrod: 1, kerf: 1e-7 }', 'in')).toBe(
      '{ storyrod: 1, units: in, usual sizes: mm, kerf: 0.0000001 mm }',
    )
  })

  test('what aliases share stays shared, unless it is a length here and a count there', () => {
    expect(toUnits('kerf: &k 3\nfit: { step: *k }\nmodules: { a: &a { width: 9 }, b: *a }\n', 'in')).toBe(
      'kerf: &k 3 mm\nfit: { step: *k }\nmodules: { a: &a { width: 9 mm }, b: *a }\nunits: in\nusual sizes: mm\n',
    )
    const mixed = toUnits('kerf: &k 3\noutputs: { page budget: *k, margin: *k }\n', 'in')
    expect(mixed).toContain('kerf: 3 mm\n')
    expect(mixed).toMatch(/page budget: (?:&k )?3, margin: 3 mm/)
  })
})

describe('of any definition', () => {
  test('all sizes, fittings and holes stay, there and back', () => {
    let changed = 0
    fc.assert(
      fc.property(definitions, (text) => {
        const there = inOther(text)
        if (/"-?[\d.]+ (?:mm|in)"/.test(there)) changed += 1
        const before = projectOf(text)
        expect(withoutUnits(projectOf(there))).toEqual(withoutUnits(before))
        expect(projectOf(inOther(there))).toEqual(before)
      }),
      { numRuns: 30 },
    )
    expect(changed).toBeGreaterThan(10)
  })

  test.each(sampleStems)('the panels of %s are the same', (stem) => {
    const panels = (text: string) => {
      const opened = layOutDefinition(text, 'test.yaml', FILES)
      if (!opened.ok) throw new Error('no panels')
      return opened.laid.panels
    }
    const text = sampleText(stem)
    expect(panels(inOther(text))).toEqual(panels(text))
  })

  describe('what the reader takes for a length in project units is what gets a unit', () => {
    afterEach(() => {
      vi.restoreAllMocks()
    })

    test('no more and no less', () => {
      fc.assert(
        fc.property(definitions, (text) => {
          const read = new Set<string>()
          const length = vi.spyOn(Context.prototype, 'length')
          const data = readData(text)
          for (const [said] of length.mock.calls) if (said !== undefined) read.add(JSON.stringify(said.path))
          length.mockRestore()
          const written = leaves(data, readData(inOther(text)))
          for (const path of written) expect([...read]).toContain(JSON.stringify(path))
          expect(written.length).toBe([...read].filter((path) => isBare(data, JSON.parse(path))).length)
        }),
        { numRuns: 15 },
      )
    })
  })
})

function readData(text: string): Data {
  const read = readDefinition(text, 'test.yaml', FILES)
  if (!read.ok) throw new Error('not read')
  return read.data
}

/** Paths of the plain values that differ, those of the units themselves left out. */
function leaves(before: Data | undefined, after: Data | undefined, path: DefinitionPath = []): DefinitionPath[] {
  if (typeof before !== 'object' || before === null) {
    return before === after || (path.length === 1 && (path[0] === 'units' || path[0] === 'usual sizes')) ? [] : [path]
  }
  const inner = after as Readonly<Record<string, Data>>
  return Object.entries(before).flatMap(([key, one]) =>
    leaves(one, inner[key], [...path, Array.isArray(before) ? Number(key) : key.replace(/^=/, '')]),
  )
}

/** True for a number above or below 0, or a text of figures without a unit. */
function isBare(data: Data, path: DefinitionPath): boolean {
  const said = path.reduce<unknown>((one, step) => {
    const inner = one as Readonly<Record<string, unknown>> | undefined
    return inner?.[step] ?? inner?.[`=${step}`]
  }, data)
  return typeof said === 'number'
    ? said !== 0
    : typeof said === 'string' && /^-?[\d ./½¼¾]*[1-9½¼¾][\d ./½¼¾]*$/.test(said)
}
