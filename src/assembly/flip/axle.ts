import { compose, NOISE_MM, type Pose, poseOf, Y, Z } from '../../geometry/index.ts'
import type { LockingBolt } from '../../hardware/index.ts'
import { mm } from '../../length/index.ts'
import { limitOf } from '../../project/index.ts'
import { type Parts, partsOf } from '../parts.ts'
import type { PlacedHardware, PlacedPanel } from '../types.ts'
import { channelTroubles, lockTrouble, thinCore } from './axle-troubles.ts'
import type { FlipPlace } from './place.ts'
import type { PlatformBoards } from './platform.ts'

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

/** Diameter of the hole in the core's end, mm. */
export const coreBore = (item: LockingBolt): number => item.parts.core?.[0]?.diameter ?? 0

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
  const wall = limitOf(place.spec, 'locking-place', 'stop')
  const low = wall + radius
  const high = (sizes.rear - sizes.front) / 2 - (flip.axle.channel / 2 + wall + radius)
  const thin = thinCore(place, boards)
  if (thin.length > 0) return partsOf({ troubles: thin })
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
