import { describe, expect, test } from 'vitest'
import { pageDrawings } from '../../src/drawing/pages/face-pages.ts'
import { faceView } from '../../src/drawing/pages/view.ts'
import type { Drawing, Point } from '../../src/drawing/types.ts'
import type { Panel } from '../../src/panel/index.ts'
import { allWords, circlesOf, entitiesOf, faults, linesOf, textsOf } from './page-faults.ts'
import { BOTTOM, FLAG, panelOf, row } from './page-panels.ts'

/** From the sheet to the frame of the face, by the bold lines of its lower left corner. */
function fromCorner(page: Drawing): (at: Point) => Point {
  const bold = linesOf(page, 'EDGE').filter((line) => line.pen === 'bold')
  const left = Math.min(...bold.filter(({ from, to }) => from[0] === to[0]).map(({ from }) => from[0]))
  const low = Math.min(...bold.filter(({ from, to }) => from[1] === to[1]).map(({ from }) => from[1]))
  return ([x, y]) => [round(x - left), round(y - low)]
}

const round = (mm: number): number => Math.round(mm * 1e6) / 1e6 + 0

/** 150 × 120, 18.1 thick: dowels in the left and the right end, 9 from face A; one in the back, 6 from it. */
const SMALL: Panel = panelOf({
  name: 'rail',
  length: 150,
  width: 120,
  bores: [
    ...row({ on: 'x0', x: 0, y: 30, z: -9, d: 8, deep: 21, series: 'left', purpose: 'dowel' }, [0, 60], 2),
    ...row({ on: 'x1', x: 150, y: 30, z: -9, d: 8, deep: 21, series: 'right', purpose: 'dowel' }, [0, 60], 2),
    { on: 'y1', x: 75, y: 120, z: -6, d: 5, deep: 30, series: 'back', purpose: 'screw pilot' },
  ],
})

describe('paper that folds down over an edge with bores in it', () => {
  const pages = pageDrawings(SMALL, 'A', 'A4', 'mm')
  const [page] = pages
  if (page === undefined) throw new Error('no page')
  const place = fromCorner(page)

  test('each bore lies beyond the fold by its distance from the face, at true size', () => {
    const circles = circlesOf(page, 'BORE').map(({ id, at, radius }) => [id, ...place(at), radius])
    // Left of 0 by 9; right of 150 by 9: 159; above 120 by 6: 126.
    expect(circles).toEqual([
      ['bore-1', -9, 30, 4],
      ['bore-2', -9, 90, 4],
      ['bore-3', 159, 30, 4],
      ['bore-4', 159, 90, 4],
      ['bore-5', 75, 126, 2.5],
    ])
    expect(circlesOf(page, 'BORE')[0]?.title).toBe('dowel 8 deep 21 in the bottom edge, 9 from face A, 30 from front')
  })

  test('a thin line where the surface of the edge ends, as far from the fold as the panel is thick', () => {
    const thin = linesOf(page, 'EDGE').filter((line) => line.pen === 'thin')
    expect(thin.map(({ from, to }) => [place(from), place(to)])).toEqual([
      [
        [-18.1, 0],
        [-18.1, 120],
      ],
      [
        [168.1, 0],
        [168.1, 120],
      ],
      [
        [0, 138.1],
        [150, 138.1],
      ],
    ])
    expect(allWords(pages).filter((words) => words.includes('fold again or cut'))).toHaveLength(3)
  })

  test('its corners are cut away, so that it folds on both sides of them', () => {
    // 22.1 beyond edges with a flap (18.1 and 4), 8 beyond the front: two corners of 22.1 × 22.1, two of 22.1 × 8.
    expect(faceView(SMALL, 'A').surround).toEqual({ x0: 22.1, x1: 22.1, y0: 8, y1: 22.1 })
    const words = textsOf(page).filter(({ text }) => text === 'cut away')
    const middles = words.map(({ at }) => place(at)[0])
    expect(middles).toEqual([-11.05, -11.05, 161.05, 161.05])
  })

  test('words say where: in the edge, and how far from this face', () => {
    const words = allWords(pages)
    expect(words).toContain('2 × 8 deep 21, collar at 21, 60 apart, in the edge, 9 from this face')
    expect(words).toContain('5 deep 30, collar at 30, in the edge, 6 from this face')
    expect(words).toContain('screw pilot: 75 from bottom')
    expect(pages.flatMap(faults)).toEqual([])
  })

  test('the holes are crossed like those of the face, no tick beside them', () => {
    const hairs = linesOf(page, 'MARK').filter((line) => line.pen === 'hair')
    const level = hairs.filter(({ from, to }) => place(from)[1] === 126 && place(to)[1] === 126)
    // From 0.8 beside the middle to 2.5 beyond the rim of 2.5: 75 + 0.8 to 75 + 5.
    expect(level.map(({ from, to }) => [place(from)[0], place(to)[0]])).toEqual([
      [75.8, 80],
      [74.2, 70],
    ])
    const dots = entitiesOf(page, 'MARK').filter((one) => one.kind === 'path' && one.filled === true)
    // A dot in each hole, and the heavy one of the datum corner.
    expect(dots).toHaveLength(6)
  })
})

test('every bore in an edge is whole on a page of face A, and none is on a page of face B', () => {
  const ids = (face: 'A' | 'B', paper: 'A4' | 'A3'): string[] =>
    pageDrawings(BOTTOM, face, paper, 'mm').flatMap((page) =>
      circlesOf(page, 'BORE').flatMap(({ id, radius }) => (radius === 4 && id !== undefined ? [id] : [])),
    )
  const dowels = BOTTOM.bores.filter(({ purpose }) => purpose === 'dowel').map(({ id }) => id)
  expect(dowels).toHaveLength(10)
  for (const paper of ['A4', 'A3'] as const) {
    expect([...new Set(ids('A', paper))].sort()).toEqual([...dowels].sort())
    expect(ids('B', paper)).toEqual([])
  }
})

test('a bore near the far face has room for its rim and its cross', () => {
  // 16 from face A, 5 across, in wood of 18.1: 16 + 2.5 + 4 = 22.5, more than 18.1 + 4.
  const low = panelOf({
    name: 'rail',
    length: 150,
    width: 120,
    bores: [{ on: 'y0', x: 60, y: 0, z: -16, d: 5, deep: 20 }],
  })
  expect(faceView(low, 'A').surround.y0).toBe(22.5)
})

test('a lipped edge is folded and bored with its lipping on, and says so', () => {
  const pages = pageDrawings({ ...SMALL, lipping: { y1: 2 } }, 'A', 'A4', 'mm')
  expect(allWords(pages)).toContain('5 deep 30, collar at 30, in the lipped edge, 6 from this face')
  expect(allWords(pages)).toContain('far corner of the edge, lipping on: fold again or cut')
})

test('a panel without bores in its edges has no flap', () => {
  const pages = pageDrawings(FLAG, 'A', 'A3', 'mm')
  expect(faceView(FLAG, 'A').surround).toEqual({ x0: 8, x1: 8, y0: 8, y1: 8 })
  expect(allWords(pages).filter((words) => /fold again|cut away/.test(words))).toEqual([])
})
