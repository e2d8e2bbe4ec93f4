import { describe, expect, test } from 'vitest'
import { built, ROUND_STOCK } from '../support/define.ts'

const CLASHES = ['bores-meet', 'bores-near', 'fasteners-meet']
const clashes = (text: string) => built(text).findings.filter(({ rule }) => CLASHES.includes(rule))
const fixes = (text: string): string[] => [...new Set(clashes(text).map(({ fix }) => fix ?? ''))]

/** The key and value that a fix tells a person to type. */
function typedIn(fix: string | undefined): string {
  const typed = /\(`(.+)`\)$/.exec(fix ?? '')?.[1]
  if (typed === undefined) throw new Error(`nothing to type in: ${fix}`)
  return typed
}

/**
 * A partition, 18 thick, with a fixed shelf on its left whose middle lies at `middle`, and pins on its right. Sides from
 * 0 to 720, bottom 18: the bay below the shelf is middle − 9 − 18 high. The shelf's dowels stand on the lines of the pins,
 * 37 from front and back, and go 11 deep; the pins 13: 24 in 18 mm.
 */
const shelfAndPins = (middle: number, pins = ''): string => `${ROUND_STOCK}
modules:
  box:
    width: 818
    depth: 400
    carcase height: 720
    stock: board
    carcase: { back: none, joint: dowel }
    inside:
      side by side:
        - dividers: { joint: { fasten: dowel, end distance: 37 } }
          stacked: [{}, { size: ${middle - 27} }]
        - loose shelves: { count: 1, pins: { keep clear: 64, ${pins} } }
`

describe('pins and the dowels of a fixed shelf on the far face', () => {
  test('the smallest shift is named, and typing it clears the finding', () => {
    // Pins at 32 k: one at 320, on the axis of the dowels. Dowel 8 and pin 5 with 5 of wood between: 4 + 2.5 + 5 = 11.5
    // apart. Up 11.5 puts pins at 331.5 and 299.5, 11.5 and 20.5 off.
    const text = shelfAndPins(320)
    expect(fixes(text)).toEqual(['move the pin rows of shelf opening 1 up 11.5 mm (`datum: 11.5 mm`)'])
    expect(clashes(shelfAndPins(320, 'datum: 11.5 mm'))).toEqual([])
    expect(clashes(shelfAndPins(320, 'datum: 11 mm')).length).toBeGreaterThan(0)
  })

  test('down where that is nearer: 316 is met by the pin at 320, which must be at 327.5 or at 304.5', () => {
    // 320 + 7.5 = 327.5: up 7.5. From a shelf at 324: down to 312.5, 7.5, so that the first hole stands at 32 − 7.5.
    expect(fixes(shelfAndPins(316))).toEqual(['move the pin rows of shelf opening 1 up 7.5 mm (`datum: 7.5 mm`)'])
    expect(fixes(shelfAndPins(324))).toEqual(['move the pin rows of shelf opening 1 down 7.5 mm (`datum: 24.5 mm`)'])
  })

  test('wherever the shelf lies, what is named clears it', () => {
    let named = 0
    for (let middle = 306; middle <= 338; middle += 1) {
      for (const fix of fixes(shelfAndPins(middle))) {
        expect(clashes(shelfAndPins(middle, typedIn(fix))), `${middle}: ${fix}`).toEqual([])
        named += 1
      }
    }
    // Within 11.5 of the pin at 320: 309 to 331.
    expect(named).toBe(23)
  })

  test('no shift: a pitch too narrow for the dowel, and the fix says by how much the wall is too thin', () => {
    // 22 between pins; a dowel between two of them needs 2 × 11.5 = 23.
    expect(fixes(shelfAndPins(320, 'pitch: 22')).every((fix) => fix.startsWith('leave 5 mm of wood'))).toBe(true)
    expect(fixes(shelfAndPins(320, 'pitch: 22')).length).toBeGreaterThan(0)
  })
})

describe('hinge plates on both faces of a partition', () => {
  const doors = (first: string, second: string, shelves = ''): string => `${ROUND_STOCK}
modules:
  box:
    width: 818
    depth: 400
    carcase height: 720
    stock: board
    carcase: { back: none, joint: dowel }
    inside:
      side by side:
        - { ${shelves} front: { kind: door, hang: right, ${first} } }
        - { ${shelves} front: { kind: door, hang: left, ${second} } }
`

  test('at the same heights as asked: 10 mm up is the nearest that leaves 5 mm between holes of 5', () => {
    const same = 'hinges: [80, 640]'
    expect(fixes(doors(same, same))).toEqual(['move the hinges of door 2 up 10 mm (`hinges: [90 mm, 650 mm]`)'])
    expect(clashes(doors(same, 'hinges: [90 mm, 650 mm]'))).toEqual([])
    expect(clashes(doors(same, 'hinges: [89.5, 649.5]')).length).toBeGreaterThan(0)
  })

  test('by rule: none meet, with pins on both faces or without', () => {
    expect(clashes(doors('', ''))).toEqual([])
    expect(clashes(doors('', '', 'loose shelves: 1,'))).toEqual([])
  })

  test('in through holes of pins on both faces', () => {
    // On the grid of the pins, door from 1.5: hinges at 80 and 656, as the first door has them by rule.
    const text = doors('', 'hinges: [78.5, 654.5]', 'loose shelves: 1,')
    const found = clashes(text)
    expect(found.map(({ rule }) => rule)).toContain('fasteners-meet')
    const [fix] = fixes(text)
    const typed = typedIn(fix)
    const changed = fix?.includes('door 1')
      ? doors(typed, 'hinges: [78.5, 654.5]', 'loose shelves: 1,')
      : doors('', typed, 'loose shelves: 1,')
    expect(clashes(changed).filter(({ rule }) => rule === 'fasteners-meet')).toEqual([])
  })
})

test('in an inch project the shift is in 1/64 in', () => {
  const inches = (pins: string): string => `
storyrod: 1
units: in
stock: { ply: { thickness: 3/4 } }
modules:
  box:
    width: 32
    depth: 16
    carcase height: 28
    stock: ply
    carcase: { back: none, joint: dowel }
    inside:
      side by side:
        - dividers: { joint: { fasten: dowel, end distance: 1 1/2 } }
          stacked: [{}, { size: 10 7/8 }]
        - loose shelves: { count: 1, pins: { keep clear: 2 1/2, ${pins} } }
`
  // The shelf's middle: 3/4 + 10 7/8 + 3/8 = 12 in, on a pin. Dowel 8 mm, pin 1/4 in: 4 + 3.175 + 5 = 12.175 mm; 31/64 in
  // is 12.303, 30/64 in 11.906.
  expect(fixes(inches(''))).toEqual(['move the pin rows of shelf opening 1 up 31/64 in (`datum: 31/64 in`)'])
  expect(clashes(inches('datum: 31/64 in'))).toEqual([])
})
