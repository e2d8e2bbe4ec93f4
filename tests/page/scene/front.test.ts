import { describe, expect, it } from 'vitest'
import { ownBox } from '../../../src/assembly/index.ts'
import { extent, placedBox } from '../../../src/geometry/index.ts'
import { openPose } from '../../../src/page/scene/fronts.ts'
import { sceneOf } from '../../../src/page/scene/index.ts'
import { built, ROUND_STOCK } from '../../support/define.ts'
import { cupboard, hole, look, wordsOf } from './cupboard.ts'
import { laidSample, panelIn } from './laid.ts'

const front = (doors: 'on' | 'off' | 'open') => look({ kind: 'front', module: 'cupboard', doors })

describe('a module from the front', () => {
  it('shows its boards where they are, the upper side of the carcase at 0', () => {
    const scene = front('off')
    const part = (name: string) => scene.parts.find(({ key }) => key === `cupboard/${name}`)?.d
    expect(part('left-side')).toBe('M0 18L18 18L18 720L0 720z')
    expect(part('fixed-shelf-1')).toBe('M18 218L582 218L582 236L18 236z')
    expect(part('top')).toBe('M0 0L600 0L600 18L0 18z')
    expect(part('door')).toBeUndefined()
  })

  it('gives the outer sizes and those of the openings', () => {
    // The lower one holds a loose shelf: its size stands in a part of it, and says that it is that of the whole.
    // From the inside of the left side to that of the right: 564; from the bottom's upper face to the shelf: 484 − 18 = 466.
    expect(wordsOf(front('off'), 'size')).toEqual(['100', '564 × 200', '600', '720', '820', 'opening 564 × 466'])
    const openings = front('on').parts.filter(({ kind }) => kind === 'opening')
    expect(openings.map(({ d, title, at }) => [d, title, at?.slice(-2)])).toEqual([
      ['M18 18L582 18L582 218L18 218z', 'opening 564 × 200', ['stacked', 0]],
      ['M18 236L582 236L582 702L18 702z', 'opening 564 × 466', ['stacked', 1]],
    ])
  })

  // What is painted later lies over it, and is what a pointer finds. The back, which one sees through an opening, lies under it.
  it('paints openings over the back and under all that one sees in them', () => {
    const order = (doors: 'on' | 'off') => {
      const parts = front(doors).parts.map(({ key }) => key.replace('cupboard/', ''))
      return (name: string): number => parts.indexOf(name)
    }
    const [off, on] = [order('off'), order('on')]
    for (const opening of ['opening 1', 'opening 2']) {
      expect(off('back')).toBeGreaterThanOrEqual(0)
      expect(off('back')).toBeLessThan(off(opening))
      for (const board of ['shelf-1', 'fixed-shelf-1', 'left-side', 'top'])
        expect(off(board)).toBeGreaterThan(off(opening))
      expect(on('door')).toBeGreaterThan(on(opening))
    }
  })

  it('with the doors shut shows what is in them, and nothing behind them', () => {
    const scene = front('on')
    // The lower cup: 1.5 + 22.5 from the left, 1.5 + 78.5 over the underside; bored from behind: hidden.
    expect(hole(scene, 'door#bore-2')).toMatchObject({ at: [24, 640], place: [24, 0, 80], hidden: true, radius: 17.5 })
    expect(scene.holes.map(({ id }) => id)).not.toContain('cupboard/left-side#bore-3')
    // The usual triangle: from the corners away from the hinges to the middle of the hinge edge.
    expect(scene.parts.find(({ key }) => key === 'cupboard/door hinge side')?.d).toBe(
      'M598.5 219.5L1.5 469L598.5 718.5',
    )
    expect(wordsOf(scene, 'name')).toEqual(['door'])
  })

  it('without its fronts shows rows inside as strokes, hidden by the wood before them', () => {
    // A pin 13 deep in the inside of the left side, 416 over the underside: from x 18 to x 5.
    const pin = hole(front('off'), 'left-side#bore-2')
    expect(pin).toMatchObject({ at: [18, 304], hidden: true })
    expect(pin.d).toBe('M18 304L5 304')
  })

  it('with the doors open shows them edge on, cups as strokes', () => {
    const scene = front('open')
    // The hidden face looks to the right, its thickness from the hinge edge: x 19.5; the cup 12.5 deep to the left of it.
    expect(scene.parts.find(({ key }) => key === 'cupboard/door')?.d).toBe(
      'M1.5 219.5L19.5 219.5L19.5 718.5L1.5 718.5z',
    )
    expect(hole(scene, 'door#bore-2')).toMatchObject({ d: 'M19.5 640L7 640', hidden: true })
  })

  it('shows casters standing on the floor', () => {
    // A wheel of 75 under a height of 100 stands 100 under the carcase: its middle 820 − 37.5 down, 85 from the left.
    const wheels = front('on').parts.filter(({ kind, d }) => kind === 'hardware' && d.includes('a37.5'))
    expect(wheels.map(({ d }) => d)).toContain('M47.5 782.5a37.5 37.5 0 1 0 75 0a37.5 37.5 0 1 0 -75 0z')
  })

  it('turns fronts about their hinge edges, so that they stand out before it', () => {
    const studio = laidSample('pottery-studio')
    const box = (id: string) => {
      const panel = panelIn(studio, id)
      return { shut: placedBox(panel.moduleFromPanel, ownBox(panel)), open: placedBox(openPose(panel), ownBox(panel)) }
    }
    const right = box('glaze-store/door-right')
    expect(right.open.max[0]).toBeCloseTo(right.shut.max[0], 9)
    expect(extent(right.open, 0)).toBeCloseTo(extent(right.shut, 1), 9)
    expect(right.open.max[1]).toBeCloseTo(right.shut.min[1], 9)
    const flap = box('mould-store/flap')
    expect(extent(flap.open, 2)).toBeCloseTo(extent(flap.shut, 1), 9)
    expect(extent(flap.open, 1)).toBeCloseTo(extent(flap.shut, 2), 9)
    const fixed = box('mould-store/front-panel-1')
    expect(fixed.open).toEqual(fixed.shut)
  })

  it('follows bays that are split again, as the definition lists them', () => {
    const of = built(`${ROUND_STOCK}
modules:
  case:
    width: 900
    depth: 400
    carcase height: 800
    stock: board
    carcase: { top: over, bottom: over, back: none }
    inside:
      side by side:
        - size: 300
          stacked: [{ size: 100 }, {}]
        - stacked: [{}, { size: 250 }]
`)
    const titles = sceneOf(of, { kind: 'front', module: 'case', doors: 'on' })
      .parts.filter(({ kind }) => kind === 'opening')
      .map(({ title }) => title)
    // Inside 864 × 764. The left bay 300; its upper part 100, the lower 764 − 18 − 100 = 646. The right bay 864 − 18 − 300 = 546;
    // above 764 − 18 − 250 = 496, below 250.
    expect(titles).toEqual(['opening 300 × 100', 'opening 300 × 646', 'opening 546 × 496', 'opening 546 × 250'])
  })

  it('has no front view of a worktop over several modules', () => {
    const studio = laidSample('pottery-studio')
    expect(() => sceneOf(studio, { kind: 'front', module: 'worktop-1', doors: 'on' })).toThrow(
      'nothing to see from the front: no cabinet worktop-1',
    )
    expect(cupboard.assembly.modules).toHaveLength(1)
  })
})
