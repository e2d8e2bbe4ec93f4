import { describe, expect, test } from 'vitest'
import { boltPlaces } from '../../src/assembly/index.ts'
import { built, panelOf, places, ROUND_STOCK } from '../support/define.ts'

// Three modules in a row, 18 mm board, casters 100 high, tops at 900: carcases 800 high. The middle one has an overlay
// door, so its carcase starts 20 behind the row's front; the outer ones are open and start at 0.
const row = built(`${ROUND_STOCK}
common: { depth: 500, working height: 900, stock: board, base: { casters: caster 75 }, carcase: { back: { sits: applied, stock: thin } } }
modules:
  one: { width: 600 }
  two: { width: 400, inside: { front: { kind: door } } }
  three: { width: 500 }
floor plan:
  - row: [one, two, three]
    join: bolted
`)

describe('bolts between the modules of a row', () => {
  // The pattern is common practice, no source; clearance 7 for M6: ISO 273 coarse (engineeringhardware.com); tee nut
  // bore 8: barrel 7.7 (data sheet ATNUT05, pts-uk.com), the next half millimetre up.
  test('clearance holes on the left module, nut bores on the right, one axis', () => {
    // Shared rectangle of one's right side (y 0..494, z 0..800 above the bases) and two's left side (y 20..494, z 0..800):
    // y 20..494. Bolts 96 in from front and rear: y 116 and 398; 64 in from the ends: z 64 and 736.
    // Module one's right side starts at y 0: y stays, x = z. Two's left side starts at y 20 and x = 800 − z.
    expect(places(panelOf(row, 'one/right-side'), 'A', 'joining bolt')).toEqual([
      '64 116',
      '64 398',
      '736 116',
      '736 398',
    ])
    expect(places(panelOf(row, 'two/left-side'), 'A', 'joining nut')).toEqual(['64 96', '64 378', '736 96', '736 378'])
    const bolt = panelOf(row, 'one/right-side').bores.find((bore) => bore.purpose === 'joining bolt')
    const nut = panelOf(row, 'two/left-side').bores.find((bore) => bore.purpose === 'joining nut')
    expect([bolt?.diameter, bolt?.through, nut?.diameter, nut?.through]).toEqual([7, true, 8, true])
  })

  test('the middle module has nuts on its left and bolts on its right', () => {
    expect(places(panelOf(row, 'two/right-side'), 'A', 'joining bolt')).toEqual([
      '64 96',
      '64 378',
      '736 96',
      '736 378',
    ])
    expect(places(panelOf(row, 'three/left-side'), 'A', 'joining nut')).toEqual([
      '64 116',
      '64 398',
      '736 116',
      '736 398',
    ])
    expect(places(panelOf(row, 'three/right-side'), 'A', 'joining')).toEqual([])
  })

  test('on the floor the axes are the same line', () => {
    const [one, two] = row.assembly.modules
    // One's right side outer face is at x 600; its bolt at y 116, z 100 + 64. Two stands at x 600.
    const piece = row.assembly.hardware.find((hardware) => hardware.id === 'one+two/bolt/1')
    expect(piece?.stations[0]?.pose.origin).toEqual([600, 116, 164])
    expect(one?.floorFromModule.origin).toEqual([0, 0, 100])
    expect(two?.floorFromModule.origin).toEqual([600, 0, 100])
  })

  test('a low rectangle takes one row, in the middle', () => {
    expect(boltPlaces(0, 800, 64)).toEqual([64, 736])
    // 220 − 128 = 92 is less than 96: one row at 110.
    expect(boltPlaces(0, 220, 64)).toEqual([110])
    expect(boltPlaces(0, 224, 64)).toEqual([64, 160])
  })

  test('modules that share no height are not bolted, and a finding says so', () => {
    const apart = built(`${ROUND_STOCK}
common: { depth: 500, stock: board, carcase: { back: none } }
modules:
  low: { width: 600, carcase height: 200 }
  high: { width: 600, working height: 900, base: { casters: caster 100 } }
floor plan: [{ row: [low, high], join: bolted }]
`)
    // Low: 0 to 200; high: 128 to 900. They share 72: enough for one row of bolts at 164.
    expect(places(panelOf(apart, 'low/right-side'), 'A', 'joining bolt')).toEqual(['164 96', '164 404'])
    const none = built(`${ROUND_STOCK}
common: { depth: 500, stock: board, carcase: { back: none } }
modules:
  low: { width: 600, carcase height: 130 }
  high: { width: 600, working height: 900, base: { casters: caster 100 } }
floor plan: [{ row: [low, high], join: bolted }]
`)
    expect(none.findings.map((finding) => finding.message)).toContain(
      'low and high are to be bolted together, but their sides share only 2 mm',
    )
  })
})

describe('casters', () => {
  test('king pins at swivel radius + 5 from the footprint, and in to clear the screws; holes 43 apart', () => {
    // Swivel radius 75 with brake, holes in slots 38 to 48 (data sheet of a 75 mm wheel): king pins 80 in from the
    // footprint 600 × 500, holes 21.5 each way. There the rear outer holes, 5.5 wide, begin at x 55.75, and the pilots of
    // the rear screws of the sides (y 444) end at 18 + 35 = 53: 2.75 between, where 3 is the least. The first whole
    // millimetre with 5 is 83: 58.75 − 53 = 5.75. Bottom of module one: x from 18, y from 0: its own x is 18 less.
    const holes = places(panelOf(row, 'one/bottom'), 'A', 'caster bolt')
    const xs = [83 - 21.5 - 18, 83 + 21.5 - 18, 517 - 21.5 - 18, 517 + 21.5 - 18]
    const ys = [83 - 21.5, 83 + 21.5, 417 - 21.5, 417 + 21.5]
    expect(holes).toEqual(xs.flatMap((x) => ys.map((y) => `${x} ${y}`)))
  })

  test('behind an overlay front the casters still go by the footprint', () => {
    // Bottom of module two starts at y 20: its own y is 20 less. The rear screws stand at y 444 there, too: 83.
    expect(places(panelOf(row, 'two/bottom'), 'A', 'caster bolt')[0]).toBe(`${83 - 21.5 - 18} ${83 - 21.5 - 20}`)
  })

  test('too narrow: the circles meet', () => {
    // 4 × 75 + 2 × 5 + 10 = 320 is the least width; 300 leaves 300 − 160 − 150 = −10.
    const narrow = built(`${ROUND_STOCK}
modules:
  slim: { width: 300, depth: 500, working height: 900, stock: board, base: { casters: caster 75 } }
`)
    const finding = narrow.findings.find((one) => one.rule === 'caster-circles')
    expect(finding).toMatchObject({
      severity: 'stop',
      message: 'the swivel circles of two casters overlap by 10 mm; the module is 300 mm wide',
      fix: 'make it 320 mm wide or more, or take a caster 50',
    })
  })
})
