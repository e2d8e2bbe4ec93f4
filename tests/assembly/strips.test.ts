import { describe, expect, test } from 'vitest'
import { boardBox } from '../../src/assembly/index.ts'
import type { Built } from '../../src/outputs/index.ts'
import { built, panelOf, places, ROUND_STOCK } from '../support/define.ts'

// One module, 800 wide, 500 deep, carcase 700 high, of 18 mm board.
const of = (carcase: string, inside = '{}'): Built =>
  built(`${ROUND_STOCK}
modules:
  box: { width: 800, depth: 500, carcase height: 700, stock: board, carcase: { ${carcase} }, inside: ${inside} }
`)

const APPLIED = 'back: { sits: applied, stock: thin }'
const stops = (one: Built): string[] =>
  one.findings.filter((finding) => finding.severity === 'stop').map((finding) => finding.message)

describe('rails in the place of a top', () => {
  test('lie flat between the sides, at the front edges and at the inside of the back', () => {
    const one = of(`top: rails, ${APPLIED}`)
    expect(boardBox(panelOf(one, 'box/front-top-rail'))).toEqual({ min: [18, 0, 682], max: [782, 100, 700] })
    // The back's face lies at 500 − 6 = 494.
    expect(boardBox(panelOf(one, 'box/rear-top-rail'))).toEqual({ min: [18, 394, 682], max: [782, 494, 700] })
    expect(one.panels.some((panel) => panel.id === 'box/top')).toBe(false)
    expect(stops(one)).toEqual([])
  })

  test('are joined to both sides, two fasteners a quarter from their edges', () => {
    const one = of(`top: rails, rails: { width: 80, joint: dowel }, ${APPLIED}`)
    // 80 wide is less than three end distances of 50: 20 from each edge. The left side's x runs down from its top; the
    // middle of the rail lies 9 below. Rear rail from 414: 434 and 474.
    expect(places(panelOf(one, 'box/left-side'), 'A', 'dowel')).toEqual(['9 20', '9 60', '9 434', '9 474'])
  })

  test('the back is screwed into the rear one, not into the front one', () => {
    const one = of(`top: rails, ${APPLIED}`)
    const screws = (key: string): number =>
      panelOf(one, `box/${key}`).bores.filter((bore) => bore.purpose === 'screw pilot').length
    // 764 long: ceil((764 − 100) / 150) + 1 = 6.
    expect(screws('rear-top-rail')).toBe(6)
    expect(screws('front-top-rail')).toBe(0)
  })

  test('partitions reach up to both and are joined to both', () => {
    const one = of(`top: rails, ${APPLIED}`, '{ side by side: [{}, {}] }')
    // From 18 to 682.
    expect(panelOf(one, 'box/partition-1').length).toBe(664)
    const joined = one.assembly.hardware.filter((piece) => piece.series.endsWith('top-rail+partition-1'))
    expect(joined.map((piece) => piece.series)).toEqual([
      'box/front-top-rail+partition-1',
      'box/front-top-rail+partition-1',
      'box/rear-top-rail+partition-1',
      'box/rear-top-rail+partition-1',
    ])
    // In the top edge of the partition, 25 from both edges of each rail of 100: the rear one begins at 394.
    expect(places(panelOf(one, 'box/partition-1'), 'x0', 'one-piece')).toEqual(['0 25', '0 75', '0 419', '0 469'])
  })

  test('a front covers the front rail as it does a top', () => {
    // Thinner rails: the opening ends at 700 − 6 = 694, the door goes up 6 − 1.5 = 4.5 beyond: 698.5, as over a top.
    const one = of(`top: rails, rails: { stock: thin, joint: screw 3.5x25 }, ${APPLIED}`, '{ front: { kind: door } }')
    expect(boardBox(panelOf(one, 'box/door')).max[2]).toBe(698.5)
    // An inset one stands under it: 694 − 2.
    const inset = of(
      `top: rails, rails: { stock: thin, joint: screw 3.5x25 }, ${APPLIED}`,
      '{ front: { kind: door, lay: inset } }',
    )
    expect(boardBox(panelOf(inset, 'box/door')).max[2]).toBe(692)
  })

  test.each([
    // A back in a groove or a rebate passes behind the rear rail up to the ends of the sides.
    ['grooved', 483.8, 700],
    ['rebated', 494, 700],
  ])('a %s back passes behind the rear rail', (sits, plane, top) => {
    const one = of(`top: rails, back: { sits: ${sits}, stock: thin }`)
    expect(boardBox(panelOf(one, 'box/rear-top-rail')).max[1]).toBeCloseTo(plane, 9)
    expect(boardBox(panelOf(one, 'box/back')).max[2]).toBe(top)
    expect(panelOf(one, 'box/rear-top-rail').grooves).toEqual([])
    expect(stops(one)).toEqual([])
  })

  test('an inset back is screwed to it through its face', () => {
    const one = of('top: rails, back: { sits: inset, stock: board }')
    expect(one.assembly.hardware.some((piece) => piece.series === 'box/back+rear-top-rail')).toBe(true)
    expect(stops(one)).toEqual([])
  })

  test('rails from common, with a width of the module’s own', () => {
    const one = built(`${ROUND_STOCK}
common: { width: 800, depth: 500, carcase height: 700, stock: board, carcase: { top: rails, rails: { width: 90, joint: dowel } } }
modules:
  box: { carcase: { rails: { width: 70 } } }
  whole: { carcase: { top: between } }
`)
    expect(panelOf(one, 'box/front-top-rail').width).toBe(70)
    expect(panelOf(one, 'whole/top').width).toBe(482)
  })
})

describe('stretchers', () => {
  test('stand across between the sides, under the top or at a height', () => {
    const one = of('back: none, top: none, stretchers: [{ at: back }, { at: front, height: 300, width: 80 }]')
    // No top: 100 wide under 700. The rear one ends at the back, 500.
    expect(boardBox(panelOf(one, 'box/stretcher-1'))).toEqual({ min: [18, 482, 600], max: [782, 500, 700] })
    expect(boardBox(panelOf(one, 'box/stretcher-2'))).toEqual({ min: [18, 0, 300], max: [782, 18, 380] })
    expect(panelOf(one, 'box/stretcher-2')).toMatchObject({ length: 764, width: 80, role: 'front stretcher' })
    // Two screws at 25 and 75 of its 100, 9 from the rear edge; the side's x runs down from 700.
    const rear = places(panelOf(one, 'box/left-side'), 'B', 'one-piece').filter((place) => place.endsWith(' 491'))
    expect(rear).toEqual(['25 491', '75 491'])
    expect(stops(one)).toEqual([])
  })

  test('a rear one stands before the back, under a top', () => {
    const one = of(`stretchers: [{ at: back, width: 120 }], ${APPLIED}`)
    expect(boardBox(panelOf(one, 'box/stretcher-1'))).toEqual({ min: [18, 476, 562], max: [782, 494, 682] })
  })

  test('pockets are on the faces that look inside, where no back covers them', () => {
    const both = 'stretchers: [{ at: front, joint: pocket screw }, { at: back, joint: pocket screw }]'
    const one = of(`${both}, ${APPLIED}`)
    const faces = (key: string): string[] => panelOf(one, `box/${key}`).bores.map((bore) => bore.surface)
    expect(new Set(faces('stretcher-1'))).toEqual(new Set(['A']))
    expect(new Set(faces('stretcher-2').filter((face) => face.length === 1))).toEqual(new Set(['A']))
    expect(stops(one)).toEqual([])
  })

  test('a loose shelf that would run into one is found', () => {
    const one = of(`stretchers: [{ at: back, height: 300 }], ${APPLIED}`, '{ loose shelves: 1 }')
    expect(one.findings.map((finding) => finding.rule)).toContain('panels-overlap')
  })

  test('two of them alone hold the sides of an open carcase', () => {
    const one = of('back: none, top: none, bottom: none, stretchers: [{ at: back }, { at: back, height: 0 }]')
    expect(one.panels.map((panel) => panel.key)).toEqual(['left-side', 'right-side', 'stretcher-1', 'stretcher-2'])
    expect(stops(one)).toEqual([])
  })
})
