import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type Area,
  discMeets,
  holds,
  type LabelRequest,
  lineMeets,
  linesCross,
  type Obstacle,
  overlaps,
  placeLabels,
} from '../../src/drawing/index.ts'

const SHEET: Area = { min: [0, 0], max: [100, 100] }
const label = (over: Partial<LabelRequest>): LabelRequest => ({
  key: 'A',
  forms: [
    { width: 20, height: 5 },
    { width: 4, height: 5 },
  ],
  targets: [{ at: [50, 50], radius: 2 }],
  sides: ['right', 'left', 'above right'],
  gap: 2,
  reach: 40,
  ...over,
})

describe('labels', () => {
  // Radius 2 and gap 2: the label begins at x = 54 and is centred on y = 50.
  test('the first side wins where it is free', () => {
    expect(placeLabels([label({})], [], SHEET)).toEqual([
      { key: 'A', form: 0, area: { min: [54, 47.5], max: [74, 52.5] } },
    ])
  })

  test('the next side where something lies in the way', () => {
    const wall: Obstacle = { kind: 'line', from: [60, 0], to: [60, 100] }
    expect(placeLabels([label({})], [wall], SHEET)).toEqual([
      { key: 'A', form: 0, area: { min: [26, 47.5], max: [46, 52.5] } },
    ])
  })

  test('away with a leader where no side is free', () => {
    const crowd: Obstacle[] = [
      { kind: 'disc', at: [58, 50], radius: 3 },
      { kind: 'disc', at: [42, 50], radius: 3 },
      { kind: 'disc', at: [56, 57], radius: 3 },
    ]
    const [placed] = placeLabels([label({})], crowd, SHEET)
    expect(placed?.form).toBe(0)
    expect(placed?.leader).toBeDefined()
  })

  test('no leader lies on a line, though it may cross it', () => {
    // From (50, 50) straight up, past lines that end at y = 56, with the label above them.
    const bare = label({ targets: [{ at: [50, 50], radius: 0 }], sides: ['above'] })
    const upright: Obstacle = { kind: 'line', from: [50, 50], to: [50, 56], open: true }
    const level: Obstacle = { kind: 'line', from: [40, 56], to: [60, 56], open: true }
    expect(placeLabels([bare], [upright], SHEET)).toEqual([])
    const [placed] = placeLabels([bare], [level], SHEET)
    expect(placed?.leader?.from).toEqual([50, 50])
    expect(placed?.leader?.to[1]).toBeGreaterThan(56)
  })

  test('the short form where the long one fits nowhere', () => {
    const [placed] = placeLabels([label({})], [], { min: [40, 40], max: [59, 60] })
    expect(placed).toEqual({ key: 'A', form: 1, area: { min: [54, 47.5], max: [58, 52.5] } })
  })

  test('left out where nothing fits', () => {
    expect(placeLabels([label({})], [], { min: [48, 48], max: [52, 52] })).toEqual([])
  })

  test('a leader crosses an open line and not a closed one', () => {
    const room: Area = { min: [0, 0], max: [100, 100] }
    // Nothing fits in the narrow strip to the right of x = 45 but under the line y = 60.
    const blocks: Obstacle[] = [{ kind: 'area', area: { min: [0, 0], max: [100, 49] } }]
    const line = (open: boolean): Obstacle => ({ kind: 'line', from: [0, 53], to: [100, 53], open })
    const above = label({ sides: ['above'], reach: 20 })
    expect(placeLabels([above], [...blocks, line(true)], room)).toHaveLength(1)
    expect(placeLabels([above], [...blocks, line(false)], room)).toEqual([])
  })

  // Above right begins at (48, 54), 2 from its own rim; the bore at (58, 63) reaches down to 61, 2 above the label's top.
  test('without a leader, a label is not set where the bore of another lies as near as its own', () => {
    const rivals = [{ at: [58, 63], radius: 2 }] as const
    const above = label({ sides: ['above right'], forms: [{ width: 20, height: 5 }] })
    expect(placeLabels([above], [], SHEET)[0]?.leader).toBeUndefined()
    expect(placeLabels([{ ...above, rivals }], [], SHEET)[0]?.leader).toBeDefined()
    const further = [{ at: [58, 66], radius: 2 }] as const
    expect(placeLabels([{ ...above, rivals: further }], [], SHEET)[0]?.leader).toBeUndefined()
  })

  test('a second label keeps off the first and off its leader', () => {
    const both = placeLabels([label({}), label({ key: 'B' })], [], SHEET)
    expect(both.map((one) => [one.key, one.area.min])).toEqual([
      ['A', [54, 47.5]],
      ['B', [26, 47.5]],
    ])
  })

  test('nothing overlaps, whatever is asked', () => {
    const point = fc.tuple(fc.integer({ min: 0, max: 100 }), fc.integer({ min: 0, max: 100 }))
    fc.assert(
      fc.property(fc.array(point, { minLength: 1, maxLength: 25 }), (points) => {
        const discs = points.map((at): Obstacle => ({ kind: 'disc', at, radius: 2 }))
        const requests = points.map((at, k) => label({ key: `${k}`, targets: [{ at, radius: 2 }] }))
        const placed = placeLabels(requests, discs, SHEET)
        expect(placeLabels(requests, discs, SHEET)).toEqual(placed)
        placed.forEach((one, k) => {
          expect(holds(SHEET, one.area)).toBe(true)
          for (const at of points) expect(discMeets(one.area, at, 2)).toBe(false)
          for (const other of placed.slice(k + 1)) {
            expect(overlaps(one.area, other.area)).toBe(false)
            if (other.leader) expect(lineMeets(one.area, other.leader.from, other.leader.to)).toBe(false)
            if (one.leader) expect(lineMeets(other.area, one.leader.from, one.leader.to)).toBe(false)
            if (one.leader && other.leader) {
              const { from, to } = other.leader
              expect(linesCross(one.leader.from, one.leader.to, from, to)).toBe(false)
            }
          }
        })
      }),
      { numRuns: 200 },
    )
  })
})

describe('areas', () => {
  const box: Area = { min: [10, 10], max: [20, 20] }
  test('touching is not overlapping', () => {
    expect(overlaps(box, { min: [20, 10], max: [30, 20] })).toBe(false)
    expect(overlaps(box, { min: [19.999, 10], max: [30, 20] })).toBe(true)
  })
  // The corner (20, 20) is √2 from (21, 21).
  test('a disc meets a corner only when it reaches it', () => {
    expect(discMeets(box, [21, 21], 1.41)).toBe(false)
    expect(discMeets(box, [21, 21], 1.42)).toBe(true)
  })
  test('a line meets what it passes through, not what it stops short of or runs along', () => {
    expect(lineMeets(box, [0, 0], [30, 30])).toBe(true)
    expect(lineMeets(box, [0, 0], [9, 9])).toBe(false)
    expect(lineMeets(box, [0, 20], [30, 20])).toBe(false)
    expect(lineMeets(box, [15, 0], [15, 30])).toBe(true)
  })
})
