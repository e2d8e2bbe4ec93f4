import fc from 'fast-check'
import { expect, test } from 'vitest'
import { byDesign, type Designs } from '../../src/checks/by-design.ts'
import { meetingsIn, wallsOf } from '../../src/checks/clashes.ts'
import { type SolidWork, type Work, worksOf } from '../../src/checks/works.ts'
import { frustum, gapBetweenPrisms, gapBetweenSolids, gapToPrism, type Solid } from '../../src/geometry/index.ts'
import { crowdedPanel } from '../support/random-work.ts'

const NO_DESIGNS: Designs = {
  cutoutAt: () => [],
  hardwareAt: () => undefined,
  itemOf: () => undefined,
  pieceOf: () => undefined,
}
const WALLS = wallsOf({ findings: { limits: {}, silences: [] } })
/** Gaps to the walls of a prism are known to this, mm, and the limit of a wall decides within it. */
const CLOSE_MM = 2e-4

const idOf = (work: Work): string =>
  work.kind === 'bore' ? work.bore.id : work.kind === 'groove' ? work.groove.id : work.cutout.id

/** Cylinders as cones that do not widen, so that no closed form is used. */
const slowly = (solid: Solid): Solid =>
  solid.kind === 'cylinder' ? frustum(solid.from, solid.axis, solid.length, solid.radius, solid.radius) : solid

/** The wall between two works the long way: no boxes, no closed forms, grooves by their walls like any other path. */
function wallTheLongWay(a: SolidWork, b: SolidWork): number {
  const [one, other] = [a.prism, b.prism]
  if (one !== undefined && other !== undefined) return gapBetweenPrisms(one, other)
  const toPrism = (bore: SolidWork, prism: NonNullable<SolidWork['prism']>): number =>
    Math.min(...bore.solids.map((solid) => gapToPrism(slowly(solid), prism)))
  if (one !== undefined) return toPrism(b, one)
  if (other !== undefined) return toPrism(a, other)
  return Math.min(...a.solids.flatMap((p) => b.solids.map((q) => gapBetweenSolids(slowly(p), slowly(q)))))
}

test('the index finds the pairs, and the walls, that looking at every pair finds', () => {
  let found = 0
  fc.assert(
    fc.property(crowdedPanel, (panel) => {
      const works = worksOf(panel)
      const indexed = new Map(
        meetingsIn(panel, WALLS, NO_DESIGNS).map(
          ({ a, b, wall }) => [`${idOf(a)} ${idOf(b)}`, wall] as [string, number],
        ),
      )
      const missing: string[] = []
      for (const [k, a] of works.entries()) {
        for (const b of works.slice(k + 1)) {
          if (byDesign(panel, a, b, NO_DESIGNS)) continue
          const key = `${idOf(a.work)} ${idOf(b.work)}`
          const wall = wallTheLongWay(a, b)
          const had = indexed.get(key)
          const enough = WALLS.between(a.work, b.work)
          if (had === undefined) {
            if (wall < enough - CLOSE_MM) missing.push(`${key}: ${wall}`)
          } else {
            expect(Math.abs(had - wall), key).toBeLessThan(CLOSE_MM)
            indexed.delete(key)
            found += 1
          }
        }
      }
      expect(missing).toEqual([])
      // Each pair once, and none that looking at every pair does not give.
      expect([...indexed.keys()]).toEqual([])
    }),
    { numRuns: 500 },
  )
  expect(found).toBeGreaterThan(1200)
})

test('the pairs stand in one order', () => {
  fc.assert(
    fc.property(crowdedPanel, (panel) => {
      const place = new Map(worksOf(panel).map(({ work }, k) => [idOf(work), k]))
      const pairs = meetingsIn(panel, WALLS, NO_DESIGNS).map(({ a, b }) => [
        place.get(idOf(a)) ?? -1,
        place.get(idOf(b)) ?? -1,
      ])
      expect(pairs.every(([a = 0, b = 0]) => a < b)).toBe(true)
      expect(pairs).toEqual([...pairs].sort(([a = 0, b = 0], [c = 0, d = 0]) => a - c || b - d))
    }),
    { numRuns: 100 },
  )
})
