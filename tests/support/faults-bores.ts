import { compose, determinant, type Pose, place, turn, type Vec3 } from '../../src/geometry/index.ts'
import type { Built } from '../../src/outputs/index.ts'
import type { Bore, Panel } from '../../src/panel/index.ts'

const TIGHT = 1e-6

/** Panels with a pose that mirrors, or without a size. */
export function poseFaults(of: Built): string[] {
  return of.panels.flatMap((panel) => {
    const proper = Math.abs(determinant(panel.moduleFromPanel) - 1) < TIGHT
    const size = Math.min(panel.length, panel.width, panel.thickness)
    return proper && size > 1 ? [] : [`${panel.id}: determinant ${determinant(panel.moduleFromPanel)}, size ${size}`]
  })
}

const end = ({ at, axis, depth }: Bore): Vec3 => [
  at[0] + axis[0] * depth,
  at[1] + axis[1] * depth,
  at[2] + axis[2] * depth,
]

/** Bores of which the mouth or the bottom does not lie in their panel, and no stop names that panel. */
export function boresOutside(of: Built): string[] {
  const stopped = new Set(of.findings.filter(({ severity }) => severity === 'stop').flatMap(({ panels }) => panels))
  return of.panels.flatMap((panel) =>
    stopped.has(panel.id)
      ? []
      : panel.bores.flatMap((bore) =>
          [bore.at, end(bore)].flatMap(([x, y, z]) => {
            const least = Math.min(x, panel.length - x, y, panel.width - y, -z, z + panel.thickness)
            return least > -TIGHT
              ? []
              : [`${panel.id}: ${bore.purpose} at ${bore.at.join(', ')} is ${-least} mm outside`]
          }),
        ),
  )
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

/** Hardware that touches a board neither on its surface nor in a cut made for it. */
export function sunkHardware(of: Built): string[] {
  return of.panels.flatMap((panel) =>
    panel.bores.flatMap((bore) => {
      const sunk = {
        A: -bore.at[2],
        B: panel.thickness + bore.at[2],
        x0: bore.at[0],
        x1: panel.length - bore.at[0],
        y0: bore.at[1],
        y1: panel.width - bore.at[1],
      }[bore.surface]
      const fair = Math.abs(sunk) < TIGHT || onShoulder(panel, bore) || inRecess(panel, bore, sunk)
      return fair ? [] : [`${panel.id}: ${bore.purpose} enters ${sunk} mm inside ${bore.surface}`]
    }),
  )
}

/** True when a bore enters by the floor of a recess that is cut from its face: levelling screws in a ledge. */
function inRecess(panel: Panel, bore: Bore, sunk: number): boolean {
  return panel.cutouts.some(
    ({ face, depth, through }) => face === bore.surface && !through && Math.abs(depth - sunk) < TIGHT,
  )
}

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
        const one = { panel, bore, at: place(pose, bore.at), axis: turn(pose, bore.axis) }
        const list = all.get(key)
        if (list === undefined) all.set(key, [one])
        else list.push(one)
      }
    }
  }
  return all
}

/** Coordinate axis that a hole follows; −1 where it follows none. */
const along = (one: InFloor): number =>
  [0, 1, 2].findIndex((axis) => Math.abs(Math.abs(one.axis[axis] ?? 0) - 1) < TIGHT)

const off = (a: InFloor, b: InFloor, axis: number): number => Math.abs((a.at[axis] ?? 0) - (b.at[axis] ?? 0))

/** How far two holes are from lying on one axis, mm. */
function outOfLine(a: InFloor, b: InFloor): number {
  if (along(a) < 0 || along(a) !== along(b)) return Number.POSITIVE_INFINITY
  return Math.max(...[0, 1, 2].filter((axis) => axis !== along(a)).map((axis) => off(a, b, axis)))
}

/** How far two axes that must cross at a right angle pass each other, mm. */
function missBy(a: InFloor, b: InFloor): number {
  const third = [0, 1, 2].find((axis) => axis !== along(a) && axis !== along(b))
  const crossed = along(a) >= 0 && along(b) >= 0 && along(a) !== along(b)
  return crossed && third !== undefined ? off(a, b, third) : Number.POSITIVE_INFINITY
}

/** The floor axis that runs from the left to the right of a module. */
function acrossOf(of: Built, key: string): number {
  const x = of.assembly.modules.find((module) => module.key === key)?.floorFromModule.x ?? [0, 0, 0]
  return x.findIndex((part) => Math.abs(part) > 0.5)
}

/** Mates that lack a partner, or whose holes are not on one axis, level, or crossing; and how many mates there are. */
export function mateFaults(of: Built): { readonly faults: string[]; readonly pairs: number } {
  const bores = floorBores(of)
  const faults = of.findings.filter(({ rule }) => rule.startsWith('mate-')).map(({ message }) => message)
  let pairs = 0
  for (const piece of of.assembly.hardware) {
    const ofPart = (part: string): InFloor[] => {
      const panel = piece.stations.find((station) => station.part === part)?.panel
      const purposes = new Set((piece.item.parts[part] ?? []).map((drilling) => drilling.purpose))
      return [...purposes].flatMap((purpose) =>
        (bores.get(`${piece.id} | ${purpose}`) ?? []).filter((one) => one.panel.id === panel),
      )
    }
    const drilled = ([part, key]: readonly [string, string]): InFloor[] =>
      ofPart(part).filter(({ bore }) =>
        bore.uses.some((use) => use.hardware === piece.id && use.part === part && use.drilling === key),
      )
    for (const mate of piece.item.mates) {
      const [a, b] = mate.relation === 'level' ? [ofPart(mate.a), ofPart(mate.b)] : [drilled(mate.a), drilled(mate.b)]
      pairs += 1
      // Level: along the hinge edge, which lies across the module where a flap hangs.
      const upright = of.panels.find(({ id }) => id === piece.stations[0]?.panel)?.role !== 'flap'
      const line = upright ? 2 : acrossOf(of, piece.frame)
      const height = (list: readonly InFloor[]): number =>
        list.reduce((sum, one) => sum + (one.at[line] ?? 0), 0) / list.length
      const measure = mate.relation === 'coaxial' ? outOfLine : missBy
      const out =
        mate.relation === 'level'
          ? Math.abs(height(a) - height(b))
          : Math.max(...a.flatMap((one) => b.map((other) => measure(one, other))))
      if (a.length === 0 || b.length === 0 || !(out < TIGHT)) faults.push(`${piece.id}: ${mate.relation} by ${out}`)
    }
  }
  return { faults, pairs }
}
