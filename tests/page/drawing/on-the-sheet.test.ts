import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { cardPlace, leftOf, outFromUnder, sideFor } from '../../../src/page/drawing/card-place.ts'
import { findingsIn, flagsOf, grouped } from '../../../src/page/drawing/flags.ts'
import { WORK_MARKS } from '../../../src/page/drawing/marks.ts'
import { boxOf, readableWords, wordSize } from '../../../src/page/drawing/word-room.ts'
import type { PageFinding } from '../../../src/page/protocol.ts'
import type { SceneWord } from '../../../src/page/scene/types.ts'
import { handScene } from './hand-scene.ts'

describe('the card of a hole', () => {
  const sheet = { width: 500, height: 400 }
  const NOTHING = { partners: [], readings: [] }

  test('stands upper right of it, 30 px off, where there is room', () => {
    expect(cardPlace([100, 300], NOTHING, { width: 200, height: 100 }, sheet)).toEqual([130, 170])
  })

  test('is on the sheet and not over the hole, wherever that is', () => {
    const size = fc.record({ width: fc.integer({ min: 80, max: 220 }), height: fc.integer({ min: 50, max: 170 }) })
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 500 }), fc.integer({ min: 0, max: 400 }), size, (x, y, card) => {
        const [left, top] = cardPlace([x, y], NOTHING, card, sheet)
        expect(left >= 0 && top >= 0 && left + card.width <= 500 && top + card.height <= 400).toBe(true)
        const covers = x > left && x < left + card.width && y > top && y < top + card.height
        expect(covers).toBe(false)
      }),
    )
  })

  test('keeps off the partner', () => {
    const shown = { partners: [[330, 130]] as const, readings: [] }
    const [left] = cardPlace([250, 200], shown, { width: 150, height: 100 }, sheet)
    // To the right it would lie over (330, 130); to the left it ends 30 px before the hole: 250 − 30 − 150.
    expect(left).toBe(70)
  })

  // To the right stands the hole's own size, to the left above a partner: it covers the partner rather than the size.
  test('keeps off the words of its sizes more than off the partner', () => {
    const size = { left: 300, right: 350, top: 60, bottom: 340 }
    const shown = {
      partners: [
        [150, 60],
        [150, 340],
        [150, 200],
      ] as const,
      readings: [size],
    }
    const [left] = cardPlace([250, 200], shown, { width: 230, height: 300 }, sheet)
    expect(left + 230).toBeLessThanOrEqual(300)
  })

  /*
   * 120 high on a sheet of 400: at the foot it leaves 0 to 280, at the head 120 to 400. Within 30 px of it a hole's ring would
   * be cut: from 250 on down it goes to the head.
   */
  test('across the sheet lies at the foot, or opposite a hole that is low', () => {
    expect(leftOf('foot', 120, sheet, 0)).toEqual({ left: 0, right: 500, top: 0, bottom: 280 })
    expect(leftOf('head', 120, sheet, 56)).toEqual({ left: 0, right: 500, top: 120, bottom: 344 })
    expect([20, 250, 251, 390].map((y) => sideFor([250, y], [], 120, sheet, 0))).toEqual([
      'foot',
      'foot',
      'head',
      'head',
    ])
    // The hole can be seen with either; its partner only with the card at the head.
    expect(sideFor([250, 200], [[100, 300]], 120, sheet, 0)).toBe('head')
    expect(sideFor([250, 200], [[100, 100]], 120, sheet, 0)).toBe('foot')
  })

  test('across a sheet that is too low, moves the hole out from under it', () => {
    const foot = leftOf('foot', 120, sheet, 0)
    expect(outFromUnder('foot', 270, foot)).toBe(-20)
    expect(outFromUnder('foot', 249, foot)).toBe(0)
    expect(outFromUnder('head', 100, leftOf('head', 120, sheet, 0))).toBe(50)
  })
})

describe('words', () => {
  const word = (key: string, x: number, kind: SceneWord['kind'], text = 'front'): SceneWord => ({
    key,
    at: [x, 100],
    anchor: 'middle',
    text,
    kind,
  })
  const sheet = { width: 900, height: 600 }
  const camera = { scale: 1, x: 0, y: 0 }
  const keysOf = (words: readonly SceneWord[], scale = 1): readonly string[] =>
    readableWords(handScene({ words }), { ...camera, scale }, sheet).map((written) => written.word.key)

  test('that lie on others which count more are left out, or move by a line', () => {
    expect(keysOf([word('tag', 100, 'tag'), word('edge', 100, 'edge')])).toEqual(['edge'])
    const both = handScene({ words: [word('size', 100, 'size'), word('edge', 100, 'edge')] })
    // 12 px high; moved up by 1.25 of that: 100 − 15.
    const [, size] = readableWords(both, camera, sheet)
    expect(size?.word.key).toBe('size')
    expect(size?.at[0]).toBe(100)
    expect(size?.at[1]).toBeCloseTo(85, 9)
  })

  test('beside holes are left out where the drawing is so small that they would be too large', () => {
    // 12 mm at 1 px a mm are 12 px; at 0.5 they would be 6 px and are never less than 12: twice as large as their room.
    expect(keysOf([word('tag', 100, 'tag')])).toEqual(['tag'])
    expect(keysOf([word('tag', 100, 'tag')], 0.5)).toEqual([])
    expect(wordSize(handScene(), { ...camera, scale: 0.5 })).toBe(12)
    expect(wordSize(handScene(), { ...camera, scale: 9 })).toBe(17)
  })

  test('that the rim would cut are left out', () => {
    expect(keysOf([word('cut', 895, 'edge')])).toEqual([])
  })

  // Five letters of 0.58 at 12 px are 34.8 px: about 895 they reach to 912.4, 12.4 too far; about 980 to 997.4, more than 24 too far.
  test('that are sizes move in from the rim, but not away from their lines', () => {
    const sizeAt = (x: number) =>
      readableWords(handScene({ words: [word('size', x, 'size')] }), camera, sheet)[0]?.at[0]
    expect(sizeAt(895)).toBeCloseTo(882.6, 9)
    expect(sizeAt(17)).toBeCloseTo(17.4, 9)
    expect(sizeAt(980)).toBeUndefined()
  })

  // Five letters of 0.58 at 10 px: 29 px. Turned counter-clockwise about its end, it reaches down from there.
  test('turned, reach up the sheet', () => {
    expect(boxOf({ ...word('turned', 0, 'edge'), anchor: 'start', turnDeg: 90 }, [50, 200], 10)).toEqual({
      left: 41,
      right: 52.8,
      top: 171,
      bottom: 200,
    })
  })
})

describe('flags of findings', () => {
  const finding = (key: string, number: number | undefined, places: PageFinding['places']): PageFinding => ({
    key,
    rule: 'bores meet',
    severity: 'warn',
    ...(number !== undefined && { number }),
    message: 'two bores meet',
    short: 'two bores meet',
    panels: ['p'],
    places,
    path: ['modules', 'cabinet'],
    line: 1,
    column: 1,
  })
  const place = (x: number, y: number, face: 'A' | 'B' = 'A', panel = 'p') =>
    ({ panel, face, at: [x, y, 0], words: '' }) as const

  // The board is 500 high and y runs down on the drawing: 100 from the bottom is 400 from the top.
  test('stand where the frame of the panel says, on the face that is seen, and not where silenced', () => {
    const flags = flagsOf(handScene(), [
      finding('a', 1, [place(37, 100), place(50, 100, 'B'), place(50, 100, 'A', 'other')]),
      finding('b', undefined, [place(70, 100)]),
    ])
    expect(flags.map(({ number, at }) => [number, at])).toEqual([[1, [37, 400]]])
  })

  test('close to each other are one, which counts its findings', () => {
    const flags = flagsOf(handScene(), [
      finding('a', 1, [place(37, 100), place(40, 100)]),
      finding('b', 2, [place(38, 101), place(300, 100)]),
    ])
    // a and b are 1.4 mm apart: together at 1 px a mm, at 20 (28 px) not. The two places of a, 3 mm apart, stay one flag
    // there (60 px), since they are one note; at 40 (120 px) they are two.
    const [first, second, ...rest] = grouped(flags, 1)
    expect(first && findingsIn(first)).toBe(2)
    expect(second?.map(({ number }) => number)).toEqual([2])
    expect(rest).toEqual([])
    expect(grouped(flags, 20).length).toBe(3)
    expect(grouped(flags, 40).length).toBe(4)
  })
})

test('marks are told apart without their colours', () => {
  const shapes = Object.entries(WORK_MARKS)
    .filter(([, { layers }]) => layers.length > 0)
    .map(([, { layers }]) => layers.map(({ form, of }) => `${form} ${of}`).join(', '))
  expect(shapes.length).toBe(7)
  expect(new Set(shapes).size).toBe(7)
})
