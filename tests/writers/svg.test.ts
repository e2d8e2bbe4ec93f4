import { type INode, parseSync } from 'svgson'
import { describe, expect, test } from 'vitest'
import type { Drawing } from '../../src/drawing/index.ts'
import { svgOf } from '../../src/writers/index.ts'
import { num, plainText } from '../../src/writers/svg-tree.ts'
import { blankWith, EVERYTHING, HOSTILE, polygon } from './drawings.ts'

const read = (drawing: Drawing): INode => parseSync(svgOf(drawing))
const all = (node: INode, name: string): INode[] =>
  node.children.flatMap((child) => (child.name === name ? [child, ...all(child, name)] : all(child, name)))
const layer = (drawing: Drawing, name: string): INode => {
  const found = all(read(drawing), 'g').find((g) => g.attributes['data-layer'] === name)
  if (found === undefined) throw new Error(`no layer ${name}`)
  return found
}

describe('true size', () => {
  test('width and height in mm, viewBox in the same mm, y = 0 at the top of the panel', () => {
    // x from -60 to 460 is 520; y from -60 to 360 is 420. The view's top is 360 - 300 = 60 above the panel's top.
    expect(read(EVERYTHING).attributes).toMatchObject({ width: '520mm', height: '420mm', viewBox: '-60 -60 520 420' })
  })

  test('a view of unlike margins: left 10, right 30, below 20, above 40', () => {
    const drawing: Drawing = { ...blankWith(), view: { min: [-10, -20], max: [430, 340] } }
    expect(read(drawing).attributes).toMatchObject({ width: '440mm', height: '360mm', viewBox: '-10 -40 440 360' })
  })

  test('without a height to flip at, y = 0 is at the top of the view', () => {
    const { flipHeight: _, ...drawing } = blankWith()
    expect(read(drawing).attributes.viewBox).toBe('-60 0 520 420')
  })

  test('only width and height of the root have a unit', () => {
    const united = svgOf(EVERYTHING).match(/="[^"]*\d(mm|px|in|cm|pt)"/g)
    expect(united).toEqual(['="520mm"', '="420mm"'])
  })
})

describe('shapes', () => {
  test('a bore 60 above the lower edge of a panel 300 high is 240 below its upper edge', () => {
    const [first] = all(layer(EVERYTHING, 'BORE-D5-DEEP13'), 'circle')
    expect(first?.attributes).toMatchObject({ id: 'bore-1', cx: '37', cy: '240', r: '2.5', 'data-diameter': '5' })
  })

  test('each bore has its title; groups have none', () => {
    const group = layer(EVERYTHING, 'BORE-D5-DEEP13')
    expect(all(group, 'title').map((t) => t.children[0]?.value)).toEqual([
      'shelf pin 5 × 13, 37 from front, 60 from bottom',
      'shelf pin 5 × 13, 37 from front, 92 from bottom',
      'shelf pin 5 × 13, 37 from front, 124 from bottom',
    ])
    expect(group.children.filter((c) => c.name === 'title')).toEqual([])
  })

  test('straight contours', () => {
    expect(all(layer(EVERYTHING, 'OUTLINE'), 'path')[0]?.attributes.d).toBe('M0 300L400 300L400 0L0 0Z')
  })

  test('a round end is two quarter turns, counter-clockwise on the page', () => {
    // (260, 100) by (275, 115) to (260, 130), and (200, 130) by (185, 115) to (200, 100); y = 300 - y.
    // Counter-clockwise on the page is sweep flag 0 (SVG 1.1, 8.3.8).
    expect(all(layer(EVERYTHING, 'CUTOUT'), 'path')[0]?.attributes.d).toBe(
      'M200 200L260 200A15 15 0 0 0 275 185A15 15 0 0 0 260 170L200 170A15 15 0 0 0 185 185A15 15 0 0 0 200 200Z',
    )
  })

  test('a clockwise arc has sweep flag 1', () => {
    const bite = {
      kind: 'path',
      vertices: [
        { at: [0, 0], bulge: 0 },
        { at: [40, 0], bulge: 0 },
        { at: [40, 40], bulge: -Math.tan(Math.PI / 8) },
        { at: [20, 60], bulge: 0 },
      ],
    } as const
    const drawing = blankWith({ name: 'CUTOUT', operation: 'cutout', entities: [bite] })
    expect(all(layer(drawing, 'CUTOUT'), 'path')[0]?.attributes.d).toBe('M0 300L40 300L40 260A20 20 0 0 1 20 240Z')
  })

  test('texts stand upright, and turned ones are turned by a plain rotation', () => {
    const [upright, turned] = all(layer(EVERYTHING, 'NOTE'), 'text')
    expect(upright?.attributes).toMatchObject({ x: '200', y: '150', 'font-size': '12', 'text-anchor': 'middle' })
    expect(upright?.attributes.transform).toBeUndefined()
    expect(turned?.attributes).toMatchObject({ transform: 'rotate(-90 -10 150)', 'text-anchor': 'end' })
    expect(svgOf(EVERYTHING)).not.toMatch(/scale|matrix|skew/)
  })

  test('pens', () => {
    const [plain, hair] = all(layer(EVERYTHING, 'MARK'), 'line')
    expect(plain?.attributes['stroke-width']).toBeUndefined()
    expect(hair?.attributes['stroke-width']).toBe('0.1')
    expect(all(layer(EVERYTHING, 'MARK'), 'circle')[0]?.attributes['stroke-dasharray']).toBe('2 1.5')
    expect(all(layer(EVERYTHING, 'NOTE'), 'line')[0]?.attributes['stroke-width']).toBe('0.7')
  })

  test('operations differ in colour, and in width or dash as well', () => {
    const looks = all(read(EVERYTHING), 'g').map((g) => g.attributes)
    expect(looks).toHaveLength(7)
    expect(new Set(looks.map((a) => `${a['stroke-width']} ${a['stroke-dasharray']}`)).size).toBe(7)
    // The pages are white: the two blacks are the outline and the notes.
    expect(new Set(looks.map((a) => a.stroke)).size).toBe(6)
  })

  test('ids are unique and safe', () => {
    const ids = [...svgOf(EVERYTHING).matchAll(/ id="([^"]*)"/g)].map((m) => m[1] ?? '')
    expect(ids).toHaveLength(10)
    expect(new Set(ids).size).toBe(10)
    for (const id of ids) expect(id).toMatch(/^[a-z][a-z0-9_-]*$/)
  })
})

describe('numbers', () => {
  test.each([
    [0.1 + 0.2, '0.3'],
    [-0, '0'],
    [-0.0004, '0'],
    [1e-7, '0'],
    [0.0005, '0.001'],
    [1234.5678, '1234.568'],
    [99_999.999_999_5, '100000'],
  ])('%d is written %s', (value, text) => {
    expect(num(value)).toBe(text)
  })

  test.each([Number.NaN, Number.POSITIVE_INFINITY, 1e21, -1e6])('%d is refused', (value) => {
    expect(() => num(value)).toThrow(`not a length that can be written: ${value}`)
  })
})

describe('hostile texts', () => {
  const drawing = (text: string): Drawing => ({
    ...blankWith(
      { name: 'CUTOUT', operation: 'cutout', entities: [{ ...polygon([1, 1], [9, 1], [9, 9]), title: text }] },
      { name: 'NOTE', operation: 'note', entities: [{ kind: 'text', at: [5, 5], height: 4, anchor: 'start', text }] },
    ),
    title: text,
  })

  /** What XML 1.0 allows (section 2.2), less the line ends that only the writer may put in. */
  const XML_CHARACTERS = /^[\n\u0020-\u007e\u00a0-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]*$/u

  test.each(HOSTILE)('%j stays text', (text) => {
    const svg = svgOf(drawing(text))
    expect(svg).toMatch(XML_CHARACTERS)
    expect(svg.match(/<(svg|g|path|circle|line|text|title|script)\b/g)?.filter((t) => t !== '<script')).toHaveLength(9)
    const root = parseSync(svg)
    const shown = [all(root, 'title')[0], all(root, 'title')[1], all(root, 'text')[0]]
    for (const node of shown) {
      const value = (node?.children[0]?.value ?? '').replace(/^<!\[CDATA\[|\]\]>$/g, '')
      expect(value.trim()).toBe(plainText(text).trim())
    }
  })

  test('what is replaced', () => {
    expect(plainText('a\nb\u0000c')).toBe('a b c')
    expect(plainText('\ud800x\uffff')).toBe('\ufffdx\ufffd')
    expect(plainText(']]>]]>')).toBe(']] >]] >')
    expect(plainText('🪵 Ø5 שלום')).toBe('🪵 Ø5 שלום')
  })

  test('an ampersand is one ampersand', () => {
    expect(svgOf(drawing('A & B'))).toContain('<![CDATA[A & B]]>')
  })
})

test('same bytes twice, and with another drawing in between', () => {
  const first = svgOf(EVERYTHING)
  svgOf(blankWith())
  expect(svgOf(EVERYTHING)).toBe(first)
})
