import { add, cross, poseOf, scale, type Vec3 } from '../../geometry/index.ts'
import type { CamFitting } from '../../hardware/index.ts'
import type { PlacedPanel, Station } from '../types.ts'
import type { Contact } from './contact.ts'
import { belowFace, pocketFace } from './pocket-face.ts'

/**
 * The three grips of a cam fitting at a place of the joint. The bolt lies `boltAxis` under the face that takes the cam,
 * whatever the board measures, since the housing is made for that; the cam stands `camDistance` from the joint.
 */
export function camStations(
  item: CamFitting,
  boards: { readonly head: PlacedPanel; readonly tip: PlacedPanel },
  contact: Contact,
  origin: Vec3,
): Station[] {
  const { head, tip } = boards
  const face = pocketFace(tip)
  const onAxis = add(origin, scale(face, belowFace(tip, origin) - item.boltAxis))
  const bolt = poseOf(cross(contact.along, contact.into), contact.along, onAxis)
  const toJoint = scale(contact.into, -1)
  const onFace = add(add(onAxis, scale(contact.into, item.camDistance)), scale(face, item.boltAxis))
  return [
    { part: 'face', panel: head.id, pose: bolt, wood: 'behind' },
    { part: 'edge', panel: tip.id, pose: bolt, wood: 'ahead' },
    { part: 'cam', panel: tip.id, pose: poseOf(toJoint, cross(scale(face, -1), toJoint), onFace), wood: 'ahead' },
  ]
}

/** From a cam to the dowel beside it, mm: one step of the system row; common practice. */
const BESIDE_MM = 32
/** Two dowels nearer than this, middle to middle, become one between them, mm: two diameters and a wall. */
const DOWELS_APART_MM = 3 * 8

/**
 * Offsets of the dowels beside cams at these offsets from the middle of a joint, mm, ascending: each 32 nearer the
 * middle; a cam in the middle has its dowel after it; two that would come close are one between them.
 */
export function dowelOffsets(cams: readonly number[]): number[] {
  const wished = cams.map((offset) => (offset > 0 ? offset - BESIDE_MM : offset + BESIDE_MM))
  const sorted = [...wished].sort((a, b) => a - b)
  const kept: number[] = []
  for (const offset of sorted) {
    const last = kept.at(-1)
    if (last !== undefined && offset - last < DOWELS_APART_MM) kept[kept.length - 1] = (last + offset) / 2
    else kept.push(offset)
  }
  return kept
}
