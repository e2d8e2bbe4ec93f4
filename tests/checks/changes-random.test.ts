import { expect, test } from 'vitest'
import type { Finding } from '../../src/checks/index.ts'
import { openDefinition } from '../../src/outputs/index.ts'
import { applyEdits, renderProblems } from '../../src/project/index.ts'
import { built } from '../support/define.ts'
import { anyDefinition } from '../support/random.ts'
import { expectFaultless } from '../support/sought.ts'

/** Changes tried of one definition, so that no one with many takes all the time; those of different rules first. */
const MOST = 3

const keyOf = ({ rule, message, panels, at }: Finding): string => JSON.stringify([rule, message, panels, at])

function findingsOf(text: string): readonly Finding[] | string {
  const opened = openDefinition(text, 'random.yaml')
  return opened.ok ? opened.built.findings : renderProblems(opened.problems)
}

/** The first finding of each rule, then the others. */
function differentFirst(findings: readonly Finding[]): Finding[] {
  const first = new Map<string, Finding>()
  for (const one of findings) if (!first.has(one.rule)) first.set(one.rule, one)
  return [...new Set([...first.values(), ...findings])]
}

/** What is wrong with the changes that the findings on a definition offer. */
function faultsOf(text: string, tried: { changes: number; readonly rules: Set<string> }): string[] {
  const { findings } = built(text)
  const offers = new Map(findings.flatMap((one) => (one.change ? [[JSON.stringify(one.change), one] as const] : [])))
  return differentFirst([...offers.values()])
    .slice(0, MOST)
    .flatMap((finding) => {
      tried.changes += 1
      tried.rules.add(finding.rule)
      const after = findingsOf(applyEdits(text, finding.change ?? []))
      const what = `${finding.rule}: ${finding.message}: ${finding.fix}`
      if (typeof after === 'string') return [`refused: ${what}: ${after}`]
      return after.some((one) => keyOf(one) === keyOf(finding)) ? [`does not clear: ${what}`] : []
    })
}

test('over random projects every change that is offered can be read and clears its finding', {
  timeout: 180_000,
}, () => {
  const tried = { changes: 0, rules: new Set<string>() }
  expectFaultless(anyDefinition, (text) => faultsOf(text, tried), { numRuns: 60 })
  expect(tried.changes).toBeGreaterThan(100)
  expect(tried.rules.size).toBeGreaterThan(25)
})
