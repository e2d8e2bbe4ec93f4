import { compose, NOISE_MM, type Pose, poseOf, Y, Z } from '../../geometry/index.ts'
import type { LockingBolt } from '../../hardware/index.ts'
import { mm } from '../../length/index.ts'
import { type Parts, partsOf } from '../parts.ts'
import type { PlacedHardware, PlacedPanel, PlacingTrouble } from '../types.ts'
import type { FlipPlace } from './place.ts'
import type { PlatformBoards } from './platform.ts'

/** A core thicker than the axle by more than this lets the platform rattle unless it is packed, mm; common practice. */
const PACKING_MM = 1
/** Wood that is left between a locking bolt and the channel, and between it and the platform's edge, mm; common practice. */
const LOCK_WALL_MM = 5

export interface Sides {
  readonly left: PlacedPanel
  readonly right: PlacedPanel
}

/** The axle through both sides, placed once, so that its two bores lie on one line. */
export function placeAxle(place: FlipPlace, sides: Sides, boards: PlatformBoards): Parts {
  const { spec, flip, walls, axle } = place
  const series = `${spec.key}/flip-over-axle`
  const piece: PlacedHardware = {
    id: `${series}/1`,
    item: flip.axle,
    frame: spec.key,
    stations: [
      { part: 'left', panel: sides.left.id, pose: poseOf(Y, Z, [walls.left, axle.y, axle.z]), wood: 'behind' },
      { part: 'right', panel: sides.right.id, pose: poseOf(Y, Z, [walls.right, axle.y, axle.z]), wood: 'ahead' },
    ],
    settings: {},
    series,
    note: `${mm(spec.width)} mm long from outside to outside, washers of ${mm(flip.gap)} mm at each side`,
    at: flip.at,
  }
  return partsOf({ hardware: [piece], troubles: channelTroubles(place, boards) })
}

function channelTroubles({ spec, flip }: FlipPlace, { front, rear }: PlatformBoards): PlacingTrouble[] {
  const { axle, core } = flip
  // The axle has the least room where the sheet is thinnest.
  const thinnest = Math.min(...core.readings)
  const shared = { rule: 'axle-channel', panels: [front.id, rear.id], at: flip.at } as const
  if (thinnest < axle.coreLeast - NOISE_MM) {
    const message = `${spec.name}: a core of ${mm(thinnest)} mm leaves no channel for the ${axle.id}, which needs ${mm(axle.coreLeast)} mm`
    const fix = `take a core of ${mm(axle.coreLeast)} mm or more, or a thinner axle`
    return [{ ...shared, severity: 'stop', message, fix }]
  }
  const slack = core.thickness - axle.diameter
  if (slack <= PACKING_MM + NOISE_MM) return []
  const message = `${spec.name}: the channel is ${mm(core.thickness)} mm high and the ${axle.id} ${mm(axle.diameter)} mm thick: pack it out by ${mm(slack / 2)} mm above and below, so that the axle lies in the middle`
  return [{ ...shared, severity: 'note', message }]
}

/** Diameter of the hole in the core's end, mm. */
const coreBore = (item: LockingBolt): number => item.parts.core?.[0]?.diameter ?? 0

/**
 * The locking bolts. Each goes through a side at the height of the axle, into the end of the core board that lies there
 * at rest, and, turned over with the platform by half a turn, into the one that lies there then: so the same bores in
 * the sides serve both rest positions.
 */
export function placeLocks(place: FlipPlace, sides: Sides, boards: PlatformBoards): Parts {
  const { flip, sizes } = place
  const { item, edgeDistance, eachSide } = flip.lock
  const fromAxle = (sizes.rear - sizes.front) / 2 - edgeDistance
  const radius = coreBore(item) / 2
  const nearest = flip.axle.channel / 2 + LOCK_WALL_MM + radius
  const low = LOCK_WALL_MM + radius
  const high = (sizes.rear - sizes.front) / 2 - nearest
  if (edgeDistance < low - NOISE_MM || edgeDistance > high + NOISE_MM) {
    return partsOf({ troubles: [lockTrouble(place, boards, low, high)] })
  }
  const ends = eachSide === 1 ? (['front'] as const) : (['front', 'rear'] as const)
  const hardware = (['left', 'right'] as const).flatMap((hand) =>
    ends.map((end, k) => lockAt(place, sides, boards, { hand, end, number: k + 1, fromAxle })),
  )
  return partsOf({ hardware })
}

interface LockAt {
  readonly hand: 'left' | 'right'
  readonly end: 'front' | 'rear'
  readonly number: number
  /** Distance of the bolt from the axle, mm. */
  readonly fromAxle: number
}

function lockAt(place: FlipPlace, sides: Sides, boards: PlatformBoards, wanted: LockAt): PlacedHardware {
  const { spec, flip, walls, axle } = place
  const { hand, end } = wanted
  const y = axle.y + (end === 'front' ? -wanted.fromAxle : wanted.fromAxle)
  // From the side into the platform.
  const pose = (x: number): Pose => (hand === 'left' ? poseOf(Y, Z, [x, y, axle.z]) : poseOf(Z, Y, [x, y, axle.z]))
  const intoCore = pose(hand === 'left' ? place.x0 : place.x1)
  const [here, there] = end === 'front' ? [boards.front, boards.rear] : [boards.rear, boards.front]
  const series = `${spec.key}/locking-bolts-${hand}`
  return {
    id: `${series}/${wanted.number}`,
    item: flip.lock.item,
    frame: spec.key,
    stations: [
      { part: 'side', panel: sides[hand].id, pose: pose(walls[hand]), wood: 'behind' },
      { part: 'core', panel: here.id, pose: intoCore, wood: 'ahead' },
      { part: 'turned', panel: there.id, pose: compose(place.moduleTurned, intoCore), wood: 'ahead' },
    ],
    settings: {},
    series,
    at: flip.lock.at,
  }
}

function lockTrouble(
  { spec, flip }: FlipPlace,
  { front, rear }: PlatformBoards,
  low: number,
  high: number,
): PlacingTrouble {
  const { item, edgeDistance, at } = flip.lock
  const where = edgeDistance < low ? "too near the platform's edge" : 'too near the channel of the axle, or beyond it'
  return {
    rule: 'locking-place',
    severity: 'stop',
    panels: [front.id, rear.id],
    message: `${spec.name}: a ${item.id}, ${mm(edgeDistance)} mm from the platform's edge, lies ${where}`,
    fix:
      high >= low
        ? `set its \`edge distance\` from ${mm(low)} to ${mm(high)} mm`
        : 'make the platform deeper, or take a smaller bolt or axle',
    at,
  }
}
