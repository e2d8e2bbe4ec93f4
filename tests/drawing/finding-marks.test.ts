import { expect, test } from 'vitest'
import { panelDrawing, withFindings } from '../../src/drawing/index.ts'
import { dxfOf, svgOf } from '../../src/writers/index.ts'
import { built, panelOf, ROUND_STOCK } from '../support/define.ts'

/**
 * Dowels of a fixed shelf whose middle lies at 320 on the left of an 18 mm partition, pins on its right: the pin at 320
 * stands on the dowels' axis, and 11 + 13 = 24 deep is more than 18, so both pairs run into each other.
 */
const of = built(`${ROUND_STOCK}
modules:
  box:
    width: 818
    depth: 400
    carcase height: 720
    stock: board
    carcase: { back: none, joint: dowel }
    inside:
      side by side:
        - dividers: { joint: { fasten: dowel, end distance: 37 } }
          stacked: [{}, { size: 293 }]
        - loose shelves: { count: 1, pins: { keep clear: 64 } }
`)
const panel = panelOf(of, 'box/partition-1')
const plain = panelDrawing(panel, 'A', { patterns: of.project.outputs.dxf.layers, units: 'mm' })
const marked = withFindings(plain, panel, 'A', of.findings)

test('each stop has two numbered rings about its place, on a layer of its own, in red', () => {
  const layer = marked.layers.at(-1)
  expect(layer).toMatchObject({ name: 'FINDING', operation: 'finding' })
  const rings = layer?.entities.filter((one) => one.kind === 'circle') ?? []
  expect(rings).toHaveLength(4)
  // x lies from the bottom edge: the partition stands on the bottom, 18 above the module's zero, its length runs to the top
  // at 0; the pin lies 320 − 18 = 302 from its lower end.
  for (const ring of rings) expect(panel.length - ring.at[0]).toBeCloseTo(302, 6)
  expect(new Set(rings.map(({ at }) => at[1]))).toEqual(new Set([37, 363]))
  const tags = layer?.entities.flatMap((one) => (one.kind === 'text' && one.bold ? [one.text] : []))
  // One shift mends both: one number.
  expect(tags).toEqual(['1', '1'])
  expect(svgOf(marked)).toContain(
    '<g id="layer-finding" data-layer="FINDING" data-operation="finding" stroke="#d00000"',
  )
})

test('its sentence and fix stand below the sheet, inside the picture', () => {
  const words = (marked.layers.at(-1)?.entities ?? []).flatMap((one) => (one.kind === 'text' ? [one] : []))
  const lines = words.filter(({ bold }) => bold !== true)
  expect(lines.map(({ text }) => text).join(' ')).toContain(
    'run into each other. The same at 1 more. To mend it: move the pin rows',
  )
  for (const { at } of lines) {
    expect(at[1]).toBeLessThan(plain.view.min[1])
    expect(at[1]).toBeGreaterThan(marked.view.min[1])
  }
})

test('a panel without a finding is drawn as ever, and a file for a machine never carries findings', () => {
  const other = panelOf(of, 'box/top')
  const drawing = panelDrawing(other, 'A', { patterns: of.project.outputs.dxf.layers, units: 'mm' })
  expect(withFindings(drawing, other, 'A', of.findings)).toBe(drawing)
  expect(() => dxfOf(marked, { ...of.project.outputs.dxf, name: 'x' })).toThrow('findings stand on pictures alone')
})
