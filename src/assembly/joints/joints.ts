import { add, cross, NOISE_MM, type Pose, poseOf, scale, type Vec3 } from '../../geometry/index.ts'
import type { Item, PocketScrew } from '../../hardware/index.ts'
import { mm } from '../../length/index.ts'
import type { DefinitionPath, JointSpec } from '../../project/index.ts'
import type { RuleId } from '../../rulebook/index.ts'
import type { PlacedHardware, PlacedPanel, PlacingTrouble, Station } from '../types.ts'
import { camStations, dowelOffsets } from './cams.ts'
import { type Contact, contactOf } from './contact.ts'
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
  const pocket =
    joint.item.kind === 'pocket screw'
      ? pocketFigures(joint.item, head.thickness, belowFace(tip, contact.middle))
      : undefined
  const troubles = lengthTroubles(request, pocket)
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

/** Length of screw that must, and should, be in the second board, mm; common practice (a screw of t + 25 to t + 32). */
const BITE_STOP_MM = 8
const BITE_WARN_MM = 15

/** Screws that reach too little into the second board, and pocket screws that leave no pocket in the first. */
function lengthTroubles({ head, tip, joint, at }: JointRequest, pocket: PocketFigures | undefined): PlacingTrouble[] {
  const { item } = joint
  if (item.kind === 'dowel' || !('length' in item)) return []
  const trouble = (rule: RuleId, severity: 'stop' | 'warn', what: string, fix: string): PlacingTrouble => ({
    rule,
    severity,
    panels: [head.id, tip.id],
    message: `${head.name} and ${tip.name}: ${what}`,
    fix,
    at,
  })
  if (pocket !== undefined && pocket.collar < MIN_POCKET_MM) {
    const what = `a ${item.id} mm leaves a pocket only ${mm(Math.max(0, pocket.collar))} mm deep; ${MIN_POCKET_MM} mm is the least`
    return [trouble('pocket-depth', 'stop', what, 'choose a shorter pocket screw, or another joint')]
  }
  const bite = pocket?.bite ?? item.length - head.thickness
  const least = pocket === undefined ? BITE_WARN_MM : BITE_STOP_MM
  if (bite >= least - NOISE_MM) return []
  const [reached, board] = pocket === undefined ? [bite, tip] : [bite, head]
  const what = `a ${item.id} reaches only ${mm(Math.max(0, reached))} mm into the ${board.name}`
  const severity = bite < BITE_STOP_MM - NOISE_MM ? 'stop' : 'warn'
  return [
    trouble(
      'screw-bite',
      severity,
      what,
      pocket === undefined ? `choose a screw ${mm(least - bite)} mm longer or more` : 'choose another joint',
    ),
  ]
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

/** Slant of a pocket bore to the face it enters, degrees [S32]. */
const POCKET_ANGLE_DEG = 15
/** Wood left beyond the tip of a pocket screw; common practice. */
const TIP_SKIN_MM = 3
const MIN_POCKET_MM = 5

interface PocketFigures {
  /** From the end of the board to where the bit enters its face. */
  readonly entry: number
  /** Along the slant, from the face to the shoulder of the step. */
  readonly collar: number
  /** Of the screw in the other board. */
  readonly bite: number
}

/**
 * Where a pocket bore enters and how deep its step goes, mm. The axis leaves the end of the board in the middle of the
 * joint, `below` the face that it enters (half the thickness of a whole board), so it enters that face below / tan 15°
 * from the end, and below / sin 15° of wood lies on it. The screw
 * bites half its length into the other board, less where that would leave no skin; the rest of it stays in this one,
 * and the pocket is what remains. Own arithmetic.
 */
export function pocketFigures(item: PocketScrew, headThickness: number, below: number): PocketFigures {
  const angle = (POCKET_ANGLE_DEG * Math.PI) / 180
  const bite = Math.min(item.length / 2, (headThickness - TIP_SKIN_MM) / Math.cos(angle))
  return {
    entry: below / Math.tan(angle),
    collar: below / Math.sin(angle) - (item.length - bite),
    bite,
  }
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
