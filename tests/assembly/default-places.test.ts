import { describe, expect, test } from 'vitest'
import { built, panelOf, places, ROUND_STOCK } from '../support/define.ts'

const stops = (text: string): string[] =>
  built(text)
    .findings.filter(({ severity }) => severity === 'stop')
    .map(({ rule, message }) => `${rule}: ${message}`)

const cabinet = (rest: string, size = 'width: 800\n    depth: 600\n    carcase height: 800'): string =>
  `${ROUND_STOCK}
modules:
  a:
    ${size}
    stock: board
${rest}`

describe('defaults that would meet in one board make way for each other', () => {
  test('casters stand further in than their circle asks where a bolt would meet a screw', () => {
    // Swivel radius 43 + gap 5 = 48: the bolt of 9 would cross the pilot that enters each end of the bottom 50 from
    // its front edge, 18 + 35 = 53 deep and 5 wide. The bottom is 600 − 18 = 582 deep, so its last pilots lie at 532,
    // beside bolts at 600 − inset: those clear them by 5 only lengthwise, from 53 + 5 + 4.5 = 62.5 on.
    const text = cabinet('    base: {casters: caster 50}')
    expect(stops(text)).toEqual([])
    const bolts = places(panelOf(built(text), 'a/bottom'), 'A', 'caster')
    // The bottom begins at x = 18 and y = 0: 63 − 18 = 45, 737 − 18 = 719, 600 − 63 = 537.
    expect(bolts.sort()).toEqual(['45 537', '45 63', '719 537', '719 63'])
  })

  test('an inset that is asked for stays', () => {
    const bolts = places(
      panelOf(built(cabinet('    base: {casters: caster 50, inset: 48}')), 'a/bottom'),
      'A',
      'caster',
    )
    expect(bolts).toContain('30 48')
  })

  test('casters stand so far in that their plates lie on the bottom', () => {
    for (const caster of ['2 in', '2-1/2 in', '3 in', '4 in', '100', '125']) {
      expect(stops(cabinet(`    base: {casters: caster ${caster}}`)), caster).toEqual([])
    }
  })
})
