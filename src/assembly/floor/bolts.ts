import { MINUS_X, MINUS_Y, NOISE_MM, type Pose, poseOf, turnBack, type Vec3, X, Y, Z } from '../../geometry/index.ts'
import { catalogue, type JoiningBolt } from '../../hardware/index.ts'
import { mm } from '../../length/index.ts'
import type { DefinitionPath, JoinSpec } from '../../project/index.ts'
import { FLOOR, type PlacedHardware, type PlacingTrouble } from '../types.ts'
import { type BoltLimits, type BoltPlace, freeInsets, type Insets, placeBolts } from './bolt-places.ts'
import { acrossAxis, type OuterFace, sharedRectangle } from './faces.ts'
import { joinEdit, typed } from './mend.ts'
import { type FacePoint, type Grips, type NearBolt, obstaclesIn, takenBy } from './obstacles.ts'
import { belowCircles } from './swing-circle.ts'

export interface BoltRequest {
  readonly join: JoinSpec
  /** The face of the module that was placed first, and the one that lies on it. */
  readonly earlier: OuterFace
  readonly later: OuterFace
  readonly grips: Grips
  readonly limits: BoltLimits
  readonly at: DefinitionPath
}

/** Bolts in the frame in which their two faces were given, and what of them could not be placed as asked. */
export interface Bolts {
  readonly bolts: readonly NearBolt[]
  readonly troubles: readonly PlacingTrouble[]
}

/** The bolts through two faces that lie on each other, each placed once. */
export function boltFaces(request: BoltRequest): Bolts {
  const { join, earlier, later, grips, limits } = request
  const { item } = join
  const [head, nut] = headAndNut(item, earlier, later)
  const obstacles = [
    ...obstaclesIn(head, 'head', item, grips, limits.wall),
    ...obstaclesIn(nut, 'nut', item, grips, limits.wall),
  ]
  const insets: Insets = { end: join.endInset, side: join.sideInset, least: leastInset(item) }
  const shared = belowCircles(sharedRectangle(head, nut), [head, nut], grips)
  const places = placeBolts(shared, insets, obstacles, limits.farthest)
  const free = places.some((place) => place.blocked) ? freeInsets(shared, insets, obstacles) : undefined
  return {
    bolts: places.map((place, k) => boltAt(request, head, nut, place, k + 1)),
    troubles: [
      ...barrelTroubles(request, nut),
      ...blockedTroubles(request, [head, nut], places, free),
      ...movedNotes(request, head, nut, places),
    ],
  }
}

const tooThin = (item: JoiningBolt, face: OuterFace): boolean => face.panel.thickness < item.barrelLength - NOISE_MM

/** The module that was placed first takes the head, unless only its board is thick enough for the nut. */
function headAndNut(item: JoiningBolt, earlier: OuterFace, later: OuterFace): readonly [OuterFace, OuterFace] {
  return tooThin(item, later) && !tooThin(item, earlier) ? [later, earlier] : [earlier, later]
}

/** A bolt that moves keeps its flanges on the rectangle, and wood of its bore's own diameter beside it; common practice. */
function leastInset(item: JoiningBolt): number {
  const { bore, flange } = (['head', 'nut'] as const)
    .map((part) => takenBy(item, part))
    .reduce((a, b) => ({ bore: Math.max(a.bore, b.bore), flange: Math.max(a.flange, b.flange) }))
  return Math.max(flange, 3 * bore)
}

/** x and y of a frame whose z goes the way that the head's face looks, y up. */
function stationPose({ out, axis, plane }: OuterFace, [across, up]: FacePoint): Pose {
  const positive = out[axis] > 0
  const x = axis === 0 ? (positive ? Y : MINUS_Y) : positive ? MINUS_X : X
  return poseOf(x, Z, axis === 0 ? [plane, across, up] : [across, plane, up])
}

const seriesOf = ({ earlier, later }: BoltRequest): string => `${earlier.module.key}+${later.module.key}`

function boltAt(request: BoltRequest, head: OuterFace, nut: OuterFace, place: BoltPlace, number: number): NearBolt {
  const pose = stationPose(head, place.at)
  const series = seriesOf(request)
  const moved = movedWords(head, place)
  const piece: PlacedHardware = {
    id: `${series}/bolt/${number}`,
    item: request.join.item,
    frame: FLOOR,
    stations: [
      { part: 'head', panel: head.panel.id, pose, wood: 'behind' },
      { part: 'nut', panel: nut.panel.id, pose, wood: 'ahead' },
    ],
    settings: {},
    series: `${series}/bolt`,
    ...(moved !== undefined && { note: moved }),
    at: request.at,
  }
  return {
    piece,
    fromModule: new Map([
      [head.panel.id, head.module.floorFromModule],
      [nut.panel.id, nut.module.floorFromModule],
    ]),
  }
}

/** `moved 13 mm toward the back of one`: as seen in the module that takes the head. */
function movedWords(head: OuterFace, { moved: [across, up] }: BoltPlace): string | undefined {
  const steps = [
    ...(across === 0 ? [] : [`${mm(Math.abs(across))} mm toward the ${wayWords(head, across)} of ${head.module.name}`]),
    ...(up === 0 ? [] : [`${mm(Math.abs(up))} mm ${up > 0 ? 'up' : 'down'}`]),
  ]
  return steps.length === 0 ? undefined : `moved ${steps.join(' and ')}`
}

function wayWords(head: OuterFace, across: number): string {
  const way: Vec3 = acrossAxis(head) === 0 ? [Math.sign(across), 0, 0] : [0, Math.sign(across), 0]
  const [x, y] = turnBack(head.module.floorFromModule, way)
  if (Math.abs(x) > Math.abs(y)) return x > 0 ? 'right' : 'left'
  return y > 0 ? 'back' : 'front'
}

const pairWords = ({ earlier, later }: BoltRequest): string => `${earlier.module.name} and ${later.module.name}`

/** What moved, said once for bolts that moved alike. */
function movedNotes(
  request: BoltRequest,
  head: OuterFace,
  nut: OuterFace,
  places: readonly BoltPlace[],
): PlacingTrouble[] {
  const alike = new Map<string, { numbers: number[]; off: Set<string> }>()
  for (const [k, place] of places.entries()) {
    const words = movedWords(head, place)
    if (words === undefined) continue
    const group = alike.get(words) ?? { numbers: [], off: new Set() }
    group.numbers.push(k + 1)
    for (const what of place.off) group.off.add(what)
    alike.set(words, group)
  }
  return [...alike].map(([words, { numbers, off }]) => ({
    rule: 'bolt-moved',
    severity: 'note',
    panels: [head.panel.id, nut.panel.id],
    message: `${pairWords(request)}: ${numbers.length === 1 ? 'bolt' : 'bolts'} ${numbers.join(', ')} ${words}, off ${[...off].join(', ')}`,
    at: request.at,
  }))
}

function blockedTroubles(
  request: BoltRequest,
  [head, nut]: readonly [OuterFace, OuterFace],
  places: readonly BoltPlace[],
  free: { readonly end: number; readonly side: number } | undefined,
): PlacingTrouble[] {
  const { join } = request
  const change = free && [joinEdit(request, { ...join, endInset: free.end, sideInset: free.side })]
  return places.flatMap((place, k): PlacingTrouble[] => {
    if (!place.blocked) return []
    return [
      {
        rule: 'bolt-blocked',
        severity: 'stop',
        panels: [head.panel.id, nut.panel.id],
        message: `${pairWords(request)}: bolt ${k + 1} has no free place within ${mm(request.limits.farthest)} mm; in the way: ${place.off.join(', ')}`,
        fix:
          free === undefined
            ? 'move what is in the way: no other inset of the bolts is free'
            : `set \`end inset\` to ${typed(free.end)} and \`side inset\` to ${typed(free.side)}, or move what is in the way`,
        ...(change !== undefined && { change }),
        at: request.at,
      },
    ]
  })
}

/** A barrel that is longer than its board keeps the two faces apart. */
function barrelTroubles(request: BoltRequest, nut: OuterFace): PlacingTrouble[] {
  const { item } = request.join
  if (!tooThin(item, nut)) return []
  const { thickness } = nut.panel
  const other = catalogue.find((one): one is JoiningBolt => one.kind === 'joining bolt' && !tooThin(one, nut))
  return [
    {
      rule: 'nut-barrel',
      severity: 'stop',
      panels: [nut.panel.id],
      message: `${nut.module.name}, ${nut.panel.name}: the barrel of the nut of ${item.id} is ${mm(item.barrelLength)} mm long, the board only ${mm(thickness)} mm thick`,
      fix: other === undefined ? 'take a thicker board there' : `take ${other.id}, or a thicker board there`,
      ...(other !== undefined && { change: [joinEdit(request, { ...request.join, item: other })] }),
      at: request.at,
    },
  ]
}
