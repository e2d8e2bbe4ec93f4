import { describe, expect, test } from 'vitest'
import { boardBox } from '../../src/assembly/index.ts'
import type { Box } from '../../src/geometry/index.ts'
import type { Built } from '../../src/outputs/index.ts'
import { built, panelOf, places } from '../support/define.ts'

/** A module 600 wide, 500 deep and 800 high of round stock, open, without a back; `top` are keys of the flip-over top. */
const module = (top: string, more = ''): string => `
storyrod: 1
stock:
  board: { thickness: 18, sheet: [2500, 1250] }
  ply 12: { thickness: 12, sheet: [2500, 1250] }
  ply 24: { thickness: 24, sheet: [2500, 1250] }
  thin: { thickness: 6, sheet: [2500, 1250] }
modules:
  turner:
    width: 600
    depth: 500
    carcase height: 800
    stock: board
    ${more === '' ? 'carcase: { back: none }' : more}
    flip-over top: { skin: ply 12, core: ply 24, axle: axle 20, ${top} }
`
const PLANER = '{ name: planer, width: 500, depth: 400, height: 280 }'
const SANDER = '{ name: sander, width: 400, depth: 300, height: 250 }'
const BOTH = `machines: { upper: ${PLANER}, lower: ${SANDER} }`

const boxOf = (of: Built, panel: string): Box => boardBox(panelOf(of, `turner/${panel}`))
const words = (of: Built, rule: string): string[] =>
  of.findings.filter((one) => one.rule === rule).map((one) => `${one.severity}: ${one.message} | ${one.fix ?? ''}`)

// Inside width 600 − 2 × 18 = 564. Platform 564 − 2 × 3 (washers) = 558 wide, 500 deep, 12 + 24 + 12 = 48 thick.
// Its corner is hypot(250, 24) = √(62500 + 576) = √63076 = 251.149 from the axle.
// Well: 251.149 + 10 + 24 = 285.149, rounded up to 286.
describe('the platform', () => {
  const of = built(module(''))

  test('lies level with the upper ends of the sides, a washer from each', () => {
    expect(boxOf(of, 'platform-upper-skin')).toEqual({ min: [21, 0, 788], max: [579, 500, 800] })
    expect(boxOf(of, 'platform-lower-skin')).toEqual({ min: [21, 0, 752], max: [579, 500, 764] })
    expect(boxOf(of, 'left-side')).toEqual({ min: [0, 0, 0], max: [18, 500, 800] })
  })

  test('its core leaves a channel 20.5 wide about the axle: 250 ± 10.25', () => {
    expect(boxOf(of, 'platform-core-front')).toEqual({ min: [21, 0, 764], max: [579, 239.75, 788] })
    expect(boxOf(of, 'platform-core-rear')).toEqual({ min: [21, 260.25, 764], max: [579, 500, 788] })
  })

  test("the carcase's top lies under a well of 286: from 800 − 286 − 18 = 496 to 514", () => {
    expect(boxOf(of, 'top')).toEqual({ min: [18, 0, 496], max: [582, 500, 514] })
  })

  // The axle lies 24 below the head. Sides lie with x = 0 at the top (left) and at the bottom (right): 24 or 776.
  test('the axle goes through both sides on one line, 250 from the front and 776 from the bottom', () => {
    expect(places(panelOf(of, 'turner/left-side'), 'A', 'axle')).toEqual(['24 250'])
    expect(places(panelOf(of, 'turner/right-side'), 'A', 'axle')).toEqual(['776 250'])
    expect(panelOf(of, 'turner/left-side').bores.filter((bore) => bore.purpose === 'axle')).toMatchObject([
      { diameter: 20.5, through: true },
    ])
  })

  // Bolts 50 from the platform's front and rear edges: 50 and 450 from the front of the side, at the axle's height.
  test('one set of bores in a side serves both rest positions', () => {
    expect(places(panelOf(of, 'turner/left-side'), 'A', 'locking bolt')).toEqual(['24 50', '24 450'])
    expect(places(panelOf(of, 'turner/right-side'), 'A', 'locking bolt')).toEqual(['776 50', '776 450'])
    // Half a turn about the axle (250, 24) takes (50, 24) to (450, 24): both are hypot(200, 0) = 200 from it.
    // In the ends of both core boards, 12 below face A of 24: 50 from the front edge of the one; of the other, which
    // begins at 260.25, 450 − 260.25 = 189.75.
    for (const [core, y] of [
      ['front', 50],
      ['rear', 189.75],
    ] as const) {
      const bores = panelOf(of, `turner/platform-core-${core}`).bores.filter((bore) => bore.purpose === 'locking bolt')
      expect(bores.map(({ surface, at, depth }) => [surface, at[1], at[2], depth])).toEqual([
        ['x0', y, -12, 30],
        ['x1', y, -12, 30],
      ])
      // Each of them is used by the bolt that holds it as drawn, and by the one that holds it turned over.
      expect(bores.map((bore) => bore.uses.map((use) => `${use.hardware} ${use.part}`).sort())).toEqual(
        ['left', 'right'].map((hand) => {
          const [own, other] = core === 'front' ? [1, 2] : [2, 1]
          return [`turner/locking-bolts-${hand}/${own} core`, `turner/locking-bolts-${hand}/${other} turned`].sort()
        }),
      )
    }
  })

  test('one bolt each side, at the front, still bores both core boards', () => {
    const one = built(module('locking bolts: { each side: 1 }'))
    expect(places(panelOf(one, 'turner/left-side'), 'A', 'locking bolt')).toEqual(['24 50'])
    expect(places(panelOf(one, 'turner/platform-core-front'), 'x0', 'locking bolt')).toEqual(['0 50'])
    expect(places(panelOf(one, 'turner/platform-core-rear'), 'x0', 'locking bolt')).toEqual(['0 189.75'])
  })

  // Longest metric screw that stays in skin 12 + core 24 less 4: 30. Pilot 30 + 1 − 12 = 19 of 24. Rows of the upper
  // skin in the front board: 25 from the edge, and 25 from the channel: 239.75 − 25 = 214.75; in the rear board 16
  // further in: 500 − 25 − 16 = 459 and 260.25 + 25 + 16 = 301.25. Along: 50 and 508, in 458 / 4 = 114.5.
  test('the skins are screwed to the core in rows that pass each other', () => {
    const skin = panelOf(of, 'turner/platform-upper-skin')
    const rows = new Map<number, number[]>()
    for (const { at } of skin.bores) rows.set(at[1], [...(rows.get(at[1]) ?? []), at[0]])
    expect([...rows.keys()].sort((a, b) => a - b)).toEqual([25, 214.75, 301.25, 459])
    for (const xs of rows.values()) expect(xs).toEqual([50, 164.5, 279, 393.5, 508])
    expect(skin.bores.every((bore) => bore.through && bore.sink?.shape === 'cone' && bore.surface === 'A')).toBe(true)
    const pilots = panelOf(of, 'turner/platform-core-front').bores.filter((bore) => bore.purpose === 'screw pilot')
    expect(pilots.map((bore) => bore.depth).every((depth) => depth === 19)).toBe(true)
    expect(new Set(pilots.map((bore) => `${bore.surface} ${bore.at[1]}`))).toEqual(
      new Set(['A 25', 'A 214.75', 'B 41', 'B 198.75']),
    )
  })

  test('the two skins are one part: the lower is the upper, turned round in its own plane', () => {
    const upper = panelOf(of, 'turner/platform-upper-skin').bores.map(({ at }) => `${at[0]} ${at[1]}`)
    const lower = panelOf(of, 'turner/platform-lower-skin').bores.map(({ at }) => `${558 - at[0]} ${500 - at[1]}`)
    expect(lower.sort()).toEqual(upper.sort())
  })

  test('nothing is found but that the channel wants packing, what swings out, and what to mind', () => {
    expect(of.findings.map((one) => `${one.severity} ${one.rule}`).sort()).toEqual([
      'note axle-channel',
      'note flip-over-care',
      'note swing-room',
    ])
    // 251.149 − 250 = 1.149 at either end; channel 24 for an axle of 20: (24 − 20) / 2 = 2.
    expect(words(of, 'swing-room')[0]).toContain('by 1.1 mm at the front and 1.1 mm at the rear')
    expect(words(of, 'axle-channel')[0]).toContain('pack it out by 2 mm above and below')
  })
})

// The planer's far corner: hypot(200, 24 + 280) = √(40000 + 92416) = √132416 = 363.890. Sander: hypot(150, 274) = 312.371.
// Well: 363.890 + 10 + 24 = 397.890, up to 398.
describe('machines', () => {
  const top = (of: Built): number => boxOf(of, 'top').max[2]

  test('make the well as deep as the larger circle needs', () => {
    const of = built(module(BOTH))
    expect(top(of)).toBe(800 - 398)
    expect(of.findings.filter((one) => one.severity !== 'note')).toEqual([])
    // 363.890 − 250 = 113.890 beyond either edge of a footprint 500 deep.
    expect(words(of, 'swing-room')[0]).toContain('the planer swings beyond the footprint by 113.9 mm at the front')
  })

  // In a well of 390 the axle is 366 above the top: 366 − 363.890 = 2.110 free; short by 7.890: 390 + 7.890 = 397.890.
  test('that pass nearer than the clearance are a warning, with the well that would do', () => {
    expect(words(built(module(`well: 390, ${BOTH}`)), 'swing-clearance')).toEqual([
      'warn: turner: as it turns, the planer swings 363.9 mm about the axle and passes the top by only 2.1 mm; 10 mm is wanted | make the well 397.9 mm deep or more',
    ])
  })

  // In a well of 380 the axle is 356 above the top.
  test('that strike the top are a stop', () => {
    expect(words(built(module(`well: 380, ${BOTH}`)), 'swing-clearance')).toEqual([
      'stop: turner: as it turns, the planer swings 363.9 mm about the axle and strikes the top, 356 mm from it | make the well 397.9 mm deep or more',
    ])
  })

  test('off centre to the rear reach further: hypot(240, 304) = √150016 = 387.319; well 387.319 + 34 = 421.319, up to 422', () => {
    const of = built(module('machines: { upper: { width: 500, depth: 400, height: 280, off centre: { rear: 40 } } }'))
    expect(top(of)).toBe(800 - 422)
  })

  // 564 between the sides. 540 wide: 12 free at each side. 550: 7. 570: none.
  test('must pass between the sides', () => {
    const wide = (width: number): string[] =>
      words(built(module(`machines: { lower: { width: ${width}, depth: 200, height: 100 } }`)), 'machine-width')
    expect(wide(540)).toEqual([])
    expect(wide(550)).toEqual([
      'warn: turner: the lower machine, 550 mm wide, passes with only 7 mm at one side between sides 564 mm apart | make the module 606 mm wide or more',
    ])
    expect(wide(570)[0]).toMatch(/^stop: turner: the lower machine, 570 mm wide, does not pass between sides 564 mm/)
  })
})

describe('what stands around the platform', () => {
  // `surface` 300 above the top in a well of 320: the axle is 300 − 24 = 276 above the top, 44 below the head.
  test('a platform can rest below the ends of the sides', () => {
    const of = built(module('well: 320, surface: 300'))
    expect(boxOf(of, 'platform-upper-skin').max[2]).toBe(780)
    expect(places(panelOf(of, 'turner/left-side'), 'A', 'axle')).toEqual(['44 250'])
  })

  test("an applied back ends at the carcase's top, 800 − 286 = 514 high, and the sides before it", () => {
    const of = built(module('', 'carcase: { back: { sits: applied, stock: thin } }'))
    // Sides 494 deep, platform likewise: hypot(247, 24) = 248.163; well 248.163 + 34 = 282.163, up to 283: 517.
    expect(boxOf(of, 'back')).toEqual({ min: [0, 494, 0], max: [600, 500, 517] })
    expect(boxOf(of, 'platform-upper-skin').max[1]).toBe(494)
  })

  test('an overlay door ends below the well, and the platform begins behind it', () => {
    const of = built(module('', 'inside: { front: { kind: pair } }'))
    expect(boxOf(of, 'door-left').max[2]).toBe(boxOf(of, 'top').max[2] - 1.5)
    expect(boxOf(of, 'platform-upper-skin').min[1]).toBe(20)
  })

  test('a grooved back reaches into the lowered top, and its grooves stop there', () => {
    const of = built(module('', 'carcase: { back: { sits: grooved, stock: thin } }'))
    // Top from 800 − 286 − 18 = 496; groove 8 deep less 0.5: the back ends at 503.5.
    expect(boxOf(of, 'back').max[2]).toBe(503.5)
    const [groove] = panelOf(of, 'turner/left-side').grooves
    // x counts from the top: 800 − 503.5 = 296.5, less play 0.5 and half a groove of 6.2.
    expect(groove?.min[0]).toBeCloseTo(296.5 - 0.5 - 3.1, 9)
    expect(of.findings.filter((one) => one.severity !== 'note')).toEqual([])
  })

  test('a working height counts to the ends of the sides: 900 − 100 of casters', () => {
    const of = built(module('').replace('carcase height: 800', 'working height: 900\n    base: { casters: caster 75 }'))
    expect(of.assembly.modules[0]?.size.height).toBe(800)
    expect(boxOf(of, 'platform-upper-skin').max[2]).toBe(800)
  })
})

describe('what the platform cannot do', () => {
  test('a core thinner than the axle and its play is a stop', () => {
    const of = built(module('').replace('core: ply 24', 'core: board'))
    expect(words(of, 'axle-channel')).toEqual([
      'stop: turner: a core of 18 mm leaves no channel for the axle 20, which needs 20.2 mm | take a core of 20.2 mm or more, or axle 16',
    ])
  })

  test('the thinnest reading of the core counts: 20.1 does not take a 20 mm axle, though the mean, 20.5, would', () => {
    const of = built(module('').replace('ply 24: { thickness: 24', 'ply 24: { thickness: [20.1, 20.9]'))
    expect(words(of, 'axle-channel')[0]).toMatch(/^stop: turner: a core of 20.1 mm/)
  })

  // Bore 11: 5 + 5.5 = 10.5 from the edge at least; from the axle 10.25 + 5 + 5.5 = 20.75 at least, 250 − 20.75 = 229.25.
  test('locking bolts stay inside the core boards', () => {
    const lock = (edge: number): string[] =>
      words(built(module(`locking bolts: { edge distance: ${edge} }`)), 'locking-place')
    expect(lock(10.5)).toEqual([])
    expect(lock(229.2)).toEqual([])
    expect(lock(9)).toEqual([
      "stop: turner: a locking bolt M8, 9 mm from the platform's edge, lies too near the platform's edge | set its `edge distance` from 10.5 mm to 229.2 mm",
    ])
    expect(lock(300)[0]).toMatch(/too near the channel of the axle, or beyond it/)
  })

  // Skin 24: a 30 mm screw reaches 6 mm.
  test('a screw must hold in the core', () => {
    const of = built(module('screws: screw 3.5x30').replace('skin: ply 12', 'skin: ply 24'))
    expect(words(of, 'screw-bite')[0]).toMatch(
      /^stop: turner: platform skins of 24 mm: a screw 3.5x30 reaches only 6 mm/,
    )
    expect(panelOf(of, 'turner/platform-upper-skin').bores).toEqual([])
  })

  // The circle's lowest point lies at 800 − 24 − 251.149 = 524.851; a bolt 5 below it, in the middle of the depth as the
  // axle is, needs half a head of 18. The column has moved 10 mm off what is in the sides: √(10² + 256.149²) = 256.344,
  // and 251.149 + 9 − 256.344 = 3.8 mm are wanted.
  test('bolts to a neighbour must not stand where it turns, and a neighbour must leave the locking bolts free', () => {
    const of = built(`${module('well: 350')}  neighbour: { width: 400, depth: 500, carcase height: 800, stock: board }
floor plan: [{ row: [turner, neighbour], join: { bolt: bolt M6, end inset: 5, side inset: 240 } }]
`)
    const found = of.findings.filter((one) => one.rule === 'swing-hardware')
    expect(found.map((one) => one.panels)).toContainEqual(['turner/right-side'])
    // With 10 aside of the axle: √(260.149² − 10²) = 259.957, 3.808 lower than 256.149: 5 + 3.808.
    expect(found.map((one) => one.fix)).toContain('set `end inset: 8.9 mm` of the bolts')
    expect(words(of, 'lock-reach')).toEqual([
      'warn: turner: neighbour stands before the locking bolts in the right side, so that no hand reaches them | leave 30 mm or more beside it, or let the neighbour end below the axle',
    ])
  })

  test('bolts below the circle and a lower neighbour are no trouble', () => {
    const of = built(`${module('')}  neighbour: { width: 400, depth: 500, carcase height: 500, stock: board }
floor plan: [{ row: [turner, neighbour], join: bolted }]
`)
    expect(of.findings.filter((one) => ['swing-hardware', 'lock-reach'].includes(one.rule))).toEqual([])
  })
})
