import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Bore, Panel } from '../../src/panel/index.ts'
import { coreOf } from '../../src/panel/index.ts'
import { baseHeight } from '../../src/project/index.ts'
import { built } from '../support/define.ts'
import { anyStanding } from '../support/random-base.ts'

const RUNS = { numRuns: 100 }
const TIGHT = 1e-6

const inPanel = (panel: Panel, bore: Bore): boolean => {
  const end = bore.at.map((at, axis) => at + (bore.axis[axis] ?? 0) * bore.depth)
  const limits = [
    [0, panel.length],
    [0, panel.width],
    [-panel.thickness, 0],
  ]
  return [bore.at, end].every((point) =>
    limits.every(([low = 0, high = 0], axis) => {
      const at = point[axis] ?? 0
      return at >= low - TIGHT && at <= high + TIGHT
    }),
  )
}

/** Where each piece enters, in from the surface that it is said to enter, mm. */
const sunk = (panel: Panel, { surface, at }: Bore): number =>
  ({
    A: -at[2],
    B: panel.thickness + at[2],
    x0: at[0],
    x1: panel.length - at[0],
    y0: at[1],
    y1: panel.width - at[1],
  })[surface]

describe('over random bases, rails, stretchers and lippings', () => {
  test('all mates are there and in line, every bore lies in its panel, no two panels share a space', () => {
    let bores = 0
    fc.assert(
      fc.property(anyStanding, (text) => {
        const of = built(text)
        const wrong = of.findings.filter(
          (finding) => finding.rule.startsWith('mate-') || finding.rule === 'panels-overlap',
        )
        expect(wrong.map((finding) => finding.message)).toEqual([])
        for (const panel of of.panels) {
          for (const bore of panel.bores) {
            bores += 1
            expect(inPanel(panel, bore), `${panel.id} ${bore.purpose}`).toBe(true)
          }
        }
      }),
      RUNS,
    )
    expect(bores).toBeGreaterThan(3000)
  })

  test('what stands under the module reaches from its underside to the floor', () => {
    fc.assert(
      fc.property(anyStanding, (text) => {
        const of = built(text)
        const [spec] = of.project.modules
        const [module] = of.assembly.modules
        if (spec === undefined || module === undefined) throw new Error('no module')
        expect(module.floorFromModule.origin[2]).toBeCloseTo(baseHeight(spec.base), 9)
        if (spec.height.of === 'working') {
          expect(module.baseHeight + module.size.height).toBeCloseTo(spec.height.mm, 9)
        }
        for (const panel of of.panels.filter((one) => one.role.startsWith('plinth'))) {
          expect(panel.moduleFromPanel.origin[2]).toBeCloseTo(-module.baseHeight, 9)
          expect(panel.width).toBeCloseTo(module.baseHeight, 9)
        }
        const base = of.assembly.hardware.filter((piece) => /\/(casters|feet)\//.test(piece.id))
        for (const { stations } of base) {
          const [x, y, z] = stations[0]?.pose.origin ?? [-1, -1, -1]
          expect(Math.min(x, y, spec.width - x, spec.depth - y)).toBeGreaterThan(0)
          expect(z).toBe(0)
        }
      }),
      RUNS,
    )
  })

  test('hardware enters its boards at their surface, unless in a rebate', () => {
    fc.assert(
      fc.property(anyStanding, (text) => {
        for (const panel of built(text).panels) {
          if (panel.grooves.some((groove) => groove.kind === 'rebate')) continue
          for (const bore of panel.bores) expect(Math.abs(sunk(panel, bore)), panel.id).toBeLessThan(TIGHT)
        }
      }),
      RUNS,
    )
  })

  test('a lipping changes no hole and no size, only what is cut', () => {
    let lipped = 0
    fc.assert(
      fc.property(anyStanding, (text) => {
        const plain = JSON.parse(text)
        delete plain.modules.box.lipping
        const [a, b] = [built(text).panels, built(JSON.stringify(plain)).panels]
        expect(a.map(({ lipping: _, ...panel }) => panel)).toEqual(b)
        for (const panel of a) {
          const core = coreOf(panel)
          const off = Object.values(panel.lipping ?? {}).reduce((sum, one) => sum + one, 0)
          expect(panel.length + panel.width - core.length - core.width).toBeCloseTo(off, 9)
          if (panel.lipping !== undefined) lipped += 1
        }
      }),
      RUNS,
    )
    expect(lipped).toBeGreaterThan(100)
  })
})
