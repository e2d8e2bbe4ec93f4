import { describe, expect, test } from 'vitest'
import { type Box, boundsOfSolid, type Solid } from '../../src/geometry/index.ts'
import {
  type Body,
  bodiesOf,
  catalogue,
  findItem,
  type Item,
  type Surroundings,
  shankOf,
} from '../../src/hardware/index.ts'

const item = (id: string): Item => {
  const found = findItem(id)
  if (found === undefined) throw new Error(`no ${id}`)
  return found
}

const BOARDS: Surroundings = { thicknessOf: () => 18, setting: (name) => (name === 'collar' ? 20 : undefined) }

const bodies = (id: string, parts?: readonly string[]): Body[] => {
  const one = item(id)
  return bodiesOf(one, parts ?? Object.keys(one.parts), BOARDS)
}

const bounds = (body: Body | undefined): Box => {
  if (body === undefined) throw new Error('no such body')
  const { min, max } = boundsOfSolid(body.solid satisfies Solid)
  const round = (v: Box['min']): Box['min'] => [
    Math.round(v[0] * 1000) / 1000 + 0,
    Math.round(v[1] * 1000) / 1000 + 0,
    Math.round(v[2] * 1000) / 1000 + 0,
  ]
  return { min: round(min), max: round(max) }
}

const named = (id: string, name: Body['name'], part?: string): Box =>
  bounds(bodies(id).find((body) => body.name === name && (part === undefined || body.part === part)))

describe('shanks of screws', () => {
  test('a through screw begins flush with the far face of its first board', () => {
    // 18 of the first board, 45 − 18 = 27 in the second; thread 3 / 0.7 = 4.29 wide.
    const shank = shankOf(item('screw 4.5x45'), BOARDS)
    expect(shank?.from).toEqual([0, 0, -18])
    expect(shank?.length).toBe(45)
    expect(2 * (shank?.radius ?? 0)).toBeCloseTo(4.2857, 3)
    expect(named('screw 4.5x45', 'shank').max[2]).toBe(27)
  })

  test('a one-piece screw has its thread over its pilot', () => {
    // 5 / 0.7 = 7.14, but the hole that it passes is 7.
    expect(shankOf(item('one-piece screw 7x50'), BOARDS)?.radius).toBe(3.5)
  })

  test('a pocket screw begins at the floor of its pocket and leans by 15°', () => {
    // The floor lies 20 along the slant: 20 × cos 15° = 19.319, 20 × sin 15° = 5.176; the tip 32 on.
    const shank = shankOf(item('pocket screw 32'), BOARDS)
    expect(shank?.from[0]).toBeCloseTo(19.319, 3)
    expect(shank?.from[2]).toBeCloseTo(5.176, 3)
    expect((shank?.from[2] ?? 0) + 32 * (shank?.axis[2] ?? 0)).toBeCloseTo(13.459, 3)
  })

  test('what is no screw has none', () => {
    expect(shankOf(item('dowel 8x30'), BOARDS)).toBeUndefined()
  })
})

describe('what lies on the boards', () => {
  test('a joining bolt has its head on one board and the flange of its nut on the other', () => {
    // 0.7 × 7 + 2 = 6.9 high, 18 wide; the flange 19 wide and 4 high with the end of the bolt.
    expect(named('bolt M6', 'head')).toEqual({ min: [-9, -9, -24.9], max: [9, 9, -18] })
    expect(named('bolt M6', 'nut')).toEqual({ min: [-9.5, -9.5, 18], max: [9.5, 9.5, 22] })
  })

  test('a caster has its plate and circle below the bottom, its nuts above', () => {
    expect(named('caster 75', 'plate')).toEqual({ min: [-30, -30, -2], max: [30, 30, 0] })
    expect(named('caster 75', 'wheel')).toEqual({ min: [-75, -75, -100], max: [75, 75, 0] })
    // At −21.5: washers of 2 × 5.5 = 11, 0.7 × 5.5 + 2 = 5.85 high.
    expect(named('caster 75', 'nut')).toEqual({ min: [-27, -27, 18], max: [-16, -16, 23.85] })
    expect(named('fixed caster 75', 'wheel')).toEqual({ min: [-12.5, -37.5, -100], max: [12.5, 37.5, 0] })
  })

  test('a foot has its flange on the bottom and its pad on the floor', () => {
    expect(named('foot M8', 'nut')).toEqual({ min: [-11, -11, 18], max: [11, 11, 22] })
    expect(named('foot M8', 'pad').min[2]).toBe(-40)
  })

  test('a hinge has its plate about its holes, and its arm from the front edge of the wall', () => {
    // Holes 32 apart and 10 beyond them.
    expect(named('hinge 35 full', 'plate')).toEqual({ min: [-10, -26, -10], max: [10, 26, 0] })
    expect(named('hinge 35 full', 'arm')).toEqual({ min: [-37, -9, -25], max: [20, 9, 0] })
    // Cranked 19: 25 + 19.
    expect(named('hinge 35 inset', 'arm').min[2]).toBe(-44)
  })

  test('a slide fills the space between wall and box', () => {
    expect(named('slide 400', 'slide')).toEqual({ min: [0, -22.5, -12.7], max: [400, 22.5, 0] })
  })

  test('a pull stands before its front, with the heads of its screws behind it', () => {
    // 128 / 2 + 8 = 72.
    expect(named('pull 128', 'grip')).toEqual({ min: [-6, -72, -35], max: [6, 72, 0] })
    expect(bounds(bodies('pull 128', ['front']).find(({ name }) => name === 'screw head'))).toEqual({
      min: [-4, -68, 18],
      max: [4, -60, 21.1],
    })
  })

  test('the heads of a drawer pull lie in its box', () => {
    const heads = bodies('pull 128', ['front', 'box front']).filter(({ name }) => name === 'screw head')
    expect(heads.map(({ part }) => part)).toEqual(['box front', 'box front'])
  })
})

test('every item of the catalogue has bodies of finite size, or none', () => {
  for (const one of catalogue) {
    for (const body of bodiesOf(one, Object.keys(one.parts), BOARDS)) {
      expect(Object.keys(one.parts)).toContain(body.part)
      const { min, max } = boundsOfSolid(body.solid)
      expect([...min, ...max].every(Number.isFinite)).toBe(true)
      expect(([0, 1, 2] as const).every((k) => max[k] > min[k])).toBe(true)
    }
  }
})
