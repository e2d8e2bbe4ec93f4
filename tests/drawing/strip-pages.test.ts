import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { discMeets, grown, lineMeets, overlaps, textArea } from '../../src/drawing/areas.ts'
import { type PanelPages, panelPages } from '../../src/drawing/index.ts'
import type { Circle, Drawing, Entity, Line, Text } from '../../src/drawing/types.ts'
import { facesMarked } from '../../src/outputs/paths.ts'
import type { Panel } from '../../src/panel/index.ts'
import { checkDrawing } from '../../src/writers/check-drawing.ts'
import { openSample } from '../support/samples.ts'
import { rowedPanels } from '../templates/strips-cases.ts'
import { DOOR, panelOf, row, SIDE } from './page-panels.ts'
import '../support/seed.ts'

const entitiesOf = (page: Drawing, ...layers: string[]): Entity[] =>
  page.layers.filter(({ name }) => layers.length === 0 || layers.includes(name)).flatMap(({ entities }) => entities)
const textsOf = (page: Drawing): Text[] => entitiesOf(page).filter((entity) => entity.kind === 'text')
const circlesOf = (page: Drawing, ...layers: string[]): Circle[] =>
  entitiesOf(page, ...layers).filter((entity) => entity.kind === 'circle')
const wordsOf = (pages: readonly Drawing[]): string[] => pages.flatMap(textsOf).map(({ text }) => text)

/** Words on a hole, on each other, on a bold edge, or in the margin. */
function faults(page: Drawing): string[] {
  const found: string[] = []
  const texts = textsOf(page)
  const circles = circlesOf(page)
  const edges = entitiesOf(page, 'EDGE').filter((entity): entity is Line => entity.kind === 'line')
  const { max } = page.view
  texts.forEach((text, index) => {
    const area = grown(textArea(text), -0.01)
    for (const { at, radius } of circles)
      if (discMeets(area, at, radius)) found.push(`${page.title}: "${text.text}" on a circle at ${at}`)
    for (const other of texts.slice(index + 1))
      if (overlaps(area, textArea(other))) found.push(`${page.title}: "${text.text}" on "${other.text}"`)
    for (const edge of edges)
      if (lineMeets(area, edge.from, edge.to)) found.push(`${page.title}: "${text.text}" on an edge`)
    if (area.min[0] < 9 || area.min[1] < 9 || area.max[0] > max[0] - 9 || area.max[1] > max[1] - 9)
      found.push(`${page.title}: "${text.text}" in the margin`)
  })
  return found
}

const within = (panel: Panel, pageBudget: number, others: readonly Panel[] = []): PanelPages =>
  panelPages(panel, facesMarked(panel), { print: { paper: 'A4', margin: 10, pageBudget }, units: 'mm', others })

/** Each hole that a piece shows whole has its circle where the piece lies on its sheet, at true size. */
function expectTrue(panel: Panel, { plan, drawings }: PanelPages): void {
  let first = 0
  for (const { face, plan: own } of plan.faces) {
    for (const { use, window, at, sheet } of own.pieces) {
      const page = drawings[first + sheet]
      if (use === undefined || page === undefined) continue
      for (const bore of panel.bores) {
        if (!use.bores.includes(bore.id) || bore.surface !== face || bore.leanDeg !== undefined) continue
        const x = face === 'B' ? panel.length - bore.at[0] : bore.at[0]
        const reach = Math.max(bore.diameter, bore.sink?.diameter ?? 0) / 2
        const inside =
          x - reach >= window.min[0] &&
          x + reach <= window.max[0] &&
          bore.at[1] - reach >= window.min[1] &&
          bore.at[1] + reach <= window.max[1]
        if (!inside) continue
        const there = [x - window.min[0] + at[0], bore.at[1] - window.min[1] + at[1]] as const
        const drawn = circlesOf(page, 'BORE').filter(
          (circle) => Math.hypot(circle.at[0] - there[0], circle.at[1] - there[1]) < 1e-6,
        )
        expect(drawn.map(({ radius }) => radius)).toContain(bore.diameter / 2)
      }
    }
    first += own.sheets
  }
  expect(drawings.length).toBe(plan.sheets)
}

const pin = { d: 5, deep: 13, purpose: 'shelf pin' } as const
const PINS = panelOf({ name: 'left side', length: 760, width: 540, bores: row({ x: 96, y: 37, ...pin }, [32, 0], 18) })
const MIRRORED: Panel = {
  ...panelOf({ name: 'right side', length: 760, width: 540, bores: row({ x: 120, y: 37, ...pin }, [32, 0], 18) }),
  id: 'glaze-store/right-side',
  edges: { x0: 'top', x1: 'bottom', y0: 'front', y1: 'back' },
}

describe('a pin row within a budget', () => {
  test('pages of the whole face where no budget is set', () => {
    const { plan, drawings } = panelPages(PINS, ['A'], { print: 'A4', units: 'mm' })
    expect(plan.stage).toBe('whole')
    expect(drawings.length).toBe(plan.sheets)
  })
  test('one repeated strip says how it is laid and moved, and what it is for', () => {
    const pages = within(PINS, 1)
    expect(pages.plan).toMatchObject({ stage: 'repeated', sheets: 1, met: true })
    const words = wordsOf(pages.drawings).join(' ')
    expect(words).toContain('S1 left side, face A')
    expect(words).toContain('fold over the front edge, stop at the bottom edge, folded over it')
    expect(words).toContain('5 × 5 deep 13')
    expect(words).toContain('every 32 (of a row of 18): shelf pin')
    // 18 = 5 + 4 + 4 + 4 + 1: the fourth time up to its second hole.
    expect(words).toContain('Then move it 4 pitches (128 mm) toward top: first hole on the last one marked;')
    expect(words).toContain('4 times, the last time up to its hole 2.')
    expectTrue(PINS, pages)
    expect(pages.drawings.flatMap(faults)).toEqual([])
  })
  test('in inches, a pitch that would be rounded is left out', () => {
    const inch = panelPages(PINS, ['A'], { print: { paper: 'Letter', margin: 10, pageBudget: 1 }, units: 'in' })
    const metric = wordsOf(inch.drawings).join(' ')
    expect(metric).toContain('pitches (')
    const third = panelOf({
      ...{ name: 'side', length: 760, width: 540 },
      bores: row({ x: 96, y: 37, ...pin }, [100 / 3, 0], 18),
    })
    const words = wordsOf(within(third, 1).drawings).join(' ')
    expect(words).toContain('Then move it 4 pitches toward top')
  })
  test('a strip that serves both hands says which way up for each, and where the other one is folded', () => {
    const pages = within(PINS, 1, [PINS, MIRRORED])
    const words = wordsOf(pages.drawings).join(' ')
    expect(words).toContain('LEFT SIDE: this way up. RIGHT SIDE: turn it half round.')
    expect(words).toContain('right side, turned half round: fold here')
    // Bold lines across the strip at 37 to either side of the row.
    const [page] = pages.drawings
    const [piece] = pages.plan.faces[0]?.plan.pieces ?? []
    if (page === undefined || piece === undefined) throw new Error('no page')
    const line = 37 - piece.window.min[1] + piece.at[1]
    const bold = entitiesOf(page, 'EDGE').filter(
      (entity): entity is Line => entity.kind === 'line' && entity.pen === 'bold',
    )
    const level = bold.filter(({ from, to }) => Math.abs(from[1] - to[1]) < 1e-9).map(({ from }) => from[1] - line)
    expect(level.map((y) => Math.round(y * 1e6) / 1e6).sort((a, b) => a - b)).toEqual([-37, 37])
    expect(pages.drawings.flatMap(faults)).toEqual([])
  })
  test('of a joined strip, the piece with its first hole says how it is laid; all say what they are', () => {
    const pages = within(PINS, 2)
    expect(pages.plan).toMatchObject({ stage: 'strips', met: true })
    const words = wordsOf(pages.drawings)
    for (const label of ['S1.1', 'S1.2', 'S1.3']) expect(words).toContain(`${label} left side, face A`)
    expect(words.filter((text) => text.startsWith('fold over')).length).toBe(1)
    expectTrue(PINS, pages)
    expect(pages.drawings.flatMap(faults)).toEqual([])
  })
})

describe('words without which a strip could be laid wrongly', () => {
  const wordsWithin = (panel: Panel, budget: number, others: readonly Panel[] = []): string =>
    wordsOf(within(panel, budget, others).drawings).join(' ')

  test('a strip that is moved along goes the other way where it is turned half round', () => {
    // A half turn of 760 × 540 takes (96, 37) to (664, 503), and the row's pitch of 32 from +x to -x.
    const turned = row({ x: 664 - 17 * 32, y: 503, ...pin }, [32, 0], 18)
    const rows = [...row({ x: 96, y: 37, ...pin }, [32, 0], 18), ...turned]
    const words = wordsWithin(panelOf({ name: 'left side', length: 760, width: 540, bores: rows }), 1)
    expect(words).toContain('Also: turned half round, fold over the back edge, stop at the top edge, folded over it')
    expect(words).toContain('toward top (turned half round: toward bottom): first hole on the last one marked')
  })
  test('where no edge is near, the other holes say which way round it lies', () => {
    // 350 from the front and 300 from the bottom: out of reach of either edge; the row goes on to 600 from the bottom.
    const bores = row({ x: 300, y: 350, ...pin }, [60, 0], 6)
    const words = wordsWithin(panelOf({ name: 'left side', length: 1200, width: 700, bores }), 1)
    expect(words).toContain(
      'row on a pencil line 350 from front, hole with the line across 300 from bottom, the others toward top',
    )
  })
  test('the same way up on the panel of the other hand, the second line has the name of the edge there', () => {
    // Mirrored across the row: 37 from the back, 540 − 37 = 503 from the front.
    const other: Panel = {
      ...panelOf({ name: 'right side', length: 760, width: 540, bores: row({ x: 96, y: 503, ...pin }, [32, 0], 18) }),
      id: 'glaze-store/right-side',
    }
    const words = wordsWithin(PINS, 1, [PINS, other])
    expect(words).toContain('LEFT SIDE: this way up. RIGHT SIDE: the same way up.')
    expect(words).toContain('right side, back edge: fold here')
  })
  test('the line to stop at has its name on a narrow strip too', () => {
    const { panels } = openSample('clay-cart').built
    const bottom = panels.find(({ id }) => id === 'clay-cart/bottom')
    if (bottom === undefined) throw new Error('no bottom')
    const { drawings } = panelPages(bottom, ['A'], {
      print: { paper: 'Letter', margin: 10, pageBudget: 1 },
      units: 'in',
    })
    const words = wordsOf(drawings)
    expect(words).toContain('fold over the left edge, stop at the front edge, folded over it')
    expect(words.some((text) => text === 'FRONT' || text === 'FRONT: fold here')).toBe(true)
    expect(drawings.flatMap(faults)).toEqual([])
  })
  test('cautions beside a wide sheet label are said in fewer words, not cut', () => {
    const through = row({ x: 20, y: 300, d: 7, deep: 'through', purpose: 'screw' }, [240, 0], 4)
    const bores = [...row({ x: 96, y: 37, ...pin }, [32, 0], 18), ...through]
    const words = wordsOf(within(panelOf({ name: 'left side', length: 760, width: 540, bores }), 1).drawings)
    expect(words).toContain(
      'Collar: without the point. Back up through holes. Extract dust; mask, eye and ear protection.',
    )
  })
})

test('a plan that cannot be within its budget says so', () => {
  const { plan } = within(SIDE, 1)
  expect(plan.met).toBe(false)
  expect(plan.sheets).toBeLessThan(within(SIDE, 50).plan.sheets)
})

test.each([
  ['clay-cart', 'clay-cart', 1],
  ['pottery-studio', 'glaze-store', 3],
])('sheets of %s, module %s, within %d: no words on holes, words or edges; holes true', (stem, module, budget) => {
  const panels = openSample(stem).built.panels.filter((panel) => panel.module === module)
  for (const panel of panels) {
    if (facesMarked(panel).length === 0) continue
    const pages = within(panel, budget, panels)
    for (const page of pages.drawings) checkDrawing(page)
    expectTrue(panel, pages)
    expect(pages.drawings.flatMap(faults)).toEqual([])
  }
})

test('any panel with rows: no words on holes, words or edges; holes true; a budget that is met is kept', () => {
  fc.assert(
    fc.property(rowedPanels, fc.integer({ min: 1, max: 6 }), (panel, budget) => {
      const pages = within(panel, budget)
      for (const page of pages.drawings) checkDrawing(page)
      expectTrue(panel, pages)
      expect(pages.drawings.flatMap(faults)).toEqual([])
      if (pages.plan.met) expect(pages.plan.sheets).toBeLessThanOrEqual(budget)
      else expect(pages.plan.sheets).toBeGreaterThan(budget)
    }),
    { numRuns: 15 },
  )
})

test('a door: cups and their dowels share a strip along the hinge edge', () => {
  const { plan } = within(DOOR, 2)
  const strips = plan.faces.flatMap(({ plan: own }) => own.pieces).filter(({ use }) => use !== undefined)
  expect(strips[0]?.use?.bores.length).toBe(6)
  expect(strips[0]?.use?.places[0]?.folds).toContain('y0')
})

test('every place of a cut-out piece is said: on the piece, or beside it where the sheet is blank', () => {
  const { panels } = openSample('pottery-studio').built
  for (const module of ['mould-store', 'ware-trolley']) {
    const some = panels.filter((panel) => panel.module === module)
    for (const panel of some) {
      const { drawings } = within(panel, 4, some)
      expect(wordsOf(drawings).filter((words) => words.includes('no room for'))).toEqual([])
      expect(drawings.flatMap(faults)).toEqual([])
    }
  }
})
