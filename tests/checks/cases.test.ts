import { describe, expect, test } from 'vitest'
import type { Finding } from '../../src/checks/index.ts'
import type { Built } from '../../src/outputs/index.ts'
import { applyEdits } from '../../src/project/index.ts'
import { RULEBOOK } from '../../src/rulebook/index.ts'
import { built } from '../support/define.ts'
import type { RuleCase } from './cases/case.ts'
import { ruleCases } from './cases/index.ts'

const workedOut = (one: RuleCase['trips']): Built => (typeof one === 'string' ? built(one) : one())
const loud = (findings: readonly Finding[]): Finding[] => findings.filter(({ silenced }) => silenced === undefined)
const stops = (findings: readonly Finding[]): string[] =>
  loud(findings).flatMap(({ severity, message }) => (severity === 'stop' ? [message] : []))

describe.each(ruleCases.map((one) => [`${one.rule}${one.what === undefined ? '' : `: ${one.what}`}`, one] as const))(
  '%s',
  (_, one) => {
    const ofRule = (findings: readonly Finding[]): Finding[] => loud(findings).filter(({ rule }) => rule === one.rule)

    test('is found, in these words', () => {
      const { findings } = workedOut(one.trips)
      const found = ofRule(findings).map(({ severity, message, fix }) => ({ severity, message, fix }))
      expect(found).toContainEqual({ severity: one.severity, message: one.message, fix: one.fix })
      expect(RULEBOOK[one.rule].severities).toContain(one.severity)
    })

    test('is not found just inside the limit', () => {
      expect(ofRule(workedOut(one.inside).findings)).toEqual([])
    })

    test('what is offered to mend it does, and spoils nothing', () => {
      if (typeof one.trips !== 'string') return
      const { findings } = built(one.trips)
      const finding = findings.find(({ rule, message }) => rule === one.rule && message === one.message)
      if (finding?.change === undefined) return
      const after = built(applyEdits(one.trips, finding.change)).findings
      expect(after.map(({ message }) => message)).not.toContain(one.message)
      expect(ofRule(after).length).toBeLessThan(ofRule(findings).length)
      const before = stops(findings)
      expect(stops(after).filter((message) => !before.includes(message))).toEqual([])
    })
  },
)

test('every rule of the rulebook has a case', () => {
  const shown = new Set(ruleCases.map(({ rule }) => rule))
  expect(Object.keys(RULEBOOK).filter((id) => !shown.has(id as RuleCase['rule']))).toEqual([])
})
