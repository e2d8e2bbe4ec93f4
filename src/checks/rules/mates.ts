import { FLOOR, type PlacedHardware } from '../../assembly/index.ts'
import { compose, cross, dot, NOISE_MM, norm, type Pose, place, sub, turn, type Vec3 } from '../../geometry/index.ts'
import type { Mate } from '../../hardware/index.ts'
import type { Bore, Panel } from '../../panel/index.ts'
import type { Finding, Rule, Subject } from '../types.ts'
import { mm, panelWords } from '../words.ts'

/** A bore with where it really is: the panel's frame taken to the frame in which its hardware was placed. */
interface Found {
  readonly panel: Panel
  readonly bore: Bore
  readonly at: Vec3
  readonly axis: Vec3
}

/**
 * For each piece of hardware, every board in its grip has its drillings, and those that must lie on one axis, or on
 * one level, do, within float noise. Read from the panels, not from the placing, so that it tests the projection.
 */
export const mates: Rule = {
  ids: ['mate-missing', 'mate-axis'],
  check: (subject) => {
    const bores = boresByHardware(subject)
    return subject.assembly.hardware.flatMap((piece) => checkPiece(subject, piece, bores.get(piece.id) ?? new Map()))
  },
}

type ByDrilling = Map<string, Found>

const drillingKey = (part: string, drilling: string): string => `${part} ${drilling}`

function boresByHardware(subject: Subject): Map<string, ByDrilling> {
  const frames = new Map(subject.assembly.modules.map((module) => [module.key, module.floorFromModule]))
  const floorHardware = new Set(
    subject.assembly.hardware.filter((piece) => piece.frame === FLOOR).map((piece) => piece.id),
  )
  const all = new Map<string, ByDrilling>()
  for (const panel of subject.panels) {
    const floorFromModule = frames.get(panel.module)
    const floorFromPanel = floorFromModule && compose(floorFromModule, panel.moduleFromPanel)
    for (const bore of panel.bores) {
      for (const use of bore.uses) {
        const onFloor = floorHardware.has(use.hardware) ? floorFromPanel : undefined
        const pose: Pose = onFloor ?? panel.moduleFromPanel
        const list = all.get(use.hardware) ?? new Map<string, Found>()
        list.set(drillingKey(use.part, use.drilling), {
          panel,
          bore,
          at: place(pose, bore.at),
          axis: turn(pose, bore.axis),
        })
        all.set(use.hardware, list)
      }
    }
  }
  return all
}

function checkPiece(subject: Subject, piece: PlacedHardware, found: ByDrilling): Finding[] {
  const missing = piece.stations.flatMap((station) =>
    (piece.item.parts[station.part] ?? [])
      .filter((drilling) => found.get(drillingKey(station.part, drilling.key))?.panel.id !== station.panel)
      .map(
        (drilling): Finding => ({
          rule: 'mate-missing',
          severity: 'stop',
          panels: [station.panel],
          places: [],
          message: `${panelWords(subject.panelOf(station.panel))} lacks the ${drilling.purpose} hole of ${piece.id}`,
          at: piece.at,
        }),
      ),
  )
  return [...missing, ...piece.item.mates.flatMap((mate) => checkMate(piece, mate, found))]
}

function checkMate(piece: PlacedHardware, mate: Mate, found: ByDrilling): Finding[] {
  const off = mate.relation === 'level' ? offLevel(piece, mate, found) : offAxis(mate, found)
  if (off === undefined || off.mm <= NOISE_MM) return []
  const [a, b] = off.pair
  return [
    {
      rule: 'mate-axis',
      severity: 'stop',
      panels: [a.panel.id, b.panel.id],
      places: off.pair.map(({ panel, bore }) => ({ panel: panel.id, surface: bore.surface, at: bore.at })),
      message: `${piece.id}: its holes in ${a.panel.name} and ${b.panel.name} are ${off.mm < 0.05 ? off.mm.toFixed(6) : mm(off.mm)} mm out of line`,
      at: piece.at,
    },
  ]
}

type Off = { readonly mm: number; readonly pair: readonly [Found, Found] } | undefined

function offAxis(mate: Exclude<Mate, { relation: 'level' }>, found: ByDrilling): Off {
  const a = found.get(drillingKey(...mate.a))
  const b = found.get(drillingKey(...mate.b))
  if (a === undefined || b === undefined) return undefined
  if (mate.relation === 'crossing') {
    // The two lines pass each other along the direction square to both; axes out of square miss by as much as they lean.
    const apart = Math.abs(dot(sub(b.at, a.at), cross(a.axis, b.axis)))
    return { mm: Math.max(apart, Math.abs(dot(a.axis, b.axis)) * a.bore.depth), pair: [a, b] }
  }
  const between = norm(cross(sub(b.at, a.at), a.axis))
  // Axes that are not parallel are out of line by however far they part over the deeper hole.
  const parting = norm(cross(a.axis, b.axis)) * Math.max(a.bore.depth, b.bore.depth)
  return { mm: Math.max(between, parting), pair: [a, b] }
}

function offLevel(piece: PlacedHardware, mate: Extract<Mate, { relation: 'level' }>, found: ByDrilling): Off {
  const station = piece.stations.find((one) => one.part === mate.a)
  const of = (part: string): Found[] =>
    (piece.item.parts[part] ?? []).flatMap((drilling) => found.get(drillingKey(part, drilling.key)) ?? [])
  const a = of(mate.a)
  const b = of(mate.b)
  const [firstA] = a
  const [firstB] = b
  if (station === undefined || firstA === undefined || firstB === undefined) return undefined
  const level = (list: readonly Found[]): number =>
    list.reduce((sum, one) => sum + dot(one.at, station.pose.y), 0) / list.length
  return { mm: Math.abs(level(a) - level(b)), pair: [firstA, firstB] }
}
