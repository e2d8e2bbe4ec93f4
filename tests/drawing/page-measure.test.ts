import { describe, expect, test } from 'vitest'
import { overlaps, textArea } from '../../src/drawing/areas.ts'
import { measurePage } from '../../src/drawing/pages/measure-page.ts'
import { setupOf } from '../../src/drawing/pages/setup.ts'
import type { Drawing, Line, Text } from '../../src/drawing/types.ts'

const entitiesOf = (page: Drawing) => page.layers.flatMap(({ entities }) => entities)
const textsOf = (page: Drawing): Text[] => entitiesOf(page).filter((one) => one.kind === 'text')
const linesOf = (page: Drawing): Line[] => entitiesOf(page).filter((one) => one.kind === 'line')
const wordsOf = (page: Drawing): string =>
  textsOf(page)
    .map(({ text }) => text)
    .join(' ')
const rounded = (mm: number): number => Math.round(mm * 1e6) / 1e6

const PAPERS = ['A4', 'A3', 'Letter', 'Legal', 'Tabloid'] as const

describe('the page that is only measured', () => {
  test.each(PAPERS)(
    'on %s: bars of 180 mm along both sides, long ticks at 0, 100, 180 mm and at 0, 4, 7 in',
    (paper) => {
      const page = measurePage(setupOf(paper, 'mm', undefined), 'Pottery studio')
      const lines = linesOf(page)
      for (const axis of [0, 1] as const) {
        const across = axis === 0 ? 1 : 0
        const spine = lines.find((line) => rounded(line.to[axis] - line.from[axis]) === 180)
        const [zero = Number.NaN, height] = [spine?.from[axis], spine?.from[across]]
        const ticks = lines.filter((line) => line.from[across] === height && line.to[across] !== height)
        const long = ticks.filter((line) => rounded(Math.abs(line.to[across] - line.from[across])) === 6)
        // 4 × 25.4 = 101.6, 7 × 25.4 = 177.8.
        const places = long.map((line) => rounded(line.from[axis] - zero)).sort((a, b) => a - b)
        expect(places).toEqual([0, 0, 100, 101.6, 177.8, 180])
        // 19 ticks of millimetres from 0 to 180, 8 of inches from 0 to 7.
        expect(ticks).toHaveLength(27)
      }
    },
  )

  test.each(PAPERS)('on %s nothing lies on anything or in the margin', (paper) => {
    for (const [units, bars] of [
      ['mm', undefined],
      ['in', undefined],
      ['mm', { across: 179.1, down: 181.8 }],
    ] as const) {
      const setup = setupOf({ paper, margin: 10, ...(bars && { bars }) }, units, undefined)
      const page = measurePage(setup, 'A title that is not short, of the pottery studio in the old stable')
      const areas = textsOf(page).map((text) => ({ text: text.text, area: textArea(text) }))
      areas.forEach(({ text, area }, k) => {
        for (const other of areas.slice(k + 1))
          expect(overlaps(area, other.area), `${text} on ${other.text}`).toBe(false)
        expect(area.min[0], text).toBeGreaterThan(setup.margin - 0.01)
        expect(area.max[0], text).toBeLessThan(setup.paper.width - setup.margin + 0.01)
        expect(area.max[1], text).toBeLessThan(setup.paper.height - setup.margin + 0.01)
      })
      for (const { from, to } of linesOf(page))
        for (const [x, y] of [from, to]) {
          expect(Math.min(x, y)).toBeGreaterThan(setup.margin - 0.01)
          expect(x).toBeLessThan(setup.paper.width - setup.margin + 0.01)
          expect(y).toBeLessThan(setup.paper.height - setup.margin + 0.01)
        }
    }
  })

  test('says what to do, what is near enough, and where the readings go', () => {
    const words = wordsOf(measurePage(setupOf('A4', 'mm', undefined), 'Pottery studio'))
    expect(words).toContain('Print this page alone, before any other: at actual size (100 %)')
    expect(words).toContain('printed on: 210 × 297 mm.')
    // 0.5 mm in 100 is 0.9 in 180.
    expect(words).toContain('Both from 179.1 to 180.9 mm')
    expect(words).toContain('under outputs check bars: [across, down], or draw with --check-bars across,down.')
    expect(words).toContain('Across is the short side of the sheet')
    expect(words).not.toMatch(/corrected/i)
  })

  test('in inches the readings carry their unit', () => {
    const words = wordsOf(measurePage(setupOf('Letter', 'in', undefined), 'Clay cart'))
    expect(words).toContain('8 1/2 in × 11 in')
    expect(words).toContain('check bars: [across mm, down mm], each with its unit')
  })

  test('corrected, it is stretched as all pages are, says by how much, and must read 180', () => {
    // 180 / 179.1 = 1.0050251, 180 / 181.8 = 0.9900990.
    const spec = { paper: 'A4', margin: 10, bars: { across: 179.1, down: 181.8 } } as const
    const page = measurePage(setupOf(spec, 'mm', undefined), 'Pottery studio')
    expect(page.stretch?.map(rounded)).toEqual([1.005025, 0.990099])
    expect(page.view.max[0] * (page.stretch?.[0] ?? 0)).toBeCloseTo(210, 9)
    expect(page.view.max[1] * (page.stretch?.[1] ?? 0)).toBeCloseTo(297, 9)
    const words = wordsOf(page)
    expect(words).toContain('Corrected 0.503 % across, −0.99 % down (sheet upright). So both bars must now read')
    expect(words).toContain('draw without the readings (check bars)')
    expect(words).toContain('210 × 297 mm')
  })

  test('of a roll it takes the width and a short piece', () => {
    const setup = { ...setupOf('A4', 'mm', undefined), paper: { width: 610, height: 5000 } }
    const page = measurePage(setup, 'Pottery studio')
    expect(page.view.max).toEqual([610, 280])
    expect(wordsOf(page)).toContain('Across is the width of the roll')
    expect(wordsOf(page)).toContain('the roll, 610 mm wide')
  })
})
