import { expect, test } from 'vitest'
import { lineMeets, textArea } from '../../src/drawing/areas.ts'
import { pageDrawings } from '../../src/drawing/pages/face-pages.ts'
import { built, panelOf, ROUND_STOCK } from '../support/define.ts'

test('no words lie on the dashed line of the cut before lipping', () => {
  // The notches of a housed shelf stand at its lipped front edge, and their words beside them.
  const of = built(`${ROUND_STOCK}
modules:
  box:
    width: 600
    depth: 560
    carcase height: 700
    stock: board
    lipping: [{ thickness: 2, edges: [front], on: [shelves] }]
    inside: { dividers: { joint: { fasten: housing, stop front: 12 } }, stacked: [{}, {}] }
`)
  const pages = pageDrawings(panelOf(of, 'box/fixed-shelf-1'), 'A', 'A3', 'mm')
  const all = pages.map((page) => page.layers.flatMap(({ entities }) => entities))
  const notch = all.flat().filter((entity) => entity.kind === 'text' && entity.text.includes('notch'))
  expect(notch.length).toBeGreaterThanOrEqual(2)
  for (const entities of all) {
    const dashed = entities.flatMap((entity) => (entity.kind === 'line' && entity.pen === 'dashed' ? [entity] : []))
    const struck = entities.flatMap((entity) =>
      entity.kind === 'text' && dashed.some(({ from, to }) => lineMeets(textArea(entity), from, to))
        ? [entity.text]
        : [],
    )
    expect(struck).toEqual([])
  }
})
