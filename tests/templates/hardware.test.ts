import { describe, expect, test } from 'vitest'
import { roundMm } from '../../src/geometry/index.ts'
import type { Panel } from '../../src/panel/index.ts'
import { type HardwarePiece, hardwarePieces, hardwarePlanner, type PieceOptions } from '../../src/templates/index.ts'
import { CAMS, CASTERS, INSERT, LONE_PULL, OTHER_HAND, PLATES, THREE_CUPS } from './hardware-panels.ts'

/** What the furniture of an A4 sheet with margins of 10 mm may leave free. */
const ROOMS = { upright: { width: 179, height: 238 }, lying: { width: 266, height: 151 } }
const WORDS = { width: 60, height: 25 }

const piecesOf = (panel: Panel, more: Partial<PieceOptions> = {}): HardwarePiece[] =>
  hardwarePieces(panel, 'A', { rooms: ROOMS, ways: () => [WORDS], ...more })

/** `left 22.5` for each fold, as it lies at the first place; the sides of the others. */
const foldsOf = ({ folds }: HardwarePiece): string[] => folds.map(({ side, mm }) => `${side} ${mm}`)

/** `80 from bottom, over left, turned 0` for each place. */
const placesOf = ({ places }: HardwarePiece): string[] =>
  places.map(({ measured, folds, turns }) =>
    [
      measured.map(({ mm, edge }) => `${mm} from ${edge}`).join(' and '),
      folds.map(({ name }) => `over ${name}`).join(' and '),
      `turned ${turns}`,
    ]
      .filter((part) => part !== '')
      .join(', '),
  )

describe('a door with three cups', () => {
  const [cups, pull, ...more] = piecesOf(THREE_CUPS)

  test('one piece for the cups, folded over the hinge edge, its middle laid on a mark', () => {
    // The cup's middle is 22.5 from the left edge at all of them. The ends lie at 80 for the outer two only, so that the
    // distance along the edge is measured: 80, 360, 640.
    expect(cups?.pattern.name).toBe('hinge cup')
    expect(cups?.pattern.item).toBe('hinge 35 full')
    expect(cups && foldsOf(cups)).toEqual(['y0 22.5'])
    expect(cups?.lines).toEqual([1])
    expect(cups && placesOf(cups)).toEqual([
      '80 from bottom, over left, turned 0',
      '360 from bottom, over left, turned 0',
      '640 from bottom, over left, turned 0',
    ])
    // As it is printed: cup in the middle, dowels 9.5 above it and 22.5 beside it.
    expect(cups?.pattern.holes.map(({ at }) => at)).toEqual(
      expect.arrayContaining([
        [0, 0],
        [-22.5, 9.5],
        [22.5, 9.5],
      ]),
    )
    expect(cups?.pattern.holes).toHaveLength(3)
    expect(cups?.arrow).toBe('y0')
    expect(cups?.places[0].toward).toBe('left')
  })

  test('and one for the pull: 397 − 357 = 40 from the right edge, its middle at (296 + 424) / 2 = 360', () => {
    expect(pull && foldsOf(pull)).toEqual(['y1 40'])
    expect(pull && placesOf(pull)).toEqual(['360 from bottom, over right, turned 0'])
    expect(more).toEqual([])
  })

  test('serves the door of the other hand when it is turned half round', () => {
    const [hands] = piecesOf(THREE_CUPS, { others: [OTHER_HAND] })
    expect(hands?.hands).toEqual([{ name: 'right door', turns: 2, toward: 'right' }])
  })

  test('and so does a corner piece with a fold for each hand: 80 from the bottom, 80 from the top', () => {
    // Without the middle cup all places are corners.
    const outer = (panel: Panel): Panel => ({
      ...panel,
      bores: panel.bores.filter(({ at }) => Math.abs(at[0] - 360) > 70),
    })
    const [corner] = piecesOf(outer(THREE_CUPS), { others: [outer(OTHER_HAND)] })
    expect(corner && foldsOf(corner)).toEqual(['y0 22.5', 'x0 80', 'x1 80'])
    expect(corner?.hands).toEqual([{ name: 'right door', turns: 2, toward: 'right' }])
  })

  test('but not one whose dowels are otherwise', () => {
    const other: Panel = {
      ...OTHER_HAND,
      bores: OTHER_HAND.bores.map((bore) => (bore.diameter === 8 ? { ...bore, depth: 10 } : bore)),
    }
    expect(piecesOf(THREE_CUPS, { others: [other] })[0]?.hands).toEqual([])
  })
})

describe('a side with plates and a slide', () => {
  const pieces = piecesOf(PLATES)

  test('the plates: between the holes, 37 from the front edge', () => {
    const plate = pieces.find(({ pattern }) => pattern.name === 'hinge plate')
    expect(plate && foldsOf(plate)).toEqual(['y0 37'])
    // 64 + 16 and 624 + 16; 800 − 640 = 160 from the top is too far for a fold.
    expect(plate && placesOf(plate)).toEqual([
      '80 from bottom, over front, turned 0',
      '640 from bottom, over front, turned 0',
    ])
  })

  test('a slide of 352 mm is longer than a sheet of 238: two stretches of 128 mm, which are one piece', () => {
    const slides = pieces.filter(({ pattern }) => pattern.name === 'drawer slide')
    expect(slides).toHaveLength(2)
    // 37 to 165 folds over the front edge; 261 to 389 does not reach an edge (560 − 389 = 171 from the back).
    expect(slides.map(foldsOf)).toEqual([['y0 37'], []])
    expect(slides.map(placesOf)).toEqual([
      ['300 from bottom, over front, turned 0'],
      ['300 from bottom and 261 from front, turned 0'],
    ])
    expect(slides.map(({ pattern }) => pattern.holes.map(({ at }) => at))).toEqual([
      [
        [0, 0],
        [0, 128],
      ],
      [
        [0, 0],
        [0, 128],
      ],
    ])
  })

  test('what strips have marked is left out', () => {
    const marked = new Set(PLATES.bores.filter(({ purpose }) => purpose === 'hinge plate').map(({ id }) => id))
    expect(piecesOf(PLATES, { marked }).map(({ pattern }) => pattern.name)).toEqual(['drawer slide', 'drawer slide'])
  })
})

describe('four casters in the corners of a bottom', () => {
  // A plate of 60 × 80 holes reaches 30 to the sides and 40 to front and back. Left front: edges at x 60 and y 70. The
  // other hand is no turn of the paper, but the plate is even: with a fold at 60 on both sides one piece serves all
  // corners, at the back turned half round.
  test('one piece with a fold for each hand and nothing to measure', () => {
    const [piece, ...more] = piecesOf(CASTERS)
    expect(more).toEqual([])
    expect(piece && [...foldsOf(piece)].sort()).toEqual(['x0 60', 'y0 70', 'y1 70'])
    expect(piece?.lines).toEqual([])
    expect(piece?.places.map(({ at }) => at)).toEqual([
      [60, 70],
      [540, 70],
      [540, 450],
      [60, 450],
    ])
    expect(piece && placesOf(piece)).toEqual([
      'over left and over front, turned 0',
      'over right and over front, turned 2',
      'over right and over back, turned 2',
      'over left and over back, turned 0',
    ])
  })

  test('without second folds the distance from the front is measured: 70, 450', () => {
    const [piece] = piecesOf(CASTERS, { corners: false })
    expect(piece && foldsOf(piece)).toEqual(['x0 60'])
    expect(piece && placesOf(piece)).toEqual([
      '70 from front, over left, turned 0',
      '70 from front, over right, turned 2',
      '450 from front, over right, turned 2',
      '450 from front, over left, turned 0',
    ])
  })
})

test('a pull 160 from the nearest edge has two centre lines and two distances', () => {
  // Its middle: (336 + 464) / 2 = 400.
  const [piece, ...more] = piecesOf(LONE_PULL)
  expect(more).toEqual([])
  expect(piece && foldsOf(piece)).toEqual([])
  expect(piece?.lines).toEqual([1, 0])
  expect(piece && placesOf(piece)).toEqual(['400 from left and 160 from bottom, turned 0'])
})

test('a cam and its bolt in the edge are one piece: the bolt lies 9 beyond the fold', () => {
  const [piece, ...more] = piecesOf(CAMS)
  expect(more).toEqual([])
  expect(piece?.pattern.name).toBe('cam')
  expect(piece && foldsOf(piece)).toContain('x0 34')
  const flat = piece?.pattern.holes.map(({ at, flap }) => [...at, flap?.side])
  expect(flat).toEqual([
    [0, 0, undefined],
    [-34 - 9, 0, 'x0'],
  ])
  // 50 from the front for one, 300 − 250 = 50 from the back for the other: a corner of each hand.
  expect(piece && placesOf(piece)).toEqual(['over left and over front, turned 0', 'over left and over back, turned 0'])
})

describe('an opening and a groove that are larger than a sheet', () => {
  const pieces = piecesOf(INSERT)

  test('the four corners are one piece, turned a quarter from each to the next', () => {
    const corners = pieces.filter(({ pattern }) => pattern.name === 'opening for the insert')
    // Its sides at 190, 510, 170 and 410: what a person measures to.
    const places = corners.flatMap(({ places }) => places.map(({ at, turns }) => [...at.map(roundMm), turns]))
    expect(corners).toHaveLength(1)
    expect(places.map(([x, y]) => [x, y]).sort()).toEqual([
      [190, 170],
      [190, 410],
      [510, 170],
      [510, 410],
    ])
    expect(places.map(([, , turns]) => turns).sort()).toEqual([0, 1, 2, 3])
    expect(corners[0]?.lines).toEqual([1, 0])
  })

  test('the ends of the groove: 60 from the left and 700 − 640 = 60 from the right, its middle 580 − 486 = 94 from the back', () => {
    const ends = pieces.filter(({ pattern }) => pattern.name === 'track slot')
    expect(ends).toHaveLength(1)
    expect(ends.map(foldsOf)).toEqual([['x0 60', 'y1 94', 'y0 94']])
    expect(ends.map(placesOf)).toEqual([['over left and over back, turned 0', 'over right and over back, turned 2']])
    expect(
      piecesOf(INSERT, { corners: false })
        .filter(({ folds }) => folds.length > 0)
        .map(placesOf),
    ).toEqual([['486 from front, over left, turned 0', '486 from front, over right, turned 2']])
  })
})

test('no side of a piece is too short to hold, though little is on it', () => {
  // Two holes on a line with 9 mm of paper about them, and words of 5 mm: some 23 mm across without more.
  const pieces = piecesOf(LONE_PULL, { ways: () => [{ width: 10, height: 5 }] })
  const sides = pieces.flatMap(({ paper: { min, max } }) => [max[0] - min[0], max[1] - min[1]])
  expect(roundMm(Math.min(...sides))).toBe(40)
})

describe('the last stage of a budget', () => {
  const SHEET = { paper: { width: 210, height: 297 }, margin: 10, reserve: { left: 11, bottom: 39 } }

  test('says what it marks: all of a face', () => {
    const { pieces, marked } = hardwarePlanner(THREE_CUPS, SHEET, () => [WORDS])('A', new Set())
    expect([...marked].sort()).toEqual(THREE_CUPS.bores.map(({ id }) => id).sort())
    expect(pieces.map(({ label }) => label)).toEqual(['HA1', 'HA2'])
    expect(pieces[0]?.use.name).toBe('hinge cup, hinge 35 full')
    expect(pieces[0]?.use.places.map(({ at }) => at)).toEqual([
      [80, 22.5],
      [360, 22.5],
      [640, 22.5],
    ])
  })
})
