import { expect, test } from 'vitest'
import { type DefinitionText, findingsJson, findingsText, openDefinition } from '../../src/outputs/index.ts'
import { renderProblems } from '../../src/project/index.ts'
import { ROUND_STOCK } from '../support/define.ts'

/**
 * A groove for the back that leaves 2 mm to the rear edge, in all four boards; its first and last dowels 5 from the front
 * edge: 5 − 4 = 1 mm of wood, beside the groove none at the back. The title has what JSON must escape.
 */
const TEXT = `${ROUND_STOCK}
title: 'A "small" box'
findings:
  bore-near-edge: { silence: only a trial }
  bore-in-groove: { silence: only a trial }
modules:
  box:
    width: 500
    depth: 400
    carcase height: 720
    stock: board
    carcase: { joint: { fasten: dowel, end distance: 5 }, back: { sits: grooved, stock: thin, groove setback: 2 } }
`

function opened() {
  const read = openDefinition(TEXT, 'box.yaml')
  if (!read.ok) throw new Error(renderProblems(read.problems))
  const definition: DefinitionText = { file: 'box.yaml', locate: read.locate }
  return { built: read.built, definition }
}

test('findings.json has every finding with its places from two edges, its line and its reason', () => {
  const { built, definition } = opened()
  const json = JSON.parse(findingsJson(built, definition))
  expect(json).toMatchObject({
    format: 'storyrod findings',
    version: 1,
    title: 'A "small" box',
    definition: 'box.yaml',
    units: 'mm',
  })
  expect(json.findings).toHaveLength(built.findings.length)
  const groove = json.findings.find((one: { rule: string }) => one.rule === 'groove-wood')
  expect(groove).toMatchObject({
    severity: 'stop',
    panels: ['box/left-side'],
    definition: { path: ['modules', 'box'] },
  })
  // The key of the module stands in the 14th line, after the blank first one of the stock.
  expect(TEXT.split('\n')[groove.definition.line - 1]).toContain('box:')
  const dowel = json.findings.find(
    (one: { rule: string; panels: string[] }) => one.rule === 'bore-near-edge' && one.panels[0] === 'box/left-side',
  )
  expect(dowel.silenced).toBe('only a trial')
  // Seen on face A of the left side, x runs from its top; the dowels of the top stand in the middle of it, 9 below the end.
  expect(dowel.places[0]).toEqual({
    panel: 'box/left-side',
    surface: 'face A',
    x: 9,
    y: 5,
    z: 0,
    from: { front: 5, bottom: 711 },
  })
})

test('findings.txt says once what is the same on several panels, lists reasons, and ends with the counts', () => {
  const { built, definition } = opened()
  const text = findingsText(built, definition)
  expect(text.startsWith('Findings on A "small" box (box.yaml)\n\nA stop would spoil wood')).toBe(true)
  expect(text.match(/groove-wood/g)).toHaveLength(1)
  expect(text).toContain('      the same on right side, top, bottom\n')
  expect(text).toContain('silenced by the definition\n')
  expect(text).toContain('    because: only a trial\n')
  expect(text.trimEnd().split('\n').at(-1)).toMatch(/^4 stops, no warnings, no notes, \d+ silenced$/)
  expect(findingsText(built, definition, 'DO NOT CUT').startsWith('DO NOT CUT\n\n')).toBe(true)
})
