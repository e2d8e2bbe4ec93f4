import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { pageDrawings } from '../../src/drawing/pages/face-pages.ts'
import { reserveFor } from '../../src/drawing/pages/furniture.ts'
import { setupOf } from '../../src/drawing/pages/setup.ts'
import { textWidth } from '../../src/drawing/text-width.ts'
import type { Drawing, Line } from '../../src/drawing/types.ts'
import type { Groove, Panel } from '../../src/panel/index.ts'
import { paperSize } from '../../src/project/index.ts'
import { allWords, blurred, circlesOf, entitiesOf, faults, linesOf, wordsOf } from './page-faults.ts'
import { BOTTOM, type BoreWords, DOOR, FLAG, panelOf, row, SIDE } from './page-panels.ts'

/** From the sheet to the frame of the face: A1 shows the upper left corner of a panel, here one 540 high. */
function fromCorner(page: Drawing): (at: readonly [number, number]) => [x: number, y: number] {
  const bold = linesOf(page, 'EDGE').filter((line) => line.pen === 'bold')
  const left = bold.find((line) => line.from[0] === line.to[0])?.from[0] ?? Number.NaN
  const top = bold.find((line) => line.from[1] === line.to[1])?.from[1] ?? Number.NaN
  return ([x, y]) => [x - left, y - top + SIDE.width]
}

describe('a side of 760 × 540 on A4', () => {
  const pages = pageDrawings(SIDE, 'A', 'A4', 'mm')

  test('the view is the sheet, and every sheet names module, panel, face, size and stock', () => {
    for (const page of pages) {
      expect([...page.view.max].sort()).toEqual([210, 297])
      expect(wordsOf(page)).toEqual(
        expect.arrayContaining([
          'left side',
          'Glaze store',
          'lay on face A: inside',
          'glaze-store/left-side',
          '760 × 540, 18.1 thick (mm), birch ply 18',
          'Print at actual size (100 %). Measure both bars before drilling.',
          'Measure this check bar, too.',
          'Collar: the bit’s point not counted. Through holes: back up the far face. Extract dust; wear mask, eye and ear protection.',
        ]),
      )
    }
  })

  test('the pin row of the rear is labelled once a sheet that shows it, with its own first hole', () => {
    // Pins at 96 + 32 k, 485 from the front: as many as A1 shows, of which 96 is the first.
    const first = pages[0]
    expect(first?.title).toBe('Glaze store: left side, face A, sheet A1')
    const level = first ? fromCorner(first) : () => [0, 0]
    const shown = (first ? circlesOf(first, 'BORE') : []).filter(({ at }) => Math.abs((level(at)[1] ?? 0) - 485) < 1e-9)
    expect(shown.length).toBeGreaterThan(2)
    expect(first && wordsOf(first).filter((words) => words.includes('of 18'))).toEqual([
      `${shown.length} × 5 deep 13, collar at 13, every 32 (${shown.length} of 18)`,
    ])
    expect(first && wordsOf(first)).toContain('shelf pin: first here 96 from bottom, 485 from front')
  })

  test('a single hole of a pair says so', () => {
    expect(allWords(pages)).toContain('7 through (1 of 2)')
    expect(allWords(pages)).toContain('joining bolt: 150 from bottom, 75 from front')
  })

  test('a run that is whole on one sheet: 2 × 5 deep 13, collar at 13, 24 apart', () => {
    expect(allWords(pages)).toContain('2 × 5 deep 13, collar at 13, 24 apart')
    expect(allWords(pages)).toContain('hinge plate: first 704 from bottom, 37 from front')
  })

  test('the groove is labelled and drawn 6.2 wide', () => {
    expect(allWords(pages)).toContain('groove for the back, 6.2 wide, 8 deep, 515 to 521.2 from front')
    const [page] = pages
    const thin = page ? linesOf(page, 'GROOVE').filter((line) => line.pen === 'thin') : []
    const heights = thin
      .filter((line) => line.from[1] === line.to[1])
      .map((line) => (page ? fromCorner(page)(line.from)[1] : 0))
    expect(heights.map((y) => Math.round(y * 1000) / 1000).sort()).toEqual([515, 521.2])
  })

  test('edges are bold, named, and say where to fold', () => {
    const words = allWords(pages)
    for (const name of ['FRONT', 'back', 'top', 'bottom'])
      expect(words).toContain(`this edge to the ${name}: fold here`)
    expect(pages[0] && linesOf(pages[0], 'EDGE').every((line) => line.pen === 'bold')).toBe(true)
  })

  test('a hole lies where it is: the first pin of the rear on A1', () => {
    const [page] = pages
    const places = page ? circlesOf(page, 'BORE').map(({ at, radius }) => [...fromCorner(page)(at), radius]) : []
    const pin = places.find(([x = 0, y = 0]) => Math.hypot(x - 96, y - 485) < 1e-9)
    expect(pin?.[2]).toBe(2.5)
  })

  test('nothing lies on anything', () => {
    expect(pages.flatMap((page) => faults(page))).toEqual([])
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
        'lay on face B: outside',
        'test hole: 40 from bottom, 30 from front',
        '8 deep 8, collar at 8',
      ]),
    )
  })
})

describe('the words of face B', () => {
  /** Frames in the furniture that hold the words `lay on face …`. */
  const framed = (panel: Panel, face: 'A' | 'B'): number =>
    pageDrawings(panel, face, 'A3', 'mm').filter((page) => {
      const words = entitiesOf(page, 'SHEET').find(
        (entity) => entity.kind === 'text' && entity.text.startsWith('lay on face'),
      )
      if (words?.kind !== 'text') return false
      // From a little below the baseline to above the tallest letters, 0.76 of the font size; no wider letters than textWidth says.
      const [x, y] = words.at
      const right = x + textWidth(words.text, words.height, true)
      return entitiesOf(page, 'SHEET').some((entity) => {
        if (entity.kind !== 'path' || entity.pen !== 'thin' || entity.vertices.length !== 4) return false
        const [low, , high] = entity.vertices.map(({ at }) => at)
        if (low === undefined || high === undefined) return false
        return low[0] < x && low[1] < y - 0.24 * words.height && high[0] > right && high[1] > y + 0.76 * words.height
      })
    }).length

  test('stand in a frame on each page: its labels A1, A2 are those of face A, too', () => {
    expect(framed(FLAG, 'B')).toBe(pageDrawings(FLAG, 'B', 'A3', 'mm').length)
    expect(framed(FLAG, 'A')).toBe(0)
  })
})

describe('edge bores, pockets, countersinks', () => {
  test('a row of dowels in the left end, 9 from the face', () => {
    const words = allWords(pageDrawings(BOTTOM, 'A', 'A3', 'mm'))
    expect(words).toContain('3 × 8 deep 21, collar at 21, every 110.25 (3 of 5), in the edge, 9 from this face')
    expect(words).toContain('dowel: first here 260.5 from front')
  })

  test('pages of face B have none of them: each is marked once', () => {
    const pages = pageDrawings(BOTTOM, 'B', 'A3', 'mm')
    expect(allWords(pages).filter((text) => text.includes('in the edge'))).toEqual([])
    expect(pages.flatMap((page) => circlesOf(page, 'BORE'))).toEqual([])
  })

  test('pockets say their angle and the collar, and have no circle', () => {
    const pages = pageDrawings(BOTTOM, 'A', 'A3', 'mm')
    expect(
      allWords(pages).some((words) => words.startsWith('2 × pocket 15°, bit 9.5, collar at 18.1, 161 apart (2 of 5)')),
    ).toBe(true)
    // Caster screws of 7, dowels of 8; no 4.75.
    const radii = new Set(pages.flatMap((page) => circlesOf(page, 'BORE').map((circle) => circle.radius)))
    expect([...radii].sort()).toEqual([3.5, 4])
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
  expect(words).toContain('1/4 in deep 3/8 in, collar at 3/8 in')
  expect(words).toContain('test hole: 2 in from bottom, 1 1/2 in from front')
})

test('in inches, bits and depths that are no fraction are in mm, as on the drawing of the panel', () => {
  // 32 mm is 1 17/64 in less 0.147 mm: no fraction either.
  const pair = row({ x: 50.8, y: 38.1, d: 5, deep: 13, series: 'plate', purpose: 'hinge plate' }, [32, 0], 2)
  const words = allWords(
    pageDrawings(panelOf({ name: 'side', length: 150, width: 150, bores: pair }), 'A', 'Letter', 'in'),
  )
  expect(words).toContain('2 × 5 mm deep 13 mm, collar at 13 mm, 32 mm apart')
})

test('a pilot at the shoulder of a rebate says so, and how far in', () => {
  // A rebate 6.2 wide along the back of a panel 150 wide: its shoulder is at 143.8.
  const pilot: BoreWords = { on: 'y1', x: 50, y: 143.8, z: -4, d: 2.5, deep: 20, purpose: 'screw pilot' }
  const words = allWords(
    pageDrawings(panelOf({ name: 'side', length: 150, width: 150, bores: [pilot] }), 'A', 'A4', 'mm'),
  )
  expect(words).toEqual(
    expect.arrayContaining([
      '2.5 deep 20, collar at 20',
      'in the rebate once it is cut, 6.2 from the edge, 4 from this face',
    ]),
  )
})

test('a pitch that would be rounded is not said: its ends are', () => {
  // 50 to 100 in three steps of 16.666…
  const pins = row({ x: 50, y: 40, d: 5, deep: 13, series: 'pins', purpose: 'shelf pin' }, [50 / 3, 0], 4)
  const words = allWords(pageDrawings(panelOf({ name: 'side', length: 150, width: 150, bores: pins }), 'A', 'A4', 'mm'))
  expect(words).toContain('4 × 5 deep 13, collar at 13, evenly 50 to 100 from bottom')
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
  expect(pages.length).toBeGreaterThan(0)
  for (const page of pages) expect(wordsOf(page)).toContain('Drawn although a finding forbids it')
  expect(pages.flatMap((page) => faults(page))).toEqual([])
})

test('a name of 300 letters is cut, the panel’s is not, and both stay off the page label', () => {
  const pages = pageDrawings({ ...FLAG, moduleName: 'W'.repeat(300) }, 'A', 'A4', 'mm')
  expect(pages.flatMap((page) => faults(page))).toEqual([])
  expect(allWords(pages)).toContain('flag')
  expect(allWords(pages).some((words) => /^W+…$/.test(words))).toBe(true)
})

describe('the furniture', () => {
  test.each([
    // Between margins of 14 mm, A4 is 182 wide: too narrow for bar, label and map side by side.
    ['A4', 14],
    ['A4', 40],
    ['Letter', 40],
    ['Letter', 5],
    ['A3', 25],
  ] as const)('on %s with margins of %i mm lies on nothing, and says all it has to say', (paper, margin) => {
    for (const stamp of [undefined, 'Drawn although a finding forbids it']) {
      for (const panel of [SIDE, BOTTOM]) {
        const pages = pageDrawings(panel, 'A', { paper, margin }, 'mm', stamp)
        expect(pages.flatMap((page) => faults(page, margin))).toEqual([])
        for (const page of pages) {
          const furniture = entitiesOf(page, 'SHEET').flatMap((one) => (one.kind === 'text' ? [one.text] : []))
          expect(furniture.filter((text) => text.endsWith('…'))).toEqual([])
        }
      }
    }
  })

  test('leaves 9 mm on the left and 25.5 mm at the bottom free for itself on A4, 36.5 mm where it is narrow', () => {
    expect(reserveFor(setupOf('A4', 'mm', undefined))).toEqual({ left: 9, bottom: 25.5 })
    expect(reserveFor(setupOf({ paper: 'A4', margin: 14 }, 'mm', undefined))).toEqual({ left: 9, bottom: 36.5 })
    // A stamp takes 7 mm more.
    expect(reserveFor(setupOf('A4', 'mm', 'a warning'))).toEqual({ left: 9, bottom: 32.5 })
  })
})

describe('a crowded sheet takes tags', () => {
  // 12 bores, all different, on 60 × 60: a label for each has no room.
  const spots = [8, 23, 38, 53].flatMap((x) => [10, 30, 50].map((y) => [x, y] as const))
  const block = { name: 'block', bores: spots.map(([x, y], k) => ({ x, y, d: 3 + k * 0.1, deep: 10 })) }
  const tagsOn = (words: readonly string[]): string[] => words.filter((text) => /^\[\d+\]$/.test(text))

  test('and says what they mean on the blank paper beside a small panel, each on its line', () => {
    const pages = pageDrawings(panelOf({ ...block, length: 60, width: 60 }), 'A', 'A4', 'mm')
    expect(pages.flatMap((page) => faults(page))).toEqual([])
    const words = allWords(pages)
    expect(tagsOn(words).length).toBeGreaterThan(2)
    for (const tag of tagsOn(words)) expect(words.filter((text) => text.startsWith(`${tag} `))).toHaveLength(1)
    expect(words.filter((text) => text.includes('no room for'))).toEqual([])
  })

  test('and says it below where the panel fills the sheet, of as many as there is room for', () => {
    // Grooves take up all but the block's corner of a panel that is as large as a sheet of A4 shows.
    const like = { kind: 'groove', face: 'A', depth: 8, roundEnds: false, purpose: 'recess' } as const
    const grooves: Groove[] = [
      { ...like, id: 'groove-1', min: [60, 0], max: [164, 60] },
      { ...like, id: 'groove-2', min: [0, 60], max: [164, 234] },
    ]
    const pages = pageDrawings(panelOf({ ...block, grooves, length: 164, width: 234 }), 'A', 'A4', 'mm')
    expect(pages).toHaveLength(1)
    expect(pages.flatMap((page) => faults(page))).toEqual([])
    const words = allWords(pages)
    const said = words.find((text) => text.includes('see the drawing of the panel')) ?? ''
    expect(said).toMatch(/^\[\d+\] \d(\.\d)? deep 10, .*; no room for \d+ of these: see the drawing of the panel$/)
    // The list and the sentence together account for each tag.
    const listed = said.match(/\[\d+\]/g) ?? []
    expect(listed.length + Number(/no room for (\d+)/.exec(said)?.[1])).toBe(tagsOn(words).length)
  })
})

test('each sheet has a check bar along both axes, with long ticks at 0 and 100 mm and at 0 and 4 in', () => {
  const rounded = (mm: number): number => Math.round(mm * 1e6) / 1e6
  for (const paper of ['A4', 'A3', 'Letter', 'Legal', 'Tabloid'] as const) {
    for (const page of pageDrawings(DOOR, 'A', paper, 'mm')) {
      const lines = linesOf(page, 'SHEET')
      for (const axis of [0, 1] as const) {
        const across = axis === 0 ? 1 : 0
        // 4 × 25.4 = 101.6.
        const spine = lines.find((line) => rounded(line.to[axis] - line.from[axis]) === 101.6)
        const [zero = 0, height = 0] = [spine?.from[axis], spine?.from[across]]
        const ticks = lines.filter((line) => line.from[across] === height && line.to[across] !== height)
        const reach = (line: Line): number => rounded(Math.abs(line.to[across] - height))
        const long = ticks.filter((line) => reach(line) === Math.max(...ticks.map(reach)))
        const places = long.map((line) => rounded(line.from[axis] - zero)).sort((a, b) => a - b)
        expect(places).toEqual([0, 0, 100, 101.6])
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
        expect(pages.flatMap((page) => faults(page))).toEqual([])
        expect(pages.flatMap(blurred)).toEqual([])
        const drawn = new Set(pages.flatMap((page) => circlesOf(page, 'BORE').map((circle) => circle.id)))
        // Pages of face A have those of the edges on their flaps.
        const wanted = panel.bores.filter(({ surface }) => (face === 'A' ? surface !== 'B' : surface === 'B'))
        expect([...drawn].sort()).toEqual(wanted.map(({ id }) => id).sort())
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
