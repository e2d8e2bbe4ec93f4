import { describe, expect, test } from 'vitest'
import { discMeets, grown, overlaps, textArea } from '../../src/drawing/areas.ts'
import { reserveFor } from '../../src/drawing/pages/furniture.ts'
import { hardwareStage } from '../../src/drawing/pages/hardware-pages.ts'
import { cutOutSheet, panelPages } from '../../src/drawing/pages/piece-pages.ts'
import { type PageSetup, setupOf } from '../../src/drawing/pages/setup.ts'
import { faceView } from '../../src/drawing/pages/view.ts'
import type { Circle, Drawing, Entity, Line, Text } from '../../src/drawing/types.ts'
import type { Units } from '../../src/length/index.ts'
import type { Panel } from '../../src/panel/index.ts'
import { laidOnSheets } from '../../src/templates/index.ts'
import { checkDrawing } from '../../src/writers/check-drawing.ts'
import { builtSample } from '../support/samples.ts'
import { CAMS, CASTERS, INSERT, LONE_PULL, OTHER_HAND, PLATES, THREE_CUPS } from '../templates/hardware-panels.ts'

/** All of a face marked with pieces for one pattern each. */
function hardwareDrawings(panel: Panel, face: 'A' | 'B', setup: PageSetup, panels: readonly Panel[]): Drawing[] {
  const { pieces } = hardwareStage(panel, setup, panels)(face, new Set())
  const pages = laidOnSheets(pieces, { paper: setup.paper, margin: setup.margin, reserve: reserveFor(setup) }, 0)
  const sheets = [...new Set(pages.map(({ sheet }) => sheet))]
  return sheets.map((sheet) => cutOutSheet(faceView(panel, face), pages, sheet, setup))
}

const drawn = (panel: Panel, units: Units = 'mm', others: readonly Panel[] = []): Drawing[] =>
  hardwareDrawings(panel, 'A', setupOf('A4', units, undefined), others)

const entitiesOf = (page: Drawing, ...layers: string[]): Entity[] =>
  page.layers.filter((layer) => layers.length === 0 || layers.includes(layer.name)).flatMap((layer) => layer.entities)
const textsOf = (page: Drawing, ...layers: string[]): Text[] =>
  entitiesOf(page, ...layers).filter((entity) => entity.kind === 'text')
const circlesOf = (page: Drawing): Circle[] => entitiesOf(page).filter((entity) => entity.kind === 'circle')
const linesOf = (page: Drawing, ...layers: string[]): Line[] =>
  entitiesOf(page, ...layers).filter((entity) => entity.kind === 'line')
const wordsOf = (pages: readonly Drawing[]): string =>
  pages
    .flatMap((page) => textsOf(page, 'NOTE'))
    .map(({ text }) => text)
    .join(' ')

/** Words on a hole or on other words, words or lines in the margin. */
function faults(page: Drawing): string[] {
  const texts = textsOf(page)
  const circles = circlesOf(page)
  const [right, top] = page.view.max
  const found = texts.flatMap((text, k): string[] => {
    const area = grown(textArea(text), -0.01)
    return [
      ...circles.filter(({ at, radius }) => discMeets(area, at, radius)).map(({ id }) => `"${text.text}" on ${id}`),
      ...texts
        .slice(k + 1)
        .filter((other) => overlaps(area, textArea(other)))
        .map((other) => `"${text.text}" on "${other.text}"`),
      // The room for accents may come a little nearer to the edge of the sheet than 10 mm.
      ...(area.min[0] < 9.5 || area.min[1] < 9 || area.max[0] > right - 9.5 || area.max[1] > top - 9.5
        ? [`"${text.text}" in the margin`]
        : []),
    ]
  })
  const stray = linesOf(page).filter((line) =>
    [line.from, line.to].some(
      ([x, y]) => x < 10 - 1e-9 || y < 10 - 1e-9 || x > right - 10 + 1e-9 || y > top - 10 + 1e-9,
    ),
  )
  return [...found, ...stray.map(({ from }) => `a line in the margin at ${from}`)].map(
    (fault) => `${page.title}: ${fault}`,
  )
}

describe('the pieces of a door', () => {
  const pages = drawn(THREE_CUPS, 'mm', [THREE_CUPS, OTHER_HAND])
  const [page] = pages

  test('say what they are for, which bits, and where they are laid on', () => {
    // The words of a piece are wrapped; read on end they are these.
    const words = wordsOf(pages)
    expect(pages).toHaveLength(1)
    expect(words).toContain('HA1 hinge cup for: hinge 35 full Glaze store: left door, face A')
    expect(words).toContain('35 deep 12.5, collar at 12.5')
    expect(words).toContain('2 × 8 deep 11, collar at 11, hinge dowel')
    expect(words).toContain('3 times: fold over left: 80, 360, 640 from bottom Lay the centre line on your mark.')
    expect(words).toContain('right door too: turn it half round, arrow to the right.')
    expect(words).toContain('HA2 pull for: pull 128')
    expect(words).toContain('2 × 4.5 through back it up: the holes go through fold over right: 360 from bottom')
  })

  test('are at true size: the dowels 45 apart, 9.5 beside the cup, which is 22.5 from the fold', () => {
    const of = (diameter: number): Circle[] =>
      page === undefined ? [] : circlesOf(page).filter(({ radius }) => radius === diameter / 2)
    const [cup] = of(35)
    const [left, right] = of(8)
    if (cup === undefined || left === undefined || right === undefined || page === undefined)
      throw new Error('no holes')
    expect(of(35)).toHaveLength(1)
    expect(right.at[0] - left.at[0]).toBeCloseTo(45, 9)
    expect(left.at[1] - cup.at[1]).toBeCloseTo(9.5, 9)
    const folds = linesOf(page, 'EDGE').filter(({ pen }) => pen === 'bold')
    expect(folds.map(({ from }) => Math.abs(from[1] - cup.at[1]))).toContainEqual(expect.closeTo(22.5, 9))
  })

  test('hairlines leave the point of each hole free for an awl: none comes nearer than 0.8 mm to its centre', () => {
    if (page === undefined) throw new Error('no page')
    const hairs = linesOf(page).filter(({ pen }) => pen === 'hair')
    const gaps = circlesOf(page).map(({ at }) =>
      Math.min(...hairs.flatMap(({ from, to }) => [from, to]).map((end) => Math.hypot(end[0] - at[0], end[1] - at[1]))),
    )
    for (const gap of gaps) expect(gap).toBeCloseTo(0.8, 9)
    const through = hairs.filter(({ from, to }) =>
      circlesOf(page).some(
        ({ at }) =>
          (from[0] === to[0] && Math.abs(from[0] - at[0]) < 0.7 && (from[1] - at[1]) * (to[1] - at[1]) < 0) ||
          (from[1] === to[1] && Math.abs(from[1] - at[1]) < 0.7 && (from[0] - at[0]) * (to[0] - at[0]) < 0),
      ),
    )
    expect(through).toEqual([])
  })
})

describe('the words of other pieces', () => {
  test('four corners of a bottom need no measuring', () => {
    // Folds at the left, above and below: a quarter turned, two of them would lie in the same corner. The arrow, at the left one,
    // tells; on the right of the panel the piece is turned half round.
    const words = wordsOf(drawn(CASTERS))
    expect(words).toContain('4 times: corner left and front, arrow to the left: fold over both')
    expect(words).toContain('corner right and back, arrow to the right: fold over both')
  })

  test('a pull far from all edges is measured from two', () => {
    expect(wordsOf(drawn(LONE_PULL))).toContain(
      'arrow to the top: 160 from bottom and 400 from left Lay both long lines on your pencil lines.',
    )
  })

  test('the ends of a groove are joined by a rule', () => {
    expect(wordsOf(drawn(INSERT))).toContain('12 wide, 8 deep')
    expect(wordsOf(drawn(INSERT))).toContain('its side: lay on your mark')
    expect(wordsOf(drawn(INSERT))).toContain('Join its ends by a rule.')
  })

  test('in an inch project places are fractions: 80 mm is 3 5/32 in − 0.2 mm', () => {
    // 3 5/32 = 80.169 mm, 0.17 more than 80.
    expect(wordsOf(drawn(THREE_CUPS, 'in'))).toContain('fold over left: 3 5/32 in − 0.2 mm')
  })

  test('a bolt in the edge lies beyond the fold, and beyond it the far arris of the 18 mm edge', () => {
    const [page] = drawn(CAMS)
    if (page === undefined) throw new Error('no page')
    const [cam] = circlesOf(page).filter(({ radius }) => radius === 7.5)
    const [bolt] = circlesOf(page).filter(({ radius }) => radius === 4)
    const [fold] = linesOf(page, 'EDGE').filter(({ from, to }) => from[0] === to[0])
    if (cam === undefined || bolt === undefined || fold === undefined) throw new Error('no holes')
    expect(cam.at[0] - fold.from[0]).toBeCloseTo(34, 9)
    expect(fold.from[0] - bolt.at[0]).toBeCloseTo(9, 9)
    const arris = linesOf(page, 'MARK').filter(({ from, to, pen }) => pen === 'thin' && from[0] === to[0])
    expect(arris.map(({ from }) => fold.from[0] - from[0])).toContainEqual(expect.closeTo(18, 9))
  })
})

test('a budget of one sheet is met by such pieces where strips need more: cups, pull, on one sheet of A4', () => {
  const asked = { print: { paper: 'A4', margin: 10, pageBudget: 1 }, units: 'mm' } as const
  const { plan, drawings } = panelPages(THREE_CUPS, ['A'], asked)
  expect({ stage: plan.stage, sheets: plan.sheets, met: plan.met }).toEqual({ stage: 'hardware', sheets: 1, met: true })
  expect(drawings).toHaveLength(1)
  expect(drawings.map(({ title }) => title)).toEqual(['Glaze store: left door, face A, sheet HA1+'])
})

test('no words lie on holes or other words, on any panel made by hand or of a sample', () => {
  const byHand = [THREE_CUPS, PLATES, CASTERS, LONE_PULL, CAMS, INSERT].flatMap((panel) => drawn(panel))
  const samples = ['clay-cart'].flatMap((stem) => {
    const { panels, project } = builtSample(stem)
    return panels.flatMap((panel) =>
      (['A', 'B'] as const).flatMap((face) =>
        hardwareDrawings(panel, face, setupOf('Letter', project.units, undefined), panels),
      ),
    )
  })
  const pages = [...byHand, ...samples]
  expect(pages.length).toBeGreaterThan(15)
  expect(pages.flatMap(faults)).toEqual([])
  for (const page of pages) checkDrawing(page)
})
