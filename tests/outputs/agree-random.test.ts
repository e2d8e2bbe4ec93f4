import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { pointsAlong } from '../../src/geometry/index.ts'
import type { Built } from '../../src/outputs/index.ts'
import type { Panel } from '../../src/panel/index.ts'
import { built } from '../support/define.ts'
import { anyDefinition } from '../support/random.ts'
import { openedDefinition } from '../support/random-openings.ts'
import { expectFaultless } from '../support/sought.ts'
import { nothing } from './agreement.ts'
import { compared, drawn, faceFaults } from './compare.ts'

/** Panels that no stop names: cuts that run into each other, which a stop forbids, are drawn twice. */
function sound(of: Built): Panel[] {
  const stopped = new Set(of.findings.filter(({ severity }) => severity === 'stop').flatMap(({ panels }) => panels))
  return of.panels.filter(({ id }) => !stopped.has(id))
}

/** Panels that are drawn of one project. */
const MOST = 12

/** One of each role, then others: a dozen of many projects shows more than all of a few. */
function different(panels: readonly Panel[]): Panel[] {
  const first = new Map<string, Panel>()
  for (const panel of panels) if (!first.has(panel.role)) first.set(panel.role, panel)
  return [...new Set([...first.values(), ...panels])].slice(0, MOST)
}

describe('what is drawn agrees with panels.json', () => {
  test('over random projects', () => {
    const tally = nothing()
    expectFaultless(
      anyDefinition,
      (text) => {
        const of = built(text)
        const panels = different(sound(of))
        return faceFaults({ ...of, panels }, panels, tally)
      },
      { numRuns: 30 },
    )
    expect(Math.min(tally.holes, tally.grooves, tally.edges, tally.cutouts)).toBeGreaterThan(0)
  })

  test('over a few random projects, as panels.json is written', async () => {
    await fc.assert(
      fc.asyncProperty(anyDefinition, async (text) => {
        const of = built(text)
        const { json, files } = await drawn(of)
        expect(json.panels).toHaveLength(of.panels.length)
        const ids = sound(of).map(({ id }) => id)
        const all = { json: { panels: json.panels.filter(({ id }) => ids.includes(id)) }, files }
        const mm = of.project.outputs.dxf.units === 'in' ? 25.4 : 1
        for (const kind of ['dxf', 'svg'] as const) expect(compared(all, kind, mm).faults).toEqual([])
      }),
      { numRuns: 2 },
    )
  })

  test('over random openings in random panels: whole in the panel or a finding, and drawn as panels.json says', () => {
    const tally = nothing()
    fc.assert(
      fc.property(openedDefinition, (words) => {
        const of = built(words)
        const stopped = new Set(
          of.findings
            .filter(({ rule, severity }) => rule.startsWith('cutout') && severity === 'stop')
            .flatMap(({ panels }) => panels),
        )
        for (const panel of of.panels) {
          if (stopped.has(panel.id)) continue
          for (const one of panel.cutouts) {
            for (const [x, y] of pointsAlong(one.path, 1)) {
              expect(x > 0 && x < panel.length && y > 0 && y < panel.width).toBe(true)
            }
          }
        }
        const whole = of.panels.filter((panel) => !stopped.has(panel.id))
        expect(faceFaults(of, whole, tally)).toEqual([])
      }),
      { numRuns: 20 },
    )
    expect(tally.cutouts).toBeGreaterThan(10)
  })
})
