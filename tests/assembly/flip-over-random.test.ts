import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { boardBox } from '../../src/assembly/index.ts'
import { type Box, place, turn, type Vec3 } from '../../src/geometry/index.ts'
import type { Built } from '../../src/outputs/index.ts'
import type { Bore, Panel } from '../../src/panel/index.ts'
import { built } from '../support/define.ts'
import { flipDefinition } from '../support/random-flip.ts'

const RUNS = { numRuns: 100 }
const TIGHT = 1e-6
const SWING = ['swing-clearance', 'machine-width', 'swing-hardware']

const panelsBy = (of: Built, test: (panel: Panel) => boolean): Panel[] => of.panels.filter(test)
const isPlatform = (panel: Panel): boolean => panel.role.startsWith('platform')

/** Where the axis of a bore meets the surface, and its way, module frame. */
const inModule = (panel: Panel, bore: Bore): { at: Vec3; way: Vec3 } => ({
  at: place(panel.moduleFromPanel, bore.at),
  way: turn(panel.moduleFromPanel, bore.axis),
})

/** The axle, read from its bore in the left side. */
function axleOf(of: Built): { y: number; z: number } {
  const side = of.panels.find((panel) => panel.role === 'left side')
  const bore = side?.bores.find((one) => one.purpose === 'axle')
  if (side === undefined || bore === undefined) throw new Error('no axle')
  const { at } = inModule(side, bore)
  return { y: at[1], z: at[2] }
}

interface RawMachine {
  readonly width: string
  readonly depth: string
  readonly height: string
  readonly 'off centre'?: Readonly<Record<string, string>>
}

const mm = (text: string | undefined): number => Number.parseFloat(text ?? '0')

/** The boxes of platform and machines at rest, from the panels and from the definition's own text. */
function turningBoxes(text: string, of: Built): Box[] {
  const skins = panelsBy(of, (panel) => panel.role.endsWith('skin')).map(boardBox)
  const [a, b] = skins
  if (a === undefined || b === undefined) throw new Error('no skins')
  const low = Math.min(a.min[2], b.min[2])
  const high = Math.max(a.max[2], b.max[2])
  const top = JSON.parse(text).modules.turner['flip-over top']
  const machine = (raw: RawMachine | undefined, above: boolean): Box[] => {
    if (raw === undefined) return []
    const off = raw['off centre'] ?? {}
    const x = (a.min[0] + a.max[0]) / 2 + mm(off.right) - mm(off.left)
    const rear = mm(off.rear) - mm(off.front)
    // What stands to the rear while it is on top hangs to the front when it is turned under.
    const y = (a.min[1] + a.max[1]) / 2 + (above ? rear : -rear)
    const [w, d, h] = [mm(raw.width) / 2, mm(raw.depth) / 2, mm(raw.height)]
    const z: [number, number] = above ? [high, high + h] : [low - h, low]
    return [{ min: [x - w, y - d, z[0]], max: [x + w, y + d, z[1]] }]
  }
  return [
    { min: [a.min[0], a.min[1], low], max: [a.max[0], a.max[1], high] },
    ...machine(top.machines?.upper, true),
    ...machine(top.machines?.lower, false),
  ]
}

/** Points around the outline of a box seen along the axle: corners, and seven more on each edge. */
function outline({ min, max }: Box): [y: number, z: number][] {
  const steps = Array.from({ length: 9 }, (_, k) => k / 8)
  const at = (axis: 1 | 2, share: number): number => min[axis] + share * (max[axis] - min[axis])
  return steps.flatMap((s): [number, number][] => [
    [at(1, s), min[2]],
    [at(1, s), max[2]],
    [min[1], at(2, s)],
    [max[1], at(2, s)],
  ])
}

/** Points of a turning box that lie inside another panel at some step of 5° of a whole turn. */
function entered(turning: Box, axle: { y: number; z: number }, other: Box): string[] {
  if (turning.max[0] <= other.min[0] + TIGHT || turning.min[0] >= other.max[0] - TIGHT) return []
  const found: string[] = []
  for (let degrees = 0; degrees < 360; degrees += 5) {
    const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)]
    for (const [y0, z0] of outline(turning)) {
      const y = axle.y + c * (y0 - axle.y) - s * (z0 - axle.z)
      const z = axle.z + s * (y0 - axle.y) + c * (z0 - axle.z)
      const within = (p: number, axis: 1 | 2): boolean => p > other.min[axis] + TIGHT && p < other.max[axis] - TIGHT
      if (within(y, 1) && within(z, 2)) found.push(`${degrees}° ${y}, ${z}`)
    }
  }
  return found
}

describe('over random flip-over tops', () => {
  test('what is let pass strikes nothing at any step of a whole turn; what strikes is stopped', () => {
    let passed = 0
    let struck = 0
    fc.assert(
      fc.property(flipDefinition, (text) => {
        const of = built(text)
        const stopped = of.findings.some((one) => one.severity === 'stop' && SWING.includes(one.rule))
        const axle = axleOf(of)
        const others = panelsBy(of, (panel) => !isPlatform(panel))
        expect(others.length).toBeGreaterThanOrEqual(3)
        const strikes = turningBoxes(text, of).flatMap((turning) =>
          others.flatMap((other) => entered(turning, axle, boardBox(other)).map((where) => `${other.id} ${where}`)),
        )
        if (stopped) struck += strikes.length > 0 ? 1 : 0
        else {
          expect(strikes).toEqual([])
          passed += 1
        }
      }),
      RUNS,
    )
    expect(passed).toBeGreaterThan(20)
    // The brute force does see what strikes.
    expect(struck).toBeGreaterThan(3)
  })

  test('a well that is worked out is enough for the platform and both machines', () => {
    fc.assert(
      fc.property(flipDefinition, (text) => {
        const raw = JSON.parse(text)
        const top = raw.modules.turner['flip-over top']
        delete top.well
        delete top.surface
        raw.modules.turner.carcase.top = 'between'
        const of = built(JSON.stringify(raw))
        expect(of.findings.filter((one) => one.rule === 'swing-clearance')).toEqual([])
      }),
      RUNS,
    )
  })

  test('the axle is one line, in the middle of the platform, clear of all wood between the sides', () => {
    fc.assert(
      fc.property(flipDefinition, (text) => {
        const of = built(text)
        const axle = axleOf(of)
        const platform = turningBoxes(text, of)[0]
        if (platform === undefined) throw new Error('no platform')
        expect(Math.abs((platform.min[1] + platform.max[1]) / 2 - axle.y)).toBeLessThan(TIGHT)
        expect(Math.abs((platform.min[2] + platform.max[2]) / 2 - axle.z)).toBeLessThan(TIGHT)
        const piece = of.assembly.hardware.find((one) => one.item.kind === 'axle')
        const radius = piece?.item.kind === 'axle' ? piece.item.diameter / 2 : Number.NaN
        for (const panel of panelsBy(of, (one) => one.role === 'platform core')) {
          const { min, max } = boardBox(panel)
          expect(Math.min(Math.abs(min[1] - axle.y), Math.abs(max[1] - axle.y))).toBeGreaterThanOrEqual(radius)
        }
        for (const role of ['left side', 'right side']) {
          const side = of.panels.find((panel) => panel.role === role)
          const bores = side?.bores.filter((bore) => bore.purpose === 'axle') ?? []
          expect(bores).toHaveLength(1)
          for (const bore of bores) {
            if (side === undefined) continue
            const { at, way } = inModule(side, bore)
            expect(Math.hypot(at[1] - axle.y, at[2] - axle.z)).toBeLessThan(TIGHT)
            expect(Math.abs(Math.abs(way[0]) - 1)).toBeLessThan(TIGHT)
          }
        }
      }),
      RUNS,
    )
  })

  test('every locking bore in a side meets one in the core, as drawn and turned over', () => {
    let met = 0
    fc.assert(
      fc.property(flipDefinition, (text) => {
        const of = built(text)
        const axle = axleOf(of)
        const bores = (test: (panel: Panel) => boolean) =>
          panelsBy(of, test).flatMap((panel) =>
            panel.bores.filter((bore) => bore.purpose === 'locking bolt').map((bore) => inModule(panel, bore).at),
          )
        const inCore = bores((panel) => panel.role === 'platform core')
        const middle = (of.assembly.modules[0]?.size.width ?? 0) / 2
        const near = (a: Vec3, y: number, z: number, left: boolean): boolean =>
          Math.hypot(a[1] - y, a[2] - z) < TIGHT && a[0] < middle === left
        for (const at of bores((panel) => panel.role.endsWith('side'))) {
          const left = at[0] < middle
          expect(inCore.filter((one) => near(one, at[1], at[2], left))).toHaveLength(1)
          // Half a turn about the axle takes (y, z) to (2 a − y, 2 b − z).
          const turned = inCore.filter((one) =>
            near([one[0], 2 * axle.y - one[1], 2 * axle.z - one[2]], at[1], at[2], left),
          )
          expect(turned).toHaveLength(1)
          met += 1
        }
      }),
      RUNS,
    )
    expect(met).toBeGreaterThan(200)
  })

  test('every bore lies in its panel, mates agree, no panels share space, and the left side mirrors the right', () => {
    const other = { A: 'A', B: 'B', x0: 'x1', x1: 'x0', y0: 'y0', y1: 'y1' } as const
    const print = (surface: string, x: number, bore: Bore): string =>
      [
        surface,
        ...[x, bore.at[1], bore.at[2], bore.diameter, bore.depth].map((v) => Math.round(v * 1e5) / 1e5 + 0),
      ].join(' ')
    fc.assert(
      fc.property(flipDefinition, (text) => {
        const of = built(text)
        expect(of.findings.filter((one) => /^mate-|^panels-overlap|^hole-covered/.test(one.rule))).toEqual([])
        const [left, right] = ['left side', 'right side'].map((role) => of.panels.find((panel) => panel.role === role))
        if (left === undefined || right === undefined) throw new Error('no sides')
        const flipped = left.bores.map((bore) => print(other[bore.surface], left.length - bore.at[0], bore)).sort()
        expect(flipped).toEqual(right.bores.map((bore) => print(bore.surface, bore.at[0], bore)).sort())
        if (of.findings.some((one) => one.severity === 'stop')) return
        for (const panel of of.panels.filter(isPlatform)) {
          for (const bore of panel.bores) {
            const end = bore.at.map((p, axis) => p + (bore.axis[axis] ?? 0) * bore.depth)
            for (const p of [bore.at, end]) {
              const [x = 0, y = 0, z = 0] = p
              const inside =
                x > -TIGHT &&
                x < panel.length + TIGHT &&
                y > -TIGHT &&
                y < panel.width + TIGHT &&
                z < TIGHT &&
                z > -panel.thickness - TIGHT
              expect(inside, `${panel.id} ${bore.purpose} ${p.join(', ')}`).toBe(true)
            }
          }
        }
      }),
      RUNS,
    )
  })
})
