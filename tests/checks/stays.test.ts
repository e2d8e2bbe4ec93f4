import { describe, expect, test } from 'vitest'
import { built, ROUND_STOCK } from '../support/define.ts'

// 500 × 400 × 450, 18 mm board: opening z 18 to 382, carcase from y 20; one stay on the left, its bracket 64 behind the
// front edges and 215 below the top's underside, z 167, reaching 10 to front and back and 20 up and down.
const box = (shelves: string): string => `${ROUND_STOCK}
modules:
  box:
    width: 500
    depth: 450
    carcase height: 400
    stock: board
    carcase: { back: { sits: applied, stock: thin } }
    inside:
      front: { kind: flap }
      loose shelves: { count: 1, ${shelves} }
`
const found = (text: string) => built(text).findings.filter(({ rule }) => rule === 'stay-clear')

describe('stays', () => {
  test('a bracket on a pin hole: the column must go 12.5 aside', () => {
    // Column at 64: the pin at 160 lies under the bracket (147 to 187), the next, 128 and 192, beyond 2.5 of it. 10 + 2.5.
    const [first, ...others] = found(box('front setback: 120, pins: { front setback: 64 }'))
    expect(others).toEqual([])
    expect(first?.severity).toBe('warn')
    expect(first?.message).toBe(
      'box, left side: the bracket of the lid stay 250 lies on the shelf pin 5 × 13, 64 from front and 160 from bottom in face A (inside)',
    )
    expect(first?.fix).toBe(
      'move the column of pins 12.5 mm or more away from it (`front setback` or `rear setback`), or choose another stay',
    )
    expect(found(box('front setback: 120, pins: { front setback: 76.5 }'))).toEqual([])
    expect(found(box('front setback: 120, pins: { front setback: 76.4 }'))).toHaveLength(1)
  })

  test('a loose shelf beside the arm', () => {
    // Shelf on the pins at 192 (nearest to the middle, 200), between the brackets at 322 and 167. It begins 20 behind the
    // front edges, y 40; the stay ends at 20 + 64 + 10 = 94: 54 more.
    expect(found(box('pins: { datum: 0 }')).map(({ message, fix }) => [message, fix])).toEqual([
      [
        'box: shelf 1 stands in the way of the lid stay 250',
        'keep the shelf 54 mm further back (`front setback` of the loose shelves), set it above or below the stay, or choose another stay',
      ],
    ])
    expect(found(box('front setback: 74'))).toEqual([])
  })
})

test('the hinges of two flaps on one shelf, as asked at the same places: 10 to the right', () => {
  const flaps = (second: string): string => `${ROUND_STOCK}
modules:
  box:
    width: 600
    depth: 450
    carcase height: 818
    stock: board
    carcase: { back: none, joint: dowel }
    inside:
      stacked:
        - front: { kind: flap, hang: bottom, stay: none, hinges: [80, 500] }
        - front: { kind: flap, hang: top, stay: none, hinges: ${second} }
`
  const clashes = (text: string) => built(text).findings.filter(({ rule }) => /^(bores|fasteners)-/.test(rule))
  // Plates' holes of 5 with 5 of wood between them: 10 apart.
  expect(new Set(clashes(flaps('[80, 500]')).map(({ fix }) => fix))).toEqual(
    new Set(['move the hinges of flap 1 right 10 mm (`hinges: [90 mm, 510 mm]`)']),
  )
  expect(clashes(flaps('[90 mm, 510 mm]'))).toEqual([])
})
