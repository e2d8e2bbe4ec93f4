import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { grouped } from '../../src/checks/index.ts'
import { openDefinition } from '../../src/outputs/index.ts'
import { renderProblems } from '../../src/project/index.ts'

const text = readFileSync(new URL('planted/faults.yaml', import.meta.url), 'utf8')

function foundIn(definition: string): string[] {
  const opened = openDefinition(definition, 'faults.yaml')
  if (!opened.ok) throw new Error(renderProblems(opened.problems))
  const { project, panels, findings } = opened.built
  const loud = findings.filter(({ severity, silenced }) => severity !== 'note' && silenced === undefined)
  const lines = grouped(project, panels, loud).flatMap(({ module, findings: list }) =>
    list.map(({ severity, rule }) => `${module ?? 'the project'}: ${severity} ${rule}`),
  )
  return [...new Set(lines)].sort()
}

const PLANTED = [
  'casters that meet: stop caster-circles',
  'counter longer than its sheet: stop sheet-too-small',
  'doors without a gap: warn fronts-gap',
  'dowels at the edge: stop bore-near-edge',
  'drawer blocked by a neighbour: warn corner-swing',
  'drawer lower than its slide: stop drawer-box-low',
  'drawer too deep: stop drawer-slide-length',
  'long shelf: warn shelf-sag',
  'more than its casters carry: warn caster-load',
  'partition at the hinges: stop hinge-arm',
  'pin meets dowel: stop bores-meet',
  'pin near dowel: warn bores-near',
  'screw through the front edge: stop screw-through',
  'short screws: stop screw-bite',
  'tall door on two hinges: stop door-hinges',
  'the project: stop printer-correction',
  'the project: warn bit-depth',
  'the project: warn bit-missing',
  'the project: warn stock-spread',
  'thin lip behind the back: stop groove-wood',
  'too many shelves: stop pin-rows-short',
  'top-heavy drawers: warn tipping',
  'window near the edge: warn cutout-near-edge',
]

test('all planted faults are found, in their modules, and nothing else is called wrong', () => {
  expect(PLANTED.length).toBeGreaterThanOrEqual(20)
  expect(foundIn(text)).toEqual(PLANTED)
})
