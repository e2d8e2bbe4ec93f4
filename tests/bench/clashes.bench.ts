import { bench, describe, expect } from 'vitest'
import { byDesign, type Designs } from '../../src/checks/by-design.ts'
import { meetingsIn, wallsOf } from '../../src/checks/clashes.ts'
import { wallBetween, worksOf } from '../../src/checks/works.ts'
import { NOISE_MM } from '../../src/geometry/index.ts'
import { panelOf, row } from '../drawing/fixture.ts'

// Question: how much does the index save on a panel with 2,000 bores? The peer looks at every pair of them, by the same
// exact gaps. A ratio of two figures from one run; no time is asserted. Both must find the same pairs.
const ROWS = 50
const COLUMNS = 40

/** Pins 32 apart both ways from face A; every other row has dowels in face B, 9 beside them: some walls are thin. */
const panel = (() => {
  const bores = Array.from({ length: ROWS }, (_, k) =>
    row(COLUMNS, 'x', 32, {
      surface: k % 2 === 0 ? 'A' : 'B',
      at: [40 + (k % 2) * 9, 40 + Math.floor(k / 2) * 32, k % 2 === 0 ? 0 : -18],
      diameter: k % 2 === 0 ? 5 : 8,
      depth: 13,
      purpose: 'hole',
    }),
  ).flat()
  const made = panelOf({ length: 1400, width: 1000, bores })
  const own = made.bores.map((bore, k) => ({
    ...bore,
    uses: bore.uses.map((use) => ({ ...use, hardware: `piece ${k}` })),
  }))
  return { ...made, bores: own }
})()

const designs: Designs = {
  cutoutAt: () => [],
  hardwareAt: () => undefined,
  itemOf: () => undefined,
  pieceOf: () => undefined,
}
const walls = wallsOf({ findings: { limits: {}, silences: [] } })

function everyPair(): number {
  const works = worksOf(panel)
  let found = 0
  for (const [k, a] of works.entries()) {
    for (let n = k + 1; n < works.length; n += 1) {
      const b = works[n]
      if (b === undefined || byDesign(panel, a, b, designs)) continue
      const enough = walls.between(a.work, b.work) - NOISE_MM
      if (wallBetween(a, b, enough) < enough) found += 1
    }
  }
  return found
}

const byIndex = (): number => meetingsIn(panel, walls, designs).length

expect(panel.bores.length).toBe(ROWS * COLUMNS)
expect(byIndex()).toBe(everyPair())
expect(byIndex()).toBeGreaterThan(0)

describe('2,000 bores in one panel', () => {
  bench('by the index', () => void byIndex())
  bench('every pair', () => void everyPair(), { iterations: 3, warmupIterations: 1 })
})
