import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { areaOfEntity } from '../../src/drawing/areas.ts'
import { type Cover, type CoverPanel, coverDrawings, setupOf, toolsOf } from '../../src/drawing/index.ts'
import type { Drawing, Text } from '../../src/drawing/types.ts'
import { type PaperName, paperSize } from '../../src/project/index.ts'
import { checkDrawing } from '../../src/writers/check-drawing.ts'
import { built, ROUND_STOCK } from '../support/define.ts'
import { builtSample } from '../support/samples.ts'

const BOX = built(`${ROUND_STOCK}
title: A box
modules:
  box:
    width: 500
    depth: 400
    carcase height: 600
    stock: board
    carcase: { joint: pocket screw, back: { sits: grooved, stock: thin } }
    base: { casters: caster 75 }
    inside: { loose shelves: 1, front: { kind: door } }
    openings: [{ panel: left side, shape: round, diameter: 60, from: centred }]
`)

const PANELS: readonly CoverPanel[] = [
  {
    module: 'box',
    panel: 'left side',
    faces: [
      { face: 'A', sheets: 3, kinds: ['face'] },
      { face: 'B', sheets: 1, kinds: ['strip'] },
    ],
  },
  { module: 'box', panel: 'shelf 1', faces: [] },
  { module: 'chest', panel: 'door', faces: [{ face: 'A', sheets: 1, kinds: ['hardware'] }] },
]

function coverOf(
  panels: readonly CoverPanel[],
  print: { paper?: PaperName; stamp?: string; margin?: number } = {},
): Cover {
  const { paper = 'A4', stamp, margin = 10 } = print
  const sheets = panels.flatMap(({ faces }) => faces).reduce((sum, face) => sum + face.sheets, 0)
  return {
    project: BOX.project,
    setup: setupOf({ paper, margin }, 'mm', stamp),
    panels,
    tools: toolsOf(BOX.project, BOX.panels),
    count: { sheets, grid: 12 },
    measuring: 1,
  }
}

const textsOf = (page: Drawing): Text[] =>
  page.layers.flatMap(({ entities }) => entities).filter((entity) => entity.kind === 'text')

/** What is read on each line of a column, from the top: the texts of one baseline in one column, from the left. */
function linesOf(pages: readonly Drawing[], columns: number): string[] {
  return pages.flatMap((page) => {
    const width = page.view.max[0]
    const columnOf = ([x]: readonly [number, number]): number => Math.floor(((x - 10) * columns) / (width - 20))
    const lines = new Map<string, Text[]>()
    for (const text of textsOf(page)) {
      const start: readonly [number, number] = [areaOfEntity(text).min[0], text.at[1]]
      const key = `${columnOf(start)} ${text.at[1].toFixed(3)}`
      lines.set(key, [...(lines.get(key) ?? []), text])
    }
    const order = (key: string): number => Number(key.split(' ')[0]) * 1e6 - Number(key.split(' ')[1])
    return [...lines]
      .sort(([a], [b]) => order(a) - order(b))
      .map(([, texts]) =>
        texts
          .sort((a, b) => areaOfEntity(a).min[0] - areaOfEntity(b).min[0])
          .map(({ text }) => text)
          .join(' | '),
      )
  })
}

test('how to write the readings of the check bars: in an inch project, where a bare number is inches, with their unit', () => {
  const said = (units: 'mm' | 'in'): string => {
    const cover = { ...coverOf(PANELS), setup: setupOf({ paper: 'A4', margin: 10 }, units, undefined) }
    return linesOf(coverDrawings(cover), 2).join(' ')
  }
  expect(said('mm')).toContain('(outputs: check bars: [across, down])')
  expect(said('mm')).toContain('--check-bars across,down:')
  expect(said('in')).toContain('(outputs: check bars: [across mm, down mm], each with its unit)')
  expect(said('in')).toContain('--check-bars "across mm,down mm":')
})

describe('contents', () => {
  test('every panel once, with its pages after the measuring page and the cover', () => {
    const pages = coverDrawings(coverOf(PANELS))
    expect(pages).toHaveLength(1)
    const lines = linesOf(pages, 2)
    // Page 1 is measured, page 2 the cover: the side has 3 to 5 and 6, the door 7.
    const from = lines.indexOf('face | sheets | pages')
    expect(from).toBeGreaterThan(0)
    expect(lines.slice(from + 1, from + 7)).toEqual([
      'box',
      'left side | A: whole face | 3 | 3–5',
      'B: strips | 1 | 6',
      'shelf 1 | cut only',
      'chest',
      'door | A: hardware | 1 | 7',
    ])
    expect(lines[2]).toBe(
      '5 sheets of A4 to print beside this cover; a plain grid of pages would take 12. 1 panel is only cut.',
    )
  })

  test('page numbers count the sheets of a cover that takes several; what goes on in a new column says so', () => {
    const many = Array.from({ length: 200 }, (_, k): CoverPanel => {
      return { module: 'long store', panel: `board ${k + 1}`, faces: [{ face: 'A', sheets: 2, kinds: ['face'] }] }
    })
    const pages = coverDrawings(coverOf(many))
    expect(pages.length).toBeGreaterThan(1)
    const lines = linesOf(pages, 2)
    const numbers = lines.flatMap(
      (line) => /^board \d+ \| A: whole face \| 2 \| (\d+)–(\d+)$/.exec(line)?.slice(1) ?? [],
    )
    // 1 measuring page and the cover come before; then two pages each.
    expect(numbers.map(Number)).toEqual(Array.from({ length: 400 }, (_, k) => 1 + pages.length + 1 + k))
    const heads = lines.filter((line) => line.startsWith('long store'))
    expect(heads[0]).toBe('long store')
    expect(new Set(heads.slice(1))).toEqual(new Set(['long store, on']))
    // The contents begin in the last column of the first page, and go on in all those after it that have any.
    expect(heads.length).toBe(4)
    expect(pages.map((page) => textsOf(page).at(-1)?.text)).toEqual(
      pages.map((_, k) => `cover, ${k + 1} of ${pages.length}`),
    )
  })
})

describe('bits', () => {
  test('of a small box, worked by hand', () => {
    const tools = toolsOf(BOX.project, BOX.panels)
    const found = tools.map(({ name, settings }) => `${name}: ${settings.map(({ words }) => words).join('; ')}`)
    expect(found).toContain('forstner bit 35 mm: deep 12.5')
    expect(found).toContain('router or jigsaw: right through')
    // The back of 6 in a groove 0.2 wider and 8 deep, in the sides and the two boards between them.
    expect(found).toContain('straight router bit, or saw: groove 6.2 wide, 8 deep')
    const groove = tools.at(-2)?.settings[0]
    expect(groove).toEqual({ words: 'groove 6.2 wide, 8 deep', count: 4, purposes: ['groove for the back'] })
    expect(tools.at(-1)?.settings).toEqual([{ words: 'right through', count: 1, purposes: [expect.any(String)] }])
  })

  test.each(['pottery-studio', 'clay-cart', 'kiln-carts'])(
    'of %s: every hole, sink, groove and opening is counted',
    (stem) => {
      const { project, panels } = builtSample(stem)
      const tools = toolsOf(project, panels)
      const counted = (of: RegExp): number =>
        tools
          .filter(({ name }) => of.test(name))
          .flatMap(({ settings }) => settings)
          .reduce((sum, { count }) => sum + count, 0)
      const bores = panels.flatMap((panel) => panel.bores)
      const sinks = bores.filter(({ sink }) => sink?.shape === 'cone').length
      const steps = bores.filter(({ sink }) => sink?.shape === 'counterbore').length
      expect(counted(/^countersink /)).toBe(sinks)
      expect(counted(/ bit \d/)).toBe(bores.length + steps)
      expect(counted(/^straight router/)).toBe(panels.flatMap(({ grooves }) => grooves).length)
      expect(counted(/^router or jigsaw/)).toBe(panels.flatMap(({ cutouts }) => cutouts).length)
      const through = bores.filter((bore) => bore.through && bore.leanDeg === undefined).length
      expect(
        tools
          .flatMap(({ settings }) => settings)
          .reduce((n, { words, count }) => (/^through/.test(words) ? n + count : n), 0),
      ).toBe(through)
      const names = tools.map(({ name }) => name)
      expect(new Set(names).size).toBe(names.length)
    },
  )

  test('the bits of the shop are named as they are', () => {
    const shop = built(`${ROUND_STOCK}
modules: { box: { width: 500, depth: 400, carcase height: 600, stock: board, carcase: { back: none, joint: dowel } } }
bits: [{ kind: end mill, diameter: 6 }, { kind: twist, diameter: 8 }]
`)
    expect(toolsOf(shop.project, shop.panels).map(({ name }) => name)).toEqual(['twist bit 8 mm'])
  })
})

/** What stands where it must not: over the margins, or over other words or lines. */
function faults(page: Drawing, margin: number): string[] {
  const { max } = page.view
  const entities = page.layers.flatMap((layer) => layer.entities)
  const areas = entities.map((entity) => ({ entity, area: areaOfEntity(entity) }))
  const name = (entity: (typeof entities)[number]): string => (entity.kind === 'text' ? entity.text : entity.kind)
  const outside = areas.filter(
    ({ area }) =>
      area.min[0] < margin - 1e-6 ||
      area.min[1] < margin - 1e-6 ||
      area.max[0] > max[0] - margin + 1e-6 ||
      area.max[1] > max[1] - margin + 1e-6,
  )
  const apart = areas.filter(({ entity }) => entity.kind !== 'path')
  const over = apart.flatMap((a, k) =>
    apart
      .slice(k + 1)
      .filter(
        (b) =>
          a.area.min[0] < b.area.max[0] - 1e-6 &&
          b.area.min[0] < a.area.max[0] - 1e-6 &&
          a.area.min[1] < b.area.max[1] - 1e-6 &&
          b.area.min[1] < a.area.max[1] - 1e-6,
      )
      .map((b) => `${name(a.entity)} over ${name(b.entity)}`),
  )
  return [...outside.map(({ entity }) => `outside: ${name(entity)}`), ...over]
}

const PAPERS = ['A4', 'A3', 'Letter', 'Legal', 'Tabloid', 'roll 610', 'roll 36 in'] as const

describe('on every paper', () => {
  test.each(PAPERS)('%s: within the margins, nothing over anything, letters of 3 mm', (paper) => {
    for (const print of [{}, { stamp: 'DO NOT CUT: 1 STOP STANDS' }, { margin: 15 }]) {
      const pages = coverDrawings(coverOf(PANELS, { paper, ...print }))
      for (const page of pages) {
        checkDrawing(page)
        expect(faults(page, print.margin ?? 10)).toEqual([])
        expect(Math.min(...textsOf(page).map(({ height }) => height))).toBeGreaterThanOrEqual(3)
      }
      const stamped = pages.flatMap(textsOf).some(({ text }) => text === print.stamp)
      expect(stamped).toBe(print.stamp !== undefined)
    }
  })

  test('a sheet is the paper; from a roll it is as wide as that, and one as short as can be', () => {
    const [page] = coverDrawings(coverOf(PANELS, { paper: 'Letter' }))
    expect(page?.view.max[0]).toBeCloseTo(215.9, 9)
    expect(page?.view.max[1]).toBeCloseTo(279.4, 9)
    const cut = coverDrawings(coverOf(PANELS, { paper: 'roll 610' }))
    expect(cut).toHaveLength(1)
    expect(cut[0]?.view.max[0]).toBe(paperSize('roll 610').width)
    expect(cut[0]?.view.max[1]).toBeLessThan(400)
  })

  test('corrected for a printer, it is stretched to the paper as the pages are', () => {
    const cover = coverOf(PANELS)
    const setup = setupOf({ paper: 'A4', margin: 10, bars: { across: 179.1, down: 181 } }, 'mm', undefined)
    const [page] = coverDrawings({ ...cover, setup })
    // 210 mm of paper: the drawing is 210 × 179.1 / 180 wide, and stretched by 180 / 179.1.
    expect(page?.view.max[0]).toBeCloseTo((210 * 179.1) / 180, 9)
    expect((page?.view.max[0] ?? 0) * (page?.stretch?.[0] ?? 0)).toBeCloseTo(210, 9)
    expect((page?.view.max[1] ?? 0) * (page?.stretch?.[1] ?? 0)).toBeCloseTo(297, 9)
    expect(textsOf(page ?? { title: '', view: { min: [0, 0], max: [1, 1] }, layers: [] })[1]?.text).toBe(
      'Full-size pages on A4. Corrected 0.503 % across, −0.552 % down (sheet upright).',
    )
  })

  test('whatever the names and numbers', () => {
    const name = fc.oneof(
      fc.string({ minLength: 1, maxLength: 30 }),
      fc.constant('W'.repeat(90)),
      fc.constant('a b '.repeat(25)),
    )
    const face = fc.record({
      face: fc.constantFrom('A' as const, 'B' as const),
      sheets: fc.integer({ min: 1, max: 50 }),
      kinds: fc.subarray(['face', 'strip', 'repeated', 'hardware'] as const, { minLength: 1 }),
    })
    const panels = fc.array(fc.record({ module: name, panel: name, faces: fc.array(face, { maxLength: 2 }) }), {
      minLength: 1,
      maxLength: 60,
    })
    fc.assert(
      fc.property(panels, fc.constantFrom(...PAPERS), fc.integer({ min: 2, max: 40 }), (some, paper, margin) => {
        const pages = coverDrawings(coverOf(some, { paper, margin: paper === 'A4' ? Math.min(margin, 15) : margin }))
        const kept = paper === 'A4' ? Math.min(margin, 15) : margin
        expect(pages.flatMap((page) => faults(page, kept))).toEqual([])
      }),
      { numRuns: 25 },
    )
  })
})

test('cautions are those that concern the project', () => {
  const words = (cover: Cover): string =>
    coverDrawings(cover)
      .flatMap(textsOf)
      .map(({ text }) => text)
      .join(' ')
  const cover = coverOf(PANELS)
  expect(words(cover)).toContain('Modules on casters can tip')
  expect(words(cover)).toContain('local codes and a licensed professional decide')
  expect(words(cover)).not.toContain('Flip-over tops')
  const { project } = builtSample('pottery-studio')
  expect(words({ ...cover, project })).toContain('Flip-over tops')
})
