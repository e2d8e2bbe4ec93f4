import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Assembly, PlacedHardware, PlacedModule } from '../../src/assembly/index.ts'
import { compose, place, placeBack, turn, type Vec3 } from '../../src/geometry/index.ts'
import type { Built } from '../../src/outputs/index.ts'
import type { Bore, Panel } from '../../src/panel/index.ts'
import type { Project } from '../../src/project/index.ts'
import { built, panelOf } from '../support/define.ts'
import { anyFloorPlan } from '../support/random-floor.ts'

const RUNS = { numRuns: 100 }
const TIGHT = 1e-6

/** Worked out to the last hole. */
const over = (look: (of: Built) => void): void =>
  fc.assert(
    fc.property(anyFloorPlan, (text) => look(built(text))),
    RUNS,
  )

/** Placed, whatever its holes are. */
const overPlaced = (look: (project: Project, of: Assembly) => void): void =>
  over(({ project, assembly }) => look(project, assembly))

/** Both extents, seen in another module's frame, of what some modules cover. */
function coveredBy(modules: readonly PlacedModule[], seenFrom: PlacedModule): { x: number[]; y: number[] } {
  const corners = modules.flatMap(({ floorFromModule, size }) =>
    [0, size.width].flatMap((x) =>
      [0, size.depth].map((y) => placeBack(seenFrom.floorFromModule, place(floorFromModule, [x, y, 0]))),
    ),
  )
  const range = (axis: 0 | 1): number[] => [
    Math.min(...corners.map((corner) => corner[axis])),
    Math.max(...corners.map((corner) => corner[axis])),
  ]
  return { x: range(0), y: range(1) }
}

const bolts = (of: Built): readonly PlacedHardware[] =>
  of.assembly.hardware.filter((piece) => piece.item.kind === 'joining bolt')

const panelAt = (of: Built, piece: PlacedHardware, part: string): Panel =>
  panelOf(of, piece.stations.find((station) => station.part === part)?.panel ?? part)

/** Across the washer of the head, and the flange of the nut (ATNUT05, pts-uk.com), mm. */
const FLANGES: Readonly<Record<string, number>> = {
  'bolt M6 head': 18,
  'bolt M6 nut': 19,
  'bolt M8 head': 24,
  'bolt M8 nut': 22,
}

const boreOf = (panel: Panel, piece: PlacedHardware): Bore => {
  const bore = panel.bores.find((one) => one.uses.some((use) => use.hardware === piece.id))
  if (bore === undefined) throw new Error(`${panel.id} lacks the hole of ${piece.id}`)
  return bore
}

/** Least wall between a through bore square to the faces and another bore, seen square to the face, mm. */
function wallBetween(bolt: Bore, other: Bore): number {
  const [x, y] = bolt.at
  const length = other.depth
  const [dx, dy] = [other.axis[0] * length, other.axis[1] * length]
  const long = dx * dx + dy * dy
  const along = long < TIGHT ? 0 : Math.min(1, Math.max(0, ((x - other.at[0]) * dx + (y - other.at[1]) * dy) / long))
  const apart = Math.hypot(x - other.at[0] - along * dx, y - other.at[1] - along * dy)
  return apart - bolt.diameter / 2 - other.diameter / 2
}

describe('over random floor plans', () => {
  test('each row touches the side of its anchor, with its gap, flush as asked', () => {
    let stood = 0
    overPlaced((project, of) => {
      const byKey = new Map(of.modules.map((module) => [module.key, module]))
      for (const { stands, modules } of project.rows) {
        const anchor = byKey.get(stands?.against ?? '')
        if (stands === undefined || anchor === undefined) continue
        const { x, y } = coveredBy(
          modules.flatMap((key) => byKey.get(key) ?? []),
          anchor,
        )
        const { width, depth } = anchor.size
        const away = { left: -(x[1] ?? 0), right: (x[0] ?? 0) - width, front: -(y[1] ?? 0), back: (y[0] ?? 0) - depth }
        expect(away[stands.side]).toBeCloseTo(stands.gap, 6)
        const [line, end] = stands.side === 'left' || stands.side === 'right' ? [y, depth] : [x, width]
        const [from = 0, to = 0] = line
        const off = { front: from, left: from, back: to - end, right: to - end, middle: (from + to - end) / 2 }
        expect(off[stands.lineUp]).toBeCloseTo(stands.shift, 6)
        // Where its fronts look, in the anchor's frame: the module's −y.
        const first = byKey.get(modules[0] ?? '')
        const front = first && turn(first.floorFromModule, [0, -1, 0])
        const looks = { forward: [0, -1], left: [-1, 0], right: [1, 0], back: [0, 1] }[stands.fronts]
        const seen = front && placeBack({ ...anchor.floorFromModule, origin: [0, 0, 0] }, front)
        expect(seen?.slice(0, 2).map((value) => value + 0)).toEqual(looks)
        stood += 1
      }
    })
    expect(stood).toBeGreaterThan(50)
  })

  test('no two footprints overlap, or a stop names both', () => {
    overPlaced((_, of) => {
      const stops = of.troubles.filter((finding) => finding.rule === 'footprints-overlap')
      let overlapping = 0
      for (const [k, a] of of.modules.entries()) {
        for (const b of of.modules.slice(k + 1)) {
          const { x, y } = coveredBy([b], a)
          const share = [
            Math.min(x[1] ?? 0, a.size.width) - Math.max(x[0] ?? 0, 0),
            Math.min(y[1] ?? 0, a.size.depth) - Math.max(y[0] ?? 0, 0),
          ]
          if (Math.min(...share) > TIGHT) overlapping += 1
        }
      }
      expect(stops.length).toBe(overlapping)
    })
  })

  test('both holes of each bolt lie on one axis and in their panels', () => {
    let count = 0
    over((of) => {
      const frames = new Map(of.assembly.modules.map((module) => [module.key, module.floorFromModule]))
      for (const piece of bolts(of)) {
        const [head, nut] = ['head', 'nut'].map((part) => {
          const panel = panelAt(of, piece, part)
          const { at, diameter, through } = boreOf(panel, piece)
          expect(through).toBe(true)
          for (const [value, size] of [
            [at[0], panel.length],
            [at[1], panel.width],
          ] as const) {
            expect(value).toBeGreaterThan(diameter / 2)
            expect(value).toBeLessThan(size - diameter / 2)
          }
          const floor = frames.get(panel.module)
          if (floor === undefined) throw new Error(`no module ${panel.module}`)
          const pose = compose(floor, panel.moduleFromPanel)
          return { at: place(pose, at), axis: turn(pose, [0, 0, 1]), panel }
        })
        if (head === undefined || nut === undefined) throw new Error('two parts')
        expect(head.panel.module).not.toBe(nut.panel.module)
        const across = ([0, 1, 2] as const).filter((axis) => Math.abs(head.axis[axis]) < 0.5)
        expect(across.length).toBe(2)
        // Faces A look into their modules, against each other.
        expect(head.axis.map((value, axis) => value + (nut.axis as Vec3)[axis as 0 | 1 | 2])).toEqual([0, 0, 0])
        for (const axis of across) expect(Math.abs(head.at[axis] - nut.at[axis])).toBeLessThan(TIGHT)
        count += 1
      }
      expect(of.findings.filter((finding) => finding.rule.startsWith('mate-'))).toEqual([])
    })
    expect(count).toBeGreaterThan(200)
  })

  test('bolts keep 5 mm from every other hole of both panels, and nothing covers them, unless a stop says so', () => {
    let moved = 0
    over((of) => {
      // A bolt that cannot move is named by pair and number.
      const blocked = new Set(
        of.findings
          .filter((finding) => finding.rule === 'bolt-blocked')
          .flatMap((finding) => finding.panels.map((panel) => `${panel} ${/bolt (\d+)/.exec(finding.message)?.[1]}`)),
      )
      for (const piece of bolts(of)) {
        if (piece.note !== undefined) moved += 1
        for (const part of ['head', 'nut']) {
          const panel = panelAt(of, piece, part)
          const number = piece.id.split('/').pop()
          if (blocked.has(`${panel.id} ${number}`)) continue
          const own = boreOf(panel, piece)
          // Washer and flange lie on the inner face, A.
          const flange = (FLANGES[`${piece.item.id} ${part}`] ?? Number.NaN) / 2
          for (const other of panel.bores) {
            if (other === own || other.uses.some((use) => use.purpose.startsWith('joining'))) continue
            const wall = wallBetween(own, other)
            const about = `${piece.id} in ${panel.id} and ${other.purpose}`
            expect(wall, about).toBeGreaterThan(5 - 1e-3)
            const square = other.surface === 'A' || (other.surface === 'B' && other.through)
            if (square) expect(wall + own.diameter / 2, about).toBeGreaterThan(flange - 1e-3)
          }
        }
      }
      if (blocked.size > 0) return
      const covered = of.findings.filter((one) => one.rule === 'hole-covered' && one.message.includes('joining'))
      expect(covered.map((one) => one.message)).toEqual([])
    })
    expect(moved).toBeGreaterThan(20)
  })

  test('casters of different modules are 10 mm apart, or a finding says so', () => {
    overPlaced((_, of) => {
      const frames = new Map(of.modules.map((module) => [module.key, module]))
      const circles = of.hardware.flatMap((piece) => {
        const module = frames.get(piece.frame)
        if (piece.item.kind !== 'caster' || module === undefined) return []
        const [x, y] = place(module.floorFromModule, piece.stations[0]?.pose.origin ?? [0, 0, 0])
        return [{ x, y, radius: piece.item.swivelRadius, name: module.name }]
      })
      const near = new Set<string>()
      for (const a of circles) {
        for (const b of circles) {
          const between = Math.hypot(a.x - b.x, a.y - b.y) - a.radius - b.radius
          if (a.name < b.name && between < 10 - TIGHT) near.add(`${a.name} and ${b.name}`)
        }
      }
      const found = of.troubles
        .filter((finding) => finding.rule === 'caster-neighbours')
        .map((finding) => /of (module \d and module \d) /.exec(finding.message)?.[1])
      expect(found.sort()).toEqual([...near].sort())
    })
  })

  test('tops are level where they are to be, or a warning says so', () => {
    let level = 0
    overPlaced((project, of) => {
      const top = (key: string): number => {
        const module = of.modules.find((one) => one.key === key)
        return module === undefined ? Number.NaN : module.floorFromModule.origin[2] + module.size.height
      }
      const warned = of.troubles.some((finding) => finding.rule === 'tops-level')
      for (const row of project.rows) {
        if (row.level === 'floors') continue
        const tops = row.modules.map(top)
        for (const one of tops) expect(Math.abs(one - (tops[0] ?? 0))).toBeLessThan(TIGHT)
        if (row.stands !== undefined && !warned) {
          expect(Math.abs((tops[0] ?? 0) - top(row.stands.against))).toBeLessThan(TIGHT)
        }
        level += 1
      }
    })
    expect(level).toBeGreaterThan(50)
  })
})
