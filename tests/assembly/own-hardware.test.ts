import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { solveOverlay } from '../../src/assembly/index.ts'
import { builderOf, catalogue, findItem } from '../../src/hardware/index.ts'
import { build } from '../../src/outputs/index.ts'
import { readDefinition, renderProblems } from '../../src/project/index.ts'
import { built, panelOf, places, ROUND_STOCK } from '../support/define.ts'
import { definitionOfOwnHardware, nonsenseHardware } from '../support/random-hardware.ts'

/** A module 600 wide, 500 deep, 700 high of 18 mm boards, with this hardware, base and inside. */
const cabinet = (hardware: string, rest: string) =>
  built(`${ROUND_STOCK}
hardware:
${hardware}
modules:
  one:
    width: 600
    depth: 500
    carcase height: 700
    stock: board
${rest}
`)

describe('an own hinge', () => {
  const door = (hinge: string, front = '') =>
    cabinet(hinge, `    inside: { front: { kind: door, hinge: mine${front} } }`)

  test('with a base figure of 14 has its cups where K = 14 puts them', () => {
    // Overlay 18 − 1.5 = 16.5 = 14 + C − H: C = 2.5 + H. H 2: C 4.5; H 3: C 5.5; both half a millimetre off 5, so the
    // lower plate. Cup middle 4.5 + 17.5 = 22 from the hinge edge; the pattern 45/9.5 at 22 + 9.5 = 31.5.
    // The same door on the catalogue's hinge: K 15, H 3.5, C 5, cup 22.5, dowels 32.
    const own = panelOf(door('  mine: {like: hinge 35 full, base figure: 14}'), 'one/door')
    expect(new Set(places(own, 'A', 'hinge cup').map((place) => place.split(' ')[1]))).toEqual(new Set(['22']))
    expect(new Set(places(own, 'A', 'hinge dowel').map((place) => place.split(' ')[1]))).toEqual(new Set(['31.5']))
    const usual = panelOf(door('  mine: {like: hinge 35 full}'), 'one/door')
    expect(new Set(places(usual, 'A', 'hinge cup').map((place) => place.split(' ')[1]))).toEqual(new Set(['22.5']))
  })

  test('with a pattern of 48/6 has its holes there', () => {
    // C 5 on H 3.5: cup 22.5, holes 22.5 + 6 = 28.5 from the edge, 24 either side of 80 from the lower end: the door's
    // x runs from its top, so of the lowest hinge 697 − 80 = 617: 593 and 641.
    const own = panelOf(door('  mine: {like: hinge 35 full, pattern: [48, 6]}'), 'one/door')
    expect(places(own, 'A', 'hinge dowel')).toContain('593 28.5')
    expect(places(own, 'A', 'hinge dowel')).toContain('641 28.5')
  })

  test('that no plate suits: the finding names it and the nearest overlay', () => {
    // K 20 with C 3 to 7 and H −2 to 3.5: 20 + 3 − 3.5 = 19.5 at least; 16.5 is wanted.
    const { findings } = door('  mine: {like: hinge 35 full, base figure: 20}')
    expect(findings.map(({ rule, message }) => `${rule}: ${message}`)).toContain(
      'hinge-overlay: door: an overlay of 16.5 mm is wanted, but no plate of mine gives it; the nearest is 19.5 mm',
    )
  })

  test('in place of the usual one: the door that asks for none gets it', () => {
    const own = cabinet('  hinge 35 full: {base figure: 14}', '    inside: { front: { kind: door } }')
    expect(places(panelOf(own, 'one/door'), 'A', 'hinge cup')[0]).toMatch(/ 22$/)
  })

  test('made for narrow doors warns on a wide one, by its own figure', () => {
    const hinge = '  mine: {like: hinge 35 full, widest door: 596}'
    const rules = (hardware: string) => door(hardware).findings.map(({ rule, message }) => `${rule}: ${message}`)
    // Door 600 − 3 = 597.
    expect(rules(hinge)).toContain('hinge-door-width: door is 597 mm wide; mine is made for doors up to 596 mm')
    expect(rules('  mine: {like: hinge 35 full, widest door: 597}').join()).not.toContain('hinge-door-width')
  })
})

describe('hinges of the catalogue', () => {
  const solve = (id: string, overlay: number) => {
    const hinge = findItem(id)
    if (hinge?.kind !== 'cup hinge') throw new Error(id)
    return solveOverlay(hinge, overlay)
  }

  test('26 mm: overlay 15 at C 4.5 on H 1.5, printed in a small-hinge catalogue 2011, page 9 (hettich.com)', () => {
    expect(solve('hinge 26 full', 15)).toEqual({ plateHeight: 1.5, cupDistance: 4.5 })
  })

  test('inset, wide: K −2, C 4, H 3 leave a gap of 1, printed on page 156 of a hinge catalogue (mediacenter.grass.eu)', () => {
    expect(solve('hinge 35 inset wide', -1)).toEqual({ plateHeight: 3, cupDistance: 4 })
  })
})

describe('a plate that is named', () => {
  const side = (plate: string, hardware = '  other: {like: knob}', shelves = '') =>
    panelOf(
      cabinet(hardware, `    inside: { ${shelves}front: { kind: door, hinges: [80, 600], plate: ${plate} } }`),
      'one/left-side',
    )

  test('fixes the height, and so the cup', () => {
    // H 2: C = 16.5 − 15 + 2 = 3.5; cup 3.5 + 17.5 = 21.
    const of = cabinet('  other: {like: knob}', '    inside: { front: { kind: door, plate: hinge plate 2 } }')
    expect(places(panelOf(of, 'one/door'), 'A', 'hinge cup')[0]).toMatch(/ 21$/)
  })

  test('fixes the line: 28 from the front', () => {
    // The door is 697 high and begins 1.5 up: a hinge 80 from its end stands at 81.5, its plate holes at 65.5 and 97.5;
    // the side's x runs from its top for the left side: 700 − 97.5 = 602.5, 700 − 65.5 = 634.5.
    expect(places(side('hinge plate 3 line 28'), 'A', 'hinge plate')).toEqual([
      '82.5 28',
      '114.5 28',
      '602.5 28',
      '634.5 28',
    ])
  })

  test('of the project has its own holes, 28 apart and 2.5 wide', () => {
    const own = side('mine', '  mine: {like: hinge plate 2, holes apart: 28, hole diameter: 2.5}')
    // 81.5 ± 14: 700 − 95.5 = 604.5, 700 − 67.5 = 632.5.
    expect(places(own, 'A', 'hinge plate')).toContain('604.5 37')
    expect(places(own, 'A', 'hinge plate')).toContain('632.5 37')
    expect(own.bores.filter((bore) => bore.purpose === 'hinge plate').every((bore) => bore.diameter === 2.5)).toBe(true)
  })

  test('with holes unlike the pins stands midway between them', () => {
    // Pins on 37, 32 apart, from 0: a plate for wood screws must not share them, and so stands 16 off.
    const of = cabinet(
      '  other: {like: knob}',
      '    inside: { loose shelves: 2, front: { kind: door, plate: hinge plate 3 wood screws } }',
    )
    const plates = places(panelOf(of, 'one/left-side'), 'A', 'hinge plate')
    expect(plates.length).toBe(6)
    for (const place of plates) expect((700 - Number(place.split(' ')[0])) % 32).toBeCloseTo(16, 6)
    expect(of.findings.filter(({ severity }) => severity === 'stop')).toEqual([])
  })
})

describe('an own caster', () => {
  const base = (figures: string) => cabinet(`  mine: {like: caster 75${figures}}`, '    base: { casters: mine }')

  test('moves its holes and its inset', () => {
    // Swivel radius 70 + 5: king pins 75 from the footprint's front and left. There holes would meet the pilots of the
    // sides' screws, which end at 18 + 35 = 53; they go in to the first whole millimetre with 5 of wood: 89 − 27 − 3.25 =
    // 58.75. The bottom stands between the sides: its x begins 18 from the left: 71 ± 27 = 44, 98; y: 89 ± 20 = 69, 109.
    const bottom = panelOf(
      base(', swivel radius: 70, plate: [70, 60], hole pattern: [54, 40], hole diameter: 6.5'),
      'one/bottom',
    )
    const holes = places(bottom, 'A', 'caster bolt')
    expect(holes).toHaveLength(16)
    expect(holes.slice(0, 2)).toEqual(['44 69', '44 109'])
    expect(holes).toContain('98 69')
    expect(
      new Set(bottom.bores.filter(({ purpose }) => purpose === 'caster bolt').map((bore) => bore.diameter)),
    ).toEqual(new Set([6.5]))
  })

  test('lifts the carcase by its own height', () => {
    const of = cabinet('  mine: {like: caster 75, overall height: 98}', '    base: { casters: mine }')
    expect(of.assembly.modules[0]?.floorFromModule.origin[2]).toBe(98)
  })

  test('with one bolt in the middle has one hole, on the king pin', () => {
    // 75 + 5 = 80 from the footprint: 62 along the bottom.
    expect(places(panelOf(base(', hole pattern: [0, 0]'), 'one/bottom'), 'A', 'caster bolt')[0]).toBe('62 80')
  })

  test('with holes of its own: two, across a corner; an item like it keeps them', () => {
    const hardware = `  mine: {like: caster 75, holes: {plate: [{at: [-20, 10], diameter: 8, depth: through}, {at: [20, -10], diameter: 8, depth: 12, name: caster peg}]}}
  other: {like: mine, load: 50}`
    const bottom = panelOf(cabinet(hardware, '    base: { casters: other }'), 'one/bottom')
    expect(places(bottom, 'A', 'caster bolt')[0]).toBe('42 90')
    // Seen from face A the blind peg is on face B, where the plate lies.
    expect(places(bottom, 'B', 'caster peg')[0]).toBe('82 70')
  })
})

describe('an own pull', () => {
  test('moves its holes with its centres', () => {
    // End distance 60 from the top of the door (x = 0), then 180 on; edge distance 40 of a door 597 wide, hung left.
    const of = cabinet(
      '  mine: {like: pull 128, centres: 180}',
      '    inside: { front: { kind: door, pull: { item: mine } } }',
    )
    const xs = places(panelOf(of, 'one/door'), 'A', 'pull').map((place) => Number(place.split(' ')[0]))
    expect(Math.abs((xs[1] ?? 0) - (xs[0] ?? 0))).toBe(180)
    expect(places(panelOf(of, 'one/door'), 'A', 'pull').every((place) => place.endsWith(' 557'))).toBe(true)
  })
})

describe('other kinds', () => {
  test('a longer dowel goes deeper into the edge alone: 40 + 2 − 11 = 31', () => {
    const of = cabinet('  mine: {like: dowel 8x30, length: 40}', '    carcase: { joint: mine }')
    const depths = (id: string) =>
      new Set(
        panelOf(of, id)
          .bores.filter(({ purpose }) => purpose === 'dowel')
          .map((bore) => bore.depth),
      )
    expect(depths('one/bottom')).toEqual(new Set([31]))
    expect(depths('one/left-side')).toEqual(new Set([11]))
  })

  test('a pin in the hole of a plate that is deeper: one hole, as deep as the deeper', () => {
    const of = cabinet('  pin 5: {hole depth: 10}', '    inside: { loose shelves: 2, front: { kind: door } }')
    const shared = panelOf(of, 'one/left-side').bores.filter(({ uses }) => uses.length > 1)
    expect(shared.length).toBeGreaterThan(2)
    expect(shared.every(({ depth }) => depth === 13)).toBe(true)
    expect(of.findings.filter(({ severity }) => severity === 'stop')).toEqual([])
  })
})

test('over random own hardware every mate is in line, every bore in its panel, and left mirrors right', () => {
  let holes = 0
  fc.assert(
    fc.property(definitionOfOwnHardware, (text) => {
      const of = built(text)
      expect(of.findings.filter(({ rule }) => rule.startsWith('mate-') || rule === 'bore-far-side')).toEqual([])
      for (const panel of of.panels) {
        for (const { at, surface, purpose } of panel.bores) {
          holes += 1
          const inside = at[0] > -1e-6 && at[0] < panel.length + 1e-6 && at[1] > -1e-6 && at[1] < panel.width + 1e-6
          expect(inside, `${panel.id} ${surface} ${purpose}`).toBe(true)
        }
      }
      // The doors hang on opposite hands: cups at the same distances from the hinge edge and from the lower end.
      const cups = (id: string, flip: boolean) => {
        const panel = panelOf(of, id)
        return panel.bores
          .filter(({ purpose }) => purpose.startsWith('hinge cup'))
          .map(({ at }) => Math.round((flip ? panel.width - at[1] : at[1]) * 1e6) / 1e6)
          .sort((a, b) => a - b)
      }
      expect(cups('left/door', false)).toEqual(cups('right/door', true))
    }),
    { numRuns: 100 },
  )
  expect(holes).toBeGreaterThan(5000)
})

describe('nonsense', () => {
  /** Where an own item of each kind is used. */
  const uses: Readonly<Record<string, unknown>> = {
    'shelf pin': { inside: { 'loose shelves': { count: 1, pins: { item: 'mine' } } } },
    'cup hinge': { inside: { front: { kind: 'door', hinge: 'mine' } } },
    'hinge plate': { inside: { 'loose shelves': 2, front: { kind: 'door', plate: 'mine' } } },
    'through screw': { carcase: { joint: 'mine' } },
    'one-piece screw': { carcase: { joint: 'mine' } },
    dowel: { carcase: { joint: 'mine' } },
    'pocket screw': { carcase: { joint: 'mine' } },
    'joining bolt': {},
    caster: { base: { casters: 'mine' } },
    pull: { inside: { front: { kind: 'door', pull: { item: 'mine' } } } },
  }

  test.each(Object.keys(uses))('of a %s is refused, or built without a throw', (kind) => {
    const like = catalogue.find((item) => item.kind === kind)
    if (like === undefined) throw new Error(kind)
    let read = 0
    const { builder } = builderOf(like)
    fc.assert(
      fc.property(nonsenseHardware(like.id, Object.keys(builder.figures), Object.keys(like.parts)), (mine) => {
        const module = { width: 500, depth: 500, 'carcase height': 700, stock: 'board', ...(uses[kind] as object) }
        const text = JSON.stringify({
          storyrod: 1,
          stock: { board: { thickness: kind === 'pocket screw' ? 15 : 18 } },
          hardware: { mine },
          modules: { one: module, two: module },
          'floor plan': [{ row: ['one', 'two'], join: kind === 'joining bolt' ? { bolt: 'mine' } : 'bolted' }],
        })
        const result = readDefinition(text, 'x.yaml')
        if (!result.ok) {
          expect(renderProblems(result.problems)).not.toMatch(/undefined|NaN|\[object/)
          return
        }
        read += 1
        for (const { message } of build(result.project).findings) expect(message).not.toMatch(/undefined|NaN|Infinity/)
      }),
      { numRuns: 100 },
    )
    expect(read).toBeGreaterThan(0)
  })
})
