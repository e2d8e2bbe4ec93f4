import { expect, test } from 'vitest'
import type { Finding } from '../../src/checks/index.ts'
import { openDefinition } from '../../src/outputs/index.ts'
import { applyEdits, renderProblems } from '../../src/project/index.ts'
import { anyDefinition } from '../support/random.ts'
import { expectFaultless } from '../support/sought.ts'

/** Changes tried of one definition, so that no one with many takes all the time. */
const MOST = 6

const keyOf = ({ rule, message, panels, at }: Finding): string => JSON.stringify([rule, message, panels, at])

function findingsOf(text: string): readonly Finding[] | string {
  const opened = openDefinition(text, 'random.yaml')
  return opened.ok ? opened.built.findings : renderProblems(opened.problems)
}

/** What is wrong with the changes that the findings on a definition offer. */
function faultsOf(text: string, tried: { changes: number }): string[] {
  const findings = findingsOf(text)
  if (typeof findings === 'string') return [findings]
  const offers = new Map(findings.flatMap((one) => (one.change ? [[JSON.stringify(one.change), one] as const] : [])))
  return [...offers.values()].slice(0, MOST).flatMap((finding) => {
    tried.changes += 1
    const after = findingsOf(applyEdits(text, finding.change ?? []))
    const what = `${finding.rule}: ${finding.message}: ${finding.fix}`
    if (typeof after === 'string') return [`refused: ${what}: ${after}`]
    return after.some((one) => keyOf(one) === keyOf(finding)) ? [`does not clear: ${what}`] : []
  })
}

test('over random projects every change that is offered can be read and clears its finding', {
  timeout: 180_000,
}, () => {
  const tried = { changes: 0 }
  expectFaultless(anyDefinition, (text) => faultsOf(text, tried), { numRuns: 60 })
  expect(tried.changes).toBeGreaterThan(100)
})
