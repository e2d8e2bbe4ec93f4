import { describe, expect, test } from 'vitest'
import { floorBox, footprintOf, type PlacedModule } from '../../src/assembly/index.ts'
import type { Built } from '../../src/outputs/index.ts'
import { built, panelOf, places, ROUND_STOCK } from '../support/define.ts'

const moduleOf = (of: Built, key: string): PlacedModule => {
  const module = of.assembly.modules.find((one) => one.key === key)
  if (module === undefined) throw new Error(`no module ${key}`)
  return module
}

/** `x y z, x axis` of the module's frame on the floor. */
const standing = (of: Built, key: string): string => {
  const { origin, x } = moduleOf(of, key).floorFromModule
  return `${origin.map((value) => value + 0).join(' ')}, ${x.map((value) => value + 0).join(' ')}`
}

const footprint = (of: Built, key: string): string => {
  const { min, max } = footprintOf(moduleOf(of, key))
  return `${min.join(' ')} to ${max.join(' ')}`
}

const said = (of: Built, rule: string): string[] =>
  of.findings.filter((finding) => finding.rule === rule).map((finding) => `${finding.severity}: ${finding.message}`)

const COMMON = `${ROUND_STOCK}
common: { depth: 500, carcase height: 800, stock: board, carcase: { back: { sits: applied, stock: thin } } }
`

describe('an L of three modules, round an outer corner', () => {
  // A row of 600 + 400, 500 deep; a third module, 700 wide and 500 deep, at the right of the second, its fronts looking
  // right: it covers 500 along x and 700 along y.
  const of = built(`${COMMON}
modules:
  one: { width: 600 }
  two: { width: 400 }
  three: { width: 700 }
floor plan:
  - row: [one, two]
    join: bolted
  - row: [three]
    stands: { against: two, at its: right, fronts look: right }
    join: bolted
`)

  test('poses on the floor', () => {
    expect(standing(of, 'one')).toBe('0 0 0, 1 0 0')
    expect(standing(of, 'two')).toBe('600 0 0, 1 0 0')
    // From x 600 + 400 = 1000 on, fronts flush with y 0. Its front looks along +x, so its front is at 1000 + 500 = 1500;
    // seen from there its left end is the one nearest to you, y 0, and its right is away from you.
    expect(standing(of, 'three')).toBe('1500 0 0, 0 1 0')
    expect(footprint(of, 'three')).toBe('1000 0 to 1500 700')
    expect(said(of, 'footprints-overlap')).toEqual([])
  })

  test('side to back: one axis, the nut in the thick side', () => {
    // Two's right side: y 0 to 494 (applied back 6), z 0 to 800. Three's back: y 0 to 700, z 0 to 800. Shared: y 0 to
    // 494: bolts at y 96 and 494 − 96 = 398, z 64 and 736. The barrel of an M6 nut is 7.8 long (ATNUT05, pts-uk.com),
    // three's back only 6: so the head goes there, though two was placed first, and the nut into two's side of 18.
    // Two's right side: its x is z, its y is y.
    expect(places(panelOf(of, 'two/right-side'), 'A', 'joining nut')).toEqual(['64 96', '64 398', '736 96', '736 398'])
    // Three's own x is the floor's y; its back is measured from its right end: 700 − 398 = 302, 700 − 96 = 604.
    expect(places(panelOf(of, 'three/back'), 'A', 'joining bolt')).toEqual(['64 302', '64 604', '736 302', '736 604'])
    const piece = of.assembly.hardware.find((one) => one.id === 'two+three/bolt/1')
    expect(piece?.stations.map((station) => station.pose.origin)).toEqual([
      [1000, 96, 64],
      [1000, 96, 64],
    ])
    // From three into two: toward −x.
    expect(piece?.stations[0]?.pose.z.map((value) => value + 0)).toEqual([-1, 0, 0])
    expect(said(of, 'mate-axis')).toEqual([])
  })

  test('boxes of panels on the floor', () => {
    // Three's back, 6 thick, lies on two's right side; its left side is at its own x 0 to 18: y 0 to 18.
    expect(floorBox(moduleOf(of, 'three'), panelOf(of, 'three/back'))).toEqual({
      min: [1000, 0, 0],
      max: [1006, 700, 800],
    })
    expect(floorBox(moduleOf(of, 'three'), panelOf(of, 'three/left-side'))).toEqual({
      min: [1006, 0, 0],
      max: [1500, 18, 800],
    })
  })
})

describe('a pair back to back', () => {
  const of = built(`${COMMON.replace('thickness: 6,', 'thickness: 9,')}
modules:
  a: { width: 800 }
  b: { width: 600 }
floor plan:
  - row: [a]
  - row: [b]
    stands: { against: a, at its: back, fronts look: back }
    join: bolted
`)

  test('poses and bolts', () => {
    // B covers x 0 to 600, y 500 to 1000, turned around: its front left corner is at x 600, y 1000.
    expect(standing(of, 'b')).toBe('600 1000 0, -1 0 0')
    expect(footprint(of, 'b')).toBe('0 500 to 600 1000')
    // Backs of 9 take the nut's 7.8. Shared: x 0 to 600, z 0 to 800: bolts at x 96 and 504, z 64 and 736. A's back is
    // measured from its right end: 800 − 504 = 296, 800 − 96 = 704; B's right end is at the floor's x 0: 96 and 504.
    expect(places(panelOf(of, 'a/back'), 'A', 'joining bolt')).toEqual(['64 296', '64 704', '736 296', '736 704'])
    expect(places(panelOf(of, 'b/back'), 'A', 'joining nut')).toEqual(['64 96', '64 504', '736 96', '736 504'])
    expect(said(of, 'nut-barrel')).toEqual([])
  })

  test('backs that are too thin for the nut stop', () => {
    const thin = built(`${COMMON}
modules: { a: { width: 800 }, b: { width: 600 } }
floor plan:
  - row: [a]
  - { row: [b], stands: { against: a, at its: back, fronts look: back }, join: bolted }
`)
    expect(said(thin, 'nut-barrel')).toEqual([
      'stop: b, back: the barrel of the nut of bolt M6 is 7.8 mm long, the board only 6 mm thick',
    ])
  })

  test('a back that stands in a groove meets nothing', () => {
    const text = `${COMMON}
modules: { a: { width: 800, carcase: { back: { sits: grooved } } }, b: { width: 600 }, c: { width: 600 } }
floor plan:
  - row: [a]
  - { row: [b], stands: { against: a, at its: back, fronts look: back }, join: bolted }
`
    expect(said(built(text), 'join-overlap')).toEqual([
      'stop: a and b are to be bolted together, but no two outer faces of sides or backs meet at the back of a',
    ])
    // With bolts in the row itself it is worth a look, no more.
    expect(said(built(text.replace('row: [b]', 'row: [b, c]')), 'join-overlap')).toEqual([
      'warn: a and b, c are to be bolted together, but no two outer faces of sides or backs meet at the back of a',
    ])
  })
})

describe('where a row stands', () => {
  const stood = (stands: string): Built =>
    built(`${ROUND_STOCK}
common: { carcase height: 800, stock: board, carcase: { back: none } }
modules: { a: { width: 600, depth: 500 }, b: { width: 400, depth: 300 } }
floor plan: [{ row: [a] }, { row: [b], stands: { against: a, ${stands} } }]
`)
  // A covers x 0 to 600, y 0 to 500. B is 400 × 300, on its side 300 × 400. What lies in front of A moves all back,
  // so that the island begins at y 0.
  test.each([
    ['at its: right', '600 0 to 1000 300'],
    ['at its: right, line up: back', '600 200 to 1000 500'],
    ['at its: right, line up: middle, shift: -25, gap: 10', '610 75 to 1010 375'],
    ['at its: left, fronts look: left', '-300 0 to 0 400'],
    ['at its: left, fronts look: right, line up: back, shift: 50', '-300 150 to 0 550'],
    ['at its: back', '0 500 to 400 800'],
    ['at its: back, line up: right, shift: 30', '230 500 to 630 800'],
    ['at its: back, fronts look: right, line up: middle', '150 500 to 450 900'],
    // B covers y −900 to −600 in front of A; moved back by 900.
    ['at its: front, fronts look: back, gap: 600', '0 0 to 400 300'],
  ])('%s', (stands, expected) => {
    expect(footprint(stood(stands), 'b')).toBe(expected)
  })

  // Front left corners: forward the lower left of what it covers; looking right, the lower right; back, the upper right;
  // left, the upper left. B at A's back covers from (0, 500).
  test.each([
    ['forward', '0 500 0, 1 0 0'],
    ['right', '300 500 0, 0 1 0'],
    ['back', '400 800 0, -1 0 0'],
    ['left', '0 900 0, 0 -1 0'],
  ])('fronts look %s', (fronts, expected) => {
    expect(standing(stood(`at its: back, fronts look: ${fronts}`), 'b')).toBe(expected)
  })

  test('words are those of the anchor, however it is turned itself', () => {
    // B stands back to back with A: its front left corner is at (400, 800). C, 200 wide and deep, at B's right: seen from
    // in front of B, that is the floor's −x side: x −200 to 0; flush with B's front, y 800: y 600 to 800.
    const of = built(`${ROUND_STOCK}
common: { carcase height: 800, stock: board, carcase: { back: none } }
modules: { a: { width: 600, depth: 500 }, b: { width: 400, depth: 300 }, c: { width: 200, depth: 200 } }
floor plan:
  - row: [a]
  - { row: [b], stands: { against: a, at its: back, fronts look: back } }
  - { row: [c], stands: { against: b, at its: right } }
`)
    expect(footprint(of, 'c')).toBe('-200 600 to 0 800')
    expect(standing(of, 'c')).toBe('0 800 0, -1 0 0')
  })

  test('rows that stand by themselves lie 1000 behind all that stands before them', () => {
    const of = built(`${ROUND_STOCK}
common: { carcase height: 800, stock: board, depth: 500, width: 400, carcase: { back: none } }
modules: { a: {}, b: {}, c: {} }
floor plan:
  - row: [a]
  - row: [c]
  - { row: [b], stands: { against: a, at its: back, gap: 40 } }
`)
    // A: 0 to 500; b: 540 to 1040; c from 2040.
    expect(footprint(of, 'b')).toBe('0 540 to 400 1040')
    expect(footprint(of, 'c')).toBe('0 2040 to 400 2540')
  })

  test('two rows in one place stop, with the numbers', () => {
    // C at A's right, shifted 100 to the front, reaches from y −100 to 400; b at A's front covers x 500 to 900, y −300 to 0:
    // 300 × 100 in common.
    const of = built(`${ROUND_STOCK}
common: { carcase height: 800, stock: board, carcase: { back: none } }
modules: { a: { width: 600, depth: 500 }, b: { width: 400, depth: 300 }, c: { width: 500, depth: 500 } }
floor plan:
  - row: [a]
  - { row: [b], stands: { against: a, at its: front, shift: 500 } }
  - { row: [c], stands: { against: a, at its: right, shift: -100 } }
`)
    expect(said(of, 'footprints-overlap')).toEqual([
      'stop: b and c stand in the same place: their footprints overlap by 300 × 100 mm',
    ])
  })
})

describe('level tops', () => {
  test('the lower ones are packed up to the highest of the row and of its anchor', () => {
    // Tops: a 900; b 850 on casters 100 (carcase 750); c 700 without a base. All of the second row to 900.
    const of = built(`${ROUND_STOCK}
common: { depth: 500, width: 600, stock: board, carcase: { back: none } }
modules:
  a: { carcase height: 900 }
  b: { working height: 850, base: { casters: caster 75 } }
  c: { carcase height: 700 }
floor plan:
  - row: [a]
  - { row: [b, c], level: tops, stands: { against: a, at its: right } }
`)
    expect(moduleOf(of, 'b')).toMatchObject({ baseHeight: 100, packing: 50 })
    expect(standing(of, 'b')).toBe('600 0 150, 1 0 0')
    expect(standing(of, 'c')).toBe('1200 0 200, 1 0 0')
    expect(said(of, 'packing')).toEqual([
      'note: b needs 50 mm of packing between its carcase and what it stands on, so that tops are level',
      'note: c needs 200 mm of packing between its carcase and what it stands on, so that tops are level',
    ])
    expect(said(of, 'tops-level')).toEqual([])
  })

  test('what stands already stays as it is', () => {
    const of = built(`${ROUND_STOCK}
common: { depth: 500, width: 600, stock: board, carcase: { back: none } }
modules: { a: { carcase height: 700 }, b: { carcase height: 760 } }
floor plan:
  - row: [a]
  - { row: [b], level: tops, stands: { against: a, at its: right } }
`)
    expect(said(of, 'tops-level')).toEqual([
      'warn: tops are to be level, but a, which stands already, is 60 mm lower than this row',
    ])
  })
})

describe('casters of neighbours', () => {
  const row = (inset: string): string[] =>
    said(
      built(`${ROUND_STOCK}
common: { depth: 500, width: 600, working height: 900, stock: board, base: { casters: caster 75${inset} } }
modules: { a: {}, b: {} }
floor plan: [{ row: [a, b] }]
`),
      'caster-neighbours',
    )

  test('by rule they pass 2 × 5 = 10 mm apart: swivel radius 75, king pins 80 in', () => {
    expect(row('')).toEqual([])
  })

  test('king pins nearer to the edge', () => {
    // 2 × 79 − 2 × 75 = 8; 2 × 70 − 2 × 75 = −10.
    expect(row(', inset: 79')).toEqual(['warn: the swivel circles of casters of a and b pass 8 mm apart'])
    expect(row(', inset: 70')).toEqual(['stop: the swivel circles of casters of a and b overlap by 10 mm'])
  })
})
