import { expect, test } from 'vitest'
import { pageDrawings, panelDrawing } from '../../src/drawing/index.ts'
import { rectanglePath } from '../../src/geometry/index.ts'
import { PATTERNS, panelOf } from './fixture.ts'

const PANEL = panelOf({
  cutouts: [
    {
      id: 'notch-1',
      face: 'A',
      path: rectanglePath([0, 0], [6, 21.5], 0),
      depth: 18,
      through: true,
      notch: true,
      purpose: 'notch at the housing in the left side',
    },
  ],
})

test('a notch is said to be cut away, has no middle to measure to, and is crossed out', () => {
  const { layers } = panelDrawing(PANEL, 'A', { patterns: PATTERNS, units: 'mm' })
  const entities = layers.flatMap((layer) => layer.entities)
  const words = entities.flatMap((one) => (one.kind === 'text' ? [one.text] : []))
  expect(words).toContain('notch, 6 × 21.5, cut away')
  expect(words.filter((text) => text.includes('middle'))).toEqual([])
  expect(words.some((text) => text.includes('1 notch') && !text.includes('opening'))).toBe(true)
  expect(entities).toContainEqual({ kind: 'line', pen: 'hair', from: [0, 0], to: [6, 21.5] })
  expect(entities).toContainEqual({ kind: 'line', pen: 'hair', from: [0, 21.5], to: [6, 0] })
})

test('on a full-size page it is hatched, not crossed in its middle', () => {
  const [page] = pageDrawings(PANEL, 'A', 'A3', 'mm').filter(({ layers }) =>
    layers.some(({ name, entities }) => name === 'CUTOUT' && entities.length > 0),
  )
  const lines = page?.layers.find(({ name }) => name === 'CUTOUT')?.entities ?? []
  const hairs = lines.flatMap((one) => (one.kind === 'line' && one.pen === 'hair' ? [one] : []))
  // All of them slant; 6 + 21.5 = 27.5 across the slant, 4 from one to the next.
  expect(hairs.length).toBeGreaterThanOrEqual(6)
  for (const { from, to } of hairs) expect(Math.abs(to[0] - from[0])).toBeCloseTo(Math.abs(to[1] - from[1]), 6)
})
