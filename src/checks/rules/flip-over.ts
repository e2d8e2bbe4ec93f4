import { boardBox, FLOOR, type PlacedHardware, type PlacedModule, type PlacedPanel } from '../../assembly/index.ts'
import { type Box, compose, NOISE_MM, place, placedBox, type Vec3 } from '../../geometry/index.ts'
import type { Bore, Panel } from '../../panel/index.ts'
import { limitOf } from '../../project/index.ts'
import type { Finding, Rule, Subject } from '../types.ts'
import { boreWords, mm, panelWords } from '../words.ts'

/** What stands in the way of a flip-over platform besides panels: hardware on the sides, and neighbours before its bolts. */
export const flipOver: Rule = {
  ids: ['swing-hardware', 'lock-reach'],
  check: (subject) => [
    ...subject.assembly.hardware.filter(({ item }) => item.kind === 'axle').flatMap((axle) => inTheWay(subject, axle)),
    ...locksCovered(subject),
  ],
}

/** Holes of the sides that open inward within the platform's circle and belong to neither axle nor locking bolts. */
function inTheWay(subject: Subject, axle: PlacedHardware): Finding[] {
  const [station] = axle.stations
  if (station === undefined) return []
  const centre = station.pose.origin
  const sides = axle.stations.map(({ panel }) => subject.panelOf(panel))
  const platform = subject.panels.filter((panel) => panel.module === axle.frame && panel.role.startsWith('platform'))
  const radius = Math.max(0, ...platform.map((panel) => farthest(centre, boardBox(panel))))
  const items = new Map(subject.assembly.hardware.map((piece) => [piece.id, piece.item]))
  const own = (bore: Bore): boolean =>
    bore.uses.every(({ hardware }) => ['axle', 'locking bolt'].includes(items.get(hardware)?.kind ?? ''))
  const reach = (bore: Bore): number =>
    Math.max(
      bore.diameter / 2,
      ...bore.uses.map(({ hardware, part }) => {
        const item = items.get(hardware)
        return item?.kind === 'joining bolt' ? (part === 'nut' ? item.nutDiameter : item.headDiameter) / 2 : 0
      }),
    )
  return sides.flatMap((side) =>
    side.bores
      .filter((bore) => bore.surface === 'A' || (bore.surface === 'B' && bore.through))
      .filter((bore) => !own(bore))
      .flatMap((bore) => {
        const turning = { centre, from: fromAxle(centre, side, bore), least: radius + reach(bore) }
        return turning.least - turning.from <= NOISE_MM ? [] : [hardwareFinding(subject, side, bore, turning)]
      }),
  )
}

/** Distance of the far corner of a box from an axle that runs across the module, mm. */
function farthest(centre: Vec3, { min, max }: Box): number {
  const span = (axis: 1 | 2): number => Math.max(centre[axis] - min[axis], max[axis] - centre[axis])
  return Math.hypot(span(1), span(2))
}

function fromAxle(centre: Vec3, side: Panel, bore: Bore): number {
  const at = place(side.moduleFromPanel, bore.at)
  return Math.hypot(at[1] - centre[1], at[2] - centre[2])
}

const hardwareFinding = (subject: Subject, side: Panel, bore: Bore, turning: Turning): Finding => ({
  rule: 'swing-hardware',
  severity: 'stop',
  panels: [side.id],
  places: [{ panel: side.id, surface: bore.surface, at: bore.at }],
  message: `${panelWords(side)}: what is fixed in the ${boreWords(side, bore)} lies where the platform turns, ${mm(turning.from)} mm from the axle; ${mm(turning.least)} mm is the least`,
  ...(lowerBolts(subject, side, bore, turning) ?? {
    fix: `move it ${mm(turning.least - turning.from)} mm or more away from the axle`,
  }),
  at: side.at,
})

/** How near to the axle a piece of hardware is, and how near it may be, mm. */
interface Turning {
  readonly centre: Vec3
  readonly from: number
  readonly least: number
}

/** Bolts to a neighbour that stand lower by their end inset, until they are clear of the circle. */
function lowerBolts(
  { project, assembly }: Subject,
  side: Panel,
  bore: Bore,
  { centre, least }: Turning,
): Pick<Finding, 'fix' | 'change'> | undefined {
  const bolt = assembly.hardware.find(
    ({ id, item }) => item.kind === 'joining bolt' && bore.uses.some(({ hardware }) => hardware === id),
  )
  const row = project.rows.find(({ at }) => at === bolt?.at)
  const at = place(side.moduleFromPanel, bore.at)
  const lower = Math.sqrt(Math.max(0, least ** 2 - (at[1] - centre[1]) ** 2)) - (centre[2] - at[2])
  if (row?.join === undefined || at[2] > centre[2] || lower <= NOISE_MM) return undefined
  const inset = `${Math.ceil((row.join.endInset + lower - NOISE_MM) * 10) / 10} mm`
  const value = { bolt: row.join.item.id, 'end inset': inset, 'side inset': `${row.join.sideInset} mm` }
  return { fix: `set \`end inset: ${inset}\` of the bolts`, change: [{ path: [...row.at, 'join'], value }] }
}

/** Locking bolts whose outer end another module stands before. */
function locksCovered({ assembly, project }: Subject): Finding[] {
  // Around a bolt for its knob and for a hand, and as far out.
  const hand = limitOf(project, 'lock-reach', 'warn')
  const modules = new Map(assembly.modules.map((module) => [module.key, module]))
  const locks = assembly.hardware.filter(({ item }) => item.kind === 'locking bolt')
  if (locks.length === 0) return []
  const boxes = assembly.modules.flatMap((module) =>
    module.panels.map((panel) => ({
      module,
      box: placedBox(compose(module.floorFromModule, panel.moduleFromPanel), {
        min: [0, 0, -panel.thickness],
        max: [panel.length, panel.width, 0],
      }),
    })),
  )
  return locks.flatMap((piece) => {
    const own = modules.get(piece.frame === FLOOR ? '' : piece.frame)
    const side = piece.stations.find(({ part }) => part === 'side')
    const panel = own?.panels.find(({ id }) => id === side?.panel)
    if (own === undefined || side === undefined || panel === undefined) return []
    const outside = place(compose(own.floorFromModule, side.pose), [0, 0, -panel.thickness])
    const away = place(compose(own.floorFromModule, side.pose), [0, 0, -panel.thickness - hand])
    const box: Box = {
      min: [Math.min(outside[0], away[0]), Math.min(outside[1], away[1]), outside[2] - hand / 2],
      max: [Math.max(outside[0], away[0]), Math.max(outside[1], away[1]), outside[2] + hand / 2],
    }
    const before = boxes.find((other) => other.module !== own && overlap(box, other.box))
    return before === undefined ? [] : [lockFinding(own, before.module, piece, panel, hand)]
  })
}

/** Whether two boxes share space; a flat one counts where it passes through the other. */
const overlap = (a: Box, b: Box): boolean =>
  ([0, 1, 2] as const).every((axis) => a.min[axis] < b.max[axis] - NOISE_MM && a.max[axis] > b.min[axis] + NOISE_MM)

const lockFinding = (
  own: PlacedModule,
  neighbour: PlacedModule,
  piece: PlacedHardware,
  side: PlacedPanel,
  hand: number,
): Finding => ({
  rule: 'lock-reach',
  severity: 'warn',
  panels: [side.id],
  places: [],
  message: `${own.name}: ${neighbour.name} stands before the locking bolts in the ${side.name}, so that no hand reaches them`,
  fix: `leave ${mm(hand)} mm or more beside it, or let the neighbour end below the axle`,
  at: piece.at,
})
