import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { isUneven, type Run, runsOf } from '../../src/panel/index.ts'
import { type BoreFigures, panelOf, row } from './fixture.ts'

const pin = (x: number, y: number): BoreFigures => ({
  surface: 'A',
  at: [x, y, 0],
  diameter: 5,
  depth: 13,
  purpose: 'shelf pin',
})
const plate = (x: number, y: number): BoreFigures => ({ ...pin(x, y), purpose: 'hinge plate' })
const runs = (bores: readonly BoreFigures[]): Run[] => runsOf(panelOf({ bores }).bores)
/** `14 along x every 32 from 160/37: shelf pin` */
const said = (run: Run): string => {
  const [first] = run.bores
  return `${run.bores.length} along ${run.along} every ${Math.round(run.step * 1000) / 1000} from ${first.at[0]}/${first.at[1]}: ${run.purpose}`
}

describe('runs', () => {
  test('two columns of pins are two runs, not fourteen pairs', () => {
    expect(runs([...row(14, 'x', 32, pin(160, 37)), ...row(14, 'x', 32, pin(160, 500))]).map(said)).toEqual([
      '14 along x every 32 from 160/37: shelf pin',
      '14 along x every 32 from 160/500: shelf pin',
    ])
  })

  test('a row breaks where its step changes', () => {
    expect(runs([...row(5, 'x', 32, pin(100, 37)), ...row(4, 'x', 32, pin(420, 37))]).map(said)).toEqual([
      '5 along x every 32 from 100/37: shelf pin',
      '4 along x every 32 from 420/37: shelf pin',
    ])
  })

  test('three hinge plates are three pairs 32 apart, not one long uneven row', () => {
    const plates = [80, 400, 700].flatMap((x) => row(2, 'x', 32, plate(x, 37)))
    expect(runs(plates).map(said)).toEqual([
      '2 along x every 32 from 80/37: hinge plate',
      '2 along x every 32 from 400/37: hinge plate',
      '2 along x every 32 from 700/37: hinge plate',
    ])
  })

  test('pairs that lie inside each other are one run of four', () => {
    // 82 … 492 and 240 … 334 on one line; on another line 37 … 69 and 165 … 197, which lie apart.
    const nested = [82, 492, 240, 334].map((y) => pin(160, y))
    const apart = [37, 69, 165, 197].map((y) => pin(300, y))
    expect(runs([...nested, ...apart]).map((run) => [run.step, ...run.bores.map(({ at }) => at[1])])).toEqual([
      [0, 82, 240, 334, 492],
      [32, 37, 69],
      [32, 165, 197],
    ])
  })

  test('plates that sit in a pin row do not break it, and are not named twice', () => {
    const shared = row(8, 'x', 32, pin(160, 37)).map((one, k) =>
      k === 3 || k === 4 ? { ...one, also: 'hinge plate' } : one,
    )
    expect(runs(shared).map(said)).toEqual(['8 along x every 32 from 160/37: shelf pin'])
  })

  test('bores for different things on one line stay apart though the bit is the same', () => {
    expect(runs([...row(3, 'x', 32, pin(160, 37)), ...row(2, 'x', 32, plate(256, 37))]).map(said)).toEqual([
      '3 along x every 32 from 160/37: shelf pin',
      '2 along x every 32 from 256/37: hinge plate',
    ])
  })

  test('another depth, sink, surface or lean is another run', () => {
    const screw: BoreFigures = { surface: 'A', at: [10, 10, 0], diameter: 5, depth: 'through', purpose: 'screw' }
    const four: BoreFigures[] = [
      screw,
      { ...screw, at: [20, 10, 0], depth: 12 },
      { ...screw, at: [30, 10, 0], sink: { shape: 'cone', diameter: 9, angleDeg: 90 } },
      { ...screw, at: [40, 10, -18], surface: 'B' },
    ]
    expect(runs(four).map((run) => run.bores.length)).toEqual([1, 1, 1, 1])
  })

  test('a cup and its dowels: the cup is single, the dowels a pair', () => {
    const cup: BoreFigures = { surface: 'A', at: [100, 22.5, 0], diameter: 35, depth: 12.5, purpose: 'hinge cup' }
    const dowels = row(2, 'x', 45, { ...cup, at: [77.5, 32, 0], diameter: 8, depth: 11, purpose: 'hinge dowel' })
    expect(runs([cup, ...dowels]).map(said)).toEqual([
      '1 along x every 0 from 100/22.5: hinge cup',
      '2 along x every 45 from 77.5/32: hinge dowel',
    ])
  })

  test('screws along an edge: the run follows the edge', () => {
    const dowels = row(4, 'y', 140, { surface: 'x1', at: [720, 50, -9], diameter: 8, depth: 21, purpose: 'dowel' })
    expect(runs(dowels).map(said)).toEqual(['4 along y every 140 from 720/50: dowel'])
    expect(runs(dowels.slice(0, 1)).map(said)).toEqual(['1 along y every 0 from 720/50: dowel'])
  })

  test('a step of thirds is one step', () => {
    const thirds = Array.from({ length: 7 }, (_, k) => pin(50 + (k * 620) / 6, 37))
    expect(runs(thirds).map(said)).toEqual(['7 along x every 103.333 from 50/37: shelf pin'])
  })

  test('each bore is in exactly one run, and every run is straight, and even if it has more than six', () => {
    const place = fc.record({
      x: fc.integer({ min: 0, max: 12 }),
      y: fc.integer({ min: 0, max: 6 }),
      plate: fc.boolean(),
    })
    fc.assert(
      fc.property(fc.uniqueArray(place, { maxLength: 40, selector: ({ x, y }) => `${x} ${y}` }), (places) => {
        const bores = panelOf({
          bores: places.map((one) => (one.plate ? plate : pin)(20 + one.x * 32, 20 + one.y * 32)),
        }).bores
        const found = runsOf(bores)
        expect(found.flatMap((run) => run.bores.map((bore) => bore.id)).sort()).toEqual(bores.map((b) => b.id).sort())
        for (const run of found) {
          const [first] = run.bores
          if (isUneven(run)) {
            expect(run.bores.length).toBeLessThanOrEqual(6)
            const across = run.along === 'x' ? 1 : 0
            for (const bore of run.bores)
              expect([bore.purpose, bore.at[across]]).toEqual([run.purpose, first.at[across]])
            continue
          }
          run.bores.forEach((bore, k) => {
            expect(bore.purpose).toBe(run.purpose)
            expect(bore.at[0]).toBeCloseTo(first.at[0] + (run.along === 'x' ? k * run.step : 0), 9)
            expect(bore.at[1]).toBeCloseTo(first.at[1] + (run.along === 'y' ? k * run.step : 0), 9)
          })
        }
      }),
      { numRuns: 300 },
    )
  })
})
