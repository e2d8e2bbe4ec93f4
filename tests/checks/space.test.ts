import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Finding } from '../../src/checks/index.ts'
import { spaceBy } from '../../src/checks/space/index.ts'
import { inverse } from '../../src/checks/space/scene.ts'
import { firstTurn } from '../../src/checks/space/turning.ts'
import { subjectOf } from '../../src/checks/subject.ts'
import {
  type Box,
  boxIndex,
  compose,
  IDENTITY,
  nearPairs,
  place,
  poseOf,
  type Vec2,
  Y,
  Z,
} from '../../src/geometry/index.ts'
import type { Built } from '../../src/outputs/index.ts'
import { applyEdits } from '../../src/project/index.ts'
import { built } from '../support/define.ts'
import { anyDefinition } from '../support/random.ts'
import '../support/seed.ts'
import { ruleCases } from './cases/index.ts'

const rectangle = (u0: number, u1: number, v0: number, v1: number): Vec2[] => [
  [u0, v0],
  [u1, v0],
  [u1, v1],
  [u0, v1],
]
const DOOR = rectangle(0, 600, -18, 0)
const degrees = (turn: number | undefined): number => ((turn ?? Number.NaN) * 180) / Math.PI

describe('a door turning about its outer corner', () => {
  test('meets a wall across its way where its free edge comes to it', () => {
    // sin 30° = 300 / 600.
    expect(degrees(firstTurn(DOOR, rectangle(-1000, 1000, 300, 400)))).toBeCloseTo(30, 9)
  })

  test('meets a corner with its face', () => {
    // tan 45° = 200 / 200, nearer than the free edge.
    expect(degrees(firstTurn(DOOR, rectangle(0, 200, 200, 250)))).toBeCloseTo(45, 9)
  })

  test('meets a wall beside its hinges beyond a right angle', () => {
    // 90° + asin 150 / 600.
    expect(degrees(firstTurn(DOOR, rectangle(-400, -150, 0, 900)))).toBeCloseTo(90 + 14.477512185929925, 9)
  })

  test('passes what lies beyond its far corner, and does not pass what lies before it', () => {
    // √(600² + 18²) = 600.27.
    expect(firstTurn(DOOR, rectangle(0, 600, 600.3, 700))).toBeUndefined()
    expect(firstTurn(DOOR, rectangle(0, 600, 600.2, 700))).toBeGreaterThan(Math.PI / 3)
  })

  test('agrees with turning it step by step', () => {
    const still = fc
      .tuple(
        fc.integer({ min: -700, max: 700 }),
        fc.integer({ min: 5, max: 700 }),
        fc.integer({ min: 5, max: 300 }),
        fc.integer({ min: 5, max: 300 }),
      )
      .map(([u, v, wide, deep]) => rectangle(u, u + wide, v, v + deep))
    fc.assert(
      fc.property(still, (corners) => {
        const turn = firstTurn(DOOR, corners) ?? 2 * Math.PI
        // Just before it they are apart, and just after it they are not.
        expect(overlap(turned(DOOR, turn - 1e-4), corners)).toBe(false)
        if (turn < Math.PI) expect(overlap(turned(DOOR, turn + 1e-4), corners) || grazes(DOOR, corners)).toBe(true)
        for (let step = 1e-3; step < Math.min(turn, Math.PI); step += 0.02) {
          expect(overlap(turned(DOOR, step), corners)).toBe(false)
        }
      }),
      { numRuns: 300 },
    )
  })
})

const turned = (corners: readonly Vec2[], by: number): Vec2[] =>
  corners.map(([u, v]) => [u * Math.cos(by) - v * Math.sin(by), u * Math.sin(by) + v * Math.cos(by)])

/** Separating axes of two convex polygons. */
function overlap(a: readonly Vec2[], b: readonly Vec2[]): boolean {
  const axes = [a, b].flatMap((corners) =>
    corners.map(([u, v], k): Vec2 => {
      const [x, y] = corners[(k + 1) % corners.length] ?? [u, v]
      return [y - v, u - x]
    }),
  )
  return axes.every(([x, y]) => {
    const span = (corners: readonly Vec2[]): [number, number] => {
      const along = corners.map(([u, v]) => u * x + v * y)
      return [Math.min(...along), Math.max(...along)]
    }
    const [a0, a1] = span(a)
    const [b0, b1] = span(b)
    return a0 < b1 && b0 < a1
  })
}

/** Whether the nearest or farthest corner of the still one only just touches the circle of the door's far corner. */
function grazes(door: readonly Vec2[], still: readonly Vec2[]): boolean {
  const far = Math.max(...door.map(([u, v]) => Math.hypot(u, v)))
  const inner = Math.max(...door.map(([u]) => u))
  const near = Math.min(...still.map(([u, v]) => Math.hypot(u, v)), ...still.map(([, v]) => v))
  return near > inner - 0.5 && near < far + 0.5
}

const subject = ({ project, assembly, panels }: Built) => subjectOf(project, assembly, panels, () => undefined)

/** Every box is near every other, so that all are compared by what they are. */
const ALL = {
  index: (boxes: readonly Box[]) => () => boxes.map((_, k) => k),
  pairs: (boxes: readonly Box[]) => boxes.flatMap((_, a) => boxes.slice(a + 1).map((__, b) => [a, a + 1 + b] as const)),
}
const INDEXED = { index: boxIndex, pairs: nearPairs }

const plain = (findings: readonly Finding[]): string[] => findings.map((one) => JSON.stringify(one)).sort()

describe('looking for what is near', () => {
  test('finds what comparing all with all finds, on the cases of the rules', () => {
    for (const { trips } of ruleCases) {
      if (typeof trips !== 'string') continue
      const of = subject(built(trips))
      expect(plain(spaceBy(of, INDEXED))).toEqual(plain(spaceBy(of, ALL)))
    }
  })

  test('finds what comparing all with all finds, on any definition, and never throws', () => {
    const found = new Map<string, number>()
    fc.assert(
      fc.property(anyDefinition, (text) => {
        const of = subject(built(text))
        const findings = spaceBy(of, INDEXED)
        for (const { rule } of findings) found.set(rule, (found.get(rule) ?? 0) + 1)
        expect(plain(findings)).toEqual(plain(spaceBy(of, ALL)))
      }),
      { numRuns: 60 },
    )
    // The definitions are rich enough to show the difference.
    expect([...found.keys()].length).toBeGreaterThanOrEqual(4)
  })
})

test('what is offered clears what was found, on any definition, and spoils nothing', () => {
  let offered = 0
  const stops = (findings: readonly Finding[]): number => findings.filter(({ severity }) => severity === 'stop').length
  fc.assert(
    fc.property(anyDefinition, (text) => {
      const before = built(text)
      for (const { change, message } of spaceBy(subject(before), INDEXED)) {
        if (change === undefined) continue
        offered += 1
        const after = built(applyEdits(text, change))
        expect(after.findings.map((one) => one.message)).not.toContain(message)
        expect(stops(after.findings)).toBeLessThanOrEqual(stops(before.findings))
      }
    }),
    { numRuns: 60 },
  )
  expect(offered).toBeGreaterThan(3)
})

test('the inverse of a pose takes everything back', () => {
  const pose = poseOf(Y, Z, [10, 20, 30])
  const whole = compose(inverse(pose), pose)
  expect(place(whole, [1, 2, 3])).toEqual(place(IDENTITY, [1, 2, 3]))
})
