import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { layerName, layersOf, type Work } from '../../src/drawing/index.ts'
import { PATTERNS } from './fixture.ts'

const NAME = /^[A-Z0-9][A-Z0-9_-]{0,30}$/
const dot = (id: string) => ({ kind: 'circle', at: [0, 0], radius: 1, id }) as const
const drawn = (...works: Work[]) => works.map((work, k) => ({ work, entity: dot(`c${k}`) }))
const names = (...works: Work[]) => layersOf(drawn(...works), PATTERNS).map((layer) => layer.name)

describe('a layer name', () => {
  test.each([
    ['BORE-D{diameter}-DEEP{depth}', { diameter: 5, depth: 13 }, 'BORE-D5-DEEP13'],
    ['BORE-D{diameter}-DEEP{depth}', { diameter: 6.35, depth: 9.525 }, 'BORE-D6P35-DEEP9P525'],
    ['BORE-D{diameter}-THROUGH', { diameter: 7 }, 'BORE-D7-THROUGH'],
    ['GROOVE-W{width}-DEEP{depth}', { width: 6.2, depth: 8 }, 'GROOVE-W6P2-DEEP8'],
    ['COUNTERSINK-D{diameter}-DEG{angle}', { diameter: 9, angle: 90 }, 'COUNTERSINK-D9-DEG90'],
    // A third of an inch is 8.4666…: three decimals, no more.
    ['D{diameter}', { diameter: 25.4 / 3 }, 'D8P467'],
    ['drill {diameter} mm', { diameter: 5 }, 'DRILL-5-MM'],
    ['_x', {}, 'X'],
    ['', {}, 'LAYER'],
    ['größe/{diameter}', { diameter: 5 }, 'GR-SSE-5'],
    ['{diametre}', { diameter: 5 }, 'DIAMETRE-'],
  ])('%s with %o is %s', (pattern, figures, expected) => {
    expect(layerName(pattern, figures)).toBe(expected)
  })

  test('a name of 31 stays, one of 32 is cut and told apart from its neighbours', () => {
    const long = 'A'.repeat(31)
    expect(layerName(long, {})).toBe(long)
    const cut = layerName(`${long}1`, {})
    const other = layerName(`${long}2`, {})
    expect(cut).toHaveLength(31)
    expect(cut.startsWith('A'.repeat(24))).toBe(true)
    expect(other).not.toBe(cut)
    expect(layerName(`${long}1`, {})).toBe(cut)
  })

  test('any pattern gives a name that every reader takes', () => {
    fc.assert(
      fc.property(
        fc.string({ maxLength: 60, unit: 'grapheme' }),
        fc.double({ min: 0.1, max: 99, noNaN: true }),
        (pattern, d) => {
          expect(layerName(`${pattern}{diameter}`, { diameter: d })).toMatch(NAME)
        },
      ),
    )
  })
})

describe('the layers of a drawing', () => {
  test('outline, bores by diameter then depth, countersinks, grooves, rebates, mark, note', () => {
    expect(
      names(
        { kind: 'note' },
        { kind: 'mark' },
        { kind: 'rebate', width: 9, depth: 6 },
        { kind: 'groove', width: 6.2, depth: 8 },
        { kind: 'countersink', diameter: 9, angleDeg: 90 },
        { kind: 'bore', diameter: 35, depth: 12.5 },
        { kind: 'bore', diameter: 5, depth: 'through' },
        { kind: 'bore', diameter: 5, depth: 13 },
        { kind: 'bore', diameter: 5, depth: 11 },
        { kind: 'outline' },
      ),
    ).toEqual([
      'OUTLINE',
      'BORE-D5-DEEP11',
      'BORE-D5-DEEP13',
      'BORE-D5-THROUGH',
      'BORE-D35-DEEP12P5',
      'COUNTERSINK-D9-DEG90',
      'GROOVE-W6P2-DEEP8',
      'REBATE-W9-DEEP6',
      'MARK',
      'NOTE',
    ])
  })

  test('bores of one size share a layer, in the order in which they came, float noise apart', () => {
    const layers = layersOf(
      drawn(
        { kind: 'bore', diameter: 5, depth: 13 },
        { kind: 'outline' },
        { kind: 'bore', diameter: 5 + 1e-9, depth: 13 },
      ),
      PATTERNS,
    )
    expect(layers.map((layer) => layer.entities)).toEqual([[dot('c1')], [dot('c0'), dot('c2')]])
  })

  test('patterns without figures put all bores on one layer, as the user asked', () => {
    const one = { ...PATTERNS, bore: 'DRILL', boreThrough: 'DRILL' }
    const works: Work[] = [
      { kind: 'bore', diameter: 5, depth: 13 },
      { kind: 'bore', diameter: 8, depth: 'through' },
    ]
    expect(layersOf(drawn(...works), one).map((layer) => [layer.name, layer.entities.length])).toEqual([['DRILL', 2]])
  })

  test('a note never lands on a layer that is cut, whatever the patterns', () => {
    const same = Object.fromEntries(Object.keys(PATTERNS).map((key) => [key, 'ALL'])) as unknown as typeof PATTERNS
    const layers = layersOf(
      drawn({ kind: 'note' }, { kind: 'bore', diameter: 5, depth: 13 }, { kind: 'outline' }, { kind: 'mark' }),
      same,
    )
    expect(layers.map((layer) => [layer.name, layer.operation])).toEqual([
      ['ALL', 'outline'],
      ['ALL-BORE', 'bore'],
      ['ALL-MARK', 'mark'],
      ['ALL-NOTE', 'note'],
    ])
  })

  test('names stay unique where long patterns are cut', () => {
    const long = { ...PATTERNS, bore: 'A-VERY-LONG-NAME-FOR-A-DRILLING-D{diameter}-DEEP{depth}' }
    const works = Array.from({ length: 40 }, (_, k): Work => ({ kind: 'bore', diameter: 5, depth: 1 + k / 8 }))
    const found = layersOf(drawn(...works), long).map((layer) => layer.name)
    expect(new Set(found).size).toBe(40)
    for (const name of found) expect(name).toMatch(NAME)
  })
})
