import { describe, expect, test } from 'vitest'
import { pageDrawings } from '../../src/drawing/pages/face-pages.ts'
import { setupOf, stretchOf } from '../../src/drawing/pages/setup.ts'
import { pdfOf } from '../../src/writers/pdf.ts'
import { BOTTOM, DOOR, SIDE } from '../drawing/page-panels.ts'
import { FONTS } from './pdf-fonts.ts'

const INFO = { title: 'a title', subject: 'a subject', fingerprint: 'abc123' }
const MM_PER_PT = 25.4 / 72
const FORBIDDEN = 'Drawn although a finding forbids it'

interface Page {
  readonly width: number
  readonly height: number
  /** Every point that is drawn to, on the paper as it is written, mm from its upper left corner. */
  readonly points: [number, number][]
  /** Middles of circles. */
  readonly middles: [number, number][]
}

/** The pages of a PDF as another program would lay them on paper: each point through the matrices that stand before it. */
function pagesOf(bytes: Uint8Array): Page[] {
  const text = new TextDecoder('latin1').decode(bytes)
  const boxes = [...text.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)]
  return [...text.matchAll(/stream\n(1 0 0 -1 0 [\s\S]*?)\nendstream/g)].map((match, k): Page => {
    const lines = (match[1] ?? '').split('\n')
    // The first matrix turns the page over; a second one, before any drawing, stretches it.
    const stretch = /^(\S+) 0 0 (\S+) 0 0 cm$/.exec(lines[1] ?? '')
    const [sx, sy] = stretch === null ? [1, 1] : [Number(stretch[1]), Number(stretch[2])]
    const onPaper = (x: number, y: number): [number, number] => [x * sx * MM_PER_PT, y * sy * MM_PER_PT]
    const points: [number, number][] = []
    const middles: [number, number][] = []
    lines.forEach((line, n) => {
      const numbers = line.split(' ').map(Number)
      if (/ [ml]$/.test(line)) points.push(onPaper(numbers[0] ?? 0, numbers[1] ?? 0))
      if (!/ c$/.test(line)) return
      points.push(onPaper(numbers[4] ?? 0, numbers[5] ?? 0))
      // A circle: a move to its left end, and four curves; the second ends at its right end.
      if (!/ m$/.test(lines[n - 1] ?? '') || !/ c$/.test(lines[n + 3] ?? '')) return
      const [left = 0] = (lines[n - 1] ?? '').split(' ').map(Number)
      const [, , , , right = 0, y = 0] = (lines[n + 1] ?? '').split(' ').map(Number)
      middles.push(onPaper((left + right) / 2, y))
    })
    const [, width = 0, height = 0] = (boxes[k] ?? []).map(Number)
    return { width: width * MM_PER_PT, height: height * MM_PER_PT, points, middles }
  })
}

const written = async (...of: Parameters<typeof pageDrawings>): Promise<Page[]> =>
  pagesOf(await pdfOf(pageDrawings(...of), INFO, FONTS))

describe('pages corrected for a printer', () => {
  // 180 / 179.1 = 1.0050251, 180 / 181.8 = 0.9900990 (T20: a bar that reads 99.5 of 100).
  const [across, down] = [180 / 179.1, 180 / 181.8]
  const bars = { across: 179.1, down: 181.8 }

  test('the distance of two holes is written true × factor along each axis, upright and on the side', async () => {
    const seen = new Set<string>()
    for (const panel of [DOOR, SIDE, BOTTOM]) {
      for (const paper of ['A4', 'A3', 'Letter', 'Tabloid'] as const) {
        const printing = { paper, margin: 10, bars }
        const drawings = pageDrawings(panel, 'A', printing, 'mm')
        const pages = await written(panel, 'A', printing, 'mm')
        expect(pages).toHaveLength(drawings.length)
        drawings.forEach((drawing, k) => {
          const page = pages[k]
          const bores = drawing.layers.find(({ name }) => name === 'BORE')?.entities ?? []
          const circles = bores.flatMap((one) => (one.kind === 'circle' ? [one] : []))
          const [first] = circles
          if (page === undefined || first === undefined) return
          const [fx, fy] = page.width > page.height ? [down, across] : [across, down]
          seen.add(page.width > page.height ? 'on its side' : 'upright')
          const near = (p: readonly number[], q: readonly number[]): boolean =>
            Math.hypot((p[0] ?? 0) - (q[0] ?? 0), (p[1] ?? 0) - (q[1] ?? 0)) < 1e-4
          const height = drawing.view.max[1]
          for (const { at } of circles)
            expect(page.middles.some((middle) => near(middle, [at[0] * fx, (height - at[1]) * fy]))).toBe(true)
        })
      }
    }
    expect([...seen].sort()).toEqual(['on its side', 'upright'])
  })

  test('sheets keep their size, and all that is drawn lies between the margins', async () => {
    for (const margin of [5, 10, 14]) {
      for (const pages of [
        await written(SIDE, 'A', { paper: 'A4', margin, bars }, 'mm'),
        await written(DOOR, 'A', { paper: 'A4', margin, bars }, 'mm', FORBIDDEN),
      ]) {
        for (const { width, height, points } of pages) {
          expect(Math.min(width, height)).toBeCloseTo(210, 6)
          expect(Math.max(width, height)).toBeCloseTo(297, 6)
          const xs = points.map(([x]) => x)
          const ys = points.map(([, y]) => y)
          expect(Math.min(...xs)).toBeGreaterThan(margin - 0.001)
          expect(Math.min(...ys)).toBeGreaterThan(margin - 0.001)
          expect(Math.max(...xs)).toBeLessThan(width - margin + 0.001)
          expect(Math.max(...ys)).toBeLessThan(height - margin + 0.001)
        }
      }
    }
  })

  test('each bar of every page says so, and one that is not corrected does not', () => {
    const words = (printing: Parameters<typeof pageDrawings>[2]): string[] =>
      pageDrawings(DOOR, 'A', printing, 'mm').map((page) =>
        page.layers
          .flatMap(({ entities }) => entities.flatMap((one) => (one.kind === 'text' ? [one.text] : [])))
          .join(),
      )
    for (const page of words({ paper: 'A4', margin: 10, bars })) {
      expect(page).toContain('corrected 0.503 %')
      expect(page).toContain('corrected −0.99 %')
    }
    for (const page of words('A4')) expect(page).not.toMatch(/corrected/i)
  })
})

test('the usual margin said is the usual page', () => {
  expect(pageDrawings(DOOR, 'A', { paper: 'A4', margin: 10 }, 'mm')).toEqual(pageDrawings(DOOR, 'A', 'A4', 'mm'))
})

test('pages that a finding forbids are drawn all the same, for whoever says so: the widest margins and readings', async () => {
  const most = { paper: 'A4', margin: 40, bars: { across: 162, down: 162 } } as const
  const { length } = pageDrawings(SIDE, 'A', most, 'mm', FORBIDDEN)
  expect(await written(SIDE, 'A', most, 'mm', FORBIDDEN)).toHaveLength(length)
  for (const paper of ['A4', 'A3', 'Letter', 'Legal', 'Tabloid'] as const) {
    for (const margin of [2, 40]) {
      for (const [across, down] of [
        [162, 162],
        [162, 198],
        [198, 162],
        [198, 198],
      ] as const) {
        const printing = { paper, margin, bars: { across, down } }
        expect(pageDrawings(SIDE, 'A', printing, 'mm', FORBIDDEN).length).toBeGreaterThan(0)
      }
    }
  }
})

test('off a roll, across is its width, whether the sheet lies along or across it, and however short it is', () => {
  // Bars that read 179.1 across and 180 down: 180 / 179.1 = 1.005025 across, 1 down. The roll of 610 then holds
  // 610 / 1.005025 = 606.95 of the drawing.
  const setup = setupOf({ paper: 'roll 610', margin: 10, bars: { across: 179.1, down: 180 } }, 'mm', undefined)
  const across = 180 / 179.1
  const roll = setup.paper.width
  expect(roll).toBeCloseTo(606.95, 2)
  expect(stretchOf(setup, { width: roll, height: 900 })).toEqual([across, 1])
  expect(stretchOf(setup, { width: roll, height: 300 })).toEqual([across, 1])
  expect(stretchOf(setup, { width: 900, height: roll })).toEqual([1, across])
  expect(stretchOf(setup, { width: 300, height: roll })).toEqual([1, across])
  // Of a sheet, across is its short side.
  const sheet = setupOf({ paper: 'A4', margin: 10, bars: { across: 179.1, down: 180 } }, 'mm', undefined)
  expect(stretchOf(sheet, { width: 300, height: 200 })).toEqual([1, across])
})
