import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { compose, determinant, type Pose, place, turn, type Vec3 } from '../../src/geometry/index.ts'
import type { Built } from '../../src/outputs/index.ts'
import type { Bore, Panel } from '../../src/panel/index.ts'
import { built } from '../support/define.ts'
import { anyDefinition, evenDefinition } from '../support/random.ts'

const RUNS = { numRuns: 500 }
const TIGHT = 1e-6

interface InFloor {
  readonly panel: Panel
  readonly bore: Bore
  readonly at: Vec3
  readonly axis: Vec3
}

/** Every hole with the hardware that uses it, taken to the floor frame through the panel's own pose alone. */
function floorBores(of: Built): Map<string, InFloor[]> {
  const frames = new Map(of.assembly.modules.map((module) => [module.key, module.floorFromModule]))
  const all = new Map<string, InFloor[]>()
  for (const panel of of.panels) {
    const floor = frames.get(panel.module)
    if (floor === undefined) throw new Error(`no module ${panel.module}`)
    const pose: Pose = compose(floor, panel.moduleFromPanel)
    for (const bore of panel.bores) {
      for (const use of bore.uses) {
        const key = `${use.hardware} | ${use.purpose}`
        all.set(key, [...(all.get(key) ?? []), { panel, bore, at: place(pose, bore.at), axis: turn(pose, bore.axis) }])
      }
    }
  }
  return all
}

/**
 * How far two holes are from lying on one axis, mm: along the module axis that both follow, the two other coordinates
 * must agree. Holes that do not follow one axis are infinitely far out.
 */
function outOfLine(a: InFloor, b: InFloor): number {
  const along = [0, 1, 2].find((axis) => [a, b].every((one) => Math.abs(Math.abs(one.axis[axis] ?? 0) - 1) < TIGHT))
  if (along === undefined) return Number.POSITIVE_INFINITY
  const across = [0, 1, 2].filter((axis) => axis !== along)
  return Math.max(...across.map((axis) => Math.abs((a.at[axis] ?? 0) - (b.at[axis] ?? 0))))
}

/** How far two axes that must cross at a right angle pass each other, mm. Axes that do not follow the frame are infinitely far out. */
function missBy(a: InFloor, b: InFloor): number {
  const along = (one: InFloor): number =>
    [0, 1, 2].findIndex((axis) => Math.abs(Math.abs(one.axis[axis] ?? 0) - 1) < TIGHT)
  const [first, second] = [along(a), along(b)]
  const third = [0, 1, 2].find((axis) => axis !== first && axis !== second)
  if (first < 0 || second < 0 || first === second || third === undefined) return Number.POSITIVE_INFINITY
  return Math.abs((a.at[third] ?? 0) - (b.at[third] ?? 0))
}

/** True when a bore enters by the shoulder of a rebate: on its wall, within its length and depth. */
function onShoulder(panel: Panel, bore: Bore): boolean {
  const [x, y, z] = bore.at
  return panel.grooves.some(({ kind, min, max, depth }) => {
    if (kind !== 'rebate' || z > TIGHT || z < -depth - TIGHT) return false
    const wall = { y1: y - min[1], y0: y - max[1], x1: x - min[0], x0: x - max[0], A: Infinity, B: Infinity }[
      bore.surface
    ]
    const along = bore.surface.startsWith('y') ? [x, min[0], max[0]] : [y, min[1], max[1]]
    const [at = 0, from = 0, to = 0] = along
    return Math.abs(wall) < TIGHT && at > from - TIGHT && at < to + TIGHT
  })
}

describe('over random modules', () => {
  test('every pose is proper, every panel has a size, every bore lies in its panel', () => {
    fc.assert(
      fc.property(anyDefinition, (text) => {
        for (const panel of built(text).panels) {
          expect(Math.abs(determinant(panel.moduleFromPanel) - 1), panel.id).toBeLessThan(TIGHT)
          expect(Math.min(panel.length, panel.width, panel.thickness)).toBeGreaterThan(1)
          for (const bore of panel.bores) {
            const end: Vec3 = [
              bore.at[0] + bore.axis[0] * bore.depth,
              bore.at[1] + bore.axis[1] * bore.depth,
              bore.at[2] + bore.axis[2] * bore.depth,
            ]
            for (const p of [bore.at, end]) {
              const inside =
                p[0] > -TIGHT &&
                p[0] < panel.length + TIGHT &&
                p[1] > -TIGHT &&
                p[1] < panel.width + TIGHT &&
                p[2] < TIGHT &&
                p[2] > -panel.thickness - TIGHT
              expect(inside, `${panel.id} ${bore.purpose} at ${p.join(', ')}`).toBe(true)
            }
          }
        }
      }),
      RUNS,
    )
  })

  test('every mate lies on one axis, and none lacks its partner', () => {
    let pairs = 0
    fc.assert(
      fc.property(anyDefinition, (text) => {
        const of = built(text)
        const bores = floorBores(of)
        for (const piece of of.assembly.hardware) {
          for (const mate of piece.item.mates) {
            const purposes = (part: string): string[] => [
              ...new Set((piece.item.parts[part] ?? []).map((drilling) => drilling.purpose)),
            ]
            const of2 = (part: string): InFloor[] => {
              const panel = piece.stations.find((station) => station.part === part)?.panel
              return purposes(part).flatMap((purpose) =>
                (bores.get(`${piece.id} | ${purpose}`) ?? []).filter((one) => one.panel.id === panel),
              )
            }
            const drilled = ([part, key]: readonly [string, string]): InFloor[] =>
              of2(part).filter(({ bore }) =>
                bore.uses.some((use) => use.hardware === piece.id && use.part === part && use.drilling === key),
              )
            const a = mate.relation === 'level' ? of2(mate.a) : drilled(mate.a)
            const b = mate.relation === 'level' ? of2(mate.b) : drilled(mate.b)
            expect(a.length, piece.id).toBeGreaterThan(0)
            expect(b.length, piece.id).toBeGreaterThan(0)
            if (mate.relation === 'coaxial') {
              for (const one of a) for (const other of b) expect(outOfLine(one, other), piece.id).toBeLessThan(TIGHT)
            } else if (mate.relation === 'crossing') {
              for (const one of a) for (const other of b) expect(missBy(one, other), piece.id).toBeLessThan(TIGHT)
            } else {
              const height = (list: readonly InFloor[]): number =>
                list.reduce((sum, one) => sum + one.at[2], 0) / list.length
              expect(Math.abs(height(a) - height(b)), piece.id).toBeLessThan(TIGHT)
            }
            pairs += 1
          }
        }
        expect(of.findings.filter((finding) => finding.rule.startsWith('mate-'))).toEqual([])
      }),
      RUNS,
    )
    expect(pairs).toBeGreaterThan(5000)
  })

  test('the left side of an even module is the mirror of its right side', () => {
    const other = { A: 'A', B: 'B', x0: 'x1', x1: 'x0', y0: 'y0', y1: 'y1' } as const
    const print = (surface: string, x: number, bore: Bore): string =>
      [
        surface,
        ...[x, bore.at[1], bore.at[2], bore.diameter, bore.depth].map((value) => Math.round(value * 1e5) / 1e5 + 0),
        bore.through,
      ].join(' ')
    let compared = 0
    fc.assert(
      fc.property(evenDefinition, (text) => {
        const of = built(text)
        for (const module of of.assembly.modules) {
          const left = of.panels.find((panel) => panel.id === `${module.key}/left-side`)
          const right = of.panels.find((panel) => panel.id === `${module.key}/right-side`)
          if (left === undefined || right === undefined) throw new Error('a module without sides')
          expect([left.length, left.width]).toEqual([right.length, right.width])
          const flipped = left.bores.map((bore) => print(other[bore.surface], left.length - bore.at[0], bore)).sort()
          expect(flipped).toEqual(right.bores.map((bore) => print(bore.surface, bore.at[0], bore)).sort())
          compared += flipped.length
        }
      }),
      RUNS,
    )
    expect(compared).toBeGreaterThan(5000)
  })

  test('each piece of hardware touches its boards on their surface, or in a cut made for one of them', () => {
    fc.assert(
      fc.property(anyDefinition, (text) => {
        for (const panel of built(text).panels) {
          for (const bore of panel.bores) {
            const depthOfEntry = {
              A: -bore.at[2],
              B: panel.thickness + bore.at[2],
              x0: bore.at[0],
              x1: panel.length - bore.at[0],
              y0: bore.at[1],
              y1: panel.width - bore.at[1],
            }[bore.surface]
            expect(
              depthOfEntry < TIGHT || onShoulder(panel, bore),
              `${panel.id} ${bore.purpose} enters ${depthOfEntry} mm inside`,
            ).toBe(true)
          }
        }
      }),
      RUNS,
    )
  })
})
