import { expect, test } from 'vitest'
import { loadedModules, panelBody, standingBodies } from '../../../src/checks/loads/index.ts'
import { applyEdits } from '../../../src/project/index.ts'
import { loadRules } from '../../../src/rulebook/loads.ts'
import { built } from '../../support/define.ts'
import { anyDefinition } from '../../support/random.ts'
import { expectFaultless } from '../../support/sought.ts'

/** Loads that are said where none are: so that something is too heavy now and then. */
const HEAVY = { 'on a shelf': '300 kg/m2', 'on all shelves': 200, 'in a drawer': '60 lb/ft2', 'on the top': '300 lb' }

const loaded = (text: string): string => {
  const data = JSON.parse(text)
  return JSON.stringify({ ...data, common: { ...data.common, loads: HEAVY } })
}

test('over random projects no mass is lost, every sentence is whole, and what is offered clears its finding', () => {
  const seen = { findings: 0, changes: 0 }
  expectFaultless(
    anyDefinition,
    (light) => {
      const text = loaded(light)
      const of = built(text)
      const modules = loadedModules(of)
      const own = modules.reduce((sum, module) => sum + module.own.mass, 0)
      const load = modules.reduce((sum, module) => sum + module.load.mass, 0)
      const boards = of.panels.reduce((sum, panel) => sum + panelBody(panel).mass, 0)
      const standing = standingBodies(modules, of.assembly).reduce((sum, { shut }) => sum + shut.mass, 0)
      const found = of.findings.filter(({ rule }) => Object.hasOwn(loadRules, rule))
      const broken = found.filter(({ message, fix }) => /NaN|Infinity|undefined|e\+/.test(`${message} ${fix}`))
      seen.findings += found.length
      const [change] = found.flatMap((finding) =>
        finding.change === undefined ? [] : [{ finding, edits: finding.change }],
      )
      const after = change && built(applyEdits(text, change.edits)).findings
      if (after !== undefined) seen.changes += 1
      const stays = after?.some(
        ({ rule, message }) => rule === change?.finding.rule && message === change.finding.message,
      )
      return [
        ...(Math.abs(own - boards) < 1e-6 ? [] : [`boards weigh ${boards} kg, modules ${own} kg`]),
        ...(Math.abs(own + load - standing) < 1e-6
          ? []
          : [`modules and loads ${own + load} kg, bodies ${standing} kg`]),
        ...broken.map(({ message }) => `not whole: ${message}`),
        ...(stays === true ? [`still there: ${change?.finding.message}`] : []),
      ]
    },
    { numRuns: 60 },
  )
  expect(seen.findings).toBeGreaterThan(60)
  expect(seen.changes).toBeGreaterThan(15)
})
