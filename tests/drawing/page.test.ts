import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { discMeets, grown, overlaps, textArea } from '../../src/drawing/areas.ts'
import { pageDrawings } from '../../src/drawing/pages/face-pages.ts'
import type { Circle, Drawing, Entity, Line, Text } from '../../src/drawing/types.ts'
import type { Panel } from '../../src/panel/index.ts'
import { paperSize } from '../../src/project/index.ts'
import { BOTTOM, type BoreWords, DOOR, FLAG, panelOf, row, SIDE } from './page-panels.ts'

const entitiesOf = (page: Drawing, ...layers: string[]): Entity[] =>
  page.layers.filter((layer) => layers.length === 0 || layers.includes(layer.name)).flatMap((layer) => layer.entities)
const textsOf = (page: Drawing): Text[] => entitiesOf(page).filter((entity) => entity.kind === 'text')
const wordsOf = (page: Drawing): string[] => textsOf(page).map((text) => text.text)
const circlesOf = (page: Drawing, ...layers: string[]): Circle[] =>
  entitiesOf(page, ...layers).filter((entity) => entity.kind === 'circle')
const linesOf = (page: Drawing, ...layers: string[]): Line[] =>
  entitiesOf(page, ...layers).filter((entity) => entity.kind === 'line')
const allWords = (pages: readonly Drawing[]): string[] => pages.flatMap(wordsOf)

/** What breaks the promises of a page: words on a hole, a mark or other words, and anything near the sheet's edge. */
function faults(page: Drawing): string[] {
  const found: string[] = []
  const texts = textsOf(page)
  const circles = circlesOf(page)
  texts.forEach((text, index) => {
    // The lines of one label touch; float noise must not make that an overlap.
    const area = grown(textArea(text), -0.01)
    for (const circle of circles)
      if (discMeets(area, circle.at, circle.radius))
        found.push(`${page.title}: "${text.text}" on a circle at ${circle.at}`)
    for (const other of texts.slice(index + 1))
      if (overlaps(area, textArea(other))) found.push(`${page.title}: "${text.text}" on "${other.text}"`)
    const { min, max } = page.view
    // Letters may come as near as 10 mm to the edge of the sheet; the room for accents may come a little nearer.
    if (
      area.min[0] < min[0] + 9.5 ||
      area.min[1] < min[1] + 9 ||
      area.max[0] > max[0] - 9.5 ||
      area.max[1] > max[1] - 9.5
    )
      found.push(`${page.title}: "${text.text}" in the margin`)
  })
  for (const line of linesOf(page))
    for (const [x, y] of [line.from, line.to])
      if (x < 10 - 1e-9 || y < 10 - 1e-9 || x > page.view.max[0] - 10 + 1e-9 || y > page.view.max[1] - 10 + 1e-9)
        found.push(`${page.title}: a line in the margin at ${x}, ${y}`)
  return found
}

describe('a side of 760 × 540 on A4', () => {
  const pages = pageDrawings(SIDE, 'A', 'A4', 'mm')

  test('the view is the sheet, and every sheet names module, panel, face, size and stock', () => {
    for (const page of pages) {
      expect(page.view).toEqual({ min: [0, 0], max: [297, 210] })
      expect(wordsOf(page)).toEqual(
        expect.arrayContaining([
          'Glaze store: left side',
          'glaze-store/left-side, face A: inside, seen from face A',
          '760 × 540, 18.1 thick (mm), birch ply 18',
          'Print at actual size (100 %). Measure both bars before drilling.',
          'Extract at the tool and wear a fitted mask when cutting or boring sheet goods, MDF above all.',
        ]),
      )
    }
  })

  test('the pin row of the rear is labelled once a sheet that shows it, with its own first hole', () => {
    // Two bands of three lying sheets. A1, in the corner, shows −8 to 258: the pins from 96 to 224 are whole on it.
    const first = pages[0]
    expect(first?.title).toBe('Glaze store: left side, face A, sheet A1')
    expect(first && wordsOf(first).filter((words) => words.includes('of 18'))).toEqual([
      '5 × 5 deep 13, every 32 (5 of 18)',
    ])
    expect(first && wordsOf(first)).toContain('shelf pin: first here 96 from bottom, 485 from front')
  })

  test('a single hole of a pair says so', () => {
    expect(allWords(pages)).toContain('7 through (1 of 2)')
    expect(allWords(pages)).toContain('joining bolt: 150 from bottom, 75 from front')
  })

  test('a run that is whole on one sheet: 2 × 5 deep 13, 24 apart', () => {
    expect(allWords(pages)).toContain('2 × 5 deep 13, 24 apart')
    expect(allWords(pages)).toContain('hinge plate: first 704 from bottom, 37 from front')
  })

  test('the groove is labelled and drawn 6.2 wide', () => {
    expect(allWords(pages)).toContain('groove for the back, 6.2 wide, 8 deep, 515 to 521.2 from front')
    // A1 hangs from 200 (10 below the top) and shows 8 beyond the edge: 515 lies 33 below it, 521.2 lies 26.8 below.
    const thin = pages[0] ? linesOf(pages[0], 'GROOVE').filter((line) => line.pen === 'thin') : []
    const heights = thin.filter((line) => line.from[1] === line.to[1]).map((line) => line.from[1])
    expect(heights.map((y) => Math.round(y * 1000) / 1000).sort()).toEqual([167, 173.2])
  })

  test('edges are bold, named, and say where to fold', () => {
    const words = allWords(pages)
    for (const name of ['FRONT', 'back', 'top', 'bottom'])
      expect(words).toContain(`this edge to the ${name}: fold here`)
    expect(pages[0] && linesOf(pages[0], 'EDGE').every((line) => line.pen === 'bold')).toBe(true)
  })

  test('a hole lies where it is: the first pin of the rear on A1', () => {
    // Window of A1: x from −8; its left lies at 21, its top (548) at 200. Pin at 96, 485:
    // x = 21 + 8 + 96 = 125, y = 200 − (548 − 485) = 137.
    const pin = pages[0] && circlesOf(pages[0], 'BORE').find((circle) => Math.abs(circle.at[0] - 125) < 1e-9)
    expect(pin?.at[1]).toBeCloseTo(137, 9)
    expect(pin?.radius).toBe(2.5)
  })

  test('nothing lies on anything', () => {
    expect(pages.flatMap(faults)).toEqual([])
  })
})

describe('face B', () => {
  test('is mirrored about the vertical: a bore at 40 of 300 lies 260 from the left, 40 from the bottom edge', () => {
    const pages = pageDrawings(FLAG, 'B', 'A3', 'mm')
    expect(pages).toHaveLength(1)
    const [page] = pages
    const [bore] = page ? circlesOf(page, 'BORE') : []
    const left = Math.min(...(page ? linesOf(page, 'EDGE').map((line) => line.from[0]) : []))
    expect((bore?.at[0] ?? 0) - left).toBeCloseTo(260, 9)
    expect(page && wordsOf(page)).toEqual(
      expect.arrayContaining([
        'glaze-store/flag, face B: outside, seen from face B',
        'test hole: 40 from bottom, 30 from front',
        '8 deep 8',
      ]),
    )
  })
})

describe('edge bores, pockets, countersinks', () => {
  test('a row of dowels in the left end, 9 from the face', () => {
    const words = allWords(pageDrawings(BOTTOM, 'A', 'A3', 'mm'))
    expect(words).toContain('3 × 8 deep 21, every 110.25 (3 of 5), in the edge, 9 from this face')
    expect(words).toContain('dowel: first here 260.5 from front')
  })

  test('seen from face B the same dowels lie 18.1 − 9 = 9.1 from it', () => {
    const words = allWords(pageDrawings(BOTTOM, 'B', 'A3', 'mm'))
    expect(words.some((text) => text.endsWith('in the edge, 9.1 from this face'))).toBe(true)
  })

  test('pockets say their angle and the collar, and have no circle', () => {
    const pages = pageDrawings(BOTTOM, 'A', 'A3', 'mm')
    expect(
      allWords(pages).some((words) => words.startsWith('2 × pocket 15°, bit 9.5, collar at 18.1, 161 apart (2 of 5)')),
    ).toBe(true)
    const radii = new Set(pages.flatMap((page) => circlesOf(page, 'BORE').map((circle) => circle.radius)))
    expect([...radii]).toEqual([3.5])
  })

  test('a countersink has its own circle and its figures', () => {
    const pages = pageDrawings(SIDE, 'B', 'A4', 'mm')
    expect(allWords(pages)).toContain('2 × 5 through, countersunk to 9, 90°, 146.67 apart (2 of 4)')
    expect(new Set(pages.flatMap((page) => circlesOf(page, 'COUNTERSINK').map((circle) => circle.radius)))).toEqual(
      new Set([4.5]),
    )
  })
})

test('in inches, figures are fractions with their unit', () => {
  const quarter = panelOf({
    name: 'side',
    length: 150,
    width: 150,
    bores: [{ x: 50.8, y: 38.1, d: 6.35, deep: 9.525 }],
  })
  const words = allWords(pageDrawings(quarter, 'A', 'Letter', 'in'))
  expect(words).toContain('1/4 in deep 3/8 in')
  expect(words).toContain('test hole: 2 in from bottom, 1 1/2 in from front')
})

test('in inches, bits and depths that are no fraction are in mm, as on the drawing of the panel', () => {
  // 32 mm is 1 17/64 in less 0.147 mm: no fraction either.
  const pair = row({ x: 50.8, y: 38.1, d: 5, deep: 13, series: 'plate', purpose: 'hinge plate' }, [32, 0], 2)
  const words = allWords(
    pageDrawings(panelOf({ name: 'side', length: 150, width: 150, bores: pair }), 'A', 'Letter', 'in'),
  )
  expect(words).toContain('2 × 5 mm deep 13 mm, 32 mm apart')
})

test('a pilot at the shoulder of a rebate says so, and how far in', () => {
  // A rebate 6.2 wide along the back of a panel 150 wide: its shoulder is at 143.8.
  const pilot: BoreWords = { on: 'y1', x: 50, y: 143.8, z: -4, d: 2.5, deep: 20, purpose: 'screw pilot' }
  const words = allWords(
    pageDrawings(panelOf({ name: 'side', length: 150, width: 150, bores: [pilot] }), 'A', 'A4', 'mm'),
  )
  expect(words).toEqual(
    expect.arrayContaining(['2.5 deep 20, in the rebate once it is cut, 6.2 from the edge, 4 from this face']),
  )
})

test('a pitch that would be rounded is not said: its ends are', () => {
  // 50 to 100 in three steps of 16.666…
  const pins = row({ x: 50, y: 40, d: 5, deep: 13, series: 'pins', purpose: 'shelf pin' }, [50 / 3, 0], 4)
  const words = allWords(pageDrawings(panelOf({ name: 'side', length: 150, width: 150, bores: pins }), 'A', 'A4', 'mm'))
  expect(words).toContain('4 × 5 deep 13, evenly 50 to 100 from bottom')
})

describe('a groove that stops inside the panel', () => {
  const groove = (roundEnds: boolean) => ({
    id: 'groove-1',
    kind: 'groove' as const,
    face: 'A' as const,
    min: [20, 100] as const,
    max: [150, 106] as const,
    depth: 8,
    roundEnds,
    purpose: 'groove for the back',
  })
  const pagesOf = (roundEnds: boolean) =>
    pageDrawings(
      panelOf({ name: 'side', length: 150, width: 150, bores: [], grooves: [groove(roundEnds)] }),
      'A',
      'A4',
      'mm',
    )
  /** Ends of the rim's lines, in the frame of the face. */
  const rim = (page: Drawing | undefined): [number, number][] => {
    if (page === undefined) return []
    const edges = linesOf(page, 'EDGE').flatMap((line) => [line.from, line.to])
    const left = Math.min(...edges.map(([x]) => x))
    const low = Math.min(...edges.map(([, y]) => y))
    return linesOf(page, 'GROOVE')
      .filter((line) => line.pen === 'thin')
      .flatMap((line) => [line.from, line.to])
      .map(([x, y]) => [x - left, y - low])
  }

  test('says where it runs and where it stops', () => {
    const words = allWords(pagesOf(true)).join(', ')
    expect(words).toContain('groove for the back, 6 wide, 8 deep')
    expect(words).toContain('100 to 106 from front')
    expect(words).toContain('end 20 from bottom, round')
  })

  test('its stopped end is a half circle of radius 3 about (23, 103), the other is square', () => {
    const ends = rim(pagesOf(true)[0])
    expect(Math.min(...ends.map(([x]) => x))).toBeCloseTo(20, 9)
    const round = ends.filter(([x]) => x < 23 - 1e-9)
    expect(round.length).toBeGreaterThan(50)
    for (const [x, y] of round) expect(Math.hypot(x - 23, y - 103)).toBeCloseTo(3, 9)
    expect(ends.filter(([x, y]) => x > 149.999 && y > 105.999)).not.toEqual([])
    // No hatching in the corners that the cutter leaves: all of it lies in the slot.
    const square = rim(pagesOf(false)[0])
    expect(square.filter(([x]) => x < 23 - 1e-9).every(([x, y]) => x < 20 + 1e-9 && y > 99.999 && y < 106.001)).toBe(
      true,
    )
  })

  test('the hatching stays inside the round end', () => {
    const [page] = pagesOf(true)
    const edges = page ? linesOf(page, 'EDGE').flatMap((line) => [line.from, line.to]) : []
    const [left, low] = [Math.min(...edges.map(([x]) => x)), Math.min(...edges.map(([, y]) => y))]
    const hairs = page ? linesOf(page, 'GROOVE').filter((line) => line.pen === 'hair') : []
    expect(hairs.length).toBeGreaterThan(20)
    for (const [x, y] of hairs.flatMap((line) => [line.from, line.to]))
      if (x - left < 23) expect(Math.hypot(x - left - 23, y - low - 103)).toBeLessThanOrEqual(3 + 1e-9)
  })
})

test('the leading edge has a heavy bar outside it: the front, or the top where there is no front', () => {
  const bars = (panel: Panel) =>
    pageDrawings(panel, 'A', 'A4', 'mm').flatMap((page) => {
      const edges = linesOf(page, 'EDGE')
      return entitiesOf(page, 'EDGE').flatMap((one) =>
        one.kind === 'path' && one.filled === true ? [{ at: one.vertices.map((vertex) => vertex.at), edges }] : [],
      )
    })
  // SIDE has its front at y0: the bars lie 6.3 to 7.5 below the lowest level edge line of their sheet.
  expect(bars(SIDE).length).toBeGreaterThan(0)
  for (const { at, edges } of bars(SIDE)) {
    const level = edges.filter((line) => line.from[1] === line.to[1]).map((line) => line.from[1])
    expect(Math.max(...at.map(([, y]) => y)) - Math.min(...level)).toBeCloseTo(-6.3, 9)
    expect(Math.min(...at.map(([, y]) => y)) - Math.min(...level)).toBeCloseTo(-7.5, 9)
  }
  // DOOR has no front; its top is at x1, on the right.
  expect(bars(DOOR).length).toBeGreaterThan(0)
  for (const { at, edges } of bars(DOOR)) {
    const upright = edges.filter((line) => line.from[0] === line.to[0]).map((line) => line.from[0])
    expect(Math.min(...at.map(([x]) => x)) - Math.max(...upright)).toBeCloseTo(6.3, 9)
  }
})

test('a panel with nothing to mark has no sheets', () => {
  expect(pageDrawings(panelOf({ name: 'shelf', length: 700, width: 300, bores: [] }), 'A', 'A4', 'mm')).toEqual([])
})

test('a stamp is on every sheet', () => {
  const pages = pageDrawings(DOOR, 'A', 'A4', 'mm', 'Drawn although a finding forbids it')
  expect(pages).toHaveLength(3)
  for (const page of pages) expect(wordsOf(page)).toContain('Drawn although a finding forbids it')
  expect(pages.flatMap(faults)).toEqual([])
})

test('a name of 300 letters is cut, the panel’s is not, and both stay off the page label', () => {
  const pages = pageDrawings({ ...FLAG, moduleName: 'W'.repeat(300) }, 'A', 'A4', 'mm')
  expect(pages.flatMap(faults)).toEqual([])
  expect(allWords(pages).some((words) => words.endsWith('W…: flag'))).toBe(true)
})

test('a crowded sheet takes tags, and says below what they mean', () => {
  // 12 bores, all different, on 60 × 60: a label for each has no room.
  const spots = [8, 23, 38, 53].flatMap((x) => [10, 30, 50].map((y) => [x, y] as const))
  const crowded = panelOf({
    name: 'block',
    length: 60,
    width: 60,
    bores: spots.map(([x, y], index) => ({ x, y, d: 3 + index * 0.1, deep: 10 })),
  })
  const pages = pageDrawings(crowded, 'A', 'A4', 'mm')
  expect(pages.flatMap(faults)).toEqual([])
  const words = allWords(pages)
  expect(words).toContain('[1]')
  expect(words.some((text) => /seen from face A; \[1\] \d(\.\d)? deep 10$/.test(text))).toBe(true)
})

test('each sheet has a ruler of 180 mm along both axes, with long ticks at 0, 100 and 180 mm and at 0 and 4 in', () => {
  for (const paper of ['A4', 'A3', 'Letter', 'Legal', 'Tabloid'] as const) {
    for (const page of pageDrawings(DOOR, 'A', paper, 'mm')) {
      const lines = linesOf(page, 'SHEET')
      for (const axis of [0, 1] as const) {
        const across = axis === 0 ? 1 : 0
        const spine = lines.find((line) => line.pen === 'thin' && Math.abs(line.to[axis] - line.from[axis]) === 180)
        const long = lines
          .filter((line) => line.from[across] === 15 && Math.abs(line.to[across] - 15) === 5)
          .map((line) => Math.round((line.from[axis] - (spine?.from[axis] ?? 0)) * 1e6) / 1e6)
          .sort((a, b) => a - b)
        expect(long).toEqual([0, 0, 100, 101.6, 180])
      }
    }
  }
})

const bores = fc.array(
  fc.record({
    x: fc.double({ min: 0, max: 1, noNaN: true }),
    y: fc.double({ min: 0, max: 1, noNaN: true }),
    d: fc.constantFrom(3, 5, 7, 8, 15, 26, 35, 40),
    count: fc.integer({ min: 1, max: 6 }),
    on: fc.constantFrom('A', 'A', 'A', 'A', 'x0', 'x1', 'y0', 'y1'),
  }),
  { maxLength: 14 },
)

/** A panel with runs of bores, none nearer than 8 mm to another, as a workshop would have them. */
const panels = fc
  .record({ length: fc.integer({ min: 120, max: 1200 }), width: fc.integer({ min: 90, max: 600 }), bores })
  .map(({ length, width, bores: asked }): Panel => {
    const placed: BoreWords[] = []
    asked.forEach(({ x, y, d, count, on }, series) => {
      for (let k = 0; k < count; k++) {
        const spot = spotOn(
          on,
          5 + d / 2 + x * (length - 10 - d) + k * 32,
          5 + d / 2 + y * (width - 10 - d),
          length,
          width,
        )
        const size = on === 'A' ? d : 8
        const clear = placed.every((other) => Math.hypot(other.x - spot.x, other.y - spot.y) > (other.d + size) / 2 + 8)
        if (clear && spot.x <= length - d / 2) placed.push({ ...spot, on, d: size, deep: 10, series: `run ${series}` })
      }
    })
    return panelOf({ name: 'random panel', length, width, bores: placed })
  })

function spotOn(on: string, x: number, y: number, length: number, width: number): { x: number; y: number } {
  if (on === 'x0') return { x: 0, y }
  if (on === 'x1') return { x: length, y }
  if (on === 'y0') return { x, y: 0 }
  return on === 'y1' ? { x, y: width } : { x, y }
}

describe('random panels', () => {
  test('no words on a hole, a mark or other words; every bore whole on a sheet and labelled on one', () => {
    fc.assert(
      fc.property(panels, fc.constantFrom('A4', 'Letter', 'A3'), fc.constantFrom('A', 'B'), (panel, paper, face) => {
        const pages = pageDrawings(panel, face as 'A' | 'B', paper as 'A4', 'mm')
        expect(pages.flatMap(faults)).toEqual([])
        const drawn = new Set(pages.flatMap((page) => circlesOf(page, 'BORE').map((circle) => circle.id)))
        const wanted = panel.bores.filter((bore) => bore.surface === face).map((bore) => bore.id)
        expect([...drawn].sort()).toEqual([...wanted].sort())
        expect(allWords(pages).filter((words) => words.includes('no room for'))).toEqual([])
        expect(
          pages.every(
            (page) => page.view.max[0] === paperSize(paper as 'A4').width || page.view.max[1] < page.view.max[0],
          ),
        ).toBe(true)
      }),
      { numRuns: 200 },
    )
  })
})
