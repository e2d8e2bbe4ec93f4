import { describe, expect, test } from 'vitest'
import { boardBox } from '../../src/assembly/index.ts'
import { built, panelOf, places } from '../support/define.ts'

// 18 mm carcases, a 27 mm top, a 6 mm back applied, casters 100 high set 100 in.
const HEAD = `
storyrod: 1
stock:
  board: { thickness: 18, sheet: [2500, 1250] }
  thin: { thickness: 6, sheet: [2500, 1250] }
  top 27: { thickness: 27, sheet: [2500, 1250] }
  top 16: { thickness: 16, sheet: [2500, 1250] }
  top 12: { thickness: 12, sheet: [2500, 1250] }
  top 10: { thickness: 10, sheet: [2500, 1250] }
common:
  depth: 500
  working height: 900
  stock: board
  base: { casters: caster 75, inset: 100 }
  carcase: { back: { sits: applied, stock: thin } }
modules:
`
const RULES = ['top-screws', 'worktop-level', 'worktop-neighbour', 'hole-covered', 'sheet-too-small']

const module = (keys: string): string => `${HEAD}  one: { width: 800, ${keys} }\n`

describe('a worktop on one module', () => {
  const one = built(module('worktop: { stock: top 27, overhang: { left: 20, right: 30, front: 20, back: 40 } }'))
  const top = panelOf(one, 'one/worktop')

  test('overhangs are added to the footprint, fronts included', () => {
    // 20 + 800 + 30 = 850; 20 + 500 + 40 = 560.
    expect([top.length, top.width, top.thickness]).toEqual([850, 560, 27])
    expect(boardBox(top)).toEqual({ min: [-20, -20, 773], max: [830, 540, 800] })
  })

  test('the working height is its upper face: 900 less casters 100 less 27 is a carcase of 773', () => {
    expect(one.assembly.modules[0]?.size.height).toBe(773)
    expect(panelOf(one, 'one/left-side').length).toBe(773)
    // A carcase height is the carcase's alone.
    const given = built(
      `${HEAD.replace('working height: 900', 'carcase height: 700')}  one: { width: 800, worktop: { stock: top 27 } }\n`,
    )
    expect(panelOf(given, 'one/left-side').length).toBe(700)
    expect(boardBox(panelOf(given, 'one/worktop')).min[2]).toBe(700)
  })

  test('screws from below around the edge of the top', () => {
    // Top between the sides: 764 × 494. Along the width 764 − 2 × 50 = 664; ceil(664 / 300) + 1 = 4 screws, 221 1/3
    // apart: 50, 271.333, 492.667, 714. From front to back 494 − 100 = 394: 3 lines, 197 apart: 50, 247, 444; those in
    // the middle of the top are left out: 4 + 2 + 4 = 10.
    // In the worktop x is 18 + 20 = 38 more, y 20 more: 88 … 752; 70, 267, 464.
    const xs = [88, 309.333, 530.667, 752]
    const expected = xs.flatMap((x, k) => (k === 0 || k === 3 ? [70, 267, 464] : [70, 464]).map((y) => `${x} ${y}`))
    expect(places(top, 'B', 'screw pilot')).toEqual(expected)
    // The carcase top lies face down: its x runs from right to left.
    expect(places(panelOf(one, 'one/top'), 'A', 'screw')).toEqual(
      [50, 271.333, 492.667, 714].flatMap((x, k) =>
        (k === 0 || k === 3 ? [50, 247, 444] : [50, 444]).map((y) => `${x} ${y}`),
      ),
    )
  })

  test('the longest screw that leaves 3 mm: 4 × 40 through 18 into 27', () => {
    // 18 + 27 − 3 skin − 1 (the pilot goes 1 deeper) = 41; of 30, 35, 40, 45, 50 the longest is 40. Pilot 41 − 18 = 23.
    const pilot = top.bores.find((bore) => bore.purpose === 'screw pilot')
    expect([pilot?.uses[0]?.item, pilot?.depth, pilot?.diameter]).toEqual(['screw 4x40', 23, 2.8])
    const head = panelOf(one, 'one/top').bores.find((bore) => bore.purpose === 'screw')
    expect([head?.through, head?.diameter, head?.surface]).toEqual([true, 4.5, 'A'])
    // Into 16: 18 + 16 − 4 = 30, bite 12, pilot 13.
    const thin = panelOf(built(module('worktop: { stock: top 16 }')), 'one/worktop').bores
    expect([thin[0]?.uses[0]?.item, thin[0]?.depth]).toEqual(['screw 4x30', 13])
  })

  test('what does not fit is said with the length that would', () => {
    const message = (keys: string) => {
      const of = built(module(keys))
      expect(panelOf(of, 'one/worktop').bores).toEqual([])
      const found = of.findings.find((finding) => finding.rule === 'top-screws')
      return [found?.severity, found?.message, found?.fix]
    }
    // Least 18 + 8 = 26; most 18 + 27 − 4 = 41.
    expect(message('worktop: { stock: top 27, fix: screw 4.5x45 }')).toEqual([
      'stop',
      'one: through the top of 18 mm into the worktop of 27 mm, a screw 4.5x45 does not both hold and leave 3 mm of wood over it',
      'take a screw between 26 and 41 mm long: screw 4x40',
    ])
    // 18 + 12 − 4 = 26.
    // The shortest of the catalogue that bites is 30 long: 30 + 1 + 3 − 18 = 16.
    expect(message('worktop: { stock: top 12 }')[2]).toBe(
      'use a top of 16 mm or more, or `fix: none` and fasten it by hand',
    )
    expect(message('worktop: { stock: top 10 }')[2]).toBe(
      'use a top of 16 mm or more, or `fix: none` and fasten it by hand',
    )
  })

  test('a screw keeps 15 mm from a partition below, where a driver has no room', () => {
    // Three bays: (764 − 2 × 18) / 3 = 242.667. The partitions stand at 242.667 to 260.667 and 503.333 to 521.333 of the
    // top's own width, seen from the left; with 15 each side 227.667 to 275.667 shuts out the screw at 271.333: it
    // moves to 275.667. The other one mirrors it: 488.333.
    const split = built(module('worktop: { stock: top 27 }, inside: { side by side: [{}, {}, {}] }'))
    const xs = new Set(
      places(panelOf(split, 'one/worktop'), 'B', 'screw pilot').map((place) => Number(place.split(' ')[0])),
    )
    expect([...xs]).toEqual([68, 293.667, 506.333, 732])
    expect(split.findings.filter((finding) => RULES.includes(finding.rule))).toEqual([])
  })

  test('a screw over a partition in the middle becomes two, one on each side of it', () => {
    // 700 wide: top 664; 564 / 300: 3 screws, at 50, 332, 614. The partition stands in the middle, 323 to 341, with 15
    // each side 308 to 356: two screws there. In the worktop 18 more.
    const middle = built(module('worktop: { stock: top 27 }, inside: { side by side: [{}, {}] }').replace('800', '700'))
    const front = places(panelOf(middle, 'one/worktop'), 'B', 'screw pilot').filter((place) => place.endsWith(' 50'))
    expect(front).toEqual(['68 50', '326 50', '374 50', '632 50'])
  })

  test('a screw keeps clear of the bores of joints in the edges of the top', () => {
    // The pilots of the one-piece screws lie at 50 … 444 from the front, 35 deep and 5 wide. 5 of wood, 5 for a head and
    // 2.5 shut 12.5 to each side of them and 47.5 from the end. A screw 40 from both edges would stand in that: it moves
    // to 50 − 12.5 = 37.5 from the front; at the rear 454 moves to 444 + 12.5. In the worktop x is 18 more.
    const near = built(module('worktop: { stock: top 27, fix: { end distance: 40 } }'))
    const left = places(panelOf(near, 'one/worktop'), 'B', 'screw pilot').filter((place) => place.startsWith('58 '))
    expect(left).toEqual(['58 37.5', '58 247', '58 456.5'])
    expect(near.findings.filter((finding) => finding.message.includes('one, top'))).toEqual([])
  })

  test('a top over the sides: screws keep off the sides, sunk heads may lie under the worktop', () => {
    const over = built(module('worktop: { stock: top 27, fix: { end distance: 5 } }, carcase: { top: over }'))
    // 5 from the edge is over the 18 mm side: to 18 + 15 = 33.
    const xs = places(panelOf(over, 'one/worktop'), 'B', 'screw pilot').map((place) => Number(place.split(' ')[0]))
    expect(Math.min(...xs)).toBe(33)
    expect(Math.max(...xs)).toBe(767)
    expect(over.findings.filter((finding) => finding.rule === 'hole-covered')).toEqual([])
  })

  test.each(['pocket screw', 'cam and dowel'])(
    'what holds the top, such as a %s, may lie under the worktop',
    (joint) => {
      const held = built(module(`worktop: { stock: top 27 }, carcase: { joint: ${joint} }`))
      expect(panelOf(held, 'one/top').bores.some((bore) => bore.surface === 'B')).toBe(true)
      expect(held.findings.filter(({ severity }) => severity === 'stop').map(({ message }) => message)).toEqual([])
    },
  )

  test('screws from below make way for pockets with their whole mouths', () => {
    // The pocket's bit, 9.5 thick, meets the end of an 18 mm top in its middle at 15°: its axis enters 9 / tan 15° = 33.588
    // from the end, its mouth reaches 4.75 / sin 15° = 18.353 further, and 10 more are kept: 61.941. The screws, meant to
    // stand 50 from the ends at the pockets' own 50 from the front, would have to go 14.75 aside, so they move in by 11.941.
    const held = built(module('worktop: { stock: top 27 }, carcase: { joint: pocket screw }'))
    const top = panelOf(held, 'one/top')
    expect(top.length).toBe(764)
    expect(places(top, 'B', 'pocket').slice(0, 4)).toEqual([
      '33.588 50',
      '33.588 181.333',
      '33.588 312.667',
      '33.588 444',
    ])
    // Those at 247, between two pockets, stay: 312.667 − 247 = 65.667. The others share what is left of 764 evenly: 50 + 664 / 3 = 271.333.
    expect(places(top, 'A', 'screw')).toEqual([
      '50 247',
      '61.941 50',
      '61.941 444',
      '271.333 50',
      '271.333 444',
      '492.667 50',
      '492.667 444',
      '702.059 50',
      '702.059 444',
      '714 247',
    ])
  })

  test('without a top, pocket screws through the sides: slanted bores in the sides, none in the worktop', () => {
    const open = built(module('worktop: { stock: top 27 }, carcase: { top: none }'))
    expect(panelOf(open, 'one/worktop').bores).toEqual([])
    const pockets = panelOf(open, 'one/left-side').bores.filter((bore) => bore.purpose === 'pocket screw')
    // The side is 494 deep: 394 / 300, 3 screws. The axis leaves the end of the board 9 below its face: it enters
    // 9 / tan 15° = 33.588 from the end, x = 773 − 33.588 from the bottom on a left side whose x runs down from the top.
    expect(pockets.map((bore) => [Math.round(bore.at[0] * 1000) / 1000, bore.at[1], bore.surface])).toEqual([
      [33.588, 50, 'A'],
      [33.588, 247, 'A'],
      [33.588, 444, 'A'],
    ])
  })
})

describe('a worktop over a run of 800, 1000 and 360', () => {
  const RUN = `${HEAD}  one: { width: 800 }
  two: { width: 1000 }
  three: { width: 360 }
floor plan:
  - row: [one, two, three]
`
  const run = built(`${RUN}    worktop: { stock: top 27, overhang: { left: 20, right: 30, front: 20, back: 10 } }\n`)
  const top = panelOf(run, 'worktop-1/worktop')

  test('one board with the overhangs at the ends of the run', () => {
    // 800 + 1000 + 360 = 2160; 20 + 2160 + 30 = 2210; 20 + 500 + 10 = 530.
    expect([top.length, top.width, top.moduleName]).toEqual([2210, 530, 'worktop 1'])
    const owner = run.assembly.modules.find((module) => module.key === 'worktop-1')
    // It lies on carcases of 773 on casters of 100.
    expect([owner?.floorFromModule.origin, owner?.baseHeight, owner?.liesOver]).toEqual([
      [0, 0, 873],
      873,
      ['one', 'two', 'three'],
    ])
    expect(run.findings.filter((finding) => RULES.includes(finding.rule))).toEqual([])
  })

  test('each module is screwed to it, on one axis on the floor', () => {
    // Module two: its top is 964 long and begins at 800 + 18: 864 / 300, 4 screws, 288 apart; y 50, 247, 444. In the
    // board x is 20 more: 800 + 18 + 50 + 20 = 888 … 1752; y 70 … 464.
    const two = places(top, 'B', 'screw pilot').filter((place) => {
      const x = Number(place.split(' ')[0])
      return x > 820 && x < 1820
    })
    expect(two).toEqual(
      [888, 1176, 1464, 1752].flatMap((x, k) =>
        (k === 0 || k === 3 ? [70, 267, 464] : [70, 464]).map((y) => `${x} ${y}`),
      ),
    )
    const piece = run.assembly.hardware.find((one) => one.id === 'two/top+worktop/1')
    expect([piece?.frame, piece?.stations[0]?.pose.origin]).toEqual(['*floor', [868, 50, 873]])
    // 360: 324 − 100 = 224, two screws a line: 3 lines of 2. 10 + 10 + 6 in all.
    expect(top.bores.length).toBe(26)
  })

  test('modules of other heights stop it, with the difference', () => {
    const uneven = built(
      `${RUN.replace('three: { width: 360', 'three: { width: 360, working height: 888')}    worktop: { stock: top 27 }\n`,
    )
    const found = uneven.findings.find((finding) => finding.rule === 'worktop-level')
    expect([found?.severity, found?.message, found?.fix]).toEqual([
      'stop',
      'the worktop of the row lies on one; the upper side of three is 12 mm lower',
      'make three 12 mm higher, or give all modules of the row one working height',
    ])
    // Only those that reach it are screwed to it.
    expect(panelOf(uneven, 'worktop-1/worktop').bores.length).toBe(20)
  })

  test('longer than its sheet, it is to be laid in two', () => {
    const long = built(
      `${RUN.replace('[2500, 1250] }\n  top 16', '[2200, 1250] }\n  top 16')}    worktop: { stock: top 27, overhang: 20 }\n`,
    )
    const found = long.findings.find((finding) => finding.rule === 'sheet-too-small')
    // 2160 + 40; 2200 − 2 × 10 edge trim.
    expect([found?.message, found?.fix]).toEqual([
      'worktop 1, worktop is 2200 × 540 mm, its length along the grain; a sheet of top 27 gives 2180 × 1230 mm; only the edge trim of 10 mm is in the way',
      'trim no more than 0 mm off each edge, if the factory edges are sound, or lay two worktops: split the row where modules meet',
    ])
  })

  test('a module of its name keeps its files apart from it', () => {
    const named = built(`${HEAD}  worktop 1: { width: 800 }
floor plan: [{ row: [worktop 1], worktop: { stock: top 27 } }]
`)
    expect(panelOf(named, 'worktop-1-2/worktop').length).toBe(800)
  })
})

test('an overhang that reaches into a neighbour of the row is found', () => {
  const beside = built(`${HEAD}  one: { width: 800, worktop: { stock: top 27, overhang: 20 } }
  two: { width: 800, worktop: { stock: top 27 } }
floor plan: [{ row: [one, two] }]
`)
  const found = beside.findings.filter((finding) => finding.rule === 'worktop-neighbour')
  expect(found.map((finding) => finding.message)).toEqual(['one, worktop, and two, worktop, overlap by 20 mm'])
})

test('a common worktop lies on each module that does not say none', () => {
  const common = built(`${HEAD.replace('common:', 'common:\n  worktop: { stock: top 27 }')}  one: { width: 800 }
  two: { width: 800, worktop: none }
`)
  expect(common.panels.filter((panel) => panel.role === 'worktop').map((panel) => panel.id)).toEqual(['one/worktop'])
  expect(common.assembly.modules.map((module) => module.size.height)).toEqual([773, 800])
})

test('an overhang that reaches into a module of another row is found, once', () => {
  // Two stands 10 behind one and is 100 higher: 35 − 10 = 25 of the worktop lie in its sides, which are 18 thick.
  const behind = (back: number) =>
    built(`${HEAD}  one: { width: 800, worktop: { stock: top 27, overhang: { back: ${back} } } }
  two: { width: 800, working height: 1000 }
floor plan: [{ row: [one] }, { row: [two], stands: { against: one, at its: back, gap: 10 } }]
`).findings.filter(({ rule }) => rule === 'worktop-neighbour')
  const [found, ...more] = behind(35)
  expect(more).toEqual([])
  expect(found?.panels).toEqual(['one/worktop', 'two/left-side', 'two/right-side'])
  expect(found?.message).toBe('one, worktop, and two, left side, overlap by 18 mm')
  expect(behind(10)).toEqual([])
})
