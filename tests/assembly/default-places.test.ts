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

  test('bolts to a neighbour stay below the circle of a flip-over platform', () => {
    // Two modules of 1000, sides 582 deep (600 − 18), platform 3 × 18 = 54 thick, level with the ends of the sides:
    // axle at 1000 − 27 = 973, radius hypot(291, 27) = 292.25, the circle's lowest point at 680.75; 64 below it: 616.75.
    const of = built(`${ROUND_STOCK}
modules:
  a: {width: 800, depth: 600, carcase height: 1000, stock: board, flip-over top: {}}
  b: {width: 800, depth: 600, carcase height: 1000, stock: board, flip-over top: {}}
floor plan: [{row: [a, b], join: bolted}]`)
    expect(of.findings.filter(({ severity }) => severity === 'stop').map(({ message }) => message)).toEqual([])
    // Right side of a: x runs up from its lower end.
    const heights = places(panelOf(of, 'a/right-side'), 'A', 'joining bolt').map((at) => Number(at.split(' ')[0]))
    expect([...new Set(heights)].sort((a, b) => a - b)).toEqual([64, 616.75])
  })

  test('a thick back in rebates takes a thin screw', () => {
    // Rebate 9, play 0.5: a lap of 8.5, its middle 4.25 from the edge of the back; a hole of 5 would leave 1.75 mm.
    expect(stops(cabinet('    carcase: {back: rebated}'))).toEqual([])
    const pilots = panelOf(built(cabinet('    carcase: {back: rebated}')), 'a/left-side').bores.filter(
      ({ purpose }) => purpose === 'screw pilot',
    )
    // 35 + 1 − 18 of the back.
    expect(new Set(pilots.map(({ depth }) => depth))).toEqual(new Set([18]))
  })

  test('drawer fronts and boxes of 25 mm are screwed to each other', () => {
    // 4 × 40: 40 + 1 + 3 = 44 of 50 mm, 15 mm in the front.
    const text = cabinet('    inside: {drawers: {stack: 3, fronts: {stock: heavy}, box: {stock: heavy}}}').replace(
      'stock:\n',
      'stock:\n  heavy: {thickness: 25}\n',
    )
    expect(stops(text)).toEqual([])
    const bore = panelOf(built(text), 'a/drawer-1-front').bores.find(({ purpose }) => purpose === 'screw pilot')
    expect(bore?.depth).toBe(16)
  })

  test('a fixed front on edges of 16 mm is dowelled', () => {
    // It covers 16 − 1.5 = 14.5 mm: 8 mm dowels want 8 + 2 × 3.5 = 15, those of 6 mm want 6 + 2 × 2.5 = 11.
    const text = cabinet('    inside: {front: {kind: fixed}}').replace('thickness: 18', 'thickness: 16')
    expect(stops(text)).toEqual([])
    const bores = panelOf(built(text), 'a/front-panel-1').bores.filter(({ purpose }) => purpose === 'dowel')
    expect(new Set(bores.map(({ diameter }) => diameter))).toEqual(new Set([6]))
  })

  test('screws of a thick back make way for those of a rear stretcher', () => {
    // The stretcher, 100 high below the top, lies from 800 − 18 − 100 = 682 to 782; it is fixed a quarter of that in, at
    // 707 and 757, 9 mm before the back. The back's pilots, 3 wide and 28 deep, stand at 50 + k × 140 to 750, where the
    // screw at 757 passes: clear of its head, 10 wide, by 5: 757 − 5 − 5 − 1.5 = 745.5, so 745.
    const text = cabinet('    carcase: {stretchers: [{at: back}]}')
    expect(stops(text)).toEqual([])
    const side = panelOf(built(text), 'a/left-side')
    expect(
      places(side, 'B', 'one-piece screw')
        .map((at) => 800 - Number(at.split(' ')[0]))
        .filter((z) => z > 682 && z < 782)
        .sort(),
    ).toEqual([707, 757])
    const pilots = places(side, 'y1', 'screw pilot').map((at) => 800 - Number(at.split(' ')[0]))
    expect(pilots.sort((a, b) => a - b)).toEqual([50, 190, 330, 470, 610, 745])
  })

  test('screws of a back make way for a housed partition', () => {
    const text = cabinet(
      '    carcase: {back: rebated}\n    inside: {side by side: [{}, {}], dividers: {joint: housing}}',
    )
    expect(stops(text)).toEqual([])
  })

  test('dowels of a fixed front make way for the screws of a front stretcher', () => {
    const text = cabinet('    carcase: {stretchers: [{at: front}]}\n    inside: {front: {kind: fixed}}')
    expect(stops(text)).toEqual([])
  })

  test('screws of a plinth make way for both holes of a hinge plate on the bottom', () => {
    expect(
      stops(cabinet('    base: {plinth: {height: 100}}\n    inside: {front: {kind: flap, hang: bottom}}')),
    ).toEqual([])
  })

  test('cams and pockets in a top may lie under a worktop, which comes on last', () => {
    for (const joint of ['cam and dowel', 'pocket screw']) {
      const text = cabinet(`    carcase: {joint: ${joint}}\n    worktop: {stock: heavy}`).replace(
        'stock:\n',
        'stock:\n  heavy: {thickness: 40}\n',
      )
      expect(stops(text), joint).toEqual([])
    }
  })
})
