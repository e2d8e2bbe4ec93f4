import { describe, expect, test } from 'vitest'
import { boardBox } from '../../src/assembly/index.ts'
import type { Built } from '../../src/outputs/index.ts'
import { built, panelOf, places, ROUND_STOCK } from '../support/define.ts'

// One module, 800 wide, 500 deep, of 18 mm board, 6 mm back applied: its carcase reaches back to 500 − 6 = 494.
const on = (base: string, more = 'working height: 900', inside = '{}'): Built =>
  built(`${ROUND_STOCK}
modules:
  box: { width: 800, depth: 500, ${more}, stock: board, base: { ${base} }, carcase: { back: { sits: applied, stock: thin } }, inside: ${inside} }
`)

const rules = (of: Built): string[] => of.findings.map((finding) => `${finding.severity} ${finding.rule}`)

/** Module frame, mm, of each piece of hardware of the base. */
const standing = (of: Built, what: string): string[] =>
  of.assembly.hardware
    .filter((piece) => piece.id.startsWith(`box/${what}/`))
    .map(
      (piece) => `${piece.item.id}: ${piece.stations[0]?.pose.origin.map((v) => Math.round(v * 100) / 100).join(' ')}`,
    )

describe('a plinth', () => {
  const of = on('plinth: { height: 90 }')

  test('its height is taken off the working height, and the carcase stands on it', () => {
    // 900 − 90 = 810.
    expect(panelOf(of, 'box/left-side').length).toBe(810)
    expect(of.assembly.modules[0]?.baseHeight).toBe(90)
    expect(boardBox(panelOf(of, 'box/plinth-front'))).toEqual({ min: [0, 50, -90], max: [800, 68, 0] })
  })

  test('front and back run through, the sides stand between them', () => {
    // Toe room 50 in front; the back stands off by the back, 6, and 20: 500 − 26 = 474.
    expect(boardBox(panelOf(of, 'box/plinth-back'))).toEqual({ min: [0, 456, -90], max: [800, 474, 0] })
    // Sides from 68 to 456: 388 long, 90 high.
    expect(boardBox(panelOf(of, 'box/plinth-left-side'))).toEqual({ min: [0, 68, -90], max: [18, 456, 0] })
    expect(boardBox(panelOf(of, 'box/plinth-right-side'))).toEqual({ min: [782, 68, -90], max: [800, 456, 0] })
    expect([panelOf(of, 'box/plinth-front').length, panelOf(of, 'box/plinth-front').width]).toEqual([800, 90])
    expect(panelOf(of, 'box/plinth-left-side').length).toBe(388)
  })

  test('its boards are screwed to each other by the joint of the carcase', () => {
    // 90 high is less than three end distances of 50: two screws a quarter of it from its ends, at 22.5 and 67.5, in
    // the middle of a side, 9 from its outer face. The front's x runs from the right: 800 − 9 = 791.
    expect(places(panelOf(of, 'box/plinth-front'), 'B', 'one-piece')).toEqual([
      '9 22.5',
      '9 67.5',
      '791 22.5',
      '791 67.5',
    ])
    expect(rules(of)).toEqual([])
  })

  test('the bottom is screwed to it from inside, clear of the screws that are in it already', () => {
    // Line of the front: 50 + 9 = 59 from the front of the bottom, which is the module's. Between the sides 764: ends
    // 50, run 664, ceil(664 / 160) + 1 = 6 screws 132.8 apart, from 50. The side's screws at 50 from the front go along
    // the board at most 60 deep; 12 clear of that the first and the last come to 72 and 764 − 72 = 692.
    const bottom = panelOf(of, 'box/bottom')
    const screws = places(bottom, 'A', 'screw').filter((place) => place.endsWith(' 59'))
    expect(screws).toEqual(['72 59', '182.8 59', '315.6 59', '448.4 59', '581.2 59', '692 59'])
    // The back's screws stand in its rear edge at 50, 182.8 …, too; its own line is 456 + 9 = 465. Each moves 12 aside,
    // toward the middle.
    const rear = places(bottom, 'A', 'screw').filter((place) => place.endsWith(' 465'))
    expect(rear).toEqual(['62 465', '194.8 465', '327.6 465', '436.4 465', '569.2 465', '702 465'])
    // They go into the upper edge, 9 from its face, and the front lies with its right end at x = 0.
    const edge = panelOf(of, 'box/plinth-front').bores.filter((bore) => bore.surface === 'y1')
    expect(edge).toHaveLength(6)
    expect(edge[0]?.at[2]).toBe(-9)
  })

  test('a partition above moves a screw aside', () => {
    // Partition 391 to 409; a screw wished at 18 + 382 = 400 (5 screws) stands 12 beside it: 379 or 421.
    const of2 = on(
      'plinth: { height: 90, fix: { fasten: through screw, spacing: 170 } }',
      'working height: 900',
      '{ side by side: [{}, {}] }',
    )
    const lines = places(panelOf(of2, 'box/bottom'), 'A', 'screw').filter((place) => place.endsWith(' 59'))
    // ceil(664 / 170) + 1 = 5, 166 apart: 216, 382, 548 in the bottom's own frame; 382 comes to 361 or 403.
    expect(lines).toHaveLength(5)
    expect([361, 403]).toContain(Number(lines[2]?.split(' ')[0]))
    expect(rules(of2).filter((rule) => rule.startsWith('stop'))).toEqual([])
  })

  test('pocket screws hold it from below, their pockets on the inner faces', () => {
    const of2 = on('plinth: { height: 90, joint: pocket screw, fix: pocket screw }')
    expect(places(panelOf(of2, 'box/bottom'), 'A', 'screw')).toEqual([])
    expect(
      panelOf(of2, 'box/plinth-front').bores.filter((bore) => bore.leanDeg !== undefined && bore.surface === 'A'),
    ).toHaveLength(6)
    expect(panelOf(of2, 'box/plinth-left-side').bores.filter((bore) => bore.surface === 'B')).toEqual([])
  })

  test('one whose back stands under the back panel cannot be screwed from inside', () => {
    // Line at 500 − 9 = 491, and the clear inside ends at 494: less than 12 from it.
    const of2 = on('plinth: { height: 90, back recess: 0 }')
    expect(of2.findings[0]).toMatchObject({
      rule: 'plinth-fixing',
      severity: 'stop',
      panels: ['box/plinth-back', 'box/bottom'],
    })
  })
})

describe('levelling feet', () => {
  test('four in the corners, their height in mid-travel taken off', () => {
    const of = on('feet: foot M8')
    // 900 − 40 = 860; 70 from the footprint all round, at the underside.
    expect(panelOf(of, 'box/left-side').length).toBe(860)
    expect(standing(of, 'feet')).toEqual([
      'foot M8: 70 70 0',
      'foot M8: 730 70 0',
      'foot M8: 70 430 0',
      'foot M8: 730 430 0',
    ])
    // Bored right through from the upper face; the bottom begins at 18.
    expect(places(panelOf(of, 'box/bottom'), 'A', 'levelling foot')).toEqual(['52 70', '52 430', '712 70', '712 430'])
    expect(rules(of)).toEqual([])
  })

  test('a pair more where the span is over 36 in', () => {
    const wide = (width: number): string[] =>
      standing(
        built(`${ROUND_STOCK}
modules:
  box: { width: ${width}, depth: 500, carcase height: 700, stock: board, base: { feet: foot M10 }, carcase: { back: none } }
`),
        'feet',
      )
    // 1054 − 140 = 914 is less than 914.4; 1056 − 140 = 916 is more: the middle pair stands at 528.
    expect(wide(1054)).toHaveLength(4)
    expect(wide(1056)).toHaveLength(6)
    expect(wide(1056)[1]).toBe('foot M10: 528 70 0')
  })

  test('one under a side is refused with the inset that clears it', () => {
    // The side ends at 18, the flange is 22 wide: 18 + 11 = 29 at least.
    const of = on('feet: foot M8, inset: 20')
    expect(of.findings.find((finding) => finding.rule === 'foot-place')).toMatchObject({
      severity: 'stop',
      fix: 'set `inset: 29 mm`',
    })
  })
})

describe('fixed and levelling casters', () => {
  test('at the left end two fixed ones, rolling sideways', () => {
    const of = on('casters: caster 100, fixed casters: fixed caster 100, fixed at: left')
    // King pins 95 + 5 = 100 from the footprint; the fixed ones stand as far in.
    expect(standing(of, 'casters')).toEqual([
      'fixed caster 100: 100 100 0',
      'caster 100: 700 100 0',
      'caster 100: 700 400 0',
      'fixed caster 100: 100 400 0',
    ])
    // 900 − 128 = 772.
    expect(panelOf(of, 'box/left-side').length).toBe(772)
    // Holes 80 along the way it rolls (across the module), 60 the other way; the bottom begins at 18: 100 − 18 ± 40.
    expect(places(panelOf(of, 'box/bottom'), 'A', 'caster').slice(0, 4)).toEqual([
      '42 70',
      '42 130',
      '42 370',
      '42 430',
    ])
    // So far in, it tips easily as it rolls; that is another matter.
    expect(rules(of)).toEqual(['warn tipping'])
  })

  test('at the back they roll to the front', () => {
    const of = on('casters: caster 100, fixed casters: fixed caster 100, fixed at: back')
    // 100 − 18 ± 30 across, 400 ± 40 from front to back.
    const rear = places(panelOf(of, 'box/bottom'), 'A', 'caster').filter((place) => Number(place.split(' ')[1]) > 250)
    expect(rear).toEqual(['52 360', '52 440', '112 360', '112 440', '652 360', '652 440', '712 360', '712 440'])
  })

  test('two heights: the packing is named, and the module stands on the higher ones', () => {
    const of = on('casters: caster 100, fixed casters: fixed caster 75, fixed at: right')
    expect(panelOf(of, 'box/left-side').length).toBe(900 - 128)
    expect(of.findings.find((finding) => finding.rule === 'caster-heights')).toMatchObject({
      severity: 'warn',
      fix: 'take fixed caster 100 with it, or put a packing 28 mm thick between each fixed caster 75 and the bottom',
    })
  })

  test('a fixed wheel in a swivel circle', () => {
    // 280 deep: the pins stand 80 from front and back, so 120 apart. At the back the fixed wheel of 75 reaches 37.5 toward
    // the circle of 75: 120 − 37.5 − 75 = 7.5 remains, less than 10; 300 deep: 27.5; 260 deep: they meet by 12.5.
    const deep = (depth: number): string[] =>
      rules(
        built(`${ROUND_STOCK}
modules:
  box: { width: 800, depth: ${depth}, carcase height: 700, stock: board, base: { casters: caster 75, fixed casters: fixed caster 75, fixed at: back }, carcase: { back: none } }
`),
      ).filter((rule) => rule.includes('caster'))
    expect(deep(280)).toEqual(['warn caster-circles'])
    expect(deep(300)).toEqual([])
    expect(deep(260)).toEqual(['stop caster-circles'])
  })

  test('a levelling caster rolls at its own height and says how far its foot lifts', () => {
    const of = on('casters: levelling caster 50')
    expect(panelOf(of, 'box/left-side').length).toBe(820)
    expect(of.assembly.hardware.find((piece) => piece.id === 'box/casters/1')?.note).toBe(
      'the foot lifts it by up to 10 mm',
    )
  })
})
