import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { facesDrawn, mouthRadius } from '../../../src/drawing/index.ts'
import type { LaidOut } from '../../../src/outputs/index.ts'
import { isInEdge } from '../../../src/page/scene/bores.ts'
import { type Scene, sceneOf } from '../../../src/page/scene/index.ts'
import { wordArea } from '../../../src/page/scene/picture.ts'
import { anyDefinition } from '../../support/random.ts'
import { sampleStems } from '../../support/samples.ts'
import { cupboard, hole, look, rounded, wordsOf } from './cupboard.ts'
import { laidOut, laidSample } from './laid.ts'

const A = look({ kind: 'face', panel: 'cupboard/left-side', face: 'A' })
const B = look({ kind: 'face', panel: 'cupboard/left-side', face: 'B' })

describe('a face', () => {
  it('has its holes where they are marked, the front edge down', () => {
    // 286 along from the top edge, which is on the left, and 37 up from the front of a panel that is 534 wide.
    expect(hole(A, 'left-side#bore-2')).toMatchObject({
      at: [286, 497],
      place: [286, 37, 0],
      hidden: false,
      radius: 2.5,
    })
    expect(hole(A, 'left-side#bore-2').d).toBe('M283.5 497a2.5 2.5 0 1 0 5 0a2.5 2.5 0 1 0 -5 0z')
  })

  it('shows from the other side what is there: mirrored, and what is blind hidden', () => {
    expect(hole(B, 'left-side#bore-2')).toMatchObject({ at: [416, 497], place: [416, 37, 0], hidden: true })
    // A screw from the outside, counterbored to 10 there: through on both faces, its counterbore only where it is.
    expect(hole(A, 'left-side#bore-25')).toMatchObject({ at: [209, 484], hidden: false })
    expect(hole(A, 'left-side#bore-25').d).toBe('M205.5 484a3.5 3.5 0 1 0 7 0a3.5 3.5 0 1 0 -7 0z')
    expect(hole(B, 'left-side#bore-25').d).toContain('a5 5 0 1 0 10 0')
  })

  it('shows holes in the edges as they run inside', () => {
    // 35 deep and 5 wide, from the top edge, 50 from the front: y from 481.5 to 486.5.
    expect(hole(A, 'left-side#bore-33')).toMatchObject({ at: [0, 484], hidden: true })
    expect(hole(A, 'left-side#bore-33').d).toBe('M0 486.5L35 486.5L35 481.5L0 481.5z')
    expect(hole(B, 'left-side#bore-33').d).toBe('M702 481.5L667 481.5L667 486.5L702 486.5z')
  })

  it('says what a title block says, names the edges and gives the sizes', () => {
    expect(A.title).toBe('cupboard: left side, face A')
    expect(A.facts).toEqual([
      ['size', '702 × 534'],
      ['thickness', '18'],
      ['stock', 'board'],
      ['grain', 'along the length'],
      ['face', 'A, inside'],
      ['holes', '42'],
    ])
    expect(wordsOf(A, 'edge')).toEqual(['back', 'bottom', 'front', 'top'])
    expect(wordsOf(A, 'size')).toEqual(['534', '702'])
    // The front is marked: from end to end of the lower edge.
    expect(A.parts.find(({ kind }) => kind === 'edge')?.d).toBe('M0 534L702 534')
  })

  it('has corners to measure from, and the edges between them', () => {
    expect(A.snaps.map(({ place }) => place)).toEqual([
      [0, 0, 0],
      [702, 0, 0],
      [702, 534, 0],
      [0, 534, 0],
    ])
    expect(A.edges.map(({ from, to }) => [rounded(from.at), rounded(to.at)])).toEqual([
      [
        [0, 534],
        [702, 534],
      ],
      [
        [702, 534],
        [702, 0],
      ],
      [
        [702, 0],
        [0, 0],
      ],
      [
        [0, 0],
        [0, 534],
      ],
    ])
  })

  it('goes round the notches, and draws arcs as arcs', () => {
    const studio = laidSample('pottery-studio')
    const partition = sceneOf(studio, { kind: 'face', panel: 'bisque-shelves/partition-1', face: 'A' })
    // Four corners, two of them taken off: three in the place of each.
    expect(partition.parts[0]?.d.match(/[ML]/g)).toHaveLength(8)
    const top = sceneOf(studio, { kind: 'face', panel: 'grinding-bench/machine-top', face: 'A' })
    expect(top.parts.filter(({ kind }) => kind === 'cutout').every(({ d }) => d.includes('A'))).toBe(true)
    expect(top.parts.map(({ kind }) => kind)).toEqual(expect.arrayContaining(['groove', 'pocket', 'cutout']))
  })
})

/** Words that lie on a hole that is seen, or on other words. */
function covered(laid: LaidOut, scene: Scene): string[] {
  const areas = scene.words.map((word) => ({ text: word.text, kind: word.kind, ...wordArea(word, scene.textSize) }))
  const bores = new Map(laid.panels.flatMap((panel) => panel.bores.map((bore) => [`${panel.id}#${bore.id}`, bore])))
  return areas.flatMap((word, k) => {
    const others = areas.filter(
      (other, n) =>
        n > k &&
        word.min[0] < other.max[0] &&
        other.min[0] < word.max[0] &&
        word.min[1] < other.max[1] &&
        other.min[1] < word.max[1],
    )
    const holes = scene.holes.filter(({ id, at: [x, y] }) => {
      const bore = bores.get(id)
      // Of holes in the edges the mouth alone: names of edges stand outside.
      const radius = bore === undefined || isInEdge(bore) ? 0 : mouthRadius(bore)
      return (
        x + radius > word.min[0] && x - radius < word.max[0] && y + radius > word.min[1] && y - radius < word.max[1]
      )
    })
    return [
      ...others.map(({ text }) => `${word.text} on ${text}`),
      ...(word.kind === 'tag' ? holes.map(({ id }) => `${word.text} on ${id}`) : []),
    ]
  })
}

const coveredOn = (laid: LaidOut): string[] =>
  laid.panels.flatMap((panel) =>
    facesDrawn(panel).flatMap((face) =>
      covered(laid, sceneOf(laid, { kind: 'face', panel: panel.id, face })).map(
        (words) => `${panel.id} ${face}: ${words}`,
      ),
    ),
  )

describe('the words on a face', () => {
  it('lie on no hole and on no other words', () => {
    expect(coveredOn(cupboard)).toEqual([])
    for (const stem of sampleStems) expect(coveredOn(laidSample(stem))).toEqual([])
  })

  it('nor on any other panel', () => {
    fc.assert(
      fc.property(anyDefinition, (text) => {
        expect(coveredOn(laidOut(text))).toEqual([])
      }),
      { numRuns: 5 },
    )
  })

  it('are few, and beside rows of holes alone', () => {
    // Rows of pins from 286 to 606 from the top, every 32: eleven each; that of the back has room under it.
    expect(wordsOf(A, 'tag').filter((words) => words === '11 × 5 deep 13, every 32')).toHaveLength(2)
    expect(wordsOf(A, 'tag').length).toBeLessThanOrEqual(12)
  })
})
