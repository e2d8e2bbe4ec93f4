import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Camera, fitted, toScreen } from '../../../src/page/drawing/camera.ts'
import { markRadius, ringRadius } from '../../../src/page/drawing/marks.ts'
import { type Chosen, matesOf, placedReadings } from '../../../src/page/drawing/readings.ts'
import { type Crowd, placedSizes, type Round } from '../../../src/page/drawing/size-room.ts'
import { boxOf, readableWords, type WordBox, wordSize } from '../../../src/page/drawing/word-room.ts'
import { factsOf, type Scene, sceneOf } from '../../../src/page/scene/index.ts'
import { laidSample } from '../scene/laid.ts'
import { looksOf } from '../scene/looks.ts'

const SHEET = { left: 0, top: 0, right: 600, bottom: 400 }
const EMPTY: Crowd = { area: SHEET, words: [], rounds: [], lines: [] }

/*
 * Letters are 14 high and 0.61 of that wide: `200 mm` takes 6 × 8.54 = 51.24. Beside a line stand 4 px between it and the
 * words, whose middle is so 7 + 4 = 11 off it; the line that they are written on is 0.34 × 14 = 4.76 below their middle.
 */
describe('the words of a size', () => {
  const level = { from: [300, 100], to: [100, 100], words: '200 mm' } as const

  test('stand over the middle of a level line', () => {
    const [one, ...others] = placedSizes([level], EMPTY)
    expect(others).toEqual([])
    expect(one?.at[0]).toBe(200)
    expect(one?.at[1]).toBeCloseTo(93.76, 9)
    expect(one?.box.left).toBeCloseTo(174.38, 9)
    expect(one?.box.right).toBeCloseTo(225.62, 9)
    expect([one?.box.top, one?.box.bottom]).toEqual([82, 96])
    expect(one?.isTurned).toBe(false)
    expect(one?.leader).toBeUndefined()
  })

  // A hole of radius 4 over the middle keeps 6 clear: 194 to 206. Places are tried every 10 px: at 230 the words begin at 204.4,
  // at 240 at 214.4.
  test('go along their line to where no hole is', () => {
    const [one] = placedSizes([level], { ...EMPTY, rounds: [{ at: [200, 85], radius: 4 }] })
    expect(one?.at[0]).toBeCloseTo(240, 9)
    expect(one?.at[1]).toBeCloseTo(93.76, 9)
  })

  test('stand right of an upright line, level; left of it where the sheet ends', () => {
    const upright = (x: number) => ({ from: [x, 300], to: [x, 100], words: '200 mm' }) as const
    const middles = [100, 580].map((x) => placedSizes([upright(x)], EMPTY)[0]?.at[0])
    expect(middles[0]).toBeCloseTo(100 + 4 + 25.62, 9)
    expect(middles[1]).toBeCloseTo(580 - 4 - 25.62, 9)
  })

  /*
   * The ninth pin as it is at a desk: 20 px over the front edge, pins beside it, a ring of 15 about it. Between ring and edge
   * there are 5 px, too few for words of 14. Beyond the edge they begin 8 px from it: their middle is 120 + 8 + 7 = 135.
   */
  test('stand beyond the edge where the line is hidden by the ring', () => {
    const rounds: Round[] = [
      { at: [100, 100], radius: 15 },
      ...[82, 118].map((x): Round => ({ at: [x, 100], radius: 4 })),
    ]
    const [one] = placedSizes([{ from: [100, 120], to: [100, 100], words: '37 mm' }], { ...EMPTY, rounds })
    expect(one?.at[0]).toBe(100)
    expect(one?.at[1]).toBeCloseTo(139.76, 9)
  })

  // Words over all that is left of x = 400, 100 px beyond the line; 2 px are kept clear of them.
  test('go out on a leader from the middle of the line where all about it is taken', () => {
    const [one] = placedSizes([level], { ...EMPTY, words: [{ left: 0, top: 0, right: 400, bottom: 400 }] })
    expect(one?.box.left).toBeGreaterThanOrEqual(402)
    expect(one?.leader?.[0]).toEqual([200, 100])
    expect(one?.leader?.[1][0]).toBe(one?.box.left)
  })

  // Two lines that meet in a hole; the short one finds room only below or beyond its edge.
  test('stand clear of each other and of the line of the other', () => {
    const both = placedSizes(
      [
        { from: [100, 110], to: [100, 100], words: '10 mm' },
        { from: [100, 300], to: [100, 100], words: '200 mm' },
      ],
      EMPTY,
    )
    const [a, b] = both.map(({ box }) => box)
    expect(both.map(({ words }) => words)).toEqual(['10 mm', '200 mm'])
    expect(a && b && meet(a, b)).toBe(false)
  })

  test('stand by the part of a line that is in sight; of one that is not there are none', () => {
    // From x = −400 to 200, so that 0 to 200 is seen: its middle is 100.
    const [one] = placedSizes([{ from: [-400, 100], to: [200, 100], words: '600 mm' }], EMPTY)
    expect(one?.at[0]).toBe(100)
    expect(placedSizes([{ from: [100, 900], to: [100, 500], words: '400 mm' }], EMPTY)).toEqual([])
    expect(placedSizes([{ from: [100, 102], to: [100, 100], words: '2 mm' }], EMPTY)).toEqual([])
  })

  test('where nothing is free cover as little as can be, in the area', () => {
    const words = [SHEET, { left: 0, top: 0, right: 600, bottom: 300 }]
    const [one] = placedSizes([level], { ...EMPTY, words })
    // Below 300 lies one word less than above.
    expect(one?.box.top).toBeGreaterThanOrEqual(302)
    expect(one?.box.bottom).toBeLessThanOrEqual(400)
  })
})

const meet = (a: WordBox, b: WordBox): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom
const isOn = ({ left, top, right, bottom }: WordBox, { at: [x, y], radius }: Round): boolean =>
  Math.hypot(x - Math.max(left, Math.min(x, right)), y - Math.max(top, Math.min(y, bottom))) < radius

/** The sheets of a desk of 1280 and 1920, and of a phone, with what a card across leaves of it. */
const SHEETS = [
  { width: 590, height: 398, top: 0, bottom: 280 },
  { width: 590, height: 398, top: 120, bottom: 398 },
  { width: 950, height: 700, top: 0, bottom: 700 },
  { width: 375, height: 394, top: 0, bottom: 210 },
] as const

test('over the looks of the sample no size lies on a ring, a hole or a word wherever there is room for it', () => {
  const laid = laidSample('pottery-studio')
  const looks = looksOf(laid).filter(({ kind }) => kind === 'face' || kind === 'pair')
  const known = new Map<unknown, Scene>()
  let placed = 0
  fc.assert(
    fc.property(
      fc.constantFrom(...looks),
      fc.nat(),
      fc.constantFrom(...SHEETS),
      fc.constantFrom('mm' as const, 'in' as const),
      (look, index, sheet, units) => {
        const scene = known.get(look) ?? sceneOf(laid, look)
        known.set(look, scene)
        const hole = scene.holes[index % Math.max(1, scene.holes.length)]
        const facts = hole && factsOf(laid, hole.id)
        if (hole === undefined || facts === undefined) return
        const camera = fitted(scene.bounds, sheet)
        const area = { left: 0, right: sheet.width, top: sheet.top, bottom: sheet.bottom }
        const chosen: Chosen = { scene, hole, facts, holes: scene.holes }
        const sizes = placedReadings(chosen, camera, sheet, area, units)
        const { words, rounds } = drawn(chosen, camera, sheet)
        sizes.forEach(({ box, isTurned }, k) => {
          placed += 1
          const others = [...words, ...sizes.filter((_, other) => other !== k).map((other) => other.box)]
          const isFree = (place: WordBox): boolean =>
            !others.some((word) => meet(place, word)) && !rounds.some((round) => isOn(place, round))
          if (
            isFree(box) &&
            box.left >= 0 &&
            box.right <= area.right &&
            box.top >= area.top &&
            box.bottom <= area.bottom
          )
            return
          const long = isTurned ? box.bottom - box.top : box.right - box.left
          expect(roomIn(area, long, isFree)).toBeUndefined()
        })
      },
    ),
    { numRuns: 120 },
  )
  expect(placed).toBeGreaterThan(100)
})

/** Rings, marks and words, as the sheet draws them. */
function drawn(chosen: Chosen, camera: Camera, sheet: { width: number; height: number }) {
  const { scene, hole } = chosen
  const works = new Map(scene.operations.map(({ id, work }) => [id, work]))
  const { mates, fellows } = matesOf(chosen)
  const size = wordSize(scene, camera)
  return {
    words: readableWords(scene, camera, sheet).map(({ word, at }) => boxOf(word, at, size)),
    rounds: [
      ...[hole, ...mates, ...fellows].map(
        (one): Round => ({ at: toScreen(camera, one.at), radius: ringRadius(one, camera.scale) }),
      ),
      ...scene.holes.map(
        (one): Round => ({
          at: toScreen(camera, one.at),
          radius: Math.max(one.radius * camera.scale, markRadius(works.get(one.operation), one.hidden, camera.scale)),
        }),
      ),
    ],
  }
}

/** A free place for words of a length with 6 px about them, anywhere in an area; nothing where there is none. */
function roomIn({ left, top, right, bottom }: WordBox, long: number, isFree: (box: WordBox) => boolean) {
  for (let y = top + 13; y < bottom - 13; y += 4)
    for (let x = left + long / 2 + 6; x < right - long / 2 - 6; x += 4) {
      const box = { left: x - long / 2 - 6, right: x + long / 2 + 6, top: y - 13, bottom: y + 13 }
      if (isFree(box)) return box
    }
  return undefined
}
