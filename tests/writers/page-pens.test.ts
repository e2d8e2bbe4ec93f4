import { expect, test } from 'vitest'
import { pageDrawings } from '../../src/drawing/pages/face-pages.ts'
import { pdfOf } from '../../src/writers/pdf.ts'
import { panelOf } from '../drawing/page-panels.ts'
import { FONTS } from './pdf-fonts.ts'

const MM_PER_PT = 25.4 / 72

/** A straight stroke of a PDF page: its ends, mm from the upper left, and how wide it is, mm. */
interface Stroke {
  readonly from: readonly number[]
  readonly to: readonly number[]
  readonly wide: number
}

function strokesOf(bytes: Uint8Array): { strokes: Stroke[]; widths: number[] } {
  const text = new TextDecoder('latin1').decode(bytes)
  const lines = (/stream\n(1 0 0 -1 0 [\s\S]*?)\nendstream/.exec(text)?.[1] ?? '').split('\n')
  const strokes: Stroke[] = []
  const widths: number[] = []
  let wide = Number.NaN
  lines.forEach((line, k) => {
    const numbers = line.split(' ').map((figure) => Number(figure) * MM_PER_PT)
    if (/ w$/.test(line)) {
      wide = numbers[0] ?? Number.NaN
      widths.push(wide)
    }
    if (/ m$/.test(line) && / l$/.test(lines[k + 1] ?? '') && lines[k + 2] === 'S') {
      const to = (lines[k + 1] ?? '').split(' ').map((figure) => Number(figure) * MM_PER_PT)
      strokes.push({ from: numbers.slice(0, 2), to: to.slice(0, 2), wide })
    }
  })
  return { strokes, widths }
}

test('on paper the crosses of holes are 0.1 mm wide, folds 0.6 mm, and no line is without width', async () => {
  // 150 × 120: a hole in the face, and one in the left end.
  const panel = panelOf({
    name: 'rail',
    length: 150,
    width: 120,
    bores: [
      { x: 60, y: 50, d: 5, deep: 13 },
      { on: 'x0', x: 0, y: 70, z: -9, d: 8, deep: 21 },
    ],
  })
  const pages = pageDrawings(panel, 'A', 'A4', 'mm')
  expect(pages).toHaveLength(1)
  const info = { title: 'a title', subject: 'a subject', fingerprint: 'abc123' }
  const { strokes, widths } = strokesOf(await pdfOf(pages, info, FONTS))
  const long = ({ from, to }: Stroke): number =>
    Math.hypot((to[0] ?? 0) - (from[0] ?? 0), (to[1] ?? 0) - (from[1] ?? 0))
  const widthsOf = (length: number): number[] =>
    strokes.filter((stroke) => Math.abs(long(stroke) - length) < 1e-3).map(({ wide }) => Math.round(wide * 1e4) / 1e4)
  // Arms from 0.8 beside the middle to 2.5 beyond the rim: 2.5 + 2.5 − 0.8 = 4.2, and 4 + 2.5 − 0.8 = 5.7.
  expect(widthsOf(4.2)).toEqual([0.1, 0.1, 0.1, 0.1])
  expect(widthsOf(5.7)).toEqual([0.1, 0.1, 0.1, 0.1])
  // The edges: 150 twice; 120 twice, and once more, thin, where the surface of the left end stops.
  expect(widthsOf(150)).toEqual([0.6, 0.6])
  expect(widthsOf(120).sort()).toEqual([0.2, 0.6, 0.6])
  expect([...new Set(widths.map((wide) => Math.round(wide * 1e4) / 1e4))].sort()).toEqual([0.1, 0.2, 0.6])
})
