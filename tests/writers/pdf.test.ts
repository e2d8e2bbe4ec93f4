import { createHash } from 'node:crypto'
import { create, type Font } from 'fontkit'
import { describe, expect, test } from 'vitest'
import { pageDrawings } from '../../src/drawing/pages/face-pages.ts'
import type { Drawing, Entity } from '../../src/drawing/types.ts'
import type { PaperName } from '../../src/project/index.ts'
import { pdfOf } from '../../src/writers/pdf.ts'
import { BOTTOM, DOOR } from '../drawing/page-panels.ts'
import { FONTS } from './pdf-fonts.ts'

const INFO = { title: 'a title', subject: 'a subject', fingerprint: 'abc123' }

const latin1 = new TextDecoder('latin1')
const textOf = (bytes: Uint8Array): string => latin1.decode(bytes)

/** The content streams: those that turn the page over first. */
const contentsOf = (bytes: Uint8Array): string[] =>
  [...textOf(bytes).matchAll(/stream\n(1 0 0 -1 0 [\s\S]*?)\nendstream/g)].map((match) => match[1] ?? '')

/** Lines `x y m` and `x y l` after each other, as [x1, y1, x2, y2] in points. */
const strokesOf = (content: string): number[][] =>
  [...content.matchAll(/^(-?[\d.]+) (-?[\d.]+) m\n(-?[\d.]+) (-?[\d.]+) l\nS$/gm)].map((match) =>
    match.slice(1).map(Number),
  )

function pageWith(...entities: Entity[]): Drawing {
  const layers = [{ name: 'NOTE', operation: 'note' as const, entities }]
  return { title: 'page', view: { min: [0, 0], max: [210, 297] }, layers }
}

describe('scale', () => {
  // One unit is 1/72 in (ISO 32000-1, 8.3.2.3) and an inch is 25.4 mm (NIST SP 811, B.8): 180 mm = 180 × 72 / 25.4 =
  // 510.236220 pt, 100 mm = 283.464567 pt, 4 in = 288 pt.
  test('180 mm are 510.23622 pt along both axes, to 0.0001 pt', async () => {
    const bytes = await pdfOf(
      [pageWith({ kind: 'line', from: [15, 15], to: [195, 15] }, { kind: 'line', from: [15, 50], to: [15, 230] })],
      INFO,
      FONTS,
    )
    const [level, upright] = contentsOf(bytes).flatMap(strokesOf)
    expect(Math.abs((level?.[2] ?? 0) - (level?.[0] ?? 0) - 510.23622)).toBeLessThan(0.0001)
    expect(level?.[1]).toBe(level?.[3])
    // y runs down inside the turned page: (297 − 50) mm first, (297 − 230) mm then.
    expect(Math.abs((upright?.[1] ?? 0) - (upright?.[3] ?? 0) - 510.23622)).toBeLessThan(0.0001)
    expect(upright?.[1]).toBeCloseTo((247 * 72) / 25.4, 5)
  })

  test('the check bars of a page: 100 mm and 4 in along both axes', async () => {
    const bytes = await pdfOf(pageDrawings(DOOR, 'A', 'A4', 'mm').slice(0, 1), INFO, FONTS)
    const strokes = contentsOf(bytes).flatMap(strokesOf)
    const long = (3.2 * 72) / 25.4
    const level = strokes.filter(
      ([x1 = 0, y1 = 0, x2 = 0, y2 = 0]) => x1 === x2 && Math.abs(Math.abs(y2 - y1) - long) < 1e-4,
    )
    const upright = strokes.filter(
      ([x1 = 0, y1 = 0, x2 = 0, y2 = 0]) => y1 === y2 && Math.abs(Math.abs(x2 - x1) - long) < 1e-4,
    )
    const from = (ticks: number[][], axis: 0 | 1): number[] => {
      const places = ticks.map((tick) => tick[axis] ?? 0)
      const zero = axis === 0 ? Math.min(...places) : Math.max(...places)
      return places.map((place) => Math.abs(place - zero)).sort((a, b) => a - b)
    }
    for (const [ticks, axis] of [
      [level, 0],
      [upright, 1],
    ] as const) {
      const found = from(ticks, axis)
      expect(found).toHaveLength(4)
      for (const [index, wanted] of [0, 0, 283.464567, 288].entries())
        expect(Math.abs((found[index] ?? 0) - wanted)).toBeLessThan(0.0001)
    }
  })

  test.each([
    // ISO 216 and ASME Y14.1, times 72 / 25.4.
    ['A4', 595.275591, 841.889764],
    ['A3', 841.889764, 1190.551181],
    ['Letter', 612, 792],
    ['Legal', 612, 1008],
    ['Tabloid', 792, 1224],
  ])('the MediaBox of %s is %f × %f pt', async (paper, width, height) => {
    const bytes = await pdfOf(pageDrawings(DOOR, 'A', paper as PaperName, 'mm'), INFO, FONTS)
    const boxes = [...textOf(bytes).matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)]
    expect(boxes.length).toBeGreaterThan(0)
    for (const [, w, h] of boxes) {
      const sides = [Number(w), Number(h)].sort((a, b) => a - b)
      expect(Math.abs((sides[0] ?? 0) - width)).toBeLessThan(0.01)
      expect(Math.abs((sides[1] ?? 0) - height)).toBeLessThan(0.01)
    }
    expect(textOf(bytes)).not.toContain('UserUnit')
  })
})

describe('curves', () => {
  test('a circle of 35 mm: every point of its four curves within 0.01 mm of the rim', async () => {
    const bytes = await pdfOf([pageWith({ kind: 'circle', at: [100, 100], radius: 17.5 })], INFO, FONTS)
    expect(worstRadius(contentsOf(bytes)[0] ?? '', 100, 197, 17.5)).toBeLessThan(0.01)
  })

  test('a path of two half circles, bulge 1, is a circle too', async () => {
    const vertices = [
      { at: [90, 100], bulge: 1 },
      { at: [110, 100], bulge: 1 },
    ] as const
    const bytes = await pdfOf([pageWith({ kind: 'path', vertices })], INFO, FONTS)
    expect(worstRadius(contentsOf(bytes)[0] ?? '', 100, 197, 10)).toBeLessThan(0.01)
  })
})

/** Farthest that the curves of a content stream stray from a circle; mm, y from the top of the page. */
function worstRadius(content: string, x: number, y: number, radius: number): number {
  const mm = 25.4 / 72
  let from: number[] = []
  let worst = 0
  let curves = 0
  for (const line of content.split('\n')) {
    const numbers = line.split(' ').slice(0, -1).map(Number)
    if (line.endsWith(' m')) from = numbers
    if (!line.endsWith(' c')) continue
    curves += 1
    const points = [...from, ...numbers]
    for (let step = 0; step <= 16; step++) {
      const t = step / 16
      const on = (k: 0 | 1): number => {
        const [a = 0, b = 0, c = 0, d = 0] = [points[k], points[k + 2], points[k + 4], points[k + 6]]
        return a * (1 - t) ** 3 + 3 * b * t * (1 - t) ** 2 + 3 * c * t * t * (1 - t) + d * t ** 3
      }
      worst = Math.max(worst, Math.abs(Math.hypot(on(0) * mm - x, on(1) * mm - y) - radius))
    }
    from = numbers.slice(4)
  }
  expect(curves).toBe(4)
  return worst
}

describe('the file', () => {
  test('asks for no scaling, names no other maker, and keeps the fingerprint', async () => {
    const text = textOf(await pdfOf([pageWith()], INFO, FONTS))
    expect(text.startsWith('%PDF-1.7')).toBe(true)
    expect(text).toContain('/PrintScaling /None')
    expect(text).toContain('/PickTrayByPDFSize true')
    expect(text).toContain('(abc123)')
    expect(text).not.toMatch(/pdfkit/i)
    expect(text.match(/\(D:\d+Z\)/g)).toEqual(['(D:20000101000000Z)', '(D:20000101000000Z)'])
  })

  test('another fingerprint gives another ID', async () => {
    const id = (bytes: Uint8Array) => /\/ID \[<([0-9a-f]+)>/.exec(textOf(bytes))?.[1]
    const first = id(await pdfOf([pageWith()], INFO, FONTS))
    const second = id(await pdfOf([pageWith()], { ...INFO, fingerprint: 'def456' }, FONTS))
    expect(first).toMatch(/^[0-9a-f]{32}$/)
    expect(second).not.toBe(first)
  })

  test('has no line of width 0, and hairlines of 0.1 mm', async () => {
    const contents = contentsOf(await pdfOf(pageDrawings(BOTTOM, 'A', 'A3', 'mm'), INFO, FONTS))
    const widths = contents.flatMap((content) =>
      [...content.matchAll(/^([\d.]+) w$/gm)].map((match) => Number(match[1])),
    )
    // 0.1, 0.2 and 0.6 mm in points.
    const wanted = [0.1, 0.2, 0.6].map((mm) => Math.round(mm * (72 / 25.4) * 1e6) / 1e6)
    expect([...new Set(widths)].sort((a, b) => a - b)).toEqual(wanted)
  })

  test('each font is embedded once, however many pages there are', async () => {
    const pages = pageDrawings(DOOR, 'A', 'A4', 'mm')
    const text = textOf(await pdfOf(pages, INFO, FONTS))
    expect(text.match(/\/FontFile2 /g)).toHaveLength(2)
    expect(text.match(/\/Type \/Page\n/g)).toHaveLength(pages.length)
  })

  test('without a page it is refused', async () => {
    await expect(pdfOf([], INFO, FONTS)).rejects.toThrow('a PDF without pages was asked for: a title')
  })
})

describe('letters', () => {
  test('what the font lacks becomes a question mark; what it has stays', async () => {
    // DejaVu Sans has Cyrillic, × and ⌀, and no Chinese characters; a tab and a lone surrogate are no letters at all.
    const font = create(Buffer.from(FONTS.regular)) as Font
    expect([...'Жук 5 × ⌀'].every((letter) => font.hasGlyphForCodePoint(letter.codePointAt(0) ?? 0))).toBe(true)
    const glyphs = async (text: string) => {
      const words = pageWith({ kind: 'text', at: [20, 20], height: 3, anchor: 'start', text })
      return [...(contentsOf(await pdfOf([words], INFO, FONTS))[0] ?? '').matchAll(/<([0-9a-f]+)>/g)]
        .map((m) => m[1])
        .join('')
    }
    expect(await glyphs('a\u6f22b\tc\ud800')).toBe(await glyphs('a?b?c?'))
    expect(await glyphs('Жук 5 × ⌀')).not.toBe(await glyphs('??? 5 × ?'))
  })

  test('a text set to the end stops at its point, and a turned one reads upward', async () => {
    // "10" in DejaVu Sans is 2 × 1303 / 2048 of its size wide: at 4 mm, 5.08984375 mm.
    const end = pageWith({ kind: 'text', at: [100, 50], height: 4, anchor: 'end', text: '10' })
    const [, x] = /1 0 0 1 ([\d.]+) ([\d.]+) Tm/.exec(contentsOf(await pdfOf([end], INFO, FONTS))[0] ?? '') ?? []
    expect(Number(x)).toBeCloseTo(((100 - 5.08984375) * 72) / 25.4, 4)
    const turned = pageWith({ kind: 'text', at: [100, 50], height: 4, anchor: 'start', text: '10', turnDeg: 90 })
    expect(contentsOf(await pdfOf([turned], INFO, FONTS))[0]).toMatch(/^0 -1 1 0 /m)
  })
})

describe('the same bytes', () => {
  test('over two runs in one process, with another document between', async () => {
    const pages = pageDrawings(DOOR, 'A', 'A4', 'mm')
    const first = await pdfOf(pages, INFO, FONTS)
    await pdfOf(pageDrawings(BOTTOM, 'A', 'A3', 'mm'), INFO, FONTS)
    const second = await pdfOf(pages, INFO, FONTS)
    expect(createHash('sha256').update(second).digest('hex')).toBe(createHash('sha256').update(first).digest('hex'))
  })
})
