import { describe, expect, test } from 'vitest'
import { areaOf, boundsOf, holdsPoint, middleOf } from '../../src/geometry/index.ts'
import type { Cutout } from '../../src/panel/index.ts'
import { built, panelOf, ROUND_STOCK } from '../support/define.ts'

/**
 * 800 wide, 560 deep, 720 high, sides 18 thick, the back 6 thick and applied, a pair of overlay doors: the sides are
 * 560 − 18 (door) − 2 (gap) − 6 (back) = 534 deep and 720 high; the bottom lies between them, 764 × 534.
 */
const module = (openings: string): string => `${ROUND_STOCK}
modules:
  bench:
    width: 800
    depth: 560
    carcase height: 720
    stock: board
    carcase: { back: { sits: applied, stock: thin } }
    inside: { loose shelves: 1, front: { kind: pair } }
    openings:
${openings}
`

const round3 = (n: number): number => Math.round(n * 1000) / 1000 + 0

/** The one cutout of a panel, its middle and its box. */
function cutoutIn(openings: string, panel: string): { cutout: Cutout; middle: number[]; box: number[] } {
  const of = built(module(openings))
  expect(of.findings.filter(({ severity }) => severity === 'stop').map(({ message }) => message)).toEqual([])
  const [cutout] = panelOf(of, `bench/${panel}`).cutouts
  if (cutout === undefined) throw new Error('no cutout')
  const { min, max } = boundsOf(cutout.path)
  return { cutout, middle: middleOf(cutout.path).map(round3), box: [...min, ...max].map(round3) }
}

describe('the middle of an opening, from any two edges that meet', () => {
  // Left side, face A inside: x runs down (x = 0 at the top, 720 at the bottom), y to the back (0 at the front, 534 at the back).
  test.each([
    // 80 from the front: y = 80. 100 from the top: x = 100.
    ['front: 80, top: 100', [100, 80]],
    // 100 from the bottom: x = 720 − 100 = 620.
    ['front: 80, bottom: 100', [620, 80]],
    // 80 from the back: y = 534 − 80 = 454.
    ['back: 80, top: 100', [100, 454]],
    ['bottom: 100, back: 80', [620, 454]],
    // Centred between top and bottom: x = 360; between front and back: y = 267.
    ['front: 80, top: centred', [360, 80]],
    ['back: centred, bottom: 100', [620, 267]],
  ])('left side {%s}', (from, at) => {
    expect(
      cutoutIn(`      - { panel: left side, shape: round, diameter: 60, from: { ${from} } }`, 'left-side').middle,
    ).toEqual(at)
  })

  // Right side, face A inside: x runs up from the bottom, y to the back.
  test.each([
    ['front: 80, top: 100', [620, 80]],
    ['front: 80, bottom: 100', [100, 80]],
    ['back: 80, bottom: 100', [100, 454]],
  ])('right side {%s}', (from, at) => {
    expect(
      cutoutIn(`      - { panel: right side, shape: round, diameter: 60, from: { ${from} } }`, 'right-side').middle,
    ).toEqual(at)
  })

  // Back, 800 × 720, seen from inside: x runs up from the bottom, y from the right side of the module to its left.
  test.each([
    ['left: 150, bottom: 200', [200, 800 - 150]],
    ['right: 150, bottom: 200', [200, 150]],
    ['left: 150, top: 200', [720 - 200, 650]],
    ['right: 150, top: 200', [520, 150]],
  ])('back {%s}', (from, at) => {
    expect(cutoutIn(`      - { panel: back, shape: round, diameter: 60, from: { ${from} } }`, 'back').middle).toEqual(
      at,
    )
  })

  // Left door: 800 / 2 − 1.5 (reveal) − 1.5 (half the gap of 3) = 397 wide, 720 − 2 × 1.5 = 717 high; hidden face, x up, y to the right.
  test.each([
    ['left: 200, bottom: 300', [300, 200]],
    ['right: 200, bottom: 300', [300, 397 - 200]],
    ['left: 200, top: 300', [717 - 300, 200]],
    ['right: 200, top: 300', [417, 197]],
  ])('door left {%s}', (from, at) => {
    expect(
      cutoutIn(`      - { panel: door left, shape: round, diameter: 60, from: { ${from} } }`, 'door-left').middle,
    ).toEqual(at)
  })

  // Shelf: 800 − 36 − 2 × 1.2 = 761.6 long, 534 − 20 (setback behind a front) − 2 (rear gap) = 512 deep; x to the right, y to the back.
  test.each([
    ['left: 100, front: 150', [100, 150]],
    ['right: 100, front: 150', [661.6, 150]],
    ['left: 100, back: 150', [100, 362]],
    ['right: 100, back: 150', [661.6, 362]],
  ])('shelf 1 {%s}', (from, at) => {
    expect(
      cutoutIn(`      - { panel: shelf 1, shape: round, diameter: 60, from: { ${from} } }`, 'shelf-1').middle,
    ).toEqual(at)
  })

  test('centred in both directions', () => {
    const { middle } = cutoutIn('      - { panel: shelf 1, shape: round, diameter: 60, from: centred }', 'shelf-1')
    expect(middle).toEqual([380.8, 256])
  })
})

describe('which way a shape lies', () => {
  // A slot 120 × 30 in the left side, its middle at (360, 267): level, it runs from front to back, along y.
  test('a slot lies level, or stands with turn: 90', () => {
    const slot = 'panel: left side, shape: slot, length: 120, width: 30, from: centred'
    expect(cutoutIn(`      - { ${slot} }`, 'left-side').box).toEqual([345, 207, 375, 327])
    expect(cutoutIn(`      - { ${slot}, turn: 90 }`, 'left-side').box).toEqual([300, 252, 420, 282])
    // 90 × 30 and a circle of 30: 2700 + 225 π.
    expect(areaOf(cutoutIn(`      - { ${slot} }`, 'left-side').cutout.path)).toBeCloseTo(2700 + 225 * Math.PI, 3)
  })

  // In the back, x runs up: a rectangle 200 wide and 80 high is 80 along x and 200 along y.
  test('a rectangle is wide from left to right, and high from bottom to top', () => {
    const { box } = cutoutIn(
      '      - { panel: back, shape: rectangle, width: 200, height: 80, corner radius: 10, from: centred }',
      'back',
    )
    expect(box).toEqual([320, 300, 400, 500])
    // On a shelf, height is from front to back.
    const shelf =
      '      - { panel: shelf 1, shape: rectangle, width: 200, height: 80, from: { left: 200, front: 200 } }'
    expect(cutoutIn(shelf, 'shelf-1').box).toEqual([100, 160, 300, 240])
  })
})

describe('a path', () => {
  // A flag as SVG draws it, y down: a pole on the left, the cloth at the upper right. 60 wide, 80 high; the pole 10 wide.
  // Its area: 10 × 80 + 50 × 30 = 2300. Taken as 1 mm a unit.
  const flag = 'shape: path, unit: mm, svg: "M0 0 H60 V30 H10 V80 H0 Z"'

  test('is upright as one looks at the door from outside', () => {
    const { cutout, box } = cutoutIn(
      `      - { panel: door left, ${flag}, from: { left: 200, bottom: 300 } }`,
      'door-left',
    )
    expect(areaOf(cutout.path)).toBeCloseTo(2300, 6)
    // Door, hidden face: x up, y from left to right as seen from outside. Box: 260 to 340 up, 170 to 230 to the right.
    expect(box).toEqual([260, 170, 340, 230])
    // The cloth: near the top (x = 330) and to the right (y = 225); nothing at the lower right, the pole at the lower left.
    expect(holdsPoint(cutout.path, [330, 225])).toBe(true)
    expect(holdsPoint(cutout.path, [270, 225])).toBe(false)
    expect(holdsPoint(cutout.path, [270, 175])).toBe(true)
  })

  test('is drawn as one looks at the named face', () => {
    // Seen on the hidden face, from inside the module, its right is the module's left: the pole stands at y = 225.
    const { cutout } = cutoutIn(
      `      - { panel: door left, ${flag}, face: hidden face, from: { left: 200, bottom: 300 } }`,
      'door-left',
    )
    expect(areaOf(cutout.path)).toBeCloseTo(2300, 6)
    expect(holdsPoint(cutout.path, [330, 175])).toBe(true)
    expect(holdsPoint(cutout.path, [270, 225])).toBe(true)
    expect(holdsPoint(cutout.path, [270, 175])).toBe(false)
  })

  test('on a shelf is seen from above with the front toward you', () => {
    const { cutout } = cutoutIn(`      - { panel: shelf 1, ${flag}, from: { left: 200, front: 200 } }`, 'shelf-1')
    // Box 170 to 230 and 160 to 240: the cloth at the back right, the pole at the left.
    expect(holdsPoint(cutout.path, [225, 235])).toBe(true)
    expect(holdsPoint(cutout.path, [225, 165])).toBe(false)
    // From below, turned over about the line from front to back, left and right change.
    const below = cutoutIn(
      `      - { panel: shelf 1, ${flag}, depth: 6, face: underside, from: { left: 200, front: 200 } }`,
      'shelf-1',
    ).cutout
    expect(below).toMatchObject({ face: 'B', depth: 6, through: false })
    expect(holdsPoint(below.path, [175, 235])).toBe(true)
    expect(holdsPoint(below.path, [225, 165])).toBe(true)
    expect(holdsPoint(below.path, [175, 165])).toBe(false)
  })

  test('on the outside of the left side, the front is to the right', () => {
    // Looking at the left side from the module's left, its front edge is on the right: y = 0 is right, x = 0 is up.
    const { cutout } = cutoutIn(
      `      - { panel: left side, ${flag}, face: outside, depth: 6, from: { front: 200, top: 200 } }`,
      'left-side',
    )
    expect(cutout.face).toBe('B')
    // The cloth: up (x = 165) and to the front (y = 175). The pole: to the back (y = 225), down to x = 235.
    expect(holdsPoint(cutout.path, [165, 175])).toBe(true)
    expect(holdsPoint(cutout.path, [235, 225])).toBe(true)
    expect(holdsPoint(cutout.path, [235, 175])).toBe(false)
  })

  test('turned by 90 turns to the left as one looks at it', () => {
    // Seen on the shelf from above, (x, y) becomes (−y, x): the box is 80 wide and 60 deep.
    const { cutout, box } = cutoutIn(
      `      - { panel: shelf 1, ${flag}, turn: 90, from: { left: 200, front: 200 } }`,
      'shelf-1',
    )
    expect(box).toEqual([160, 170, 240, 230])
    // Before the turn the cloth's outer corner was at (+25, +35) of the middle, now at (−35, +25).
    expect(holdsPoint(cutout.path, [165, 225])).toBe(true)
    expect(holdsPoint(cutout.path, [235, 225])).toBe(false)
    expect(holdsPoint(cutout.path, [235, 175])).toBe(true)
  })
})

describe('an opening that cannot be placed', () => {
  const rule = (openings: string): string[] =>
    built(module(openings))
      .findings.filter((one) => one.rule === 'opening-place')
      .map(({ message, fix, at }) => `${message}; ${fix} (${at.slice(2).join(' ')})`)

  test('says which panels there are, and the nearest', () => {
    expect(rule('      - { panel: left sid, shape: round, diameter: 60, from: centred, for: port }')).toEqual([
      'port: the module has no panel "left sid"; name one of: left side, right side, top, bottom, back, shelf 1, door left, door right; did you mean "left side"? (openings 0 panel)',
    ])
  })

  test('says which edges and faces a panel has', () => {
    expect(rule('      - { panel: door left, shape: round, diameter: 60, from: { front: 80, top: 100 } }')).toEqual([
      'opening: the door left has no front edge; measure from left, right, top, bottom (openings 0 from)',
    ])
    expect(
      rule('      - { panel: shelf 1, shape: round, diameter: 60, from: centred, depth: 5, face: show face }'),
    ).toEqual(['opening: the shelf 1 has no show face; say upper face or underside (openings 0 face)'])
  })
})
