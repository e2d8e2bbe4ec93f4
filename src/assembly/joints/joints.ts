import { add, cross, NOISE_MM, type Pose, poseOf, scale, type Vec3 } from '../../geometry/index.ts'
import type { Item } from '../../hardware/index.ts'
import type { DefinitionPath, JointSpec, Limits } from '../../project/index.ts'
import type { PlacedHardware, PlacedPanel, PlacingTrouble, Station } from '../types.ts'
import { camStations, dowelOffsets } from './cams.ts'
import { type Contact, contactOf } from './contact.ts'
import { lengthTroubles } from './lengths.ts'
import { type PocketFigures, pocketFigures } from './pocket.ts'
import { belowFace, pocketFace } from './pocket-face.ts'

/**
 * Distances of the fasteners of a joint from its middle, mm, ascending: n = max(2, ceil((L − 2e) / s) + 1), evenly
 * spaced between the end distances. On a joint shorter than three end distances the ends draw in to a quarter of it.
 */
export function fastenerOffsets(length: number, joint: Pick<JointSpec, 'endDistance' | 'spacing'>): number[] {
  const end = length < 3 * joint.endDistance ? length / 4 : joint.endDistance
  const run = length - 2 * end
  const count = Math.max(2, Math.ceil((run - NOISE_MM) / joint.spacing) + 1)
  return Array.from({ length: count }, (_, k) => (k * run) / (count - 1) - run / 2)
}

export interface JointRequest {
  readonly module: string
  readonly head: PlacedPanel
  readonly tip: PlacedPanel
  readonly joint: JointSpec
  readonly at: DefinitionPath
  /** Where the definition says how the boards are joined, or can say it. */
  readonly asked?: DefinitionPath
  /** By which it is judged. */
  readonly limits: Limits
  /** Where it is not simply where the two boxes touch. */
  readonly contact?: Contact
  /** Distances of the fasteners from its middle, mm, ascending, where something keeps them from an even spacing. */
  readonly offsets?: readonly number[]
}

/** All fasteners of one joint, placed; none where the boards do not touch. */
export function placeJoint(request: JointRequest): { hardware: PlacedHardware[]; troubles: PlacingTrouble[] } {
  const { head, tip, joint } = request
  const contact = request.contact ?? contactOf(head, tip)
  if (contact === undefined) return { hardware: [], troubles: [] }
  const series = `${request.module}/${head.key}+${tip.key}`
  const below = belowFace(tip, contact.middle)
  const pocket = joint.item.kind === 'pocket screw' ? pocketFigures(joint.item, head.thickness, below) : undefined
  const troubles = lengthTroubles(request, pocket, below)
  // A screw of the wrong length has no holes worth drawing.
  if (troubles.some((trouble) => trouble.severity === 'stop')) return { hardware: [], troubles }
  const offsets = request.offsets ?? fastenerOffsets(contact.length, joint)
  const placeAt = (item: Item, run: string, offset: number, k: number): PlacedHardware => {
    const origin = add(contact.middle, scale(contact.along, offset))
    return {
      id: `${run}/${k + 1}`,
      item,
      frame: request.module,
      stations: stationsOf(item, request, contact, origin, pocket),
      settings: pocket === undefined ? {} : { collar: pocket.collar },
      series: run,
      at: request.at,
      ...(request.asked !== undefined && { joint: request.asked }),
    }
  }
  const { dowel } = joint
  const dowels = dowel === undefined ? [] : dowelOffsets(offsets)
  return {
    hardware: [
      ...offsets.map((offset, k) => placeAt(joint.item, series, offset, k)),
      ...dowels.map((offset, k) => placeAt(dowel ?? joint.item, `${series}/dowels`, offset, k)),
    ],
    troubles,
  }
}

function stationsOf(
  item: Item,
  request: JointRequest,
  contact: Contact,
  origin: Vec3,
  pocket: PocketFigures | undefined,
): Station[] {
  if (item.kind === 'cam fitting') return camStations(item, request, contact, origin)
  return pocket === undefined
    ? straightStations(item, request, contact, origin)
    : pocketStations(request, contact, origin, pocket.entry)
}

function straightStations(item: Item, request: JointRequest, contact: Contact, origin: Vec3): Station[] {
  const y = contact.along
  const pose = poseOf(cross(y, contact.into), y, origin)
  const [first, second] = item.kind === 'dowel' ? (['face', 'edge'] as const) : (['head', 'tip'] as const)
  return [
    { part: first, panel: request.head.id, pose, wood: 'behind' },
    { part: second, panel: request.tip.id, pose, wood: 'ahead' },
  ]
}

function pocketStations(request: JointRequest, contact: Contact, origin: Vec3, entry: number): Station[] {
  const { head, tip } = request
  const faceNormal = pocketFace(tip)
  const into = scale(faceNormal, -1)
  const toJoint = scale(contact.into, -1)
  const below = belowFace(tip, contact.middle)
  const at: Vec3 = [
    origin[0] + contact.into[0] * entry + faceNormal[0] * below,
    origin[1] + contact.into[1] * entry + faceNormal[1] * below,
    origin[2] + contact.into[2] * entry + faceNormal[2] * below,
  ]
  const pose: Pose = poseOf(toJoint, cross(into, toJoint), at)
  return [
    { part: 'pocket', panel: tip.id, pose, wood: 'ahead' },
    { part: 'tip', panel: head.id, pose: poseOf(cross(contact.along, toJoint), contact.along, origin), wood: 'ahead' },
  ]
}
