import { describe, expect, test } from 'vitest'
import { check } from '../../src/checks/index.ts'
import type { Groove, Panel } from '../../src/panel/index.ts'
import { built, panelOf, ROUND_STOCK } from '../support/define.ts'

/** What the checks say of the wood of a definition. */
const wood = (text: string): string[] =>
  built(text)
    .findings.filter(({ rule }) => /^(bore|bores|groove|cutout|fasteners)-/.test(rule))
    .map(({ severity, rule, message }) => `${severity} ${rule}: ${message}`)

const box = (carcase: string, inside = ''): string => `${ROUND_STOCK}
modules:
  box: { width: 818, depth: 400, carcase height: 720, stock: board, carcase: { ${carcase} }, inside: { ${inside} } }
`
const SHELF = 'stacked: [{}, { size: 293 }]'

describe('what meets by design is no finding', () => {
  test('a housing that crosses the groove for the back, or runs out into it', () => {
    const housed = (more: string): string =>
      box(`back: { sits: grooved, stock: thin }, joint: { fasten: housing, depth: 6${more} }`, SHELF)
    expect(wood(housed(''))).toEqual([])
    // Stopped 12 before the rear edge, within the groove from 10 to 16.2.
    expect(wood(housed(', stop rear: 12'))).toEqual([])
  })

  test('the notch of a stopped housing opens into the groove for the back of its own board', () => {
    // Stopped 30 before the rear edge: top and bottom, grooved for the back from 10 to 16.2, lose their rear corners there.
    const text = box('back: { sits: grooved, stock: thin }, joint: { fasten: housing, depth: 6, stop rear: 30 }', SHELF)
    expect(
      built(text).panels.filter((panel) => panel.cutouts.some(({ notch }) => notch === true)).length,
    ).toBeGreaterThan(0)
    expect(wood(text)).toEqual([])
  })

  test('a rebated back, its screws in the shoulder, housings into the rebate', () => {
    expect(wood(box('back: { sits: rebated, stock: thin }, joint: { fasten: housing, depth: 6 }', SHELF))).toEqual([])
  })

  test('the bolt and the housing of a cam, and the dowels beside them', () => {
    expect(wood(box('back: none, joint: cam and dowel', SHELF))).toEqual([])
  })
})

describe('grooves that are put into one panel', () => {
  const of = built(box('back: none, joint: dowel'))
  const groove = (more: Partial<Groove>): Groove => ({
    id: 'groove-1',
    kind: 'groove',
    face: 'A',
    min: [300, 100],
    max: [310, 300],
    depth: 6,
    roundEnds: true,
    purpose: 'groove',
    ...more,
  })
  const said = (...grooves: Groove[]): string[] => {
    const change = (panel: Panel): Panel => (panel.id === 'box/left-side' ? { ...panel, grooves } : panel)
    expect(panelOf(of, 'box/left-side').length).toBe(720)
    return check(of.project, of.assembly, of.panels.map(change)).map(
      ({ severity, message }) => `${severity}: ${message.replace('box, left side: the groove ', '')}`,
    )
  }

  test('across each other in one face', () => {
    expect(said(groove({}), groove({ min: [200, 150], max: [400, 160] }))).toEqual([])
  })

  test('along each other: 4, 2 and nothing between them, and into each other', () => {
    const beside = (x: number): string[] => said(groove({}), groove({ min: [x, 100], max: [x + 10, 300] }))
    expect(beside(315)).toEqual([])
    expect(beside(314)).toEqual(['warn: and the groove leave only 4 mm of wood between them'])
    expect(beside(312)).toEqual(['stop: and the groove leave only 2 mm of wood between them'])
    expect(beside(305)).toEqual(['stop: and the groove run into each other'])
  })

  test('in both faces, beside each other in plan: the wall is slanted', () => {
    // 6 and 10 deep: 2 between the floors of 18 mm; set 2 aside √8 = 2.8, set 2.3 aside √(4 + 5.29) = 3.05.
    const over = (x: number): string[] =>
      said(groove({}), groove({ min: [x, 100], max: [x + 10, 300], face: 'B', depth: 10 }))
    expect(over(312)).toEqual(['warn: and the groove on the other face leave only 2.8 mm of wood between them'])
    expect(over(312.3)).toEqual([])
  })

  test('a round end keeps further off than its square would', () => {
    // The end of one, round about (305, 295) with radius 5; the other begins at (311, 301) corner first: √72 − 5 = 3.49.
    const corner = (roundEnds: boolean): string[] =>
      said(groove({ roundEnds }), groove({ min: [311, 301], max: [330, 309], roundEnds: false }))
    expect(corner(true)).toEqual([])
    expect(corner(false)).toEqual(['warn: and the groove leave only 1.4 mm of wood between them'])
  })
})
