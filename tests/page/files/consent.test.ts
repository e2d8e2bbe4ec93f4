import { signal } from '@preact/signals'
import { expect, test } from 'vitest'
import { consentTo } from '../../../src/page/files/consent.ts'
import type { PageFinding } from '../../../src/page/protocol.ts'

type Standing = Pick<PageFinding, 'key' | 'severity' | 'silenced'>

const stop = (key: string): Standing => ({ key, severity: 'stop' })

function asked(first: readonly Standing[]) {
  const findings = signal(first)
  const opened = signal(0)
  return { findings, opened, consent: consentTo(findings, opened) }
}

test('what was agreed to holds for these stops, also where one of them goes and comes again', () => {
  const { findings, consent } = asked([stop('a'), stop('b')])
  expect(consent.given.value).toBe(false)
  consent.set(true)
  expect(consent.given.value).toBe(true)
  findings.value = [stop('a')]
  expect(consent.given.value).toBe(true)
  findings.value = [stop('b'), stop('a'), { key: 'c', severity: 'warn' }]
  expect(consent.given.value).toBe(true)
  consent.set(false)
  expect(consent.given.value).toBe(false)
})

test('another stop asks for it anew, although there are no more of them than before', () => {
  const { findings, consent } = asked([stop('a'), stop('b')])
  consent.set(true)
  findings.value = [stop('a'), stop('c')]
  expect(consent.given.value).toBe(false)
  findings.value = [stop('a'), { ...stop('c'), silenced: 'a model' }]
  expect(consent.given.value).toBe(true)
})

test('another definition asks for it anew, although the same stop stands in it', () => {
  const { opened, consent } = asked([stop('a')])
  consent.set(true)
  opened.value += 1
  expect(consent.given.value).toBe(false)
  consent.set(true)
  expect(consent.given.value).toBe(true)
})
