import { afterAll, beforeAll, expect, test } from 'vitest'
import { outputFile } from '../../../src/outputs/index.ts'
import { FONTS } from '../../support/fonts.ts'
import { openSample } from '../../support/samples.ts'
import { type OpenPage, openPage } from '../support/open-page.ts'
import { openText, printed } from './doings.ts'
import { type Stroke, type StrokedPage, strokesOf } from './read-pdf.ts'

/** What is printed may lie so far from what the PDF file has, mm: half of what two hair lines side by side show. */
const NEAR = 0.02
/** The bar of 180 mm and the one of 100 mm in it, mm: src/project/printing.ts and the words on the page. */
const BARS = [180, 100]

/** Between two dashes, mm, stretched a little at most. */
const GAP = 1.41

let desk: OpenPage

beforeAll(async () => {
  desk = await openPage()
})
afterAll(() => desk.close())

/** How far the nearest stroke of another page is, for the worst of all strokes. */
function worstAway(page: StrokedPage, from: StrokedPage): number {
  const away = page.lines.map(([a, b]) =>
    Math.min(
      ...from.lines.map(([c, d]) =>
        Math.max(Math.hypot(a[0] - c[0], a[1] - c[1]), Math.hypot(b[0] - d[0], b[1] - d[1])),
      ),
    ),
  )
  return Math.max(...away)
}

/** The same of two dashed lines, where one may end a gap before the other. */
function dashesAway([a, b]: Stroke, [c, d]: Stroke): number {
  const short = Math.hypot(d[0] - b[0], d[1] - b[1])
  return Math.max(Math.hypot(a[0] - c[0], a[1] - c[1]), short - GAP)
}

/** Two ticks across a ruler that are so far apart along an axis: what the pair measures that comes nearest. */
function barOn({ lines }: StrokedPage, axis: 0 | 1, length: number): number {
  const other = axis === 0 ? 1 : 0
  const ticks = lines.filter(([a, b]) => Math.abs(a[axis] - b[axis]) < 0.01 && Math.abs(a[other] - b[other]) < 20)
  const places = ticks.map(([a]) => a[axis])
  const pairs = places.flatMap((a) => places.map((b) => b - a))
  return pairs.reduce((best, one) => (Math.abs(one - length) < Math.abs(best - length) ? one : best), 0)
}

test('the page to measure: one sheet, its bars as long as they are to be, its letters those of the file', async () => {
  const pdf = await printed(desk.page, 'measuring')
  const [page, ...more] = strokesOf(pdf)
  expect(more).toEqual([])
  if (page === undefined) throw new Error('nothing was printed')
  // A4, ISO 216; browsers round sheets to their pixels of 1/96 in.
  expect(Math.abs(page.width - 210)).toBeLessThan(0.3)
  expect(Math.abs(page.height - 297)).toBeLessThan(0.3)
  for (const axis of [0, 1] as const)
    for (const bar of BARS) expect(Math.abs(barOn(page, axis, bar) - bar)).toBeLessThan(NEAR)
  const text = pdf.toString('latin1')
  expect(text).toMatch(/\/BaseFont \/[A-Z]{6}\+DejaVuSans\b/)
  expect(text).toMatch(/\/BaseFont \/[A-Z]{6}\+DejaVuSans-Bold\b/)
  // No other letters are in it: they would stand elsewhere.
  expect(text.match(/\/BaseFont \/[A-Z]{6}\+(?!DejaVuSans(?:-Bold)?\b)\S+/g)).toBeNull()
})

test.each([
  ['as it is', undefined],
  ['for a printer that errs', 'check bars: [179.2, 180.9]'],
])('a panel %s: sheets upright and lying, every line and hole where its PDF has it', async (_, correction) => {
  const { built, definition } = openSample('pottery-studio')
  const [panel] = built.panels
  if (panel === undefined) throw new Error('the sample has no panel')
  const bars = { across: 179.2, down: 180.9 }
  const outputs = { ...built.project.outputs, ...(correction !== undefined && { bars }) }
  const file = await outputFile(
    { ...built, project: { ...built.project, outputs } },
    FONTS,
    definition,
    `templates/${panel.module}/${panel.key}.pdf`,
  )
  const wanted = strokesOf(Buffer.from(file?.bytes ?? []))
  if (correction !== undefined) {
    await openText(desk.page, (text) => text.replace('outputs:\n', `outputs:\n  ${correction}\n`))
  }
  const pages = strokesOf(await printed(desk.page, `panel ${panel.id}`))
  expect(pages.length).toBe(wanted.length)
  expect(wanted.length).toBeGreaterThan(3)
  expect(new Set(pages.map(({ width, height }) => width > height)).size).toBe(2)
  for (const [k, page] of pages.entries()) {
    const from = wanted[k]
    if (from === undefined) throw new Error('a page too many')
    expect(Math.abs(page.width - from.width)).toBeLessThan(0.3)
    expect(page.lines.length).toBe(from.lines.length)
    expect(worstAway(page, from), `lines of page ${k + 1}`).toBeLessThan(NEAR)
    const dashes = page.dashed.map((dash) => Math.min(...from.dashed.map((one) => dashesAway(dash, one))))
    expect(page.dashed.length).toBe(from.dashed.length)
    expect(Math.max(0, ...dashes), `dashes of page ${k + 1}`).toBeLessThan(NEAR)
    expect(page.rounds.length).toBe(from.rounds.length)
    for (const [n, { at, diameter }] of page.rounds.entries()) {
      const hole = from.rounds[n]
      if (hole === undefined) throw new Error('a hole too many')
      expect(Math.hypot(at[0] - hole.at[0], at[1] - hole.at[1]), `hole ${n} of page ${k + 1}`).toBeLessThan(NEAR)
      expect(Math.abs(diameter - hole.diameter)).toBeLessThan(NEAR)
    }
  }
})

test('nothing of the page went wrong', () => {
  expect(desk.troubles).toEqual([])
})
