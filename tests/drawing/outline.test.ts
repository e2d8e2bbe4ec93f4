import { describe, expect, test } from 'vitest'
import { panelDrawing } from '../../src/drawing/index.ts'
import { type Built, build } from '../../src/outputs/index.ts'
import { panelOf, projectOf, ROUND_STOCK } from '../support/define.ts'

// A shelf 576 long (600 − 2 × 18 + 2 × 6 in the housings) and 540 wide, notched 6 × 21.55 at both ends: 12 that the groove
// keeps to the edge, 9.05 for its round end (18.1 wide), and 0.5 of room.
const shelf = (lipping: string): Built =>
  build(
    projectOf(`${ROUND_STOCK}
modules:
  box:
    width: 600
    depth: 540
    carcase height: 700
    stock: board
    ${lipping}
    carcase: { back: none }
    inside: { dividers: { joint: { fasten: housing, depth: 6, stop front: 12 } }, stacked: [{}, {}] }
`),
  )

function outline(of: Built, face: 'A' | 'B'): string[] {
  const drawing = panelDrawing(panelOf(of, 'box/fixed-shelf-1'), face, {
    patterns: of.project.outputs.dxf.layers,
    units: 'mm',
  })
  const paths = drawing.layers
    .filter(({ name }) => name === 'OUTLINE' || name === 'CUTOUT')
    .flatMap((one) => one.entities)
  return paths.flatMap((path) =>
    path.kind === 'path'
      ? [path.vertices.map(({ at }) => at.map((v) => Math.round(v * 1000) / 1000).join(' ')).join(', ')]
      : [],
  )
}

describe('the outline of a notched board', () => {
  test.each(['A', 'B'] as const)('runs round its notches in one contour, on face %s', (face) => {
    expect(outline(shelf(''), face)).toEqual(['0 21.55, 6 21.55, 6 0, 570 0, 570 21.55, 576 21.55, 576 540, 0 540'])
  })

  test('begins behind a lipped edge, from where the notches reach on', () => {
    const lipped = shelf('lipping: [{ thickness: 2, edges: [front], on: [shelves] }]')
    expect(outline(lipped, 'A')).toEqual(['0 21.55, 6 21.55, 6 2, 570 2, 570 21.55, 576 21.55, 576 540, 0 540'])
  })

  test('has four corners where the lipping takes all of the notches', () => {
    const lipped = shelf('lipping: [{ thickness: 22, edges: [front], on: [shelves] }]')
    expect(outline(lipped, 'A')).toEqual(['0 22, 576 22, 576 540, 0 540'])
  })
})
