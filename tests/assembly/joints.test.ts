import { describe, expect, test } from 'vitest'
import { fastenerOffsets, pocketFigures } from '../../src/assembly/index.ts'
import { findItem } from '../../src/hardware/index.ts'
import { built, panelOf, places, ROUND_STOCK } from '../support/define.ts'

const box = (carcase: string): string => `${ROUND_STOCK}
modules:
  box: { width: 600, depth: 400, carcase height: 500, stock: board, carcase: { ${carcase}, back: none } }
`

describe('fasteners along a joint', () => {
  test('n = max(2, ceil((L − 2e) / s) + 1), evenly spaced', () => {
    // L 400, e 50, s 160: 300 / 160 → 2 spaces, 3 fasteners 150 apart.
    expect(fastenerOffsets(400, { endDistance: 50, spacing: 160 })).toEqual([-150, 0, 150])
    // L 580: 480 / 160 = 3 spaces exactly, 4 fasteners.
    expect(fastenerOffsets(580, { endDistance: 50, spacing: 160 })).toEqual([-240, -80, 80, 240])
    // L 120 is less than three end distances: two, a quarter in.
    expect(fastenerOffsets(120, { endDistance: 50, spacing: 160 })).toEqual([-30, 30])
  })
})

describe('one-piece screws', () => {
  // Stepped bit 5/7/10, countersink 10 × 5, pilot 50 − t + 3: common practice, no source.
  const of = built(box('joint: { fasten: one-piece screw }, bottom: between'))

  test('through the side from outside, 7 with 10 × 5, at half the thickness of the bottom', () => {
    const side = panelOf(of, 'box/left-side')
    const screws = side.bores.filter((bore) => bore.purpose === 'one-piece screw' && bore.at[0] > 250)
    // Bottom's middle is 9 above the lower end: x = 500 − 9 = 491 on the left side. y: 50, 200, 350.
    expect(screws.map((bore) => bore.at)).toEqual([
      [491, 50, -18],
      [491, 200, -18],
      [491, 350, -18],
    ])
    expect(screws.every((bore) => bore.surface === 'B' && bore.through && bore.diameter === 7)).toBe(true)
    expect(screws[0]?.sink).toEqual({ shape: 'counterbore', diameter: 10, depth: 5 })
  })

  test('pilot 35 deep in the edge of an 18 mm board (50 − 18 + 3)', () => {
    const bottom = panelOf(of, 'box/bottom')
    const pilots = bottom.bores.filter((bore) => bore.surface === 'x0')
    expect(pilots.map((bore) => bore.at)).toEqual([
      [0, 50, -9],
      [0, 200, -9],
      [0, 350, -9],
    ])
    expect(pilots.every((bore) => bore.depth === 35 && bore.diameter === 5 && !bore.through)).toBe(true)
  })
})

test('through screw 4.5 × 45: 5 through with a 9 mm countersink, pilot 3 × 28', () => {
  // Heads 2 × d: mpi-inox.odoo.com, dimension table. Pilot 0.7 d: common practice. 45 + 1 − 18 = 28.
  const of = built(box('joint: through screw'))
  const screw = panelOf(of, 'box/right-side').bores.find((bore) => bore.purpose === 'screw')
  expect(screw).toMatchObject({
    surface: 'B',
    diameter: 5,
    through: true,
    sink: { shape: 'cone', diameter: 9, angleDeg: 90 },
  })
  const pilot = panelOf(of, 'box/bottom').bores.find((bore) => bore.purpose === 'screw pilot')
  expect(pilot).toMatchObject({ diameter: 3, depth: 28, through: false })
})

test('dowel 8 × 30: 21 in the edge, 11 in the face', () => {
  // "Dowel drilling and use guidelines", woodweb.com: two thirds in the edge, room for glue in both: 21 + 11 = 30 + 2.
  const of = built(box('joint: dowel, top: over'))
  // The top lies over the sides: face holes in its underside, edge holes in the upper ends of the sides.
  expect(places(panelOf(of, 'box/top'), 'A', 'dowel')).toHaveLength(6)
  const top = panelOf(of, 'box/top').bores.find((bore) => bore.surface === 'A')
  const edge = panelOf(of, 'box/left-side').bores.find((bore) => bore.surface === 'x0')
  expect([top?.depth, edge?.depth, edge?.diameter]).toEqual([11, 21, 8])
  expect(edge?.at).toEqual([0, 50, -9])
})

describe('pocket screws', () => {
  test('entry and collar by hand', () => {
    const item = findItem('pocket screw 32')
    if (item?.kind !== 'pocket screw') throw new Error('no pocket screw')
    // t 18: (9) / tan 15° = 33.588; 9 / sin 15° = 34.773. Bite: half of 32 is 16, but (18 − 3) / cos 15° = 15.529.
    // Collar = 34.773 − (32 − 15.529) = 18.302. Angle 15°: woodrio.com; the rest own arithmetic.
    const figures = pocketFigures(item, 18, 9)
    expect(figures.entry).toBeCloseTo(33.588, 3)
    expect(figures.bite).toBeCloseTo(15.529, 3)
    expect(figures.collar).toBeCloseTo(18.302, 3)
  })

  test('marked on the underside of the bottom, leaning to the side that it holds', () => {
    const of = built(box('joint: pocket screw'))
    const bottom = panelOf(of, 'box/bottom')
    const pockets = bottom.bores.filter((bore) => bore.purpose === 'pocket screw')
    expect(pockets).toHaveLength(6)
    const first = pockets[0]
    expect(first?.surface).toBe('B')
    expect(first?.leanDeg).toBe(15)
    expect(first?.at[0]).toBeCloseTo(33.588, 3)
    expect(first?.at[2]).toBe(-18)
    // It runs toward x = 0 and into the wood (up): (−cos 15°, 0, sin 15°).
    expect(first?.axis[0]).toBeCloseTo(-0.965926, 6)
    expect(first?.axis[2]).toBeCloseTo(0.258819, 6)
    // No hole in the side: the screw cuts its own.
    expect(panelOf(of, 'box/left-side').bores).toEqual([])
  })
})

test('an applied back is screwed through, into the edges of sides, top and bottom', () => {
  const of = built(`${ROUND_STOCK}
modules:
  box: { width: 600, depth: 406, carcase height: 500, stock: board, carcase: { back: { sits: applied, stock: thin } } }
`)
  const back = panelOf(of, 'box/back')
  const holes = back.bores.filter((bore) => bore.purpose === 'screw')
  // Sides 500 high: (500 − 100) / 150 → 3 spaces, 4 screws each; top and bottom 564 long: 464 / 150 → 4 spaces, 5 each.
  expect(holes).toHaveLength(2 * 4 + 2 * 5)
  expect(holes.every((bore) => bore.surface === 'B' && bore.diameter === 4 && bore.depth === 6)).toBe(true)
  // Screw 3.5 × 25: pilot 25 + 1 − 6 = 20 deep in the rear edge, at half the side's thickness.
  const pilot = panelOf(of, 'box/left-side').bores.find((bore) => bore.surface === 'y1')
  expect(pilot).toMatchObject({ diameter: 2.5, depth: 20 })
  expect(pilot?.at).toEqual([50, 400, -9])
})

test('the sides of one module are mirror images', () => {
  const of = built(box('joint: dowel, top: over'))
  const flip = panelOf(of, 'box/left-side').bores.map((bore) => {
    const edge = { A: 'A', B: 'B', x0: 'x1', x1: 'x0', y0: 'y0', y1: 'y1' }[bore.surface]
    return `${edge} ${482 + 18 - 18 - bore.at[0]} ${bore.at[1]} ${bore.at[2]} ${bore.diameter} ${bore.depth}`
  })
  const right = panelOf(of, 'box/right-side').bores.map(
    (bore) => `${bore.surface} ${bore.at[0]} ${bore.at[1]} ${bore.at[2]} ${bore.diameter} ${bore.depth}`,
  )
  expect(flip.sort()).toEqual(right.sort())
})

describe('further ways for a back to sit', () => {
  const withBack = (back: string, carcase = ''): string => `${ROUND_STOCK}
modules:
  box: { width: 600, depth: 418, carcase height: 500, stock: board, carcase: { ${carcase} back: ${back} } }
`

  test('between the sides, over the rear edges of top and bottom', () => {
    const of = built(withBack('{ sits: between sides, stock: board }'))
    // Sides the whole depth, 418; top and bottom 418 − 18 = 400; back 600 − 2 × 18 = 564 by the whole height, 500.
    expect(panelOf(of, 'box/left-side').width).toBe(418)
    expect(panelOf(of, 'box/bottom').width).toBe(400)
    expect([panelOf(of, 'box/back').length, panelOf(of, 'box/back').width]).toEqual([500, 564])
    // Screwed through the back into top and bottom, and through the sides into its edges.
    const back = panelOf(of, 'box/back')
    expect(back.bores.filter((bore) => bore.surface === 'B').length).toBe(2 * 5)
    expect(back.bores.filter((bore) => bore.surface === 'y0').length).toBe(4)
    expect(of.findings.filter((finding) => finding.severity === 'stop')).toEqual([])
  })

  test('between the sides under a top that lies over them', () => {
    const of = built(withBack('{ sits: between sides, stock: thin }', 'top: over, '))
    // The top keeps the whole depth, the bottom 418 − 6 = 412; the back goes from 0 to 500 − 18 = 482.
    expect([panelOf(of, 'box/top').width, panelOf(of, 'box/bottom').width]).toEqual([418, 412])
    expect(panelOf(of, 'box/back').length).toBe(482)
    // 6 mm takes no screw in its edge: only the bottom's five.
    expect(panelOf(of, 'box/back').bores.length).toBe(5)
  })

  test('applied with a margin', () => {
    const of = built(withBack('{ sits: applied, stock: thin, margin: 1.5 }'))
    // 500 − 3 and 600 − 3.
    expect([panelOf(of, 'box/back').length, panelOf(of, 'box/back').width]).toEqual([497, 597])
    // The screws stand in the middle of what back and side share, 1.5 to 18: at 9.75, so 8.25 from the back's edge.
    const ys = panelOf(of, 'box/back').bores.map((bore) => Math.round(bore.at[1] * 1000) / 1000)
    expect(Math.min(...ys)).toBe(8.25)
  })
})
