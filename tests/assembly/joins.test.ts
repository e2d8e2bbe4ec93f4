import { describe, expect, test } from 'vitest'
import { placeBolts } from '../../src/assembly/floor/bolt-places.ts'
import { built, panelOf, places, ROUND_STOCK } from '../support/define.ts'

const said = (text: string, rule: string): string[] =>
  built(text)
    .findings.filter((finding) => finding.rule === rule)
    .map((finding) => `${finding.severity}: ${finding.message}`)

/** Two open modules side by side, 500 deep with a back of 6: bolts want y 96 and 398, z 64 and 736. */
const pair = (one: string, two: string, join = 'bolted'): string => `${ROUND_STOCK}
common: { depth: 500, carcase height: 800, stock: board, carcase: { back: { sits: applied, stock: thin } } }
modules:
  one: { width: 600, inside: ${one} }
  two: { width: 600, inside: ${two} }
floor plan: [{ row: [one, two], join: ${join} }]
`

describe('bolts move off what is in their way, in both panels', () => {
  // Pins 96 behind the front edge stand in the front column of bolts; with 40 kept clear they stand from 18 + 40 = 58 to
  // 800 − 58 = 742 on multiples of 32: 64 to 736, both of them where bolts want to be. Bolt 7, head washer 18, pin 5:
  // the washer must not lie on a pin hole: 9 + 2.5 = 11.5; wall between bores: 3.5 + 2.5 + 5 = 11. In whole millimetres
  // the column moves 12, toward the middle: 96 + 12 = 108. Rows would have to move 12 each: 24 in all.
  const PINS = '{ loose shelves: { count: 2, pins: { front setback: 96, rear setback: 37, keep clear: 40 } } }'

  test('a pin column on the left of the joint', () => {
    const of = built(pair(PINS, '{}'))
    expect(places(panelOf(of, 'one/right-side'), 'A', 'shelf pin')).toContain('64 96')
    expect(places(panelOf(of, 'one/right-side'), 'A', 'joining bolt')).toEqual([
      '64 108',
      '64 398',
      '736 108',
      '736 398',
    ])
    // Two's left side is measured from its top end: 800 − 736 = 64.
    expect(places(panelOf(of, 'two/left-side'), 'A', 'joining nut')).toEqual(['64 108', '64 398', '736 108', '736 398'])
    expect(of.assembly.hardware.find((piece) => piece.id === 'one+two/bolt/1')?.note).toBe(
      'moved 12 mm toward the back of one',
    )
    expect(said(pair(PINS, '{}'), 'bolt-moved')).toEqual([
      'note: one and two: bolts 1, 3 moved 12 mm toward the back of one, off a shelf pin of one',
    ])
  })

  test('the same on the right of the joint: the flange is 19 across: 9.5 + 2.5 = 12', () => {
    const of = built(pair('{}', PINS))
    expect(places(panelOf(of, 'one/right-side'), 'A', 'joining bolt')).toEqual([
      '64 108',
      '64 398',
      '736 108',
      '736 398',
    ])
    expect(places(panelOf(of, 'two/left-side'), 'A', 'joining nut')).toEqual(['64 108', '64 398', '736 108', '736 398'])
  })

  test('off the plates of a hinge, which reach 10 beyond their holes', () => {
    // Overlay door: carcase from y 20, plate line 37 behind that: y 57; side inset 41 puts a column at 20 + 41 = 61
    // (shared from y 20). Hinge holes are 32 apart; the lowest stands 81.5 above the carcase's underside: 65.5 and 97.5.
    // End inset 64: 1.5 above the lower hole. The flange wants 9.5 + 10 = 19.5 from (57, 65.5); the front edge of the
    // shared rectangle is 20, 12 wide in it: 32 is the least, 25.0 from the hole's column: columns move outward to
    // 57 − sqrt(19.5² − 1.5²) = 37.56, that is 61 − 24 = 37; inward to 76.44: 77, that is 16. Inward it is.
    const text = pair('{}', '{ front: { kind: door, hang: left } }', '{ bolt: bolt M6, end inset: 64, side inset: 41 }')
    const of = built(text)
    expect(places(panelOf(of, 'two/left-side'), 'A', 'hinge plate')).toContain('734.5 37')
    const nuts = places(panelOf(of, 'two/left-side'), 'A', 'joining nut')
    // Two's left side begins at y 20: 77 − 20 = 57. The rear column stays: 494 − 41 = 453, less 20.
    expect(nuts).toEqual(['64 57', '64 433', '736 57', '736 433'])
    expect(said(text, 'bolt-moved')).toEqual([
      'note: one and two: bolts 1, 3 moved 16 mm toward the back of one, off a hinge plate of two',
    ])
  })

  test('nothing is free: a stop that names what is in the way', () => {
    // 800 high, 764 inside: 22 bays with 21 fixed shelves of 18 between them are (764 − 378) / 22 = 17.545 high. Midway
    // between two shelves is 8.77 from each; the washer's half is 9.
    const shelves = (count: number): string => `{ stacked: [${Array.from({ length: count }, () => '{}').join(', ')}] }`
    expect(said(pair(shelves(22), '{}'), 'bolt-blocked').length).toBe(4)
    expect(said(pair(shelves(22), '{}'), 'bolt-blocked')[0]).toMatch(
      /^stop: one and two: bolt 1 has no free place within 64 mm; in the way: .*fixed shelf \d+ of one/,
    )
  })
})

describe('placing bolts in a rectangle', () => {
  const shared = { across: [0, 500], up: [0, 800] } as const
  const insets = { end: 64, side: 96, least: 12 }
  const spot = (x: number, y: number, clear: number) => ({ min: [x, y], max: [x, y], clear, what: 'a knot' }) as const
  const at = (...obstacles: ReturnType<typeof spot>[]): string[] =>
    placeBolts(shared, insets, obstacles, 64).map((place) => place.at.join(' '))

  test('nothing in the way: four at the insets, row by row', () => {
    expect(at()).toEqual(['96 64', '404 64', '96 736', '404 736'])
  })

  test('one in the way: its column moves whole, and only that', () => {
    // 5 clear, the obstacle 2 to the left: 3 to the right is enough.
    expect(at(spot(94, 64, 5))).toEqual(['99 64', '404 64', '99 736', '404 736'])
    // 2 to the right of it: 3 to the left.
    expect(at(spot(98, 64, 5))).toEqual(['93 64', '404 64', '93 736', '404 736'])
  })

  test('a wide thing: its row moves whole where columns cannot', () => {
    const shelf = { min: [0, 60], max: [500, 70], clear: 9, what: 'a shelf' } as const
    // Free at 70 + 9 = 79 (15 up) or 60 − 9 = 51 (13 down).
    expect(placeBolts(shared, insets, [shelf], 64).map((place) => place.moved.join(' '))).toEqual([
      '0 -13',
      '0 -13',
      '0 0',
      '0 0',
    ])
  })

  test('alone, when neither a row nor a column helps', () => {
    // A knot on the lower left bolt. The upper left one can go nowhere across, so the column cannot move; the lower right
    // one can go nowhere up or down, so the row cannot.
    const column = [
      { min: [0, 736], max: [95, 736], clear: 0.5, what: 'bar' },
      { min: [97, 736], max: [250, 736], clear: 0.5, what: 'bar' },
    ] as const
    const row = [
      { min: [404, 0], max: [404, 63], clear: 0.5, what: 'bar' },
      { min: [404, 65], max: [404, 400], clear: 0.5, what: 'bar' },
    ] as const
    const places = placeBolts(shared, insets, [...column, ...row, spot(96, 64, 3)], 64)
    // Three millimetres clear it; of the four nearest places, up comes first.
    expect(places.map((place) => place.moved.join(' '))).toEqual(['0 3', '0 0', '0 0', '0 0'])
  })

  test('never beyond 64 mm, nor out of the rectangle', () => {
    const wall = { min: [0, 0], max: [500, 128.5], clear: 0, what: 'a wall' } as const
    // Up to 129 is 65: too far. A clear distance of 0 blocks nothing; 0.5 does.
    const places = placeBolts(shared, insets, [{ ...wall, clear: 0.5 }], 64)
    expect(places.map((place) => place.blocked)).toEqual([true, true, false, false])
    expect(places[0]).toMatchObject({ at: [96, 64], off: ['a wall'] })
  })
})
