import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { boardBox } from '../../src/assembly/index.ts'
import type { Panel } from '../../src/panel/index.ts'
import { built } from '../support/define.ts'
import { bayTree, frontsDefinition } from '../support/random-fronts.ts'

const RUNS = { numRuns: 100 }
const TIGHT = 1e-6
const FRONTS = ['door', 'flap', 'fixed front']

/** What the definition says at a path, as raw data. */
function rawAt(text: string, path: Panel['at']): Record<string, unknown> {
  return path.reduce<unknown>((at, key) => (at as Record<string | number, unknown>)[key], JSON.parse(text)) as never
}

/** How far apart two panels are as one sees them from in front, mm; negative where they overlap. */
function apart(a: Panel, b: Panel): number {
  const [one, other] = [boardBox(a), boardBox(b)]
  const along = (axis: 0 | 2): number => Math.max(one.min[axis] - other.max[axis], other.min[axis] - one.max[axis])
  return Math.max(along(0), along(2))
}

describe('over random trees of bays with fronts', () => {
  test('no two fronts overlap, and overlay fronts leave the larger of the gaps that they ask for', () => {
    let faced = 0
    let halved = 0
    fc.assert(
      fc.property(frontsDefinition(3), (text) => {
        const fronts = built(text).panels.filter((panel) => FRONTS.includes(panel.role))
        fronts.forEach((a, k) => {
          for (const b of fronts.slice(k + 1)) {
            const [one, other] = [rawAt(text, a.at), rawAt(text, b.at)]
            const overlay = one.lay === 'overlay' && other.lay === 'overlay'
            const gap = overlay ? Math.max(Number.parseFloat(`${one.gap}`), Number.parseFloat(`${other.gap}`)) : 0
            expect(apart(a, b), `${a.name}, ${b.name}`).toBeGreaterThan(gap - TIGHT)
            faced += 1
            if (overlay && apart(a, b) < gap + TIGHT) halved += 1
          }
        })
      }),
      RUNS,
    )
    expect(faced).toBeGreaterThan(300)
    // The gaps are no larger than asked either, wherever two fronts meet over a panel.
    expect(halved).toBeGreaterThan(100)
  })

  test('nothing shares space, every mate is in line, every bore lies in its panel', () => {
    let hung = 0
    fc.assert(
      fc.property(frontsDefinition(2), (text) => {
        const of = built(text)
        const wrong = of.findings.filter(({ rule }) => rule === 'panels-overlap' || rule.startsWith('mate-'))
        expect(wrong.map(({ message }) => message)).toEqual([])
        const refused = new Set(
          of.findings.filter(({ rule }) => rule === 'hinge-height').flatMap(({ panels }) => panels),
        )
        for (const panel of of.panels) {
          if (panel.role === 'flap' || panel.role === 'fixed front') hung += panel.bores.length
          for (const bore of refused.has(panel.id) ? [] : panel.bores) {
            const end = bore.at.map((value, axis) => value + (bore.axis[axis] ?? 0) * bore.depth)
            for (const [x = 0, y = 0, z = 0] of [bore.at, end]) {
              const inside = Math.min(x, panel.length - x, y, panel.width - y, -z, z + panel.thickness) > -TIGHT
              expect(inside, `${panel.id} ${bore.purpose} at ${bore.at.join(', ')}`).toBe(true)
            }
          }
        }
      }),
      RUNS,
    )
    expect(hung).toBeGreaterThan(500)
  })

  test('plates on the two faces of one panel never meet by rule', () => {
    fc.assert(
      fc.property(frontsDefinition(2), (text) => {
        const of = built(text)
        const meet = of.findings.filter(
          ({ rule, message }) =>
            rule === 'fasteners-meet' ||
            (rule === 'bores-meet' &&
              /hinge plate.*face A.*hinge plate.*face B|hinge plate.*face B.*hinge plate.*face A/.test(message)),
        )
        expect(meet.map(({ message }) => message)).toEqual([])
      }),
      RUNS,
    )
  })
})

test('a flap with stays on both sides: the left side mirrors the right, and all that touches a board touches its face', () => {
  const flap = fc.record({
    width: fc.integer({ min: 6010, max: 9000 }).map((n) => n / 10),
    height: fc.integer({ min: 3000, max: 6000 }).map((n) => n / 10),
    hang: fc.constantFrom('top', 'bottom'),
    lay: fc.constantFrom('overlay', 'inset'),
    stays: fc.constant('both'),
    stock: fc.constantFrom('board', 'thick'),
  })
  let compared = 0
  fc.assert(
    fc.property(flap, ({ width, height, ...front }) => {
      const of = built(
        JSON.stringify({
          storyrod: 1,
          stock: { board: { thickness: 18 }, thick: { thickness: 20 } },
          modules: {
            box: {
              width,
              depth: 450,
              'carcase height': height,
              stock: 'board',
              carcase: { back: 'none', joint: 'dowel' },
              inside: { front: { kind: 'flap', ...front } },
            },
          },
        }),
      )
      const [left, right] = ['left-side', 'right-side'].map((key) => of.panels.find((panel) => panel.key === key))
      if (left === undefined || right === undefined) throw new Error('a module without sides')
      const print = (x: number, panel: Panel): string[] =>
        panel.bores
          .filter(({ purpose }) => purpose === 'flap stay')
          .map(({ at, depth }) => [Math.abs(x - at[0]), at[1], at[2], depth].map((mm) => mm.toFixed(6)).join(' '))
          .sort()
      expect(print(left.length, left)).toEqual(print(0, right))
      compared += print(0, right).length
      for (const panel of of.panels) {
        for (const { surface, at } of panel.bores) {
          const entry = {
            A: -at[2],
            B: panel.thickness + at[2],
            x0: at[0],
            x1: panel.length - at[0],
            y0: at[1],
            y1: panel.width - at[1],
          }
          expect(Math.abs(entry[surface])).toBeLessThan(TIGHT)
        }
      }
    }),
    RUNS,
  )
  expect(compared).toBe(200)
})

describe('trees of bays', () => {
  type Raw = { readonly [key: string]: unknown }
  const dividerCount = (bay: Raw): number =>
    ['side by side', 'stacked'].reduce((sum, key) => {
      const bays = (bay[key] ?? []) as Raw[]
      return sum + Math.max(0, bays.length - 1) + bays.reduce((inner, child) => inner + dividerCount(child), 0)
    }, 0)

  test('seven levels deep: as many dividers as asked, and no two panels in the same space', () => {
    fc.assert(
      fc.property(bayTree(7, false), (inside) => {
        const of = built(
          JSON.stringify({
            storyrod: 1,
            stock: { board: { thickness: 3, sheet: [9000, 9000] } },
            modules: {
              box: {
                width: 4000,
                depth: 300,
                'carcase height': 4000,
                stock: 'board',
                carcase: { joint: 'dowel', back: 'none' },
                inside,
              },
            },
          }),
        )
        const dividers = of.panels.filter(({ role }) => role === 'partition' || role === 'fixed shelf')
        expect(dividers).toHaveLength(dividerCount(inside))
        const boxes = of.panels.map(boardBox)
        boxes.forEach((a, k) => {
          for (const b of boxes.slice(k + 1)) {
            const gap = Math.max(...([0, 1, 2] as const).map((i) => Math.max(a.min[i] - b.max[i], b.min[i] - a.max[i])))
            expect(gap).toBeGreaterThan(-TIGHT)
          }
        })
      }),
      { numRuns: 25 },
    )
  })

  /** Clear sizes of an opening round a point, mm: to the nearest panels on its left, right, above and below. */
  function clearAt(panels: readonly Panel[], x: number, z: number): readonly [width: number, height: number] {
    const boxes = panels.filter(({ role }) => !['back', 'door', 'flap'].includes(role)).map(boardBox)
    const level = boxes.filter(({ min, max }) => min[2] < z && max[2] > z)
    const upright = boxes.filter(({ min, max }) => min[0] < x && max[0] > x)
    const left = Math.max(...level.filter(({ max }) => max[0] <= x).map(({ max }) => max[0]))
    const right = Math.min(...level.filter(({ min }) => min[0] >= x).map(({ min }) => min[0]))
    const below = Math.max(...upright.filter(({ max }) => max[2] <= z).map(({ max }) => max[2]))
    const above = Math.min(...upright.filter(({ min }) => min[2] >= z).map(({ min }) => min[2]))
    return [right - left, above - below]
  }

  test('six levels, each a size and a remainder in turn: the clear openings are as asked', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 60, max: 200 }), { minLength: 6, maxLength: 6 }), (sizes) => {
        // Each level takes `size` from the left, or from the top, and splits what remains.
        const inside = [...sizes].reverse().reduce<Raw>(
          (inner, size, k) => ({
            [(sizes.length - 1 - k) % 2 === 0 ? 'side by side' : 'stacked']: [{ size }, inner],
          }),
          {},
        )
        const of = built(
          JSON.stringify({
            storyrod: 1,
            stock: { board: { thickness: 18 } },
            modules: {
              box: {
                width: 1200,
                depth: 400,
                'carcase height': 1200,
                stock: 'board',
                carcase: { joint: 'dowel', back: 'none' },
                inside,
              },
            },
          }),
        )
        let [x, z] = [18, 1182]
        sizes.forEach((size, k) => {
          if (k % 2 === 0) {
            expect(clearAt(of.panels, x + size / 2, z - 1)[0]).toBeCloseTo(size, 9)
            x += size + 18
          } else {
            expect(clearAt(of.panels, x + 1, z - size / 2)[1]).toBeCloseTo(size, 9)
            z -= size + 18
          }
        })
        // What remains: 1200 − 2 × 18 less three sizes and three dividers, in width and in height.
        const rest = (from: number): number =>
          1164 - 3 * 18 - sizes.filter((_, k) => k % 2 === from).reduce((a, b) => a + b)
        const [width, height] = clearAt(of.panels, x + 1, z - 1)
        expect(width).toBeCloseTo(rest(0), 9)
        expect(height).toBeCloseTo(rest(1), 9)
      }),
      RUNS,
    )
  })
})
