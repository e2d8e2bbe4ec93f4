import { describe, expect, test } from 'vitest'
import { discMeets, overlaps, textArea } from '../../src/drawing/areas.ts'
import { pageDrawings } from '../../src/drawing/pages/face-pages.ts'
import { sheetsOf, speaksFor } from '../../src/drawing/pages/sheet.ts'
import { faceView } from '../../src/drawing/pages/view.ts'
import type { Circle, Drawing, Entity, Line, Text } from '../../src/drawing/types.ts'
import type { Panel } from '../../src/panel/index.ts'
import type { Piece } from '../../src/templates/index.ts'
import { BOTTOM, DOOR, panelOf, row, SIDE } from './page-panels.ts'

const entitiesOf = (page: Drawing, name: string): Entity[] =>
  page.layers.filter((layer) => layer.name === name).flatMap((layer) => layer.entities)
const textsOf = (page: Drawing, name: string): Text[] => entitiesOf(page, name).filter((one) => one.kind === 'text')
const marksOf = (page: Drawing): Circle[] => entitiesOf(page, 'MARK').filter((one) => one.kind === 'circle')
const linesOf = (page: Drawing, name: string): Line[] => entitiesOf(page, name).filter((one) => one.kind === 'line')
const labelOf = ({ title }: Drawing): string => title.split(' ').at(-1) ?? ''

/** The letters of a page, each with the middle of the mark that it stands at. */
function lettersOf(page: Drawing): Map<string, Circle> {
  const letters = textsOf(page, 'NOTE').filter(({ text }) => /^[a-z]{1,2}$/.test(text))
  return new Map(
    letters.map((letter) => {
      const { min, max } = textArea(letter)
      const [x, y] = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2]
      const away = ({ at }: Circle): number => Math.hypot(at[0] - x, at[1] - y)
      const [nearest] = marksOf(page).sort((a, b) => away(a) - away(b))
      if (nearest === undefined) throw new Error(`${page.title}: a letter ${letter.text} without a mark`)
      return [letter.text, nearest]
    }),
  )
}

/** A long hole row in the middle of a panel: pages that are taped. */
const LONG: Panel = panelOf({
  name: 'worktop',
  length: 1800,
  width: 400,
  bores: row({ x: 400, y: 200, d: 5, deep: 13, series: 'row', purpose: 'shelf pin' }, [64, 0], 16),
})

describe('registration', () => {
  const pages = [SIDE, BOTTOM, LONG].map((panel) => pageDrawings(panel, 'A', 'A4', 'mm'))

  test('each mark has a letter of its own on the face, the same on two pages, as far from the other marks on both', () => {
    for (const some of pages) {
      const letters = some.map(lettersOf)
      for (const [k, page] of some.entries()) expect(letters[k]?.size).toBe(marksOf(page).length)
      const counts = new Map<string, number>()
      for (const letter of letters.flatMap((map) => [...map.keys()])) counts.set(letter, (counts.get(letter) ?? 0) + 1)
      expect(counts.size).toBeGreaterThan(0)
      expect([...counts.values()].every((count) => count === 2)).toBe(true)
      for (const [k, map] of letters.entries())
        for (const later of letters.slice(k + 1)) {
          const [first, second] = [...map.keys()].filter((letter) => later.has(letter))
          if (first === undefined || second === undefined) continue
          const apart = (on: Map<string, Circle>): readonly number[] => {
            const [a, b] = [on.get(first)?.at ?? [0, 0], on.get(second)?.at ?? [0, 0]]
            return [b[0] - a[0], b[1] - a[1]]
          }
          expect(apart(map)[0]).toBeCloseTo(apart(later)[0] ?? 0, 9)
          expect(apart(map)[1]).toBeCloseTo(apart(later)[1] ?? 0, 9)
        }
    }
  })

  test('letters lie on no hairline of their mark, and marks on no hole', () => {
    for (const page of pages.flat()) {
      for (const letter of textsOf(page, 'NOTE').filter(({ text }) => /^[a-z]{1,2}$/.test(text))) {
        const area = textArea(letter)
        for (const { at, radius } of marksOf(page)) expect(discMeets(area, at, radius)).toBe(false)
        for (const { at } of marksOf(page)) {
          const cross = { min: [at[0] - 13, at[1] - 0.05], max: [at[0] + 13, at[1] + 0.05] } as const
          const upright = { min: [at[0] - 0.05, at[1] - 13], max: [at[0] + 0.05, at[1] + 13] } as const
          expect(overlaps(area, cross) || overlaps(area, upright)).toBe(false)
        }
      }
      for (const hole of entitiesOf(page, 'BORE').filter((one) => one.kind === 'circle'))
        for (const { at, radius } of marksOf(page))
          expect(Math.hypot(at[0] - hole.at[0], at[1] - hole.at[1])).toBeGreaterThan(radius + hole.radius)
    }
  })

  test('both pages say what is taped to what; the upper one is cut, the lower one says how far it is covered', () => {
    const words = new Map(
      pageDrawings(LONG, 'A', 'A4', 'mm').map((page) => [labelOf(page), textsOf(page, 'NOTE').map(({ text }) => text)]),
    )
    const pairs = [...words].flatMap(([label, some]) =>
      some.flatMap((text) => {
        const [, upper, lower] = /^tape (\w+) to (\w+) here$/.exec(text) ?? []
        return upper === undefined || lower === undefined ? [] : [{ label, upper, lower }]
      }),
    )
    expect(pairs.length).toBeGreaterThan(0)
    for (const { upper, lower } of pairs) {
      expect(words.get(upper)).toContain(`tape ${upper} to ${lower} here`)
      expect(words.get(lower)).toContain(`tape ${upper} to ${lower} here`)
      expect(words.get(upper)).toContain('cut along the dashes')
      expect(words.get(lower)).toContain(`${upper} lies up to the dashes`)
    }
  })

  test('hairlines of the cross, long enough to pass the edge of the upper sheet', () => {
    for (const page of pages.flat())
      for (const { at } of marksOf(page)) {
        const arms = linesOf(page, 'MARK').filter(
          ({ from, to, pen }) =>
            pen === 'hair' &&
            Math.abs((from[0] + to[0]) / 2 - at[0]) < 1e-9 &&
            Math.abs((from[1] + to[1]) / 2 - at[1]) < 1e-9,
        )
        const lengths = arms.map(({ from, to }) => Math.hypot(to[0] - from[0], to[1] - from[1]))
        // The short arm is the reach of the mark on both sides; the long one may be cut at the end of the window.
        expect(Math.min(...lengths)).toBeGreaterThan(11.9)
      }
  })
})

describe('the map of the sheets', () => {
  test('shows the label of every sheet once, that of its own sheet bold, none under 1.8', () => {
    for (const panel of [SIDE, DOOR, BOTTOM, LONG]) {
      const pages = pageDrawings(panel, 'A', 'A4', 'mm')
      const labels = pages.map(labelOf)
      for (const page of pages) {
        const texts = textsOf(page, 'SHEET').filter(({ text, height }) => labels.includes(text) && height < 4)
        expect(texts.map(({ text }) => text).sort()).toEqual([...labels].sort())
        expect(texts.filter(({ bold }) => bold).map(({ text }) => text)).toEqual([labelOf(page)])
        expect(Math.min(...texts.map(({ height }) => height))).toBeGreaterThanOrEqual(1.8)
      }
    }
  })

  test('shows the panel to scale with the sheets where they lie: the door', () => {
    // 715 × 397, its sheets up to 8 beyond the edges: 731 × 413 in 30 × 21 less 0.6 all round: 28.8 / 731 = 0.039398 by
    // width, 19.8 / 413 = 0.0479 by height. So the panel is 715 × 0.039398 = 28.17 wide and 397 × 0.039398 = 15.64 high.
    const [page] = pageDrawings(DOOR, 'A', 'A4', 'mm')
    if (page === undefined) throw new Error('no sheet')
    const frames = entitiesOf(page, 'SHEET').flatMap((one) => {
      if (one.kind !== 'path' || one.filled === true || one.vertices.length !== 4) return []
      const [xs, ys] = [one.vertices.map(({ at }) => at[0]), one.vertices.map(({ at }) => at[1])]
      return [{ pen: one.pen, wide: Math.max(...xs) - Math.min(...xs), high: Math.max(...ys) - Math.min(...ys) }]
    })
    const panel = frames.find(({ pen }) => pen === 'thin')
    expect(panel?.wide).toBeCloseTo(28.17, 2)
    expect(panel?.high).toBeCloseTo(15.64, 2)
    // A1 lies: its window is 297 − 20 − 9 = 268 by 210 − 20 − 25.5 = 164.5 of the panel.
    const here = frames.find(({ pen }) => pen === 'bold')
    expect([here?.wide, here?.high].map((mm) => ((mm ?? 0) / 0.039398).toFixed(1))).toEqual(['268.0', '164.5'])
  })
})

describe('which sheet says what a hole is', () => {
  /** A piece that shows x from `from` to `to` of a face 300 high, taped to the others named. */
  const piece = (label: string, from: number, to: number, joined: readonly string[]): Piece => ({
    kind: 'face',
    row: 0,
    column: 0,
    label,
    window: { min: [from, 0], max: [to, 300] },
    sheet: 0,
    paper: { width: 297, height: 420 },
    at: [20, 30],
    marks: [],
    joins: joined.map((to) => ({ to, seam: { min: [from, 0], max: [from + 20, 300] }, along: 1, over: to < label })),
  })
  // A1 from 0 to 200, A2 from 150 to 350, A3 from 90 to 290: a hole at 100 is on A1 and A3, one at 170 on all.
  const speakers = (joins: Readonly<Record<'A1' | 'A2' | 'A3', readonly string[]>>, x: number): string[] => {
    const pieces = [piece('A1', 0, 200, joins.A1), piece('A2', 150, 350, joins.A2), piece('A3', 90, 290, joins.A3)]
    const sheets = sheetsOf(faceView(SIDE, 'A'), pieces, 'mm')
    return sheets.filter((sheet) => speaksFor(sheet, { at: [x, 150], radius: 4 })).map(({ page }) => page.label)
  }

  test('of taped ones the last, which lies on top, if only by way of another', () => {
    const chain = { A1: ['A2'], A2: ['A1', 'A3'], A3: ['A2'] }
    expect(speakers(chain, 100)).toEqual(['A3'])
    expect(speakers(chain, 170)).toEqual(['A3'])
    expect(speakers(chain, 50)).toEqual(['A1'])
  })

  test('of those that lie by edges of their own each', () => {
    expect(speakers({ A1: [], A2: [], A3: [] }, 170)).toEqual(['A1', 'A2', 'A3'])
    expect(speakers({ A1: ['A2'], A2: ['A1'], A3: [] }, 170)).toEqual(['A2', 'A3'])
    expect(speakers({ A1: ['A2'], A2: ['A1'], A3: [] }, 100)).toEqual(['A1', 'A3'])
  })
})
