import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { PANEL_ROLES } from '../../src/assembly/index.ts'
import { pageDrawings, panelDrawing } from '../../src/drawing/index.ts'
import { type Built, outputFiles, PANELS_FILE } from '../../src/outputs/index.ts'
import { coreOf } from '../../src/panel/index.ts'
import { isLippingWord } from '../../src/project/index.ts'
import { dxfOf, lintDxf } from '../../src/writers/index.ts'
import { built, NO_TEXT, panelOf, ROUND_STOCK } from '../support/define.ts'
import { FONTS } from '../support/fonts.ts'
import { anyStanding } from '../support/random-base.ts'

// A side of a module 600 wide, 550 deep and 782.2 high, no back: 782.2 × 550, its front edge lipped with 2, its ends with 1.
const of = (lipping: string, more = ''): Built =>
  built(`${ROUND_STOCK}
modules:
  box: { width: 600, depth: 550, carcase height: 782.2, stock: board, carcase: { back: none }, lipping: [${lipping}]${more} }
`)

const SIDE = '{ thickness: 2, edges: [front], on: [sides] }, { thickness: 1, edges: [top, bottom], on: [right side] }'

/** Corners of the paths on one layer, in the order drawn. */
function corners(one: Built, id: string, face: 'A' | 'B', layer: string, path: string): (readonly number[])[] {
  const panel = panelOf(one, id)
  const drawing = panelDrawing(panel, face, { patterns: one.project.outputs.dxf.layers, units: 'mm' })
  const entities = drawing.layers.find(({ name }) => name === layer)?.entities ?? []
  const found = entities.find((entity) => entity.kind === 'path' && entity.id === path)
  return found?.kind === 'path' ? found.vertices.map(({ at }) => at) : []
}

const texts = (one: Built, id: string): string[] =>
  panelDrawing(panelOf(one, id), 'A', { patterns: one.project.outputs.dxf.layers, units: 'mm' }).layers.flatMap(
    ({ entities }) => entities.flatMap((entity) => (entity.kind === 'text' ? [entity.text] : [])),
  )

const box = (points: readonly (readonly number[])[]): number[] =>
  [0, 1].flatMap((axis) => {
    const all = points.map((point) => point[axis] ?? Number.NaN)
    return [Math.min(...all), Math.max(...all)]
  })

describe('edge lipping', () => {
  test('is taken off the cut size of each edge, and not off the finished size', () => {
    const side = panelOf(of(SIDE), 'box/right-side')
    expect([side.length, side.width]).toEqual([782.2, 550])
    // The right side's x runs up: x0 is its bottom, x1 its top; y0 is its front. 782.2 − 1 − 1, 550 − 2.
    expect(side.lipping).toEqual({ x0: 1, x1: 1, y0: 2 })
    expect(coreOf(side).length).toBeCloseTo(780.2, 9)
    expect(coreOf(side).width).toBe(548)
  })

  test('too thin a strip is lost in sanding, unless asked otherwise', () => {
    expect(panelOf(of('{ thickness: 0.5, edges: all, on: [sides] }'), 'box/left-side').lipping).toBeUndefined()
    expect(panelOf(of('{ thickness: 0.6, edges: all, on: [sides] }'), 'box/left-side').lipping).toEqual({
      x0: 0.6,
      x1: 0.6,
      y0: 0.6,
      y1: 0.6,
    })
    const keen = of('{ thickness: 0.4, take off from: 0.3, edges: [front], on: [left side] }')
    expect(panelOf(keen, 'box/left-side').lipping).toEqual({ y0: 0.4 })
  })

  test('a later one stands before an earlier one on the same edge; groups of panels', () => {
    const one = of('{ thickness: 2, edges: [front], on: [carcase] }, { thickness: 6, edges: [front], on: [bottom] }')
    const thick = Object.fromEntries(one.panels.map((panel) => [panel.key, panel.lipping]))
    expect(thick).toEqual({ 'left-side': { y0: 2 }, 'right-side': { y0: 2 }, top: { y0: 2 }, bottom: { y0: 6 } })
  })

  test('the outline is what is cut, in its place behind the finished edges, which are a note', () => {
    const one = of(SIDE)
    // Seen on face A: from 1 to 781.2 and from 2 to 550; within 0 to 782.2 and 0 to 550.
    expect(
      box(corners(one, 'box/right-side', 'A', 'OUTLINE', 'outline')).map((v) => Math.round(v * 1e6) / 1e6),
    ).toEqual([1, 781.2, 2, 550])
    expect(box(corners(one, 'box/right-side', 'A', 'NOTE', 'finished-edge'))).toEqual([0, 782.2, 0, 550])
    // Seen on face B the left end is the right one.
    const ends = of('{ thickness: 3, edges: [top], on: [right side] }')
    expect(
      box(corners(ends, 'box/right-side', 'A', 'OUTLINE', 'outline')).map((v) => Math.round(v * 1e6) / 1e6),
    ).toEqual([0, 779.2, 0, 550])
    expect(
      box(corners(ends, 'box/right-side', 'B', 'OUTLINE', 'outline')).map((v) => Math.round(v * 1e6) / 1e6),
    ).toEqual([3, 782.2, 0, 550])
    expect(
      corners(of('{ thickness: 2, edges: [front], on: [top] }'), 'box/right-side', 'A', 'NOTE', 'finished-edge'),
    ).toEqual([])
  })

  test('the drawing says both sizes, names the lipped edges, and what distances count from', () => {
    const words = texts(of(SIDE), 'box/right-side').join('\n')
    expect(words).toContain('782.2 × 550 × 18 mm')
    expect(words).toContain('cut 780.2 × 548 before lipping')
    expect(words).toContain('all distances from the finished edges')
    expect(words).toContain('FRONT, LIPPED 2')
    expect(words).toContain('bottom, lipped 1')
    expect(words).not.toContain('back, lipped')
  })

  test('full-size pages show the line of the cut beside the finished edge, dashed', () => {
    const one = of(SIDE)
    const lines = (text: Built, id: string): number =>
      pageDrawings(panelOf(text, id), 'B', 'A4', 'mm')
        .flatMap((page) => page.layers.find((layer) => layer.name === 'MARK')?.entities ?? [])
        .filter((entity) => entity.kind === 'line' && entity.pen === 'dashed').length
    const plain = of('{ thickness: 2, edges: [front], on: [top] }')
    expect(lines(one, 'box/left-side')).toBeGreaterThan(lines(plain, 'box/left-side'))
  })

  test('panels.json has the cut size and the lippings by edge, and only where there are any', async () => {
    const one = of(SIDE)
    let text = ''
    for await (const { path, bytes } of outputFiles(one, FONTS, NO_TEXT))
      if (path === PANELS_FILE) text = new TextDecoder().decode(bytes)
    const json = JSON.parse(text) as { version: number; panels: Record<string, unknown>[] }
    expect(json.version).toBe(1)
    const record = (id: string) => json.panels.find((panel) => panel.id === id)
    expect(record('box/right-side')).toMatchObject({
      length: 782.2,
      width: 550,
      cut: { length: 780.2, width: 548 },
      lipping: { front: 2, top: 1, bottom: 1 },
    })
    expect(Object.keys(record('box/top') ?? {})).not.toContain('cut')
    expect(Object.keys(record('box/top') ?? {})).not.toContain('lipping')
  })

  test('a part that fits its sheet once its lippings are off is not too large', () => {
    // A sheet of 2500 gives 2480 less the trim; 2482 with two lippings of 2 is cut 2478.
    const tall = (lipping: string): string[] =>
      built(`${ROUND_STOCK}
modules:
  box: { width: 600, depth: 500, carcase height: 2482, stock: board, carcase: { back: none }${lipping} }
`).findings.map((finding) => finding.rule)
    expect(tall('')).toContain('sheet-too-small')
    expect(tall(', lipping: [{ thickness: 2, edges: [top, bottom], on: [sides] }]')).not.toContain('sheet-too-small')
  })

  test('hardware in a lipped edge is noted: its depth counts from the finished edge', () => {
    const one = of('{ thickness: 2, edges: [left], on: [bottom] }')
    const notes = one.findings.filter((finding) => finding.rule === 'edge-lipped')
    expect(notes.map((finding) => [finding.severity, finding.panels])).toEqual([['note', ['box/bottom']]])
    // 550 deep: ceil((550 − 100) / 160) + 1 = 4 screws.
    expect(notes[0]?.message).toBe(
      'box, bottom: 4 bores enter the left edge through a lipping of 2 mm; depths count from the finished edge',
    )
  })

  test('what names no panel, no such edge, or leaves nothing is found', () => {
    const rules = (one: Built): string[] => one.findings.map((finding) => `${finding.severity} ${finding.rule}`)
    expect(rules(of('{ thickness: 2, edges: [front], on: [shelf 3] }'))).toContain('stop lipping-panel')
    expect(rules(of('{ thickness: 2, edges: [left], on: [sides] }'))).toContain('warn lipping-panel')
    const thin = of('{ thickness: 10, edges: [front, back, left, right, top, bottom], on: [stretchers] }')
    expect(rules(thin)).toContain('stop lipping-panel')
    const common = built(`${ROUND_STOCK}
common: { width: 600, depth: 500, carcase height: 700, stock: board, lipping: [{ thickness: 2, edges: all, on: [doors] }] }
modules: { box: { carcase: { top: rails } } }
`)
    expect(rules(common).filter((rule) => rule.includes('lipping'))).toEqual([])
    const none = built(`${ROUND_STOCK}
modules:
  box: { width: 600, depth: 500, carcase height: 700, stock: board, carcase: { back: none, stretchers: [{ at: back, width: 40 }] }, lipping: [{ thickness: 20, edges: all, on: [stretcher 1] }] }
`)
    expect(rules(none)).toContain('stop lipping-size')
  })

  test('every role of a panel is a word that a lipping may name', () => {
    expect(PANEL_ROLES.length).toBeGreaterThan(30)
    expect(PANEL_ROLES.filter((role) => !isLippingWord(role))).toEqual([])
  })
})

describe('over random modules', () => {
  test('the outline of every file is the finished panel less its lippings, and the linter is content', () => {
    let lipped = 0
    fc.assert(
      fc.property(anyStanding, (text) => {
        const one = built(text)
        if (one.findings.some((finding) => finding.severity === 'stop')) return
        for (const panel of one.panels.filter((other) => other.lipping !== undefined)) {
          const { x0 = 0, x1 = 0, y0 = 0, y1 = 0 } = panel.lipping ?? {}
          for (const face of ['A', 'B'] as const) {
            const drawing = panelDrawing(panel, face, { patterns: one.project.outputs.dxf.layers, units: 'mm' })
            const dxf = dxfOf(drawing, { ...one.project.outputs.dxf, name: panel.id })
            const [left, right] = face === 'A' ? [x0, x1] : [x1, x0]
            expect(lintDxf(dxf, { left, right, low: y0, high: y1 }), `${panel.id} ${face}`).toEqual([])
            const outline = box(corners(one, panel.id, face, 'OUTLINE', 'outline'))
            const wanted = [left, panel.length - right, y0, panel.width - y1]
            for (const [k, value] of outline.entries()) expect(value).toBeCloseTo(wanted[k] ?? Number.NaN, 6)
            lipped += 1
          }
        }
      }),
      { numRuns: 40 },
    )
    expect(lipped).toBeGreaterThan(10)
  })
})
