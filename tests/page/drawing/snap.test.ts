import { describe, expect, test } from 'vitest'
import { lengthWords, type MeasurePoint, measured, snapAt } from '../../../src/page/drawing/snap.ts'
import { handScene, hole } from './hand-scene.ts'

const corner = (x: number, y: number) => ({ at: [x, y], place: [x, 500 - y, 0], kind: 'corner' }) as const
const scene = handScene({
  holes: [hole('a', [37, 96]), hole('b', [37, 128])],
  snaps: [corner(0, 0), corner(700, 0)],
  edges: [{ from: corner(0, 0), to: corner(700, 0) }],
})
const snap = (x: number, y: number) => snapAt(scene, scene.holes, [x, y], 10)

describe('measuring snaps', () => {
  test('to middles of holes and to corners', () => {
    expect(snap(40, 100)).toEqual({ at: [37, 96], place: [37, 404, 0], kind: 'centre' })
    expect(snap(4, 5)).toEqual({ at: [0, 0], place: [0, 500, 0], kind: 'corner' })
  })

  test('to the nearest point of an edge, where no corner is near', () => {
    expect(snap(250, 4)).toEqual({ at: [250, 0], place: [250, 500, 0], kind: 'edge' })
    // Edges draw less far than corners: 6 of 10.
    expect(snap(250, 7)).toEqual({ at: [250, 7], kind: 'free' })
  })

  test('to nothing that is not shown', () => {
    expect(snapAt(scene, [], [37, 96], 10)).toEqual({ at: [37, 96], kind: 'free' })
  })

  test('and where the drawing is not flat, a free point has no place', () => {
    expect(snapAt({ ...scene, flat: false }, scene.holes, [300, 300], 10)).toBeUndefined()
  })
})

describe('on a facing pair', () => {
  // The left panel 300 wide with a notch of 100 × 100 at its upper right, the right one from 340 to 640: the fold is 40 wide.
  const ring = (of: string, points: readonly (readonly [number, number])[]) => {
    const snaps = points.map(([x, y]) => ({ ...corner(x, y), of }))
    return snaps.map((from, k) => ({ from, to: snaps[(k + 1) % snaps.length] ?? from }))
  }
  const pair = handScene({
    look: { kind: 'pair', panels: ['p', 'q'] },
    edges: [
      ...ring('p', [
        [0, 0],
        [200, 0],
        [200, 100],
        [300, 100],
        [300, 500],
        [0, 500],
      ]),
      ...ring('q', [
        [340, 0],
        [640, 0],
        [640, 500],
        [340, 500],
      ]),
    ],
  })
  const free = (x: number, y: number) => snapAt(pair, [], [x, y], 10)

  test('a free point belongs to the panel under it', () => {
    expect(free(150, 250)).toEqual({ at: [150, 250], kind: 'free', of: 'p' })
    expect(free(500, 250)).toEqual({ at: [500, 250], kind: 'free', of: 'q' })
  })

  test('off both, in the fold or in a notch, there is none', () => {
    for (const [x, y] of [
      [320, 250],
      [250, 50],
      [-50, 250],
      [700, 250],
    ] as const)
      expect(free(x, y)).toBeUndefined()
  })

  test('across the fold nothing is measured, however free the points are', () => {
    const [a, b, c] = [free(150, 250), free(500, 250), free(150, 290)]
    if (a === undefined || b === undefined || c === undefined) throw new Error('no point')
    expect(measured(pair.look, true, a, b)).toBeUndefined()
    expect(measured(pair.look, true, a, c)?.[0]).toEqual({ way: 'straight', mm: 40 })
  })
})

describe('what is measured', () => {
  const point = (at: readonly [number, number], place?: readonly [number, number, number]): MeasurePoint => ({
    at,
    kind: 'centre',
    ...(place && { place }),
  })
  const face = { kind: 'face', panel: 'p', face: 'A' } as const

  test('on a face: straight, across and up; 3, 4, 5', () => {
    expect(measured(face, true, point([10, 20]), point([13, 16]))).toEqual([
      { way: 'straight', mm: 5 },
      { way: 'across', mm: 3 },
      { way: 'up', mm: 4 },
    ])
  })

  // 2² + 3² + 6² = 49.
  test('in an isometric view between places, not on the drawing; 2, 3, 6, 7', () => {
    const look = { kind: 'isometric', apart: 0, turn: 0 } as const
    expect(measured(look, false, point([0, 0], [1, 1, 1]), point([99, 99], [3, 4, 7]))).toEqual([
      { way: 'straight', mm: 7 },
      { way: 'across', mm: 2 },
      { way: 'deep', mm: 3 },
      { way: 'up', mm: 6 },
    ])
    expect(measured(look, false, point([0, 0]), point([1, 1]))).toBeUndefined()
  })

  test('not between two panels of a pair', () => {
    const look = { kind: 'pair', panels: ['p', 'q'] } as const
    const of = (panel: string) => ({ ...point([0, 0], [0, 0, 0]), of: panel })
    expect(measured(look, true, of('p'), of('q'))).toBeUndefined()
    expect(measured(look, true, of('p'), { ...of('p'), at: [0, 32] })?.[0]).toEqual({ way: 'straight', mm: 32 })
  })

  // 32 / 25.4 = 1.25984 in; 1 17/64 = 1.265625 is 0.147 mm more: so it is said.
  test('in the units that are asked for', () => {
    expect(lengthWords(32, 'in')).toBe('1 17/64 in − 0.1 mm')
    expect(lengthWords(32.004, 'mm')).toBe('32 mm')
    expect(lengthWords(50.8, 'in')).toBe('2 in')
  })
})
