import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Bore, Panel } from '../../src/panel/index.ts'
import { built, panelOf } from '../support/define.ts'
import { anyChest, evenChest } from '../support/random-drawers.ts'

const RUNS = { numRuns: 100 }
const TIGHT = 1e-6

const end = ({ at, axis, depth }: Bore): readonly number[] =>
  [0, 1, 2].map((k) => (at[k] ?? 0) + (axis[k] ?? 0) * depth)

describe('over random drawers', () => {
  test('holes lie in their panels, mates agree, no two panels share space', () => {
    let slides = 0
    fc.assert(
      fc.property(anyChest, (text) => {
        const of = built(text)
        const wrong = of.findings.filter(({ rule }) => rule.startsWith('mate-') || rule === 'panels-overlap')
        expect(wrong.map((finding) => finding.message)).toEqual([])
        for (const panel of of.panels) {
          for (const bore of panel.bores) {
            for (const p of [bore.at, end(bore)]) {
              const [x = 0, y = 0, z = 0] = p
              const within =
                x > -TIGHT && x < panel.length + TIGHT && y > -TIGHT && y < panel.width + TIGHT && z < TIGHT
              expect(within && z > -panel.thickness - TIGHT, `${panel.id} ${bore.purpose} at ${p.join(', ')}`).toBe(
                true,
              )
            }
            expect(onSurface(panel, bore), `${panel.id} ${bore.purpose}`).toBe(true)
          }
        }
        slides += of.assembly.hardware.filter((piece) => piece.item.kind === 'drawer slide').length
      }),
      RUNS,
    )
    expect(slides).toBeGreaterThan(200)
  })

  test('the holes that a slide has in the cabinet and in the box lie on one line from front to back', () => {
    fc.assert(
      fc.property(anyChest, (text) => {
        const of = built(text)
        for (const piece of of.assembly.hardware.filter((one) => one.item.kind === 'drawer slide')) {
          const heights = of.panels.flatMap((panel) =>
            panel.bores
              .filter((bore) => bore.uses.some((use) => use.hardware === piece.id))
              .map((bore) => {
                const { x, y, z, origin } = panel.moduleFromPanel
                return x[2] * bore.at[0] + y[2] * bore.at[1] + z[2] * bore.at[2] + origin[2]
              }),
          )
          expect(heights.length).toBeGreaterThan(4)
          expect(Math.max(...heights) - Math.min(...heights), piece.id).toBeLessThan(TIGHT)
        }
      }),
      RUNS,
    )
  })

  test('left mirrors right: sides, drawer sides, packings', () => {
    const other = { A: 'A', B: 'B', x0: 'x1', x1: 'x0', y0: 'y0', y1: 'y1' } as const
    const print = (surface: string, x: number, bore: Bore): string =>
      [
        surface,
        ...[x, bore.at[1], bore.at[2], bore.diameter, bore.depth].map((value) => Math.round(value * 1e5) / 1e5 + 0),
      ].join(' ')
    let compared = 0
    fc.assert(
      fc.property(evenChest, (text) => {
        const of = built(text)
        for (const left of of.panels.filter((panel) => panel.key.includes('left') && panel.role !== 'door')) {
          const right = panelOf(of, left.id.replace('left', 'right'))
          const flipped = left.bores.map((bore) => print(other[bore.surface], left.length - bore.at[0], bore)).sort()
          expect(flipped).toEqual(right.bores.map((bore) => print(bore.surface, bore.at[0], bore)).sort())
          compared += flipped.length
        }
      }),
      RUNS,
    )
    expect(compared).toBeGreaterThan(2000)
  })
})

/** Every hole of a drawer begins on a surface of its panel. */
function onSurface(panel: Panel, { surface, at }: Bore): boolean {
  const into = {
    A: -at[2],
    B: panel.thickness + at[2],
    x0: at[0],
    x1: panel.length - at[0],
    y0: at[1],
    y1: panel.width - at[1],
  }[surface]
  return Math.abs(into) < TIGHT
}
