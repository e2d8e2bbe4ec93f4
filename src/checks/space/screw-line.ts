import { FLOOR, type PlacedHardware } from '../../assembly/index.ts'
import {
  add,
  compose,
  dot,
  NOISE_MM,
  type Pose,
  place,
  placeBack,
  scale,
  turn,
  turnBack,
  type Vec3,
} from '../../geometry/index.ts'
import { type JointScrew, type PocketScrew, shankOf } from '../../hardware/index.ts'
import type { Bore, Panel } from '../../panel/index.ts'
import type { Subject } from '../types.ts'
import { surroundingsOf } from './scene.ts'

export type Screw = JointScrew | PocketScrew

/** The pilot of a screw: `screw-through` says where it is too deep, since the screw is then too long. */
export const isScrewTip = (bore: Bore): boolean => bore.uses.every(({ part }) => part === 'tip')

/** A screw as it stands in one of its boards, panel frame, mm. */
export interface ScrewLine {
  readonly piece: PlacedHardware
  readonly item: Screw
  readonly panel: Panel
  /** Under its head. */
  readonly from: Vec3
  /** Unit; from the head to the tip. */
  readonly axis: Vec3
  readonly radius: number
  /** From its head to where its last board begins. */
  readonly entry: number
  /** From its head to its tip. */
  readonly length: number
  /** From its head to the end of its pilot, or to its tip where that lies deeper; infinite for a pilot right through. */
  readonly reach: number
  /** Whether its tip goes into wood that no pilot was bored in. */
  readonly undrilled: boolean
}

const isScrew = (piece: PlacedHardware): piece is PlacedHardware & { readonly item: Screw } =>
  piece.item.kind === 'through screw' || piece.item.kind === 'one-piece screw' || piece.item.kind === 'pocket screw'

/** The frame of a piece of hardware from that of a panel. */
export function frameFromPanel(floorOf: ReadonlyMap<string, Pose>, piece: PlacedHardware, panel: Panel): Pose {
  const floor = piece.frame === FLOOR ? floorOf.get(panel.module) : undefined
  return floor === undefined ? panel.moduleFromPanel : compose(floor, panel.moduleFromPanel)
}

export const floorPoses = ({ assembly }: Subject): ReadonlyMap<string, Pose> =>
  new Map(assembly.modules.map((module) => [module.key, module.floorFromModule]))

/** A screw in one of its boards; nothing for other hardware. */
export function screwLine(
  subject: Subject,
  floorOf: ReadonlyMap<string, Pose>,
  piece: PlacedHardware,
  part: 'tip' | 'pocket',
): ScrewLine | undefined {
  if (!isScrew(piece)) return undefined
  const { item } = piece
  const around = surroundingsOf(subject, piece)
  const shank = shankOf(item, around)
  const first = shank && piece.stations.find((one) => one.part === shank.part)
  const tip = piece.stations.find((one) => one.part === 'tip')
  const station = piece.stations.find((one) => one.part === part)
  if (shank === undefined || first === undefined || tip === undefined || station === undefined) return undefined
  const panel = subject.panelOf(station.panel)
  const frame = frameFromPanel(floorOf, piece, panel)
  const from = placeBack(frame, place(first.pose, shank.from))
  const axis = turnBack(frame, turn(first.pose, shank.axis))
  // Along the axis to the plane in which the boards touch.
  const plane = placeBack(frame, tip.pose.origin)
  const normal = turnBack(frame, tip.pose.z)
  const entry = dot(normal, [plane[0] - from[0], plane[1] - from[1], plane[2] - from[2]]) / dot(normal, axis)
  const pilot = pilotOf(item, around.thicknessOf('head'))
  const reach = Math.max(shank.length, entry + pilot)
  const undrilled = shank.length > entry + pilot + NOISE_MM
  return { piece, item, panel, from, axis, radius: shank.radius, entry, length: shank.length, reach, undrilled }
}

/** Depth of the pilot in the last board, mm; 0 where none is bored. */
function pilotOf(item: Screw, head: number): number {
  const depth = item.parts.tip?.[0]?.depth
  if (depth === undefined) return 0
  if (typeof depth === 'number') return depth
  if (depth === 'through') return Number.POSITIVE_INFINITY
  return 'reach' in depth ? depth.reach - head : 0
}

export const along = ({ from, axis }: ScrewLine, distance: number): Vec3 => add(from, scale(axis, distance))

/** Length of wood from the head of a screw to where its axis leaves the blank, mm. */
export function exitOf({ panel, from, axis }: ScrewLine): number {
  const min = [0, 0, -panel.thickness] as const
  const max = [panel.length, panel.width, 0] as const
  const exits = ([0, 1, 2] as const)
    .filter((k) => Math.abs(axis[k]) > NOISE_MM)
    .map((k) => ((axis[k] > 0 ? max[k] : min[k]) - from[k]) / axis[k])
  return Math.min(...exits)
}
