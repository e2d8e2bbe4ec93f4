import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { paperSize } from '../../src/project/index.ts'
import { liesWhole, type Piece, pageLabel, printedPages, type Round, tilePages } from '../../src/templates/index.ts'

const A4 = paperSize('A4')

/** `B2 upright, under`: what a piece is taped to, how the seam lies, and whether the piece lies over or under the other. */
const joinsOf = (piece: Piece | undefined): string[] =>
  (piece?.joins ?? []).map(
    ({ to, along, over }) => `${to} ${along === 0 ? 'level' : 'upright'}, ${over ? 'over' : 'under'}`,
  )

describe('paper', () => {
  test('ISO 216: A4 is 210 × 297, A3 is 297 × 420', () => {
    expect(A4).toEqual({ width: 210, height: 297 })
    expect(paperSize('A3')).toEqual({ width: 297, height: 420 })
  })

  test('ASME Y14.1 sizes A and B are 8.5 × 11 and 11 × 17 in; Legal is 8.5 × 14 in; an inch is 25.4 mm', () => {
    // 8.5 × 25.4 = 215.9; 11 × 25.4 = 279.4; 14 × 25.4 = 355.6; 17 × 25.4 = 431.8
    expect(paperSize('Letter').width).toBeCloseTo(215.9, 12)
    expect(paperSize('Letter').height).toBeCloseTo(279.4, 12)
    expect(paperSize('Legal').height).toBeCloseTo(355.6, 12)
    expect(paperSize('Tabloid').width).toBeCloseTo(279.4, 12)
    expect(paperSize('Tabloid').height).toBeCloseTo(431.8, 12)
  })
})

describe('a face of 720 × 540 on A4', () => {
  // Upright: a window of 210 − 20 = 190 by 297 − 20 = 277. Steps of 190 − 14 = 176: pages start at 0, 176, 352, 528 and
  // the fourth ends at 718, 2 short of 720: a fifth, which is at least 80 wide, so it starts at 640. From the top,
  // 540 − 277 = 263; the second row runs from 263 + 14 = 277 down to 0: two rows. 10 pages.
  // On its side: 277 by 190. Columns start at 0, 263, 526 and the third ends at 720; rows step 176: 540–350, 364–174,
  // 188–0: 9 pages.
  test('upright it takes 5 columns and 2 rows', () => {
    const pages = tilePages({ width: 720, height: 540 }, A4, { margin: 10, overlap: 14, landscape: false })
    expect(pages.map((page) => page.label)).toEqual(['A1', 'A2', 'A3', 'A4', 'A5', 'B1', 'B2', 'B3', 'B4', 'B5'])
    expect(pages[0]?.window).toEqual({ min: [0, 263], max: [190, 540] })
    expect(pages[4]?.window).toEqual({ min: [640, 263], max: [720, 540] })
    expect(pages[5]?.window).toEqual({ min: [0, 0], max: [190, 277] })
    expect(joinsOf(pages[5])).toEqual(['A1 level, over', 'B2 upright, under'])
  })

  test('on its side it takes 3 × 3, the fewest, and that is chosen', () => {
    const pages = tilePages({ width: 720, height: 540 }, A4, { margin: 10, overlap: 14 })
    expect(pages).toHaveLength(9)
    expect(pages[0]?.paper).toEqual({ width: 297, height: 210 })
    expect(pages[0]?.window).toEqual({ min: [0, 350], max: [277, 540] })
    expect(pages[4]?.window).toEqual({ min: [263, 174], max: [540, 364] })
    expect(pages[8]?.window).toEqual({ min: [526, 0], max: [720, 188] })
    expect(joinsOf(pages[4])).toEqual(['A2 level, over', 'B1 upright, over', 'B3 upright, under', 'C2 level, under'])
  })

  test('a cup of 35 at the end of the first page moves the second one so that it is whole', () => {
    // Centre 185: from 167.5 to 202.5; the first page ends at 190, so the second starts at 167.5 instead of 176.
    const keep = [{ at: [185, 500], radius: 17.5 }] as const
    const pages = tilePages({ width: 720, height: 540 }, A4, { margin: 10, overlap: 14, landscape: false, keep })
    expect(pages[1]?.window.min[0]).toBe(167.5)
    expect(pages.filter((page) => liesWhole(keep[0], page.window)).map((page) => page.label)).toEqual(['A2'])
  })

  test('windows hang from the top margin, right of what is reserved', () => {
    const options = { margin: 10, overlap: 14, surround: 8, reserve: { left: 11, bottom: 39 }, landscape: false }
    const pages = tilePages({ width: 720, height: 540 }, A4, options)
    expect(pages[0]?.at).toEqual([21, 297 - 10 - (297 - 20 - 39)])
    expect(pages[0]?.window.min[0]).toBe(-8)
    expect(pages[0]?.window.max[1]).toBe(548)
  })
})

test('labels go on after Z', () => {
  expect([pageLabel(0, 0), pageLabel(1, 2), pageLabel(25, 0), pageLabel(26, 9)]).toEqual(['A1', 'B3', 'Z1', 'AA10'])
})

test('margins and overlaps that a printer or a mark cannot do are refused', () => {
  const face = { width: 100, height: 100 }
  expect(() => tilePages(face, A4, { margin: 1, overlap: 14 })).toThrow('margin 1 mm is less than 1.5 mm')
  expect(() => tilePages(face, A4, { margin: 10, overlap: 11 })).toThrow('overlap 11 mm is less than 12 mm')
  expect(() => tilePages(face, A4, { margin: 90, overlap: 14 })).toThrow('a window of 30 × 117 mm is too small')
})

const faces = fc.record({
  width: fc.double({ min: 30, max: 2600, noNaN: true }),
  height: fc.double({ min: 30, max: 1300, noNaN: true }),
})
const papers = fc.constantFrom('A4', 'A3', 'Letter', 'Legal', 'Tabloid').map((name) => paperSize(name as 'A4'))
const shares = fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }))
const rounds = fc.array(fc.tuple(shares, fc.double({ min: 1, max: 20, noNaN: true })), { maxLength: 40 })
const OPTIONS = { margin: 10, overlap: 14, surround: 8, reserve: { left: 11, bottom: 39 } }

const roundsOn = (face: { width: number; height: number }, some: [[number, number], number][]): Round[] =>
  some.map(([[x, y], radius]) => ({ at: [x * face.width, y * face.height], radius }))

/** True when every corner of the grid that the windows' sides make has each of its four cells in some window. */
function covers(pages: readonly Piece[], width: number, height: number): boolean {
  const cuts = (axis: 0 | 1, end: number) =>
    [...new Set([0, end, ...pages.flatMap(({ window }) => [window.min[axis], window.max[axis]])])]
      .filter((value) => value >= 0 && value <= end)
      .sort((a, b) => a - b)
  const middles = (values: number[]) => values.slice(1).map((value, k) => (value + (values[k] ?? value)) / 2)
  return middles(cuts(0, width)).every((x) =>
    middles(cuts(1, height)).every((y) => pages.some(({ window }) => liesWhole({ at: [x, y], radius: 0 }, window))),
  )
}

describe('any face on any paper', () => {
  test('the windows cover the face, fit on the sheet, and hold every bore of up to 20 mm radius whole', () => {
    fc.assert(
      fc.property(faces, papers, rounds, (face, paper, some) => {
        const keep = roundsOn(face, some)
        const pages = tilePages(face, paper, { ...OPTIONS, keep })
        expect(covers(pages, face.width, face.height)).toBe(true)
        for (const round of keep) {
          // A bore may stand over the panel's edge by more than the surround; no sheet shows that part.
          if (round.at[0] < 12 || round.at[1] < 12) continue
          if (round.at[0] > face.width - 12 || round.at[1] > face.height - 12) continue
          expect(pages.some((page) => liesWhole(round, page.window))).toBe(true)
        }
        for (const { window, at, paper: sheet } of pages) {
          expect(at[0]).toBeGreaterThanOrEqual(21 - 1e-9)
          expect(at[1]).toBeGreaterThanOrEqual(49 - 1e-9)
          expect(at[0] + window.max[0] - window.min[0]).toBeLessThanOrEqual(sheet.width - 10 + 1e-9)
          expect(at[1] + window.max[1] - window.min[1]).toBeLessThanOrEqual(sheet.height - 10 + 1e-9)
        }
      }),
      { numRuns: 300 },
    )
  })

  test('neighbours share at least two marks, each with its circle and short arms inside both windows', () => {
    fc.assert(
      fc.property(faces, papers, rounds, (face, paper, some) => {
        const pages = tilePages(face, paper, { ...OPTIONS, keep: roundsOn(face, some) })
        const byLabel = new Map(pages.map((page) => [page.label, page]))
        for (const page of pages) {
          for (const label of page.joins.map((join) => join.to)) {
            const other = byLabel.get(label)
            const shared = page.marks.filter((mark) => mark.pieces.includes(label))
            expect(shared.length).toBeGreaterThanOrEqual(2)
            for (const mark of shared) {
              expect(other?.marks).toContainEqual(mark)
              for (const sheet of [page, other])
                expect(sheet !== undefined && liesWhole({ at: mark.at, radius: 5 }, sheet.window)).toBe(true)
            }
          }
        }
      }),
      { numRuns: 200 },
    )
  })
})

describe('printed pages', () => {
  test('a page inside the face with nothing on it is left out', () => {
    // 9 pages of 277 × 190 on their side, the middle one inside the face.
    const face = { width: 720, height: 540 }
    const labels = printedPages(face, A4, [], { margin: 10, overlap: 14 }).map((page) => page.label)
    expect(labels).toEqual(['A1', 'A2', 'A3', 'B1', 'B3', 'C1', 'C2', 'C3'])
  })

  test('with a bore in its middle it is printed', () => {
    const face = { width: 720, height: 540 }
    const things = [{ at: [400, 270], radius: 4 }] as const
    const labels = printedPages(face, A4, things, { margin: 10, overlap: 14, keep: things }).map(({ label }) => label)
    expect(labels).toContain('B2')
  })

  test('a bore far inside is tied to the nearer side by the blank pages of its row', () => {
    // On its side, columns start every 263 mm: at 1400 the sixth is 1315 to 1592 of 2440; the nearer end is the left.
    const face = { width: 2440, height: 1220 }
    const things = [{ at: [1150, 610], radius: 4 }] as const
    const pages = printedPages(face, A4, things, { margin: 10, overlap: 14, keep: things })
    const own = pages.find((page) => liesWhole(things[0], page.window))
    const inRow = pages.filter((page) => page.row === own?.row).map((page) => page.column)
    expect(own?.column).toBeGreaterThan(1)
    expect(inRow.slice(0, (own?.column ?? 0) + 1)).toEqual(Array.from({ length: (own?.column ?? 0) + 1 }, (_, k) => k))
  })

  test('every thing is whole on a printed page, and all printed pages hang together', () => {
    fc.assert(
      fc.property(faces, papers, rounds, (face, paper, some) => {
        const things = roundsOn(face, some).filter(
          ({ at }) => at[0] > 12 && at[1] > 12 && at[0] < face.width - 12 && at[1] < face.height - 12,
        )
        const pages = printedPages(face, paper, things, { ...OPTIONS, keep: things })
        for (const thing of things) expect(pages.some((page) => liesWhole(thing, page.window))).toBe(true)
        expect(reachable(pages)).toBe(pages.length)
      }),
      { numRuns: 200 },
    )
  })
})

/** How many pages can be reached from the first over seams. */
function reachable(pages: readonly Piece[]): number {
  const byLabel = new Map(pages.map((page) => [page.label, page]))
  const seen = new Set<string>()
  const queue = [pages[0]?.label]
  for (let label = queue.pop(); label !== undefined; label = queue.pop()) {
    if (seen.has(label)) continue
    seen.add(label)
    queue.push(...(byLabel.get(label)?.joins ?? []).map((join) => join.to))
  }
  return seen.size
}
