import { describe, expect, test } from 'vitest'
import { loadedModules, panelBody, standingBodies, together } from '../../../src/checks/loads/index.ts'
import type { Built } from '../../../src/outputs/index.ts'
import { built, panelOf, ROUND_STOCK } from '../../support/define.ts'

const loaded = ({ project, assembly, panels }: Built) => loadedModules({ project, assembly, panels })

/** One module 600 × 400 × 720 without a back, base and loads, in boards of 18. */
const one = (more = '', loads = '{ on all shelves: 0, on the top: 0 }'): string => `${ROUND_STOCK}
modules:
  box: { width: 600, depth: 400, carcase height: 720, stock: board, carcase: { back: none }, loads: ${loads}${more} }
`

describe('mass of a sheet 1220 × 2440, as a data sheet of birch plywood prints it', () => {
  test.each([
    [18, 685, 36.7],
    [12, 695, 24.8],
    [6.5, 670, 13.0],
  ])('%s mm, %s kg/m³', (thickness, density, printed) => {
    const text = `
storyrod: 1
stock: { board: { thickness: ${thickness}, density: ${density}, sheet: [2500, 1250] }, other: { thickness: 18 } }
modules:
  box: { width: 2480, depth: 1230, carcase height: 400, stock: other, inside: { loose shelves: { count: 1, stock: board, clearance: 2, front setback: 5, rear gap: 5 } }, carcase: { back: none } }
`
    // Opening 2480 − 36 = 2444, less 2 × 2: 2440; depth 1230 − 10 = 1220.
    const shelf = panelOf(built(text), 'box/shelf-1')
    expect([shelf.length, shelf.width]).toEqual([2440, 1220])
    expect(Math.abs(panelBody(shelf).mass - printed)).toBeLessThanOrEqual(0.05)
  })
})

describe('mass of panels', () => {
  test('openings are taken off, and the middle moves away from them', () => {
    const openings =
      ', openings: [{ panel: left side, shape: rectangle, width: 200, height: 100, from: { front: 0.1, bottom: 300 } }]'
    const whole = panelBody(panelOf(built(one()), 'box/left-side'))
    const text = one(openings.replace('0.1', '20'))
    const less = panelBody(panelOf(built(text), 'box/left-side'))
    // 400 × 720 × 18 mm and 200 × 100 × 18 mm at 685 kg/m³: 3.55104 and 0.2466 kg.
    expect(whole.mass).toBeCloseTo(3.55104, 9)
    expect(less.mass).toBeCloseTo(3.55104 - 0.2466, 9)
    expect(whole.at).toEqual([9, 200, 360])
    // The opening's middle lies 120 from the front (200 wide) and 350 up (100 high), or the other way round.
    expect(less.at[1]).toBeGreaterThan(200)
  })

  test('bodies together', () => {
    const all = together([
      { mass: 3, at: [0, 0, 0] },
      { mass: 1, at: [100, 40, 20] },
    ])
    expect(all).toEqual({ mass: 4, at: [25, 10, 5] })
  })
})

describe('a module with what it carries', () => {
  test('its own mass and middle', () => {
    // Sides 2 × 400 × 720, top and bottom 2 × 564 × 400: 1 027 200 mm² × 18 × 685 / 10⁹ = 12.665376 kg; all even.
    const [box] = loaded(built(one()))
    expect(box?.own.mass).toBeCloseTo(12.665376, 9)
    expect(box?.own.at.map((at) => Math.round(at * 1e6) / 1e6)).toEqual([300, 200, 360])
    expect(box?.load.mass).toBe(0)
  })

  test('by default 73 kg/m² on the bottom and 40 kg on the top; 10 kg where it is higher than 1200', () => {
    // 15 lb/ft² = 73.2364 kg/m² × 0.564 × 0.4 m² = 16.5221 kg.
    const [box] = loaded(built(one('', '{}')))
    expect(box?.load.mass).toBeCloseTo(56.5221, 3)
    const [tall] = loaded(built(one('', '{}').replace('720', '1201')))
    expect(tall?.load.mass).toBeCloseTo(26.5221, 3)
  })

  test('nothing stands under the drawers, and shelves say their own load', () => {
    const [chest] = loaded(built(one(', inside: { drawers: { stack: 2, load: 20 lb } }', '{ on the top: 0 }')))
    // 20 lb each = 9.0718474 kg.
    expect(chest?.load.mass).toBeCloseTo(18.1436948, 9)
    const [store] = loaded(built(one(', inside: { loose shelves: { count: 2, load: 30 } }')))
    expect(store?.load.mass).toBe(60)
  })

  test('a worktop over a row is borne by its modules by their widths', () => {
    const text = `${ROUND_STOCK}
common: { depth: 400, carcase height: 720, stock: board, carcase: { back: none } }
modules: { one: { width: 400 }, two: { width: 800 } }
floor plan: [{ row: [one, two], worktop: { stock: board } }]
`
    const of = built(text)
    const shares = loaded(of).map(({ worktopShare }) => worktopShare)
    const mass = panelBody(panelOf(of, 'worktop-1/worktop')).mass
    expect(shares[0]).toBeCloseTo(mass / 3, 9)
    expect(shares[1]).toBeCloseTo((mass * 2) / 3, 9)
    // It is screwed to both, so they stand as one.
    expect(standingBodies(loaded(of), of.assembly)).toHaveLength(1)
  })

  test('an open door brings the middle forward by half its width', () => {
    // Door 597 × 717 × 18 at 685 kg/m³: 5.27786 kg, out by 298.5 mm.
    const of = built(one(', inside: { front: { kind: door, hang: left } }'))
    const [body] = standingBodies(loaded(of), of.assembly)
    const forward = (body?.shut.at[1] ?? 0) - (body?.open.at[1] ?? 0)
    expect(forward * (body?.shut.mass ?? 0)).toBeCloseTo(5.277856 * 298.5, 2)
    expect(body?.open.at[2]).toBe(body?.shut.at[2])
  })

  test('modules that are bolted stand as one, others alone', () => {
    const row = (join: string): string => `${ROUND_STOCK}
common: { depth: 400, carcase height: 720, stock: board, carcase: { back: none } }
modules: { one: { width: 400 }, two: { width: 400 }, three: { width: 400 } }
floor plan: [{ row: [one, two], join: ${join} }]
`
    const bodies = (text: string) => {
      const of = built(text)
      return standingBodies(loaded(of), of.assembly).map(({ modules }) => modules.map(({ spec }) => spec.name))
    }
    expect(bodies(row('bolted'))).toEqual([['one', 'two'], ['three']])
    expect(bodies(row('none'))).toEqual([['one'], ['two'], ['three']])
  })
})
