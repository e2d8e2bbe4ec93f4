import { describe, expect, test } from 'vitest'
import { built } from '../support/define.ts'
import { ruleCases } from './cases/index.ts'

/** Limits of findings that the placing makes, so low that the case of the rule is inside them. */
const LOW: Readonly<Record<string, string>> = {
  'screw-bite': '{ warn: 1, stop: 1 }',
  'housing-short': '{ stop: 1 }',
  'pocket-depth': '{ stop: 1 }',
  'drawer-narrow': '{ stop: 1 }',
  'ledge-narrow': '{ stop: 1 }',
  'slot-wall': '{ warn: 1, stop: 1 }',
  'lock-reach': '{ warn: 0 }',
}

describe.each(
  ruleCases.flatMap((one) =>
    typeof one.trips === 'string' && one.rule in LOW
      ? [[`${one.rule}${one.what === undefined ? '' : `: ${one.what}`}`, one.rule, one.message, one.trips] as const]
      : [],
  ),
)('%s', (_, rule, message, trips) => {
  test('is not found by a limit that the definition has lower', () => {
    const text = trips.replace(/^modules:/m, `findings: { ${rule}: ${LOW[rule]} }\nmodules:`)
    const { findings } = built(text)
    expect(findings.filter((finding) => finding.rule === rule && finding.message === message)).toEqual([])
    expect(findings.filter((finding) => finding.rule === rule)).toEqual([])
  })
})

test('casters may pass nearer, and the core of a platform be thicker, than by rule', () => {
  const found = (rule: string, what: string, limits: string): number => {
    const one = ruleCases.find((each) => each.rule === rule && each.what === what)
    if (one === undefined || typeof one.trips !== 'string') throw new Error(`no case ${rule}: ${what}`)
    const text = one.trips.replace(/^modules:/m, `findings: { ${rule}: ${limits} }\nmodules:`)
    return built(text).findings.filter((finding) => finding.rule === rule).length
  }
  // They pass 8 mm apart; the channel is 4 mm higher than its axle; a bolt 9 mm in has 9 − 5.5 = 3.5 mm of wood.
  expect([8, 9].map((warn) => found('caster-circles', 'set too far in', `{ warn: ${warn} }`))).toEqual([0, 1])
  expect([4, 3].map((note) => found('axle-channel', 'a core to be packed out', `{ note: ${note} }`))).toEqual([0, 1])
  expect([3.5, 4].map((stop) => found('locking-place', 'too near the edge', `{ stop: ${stop} }`))).toEqual([0, 1])
})
