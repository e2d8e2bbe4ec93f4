import { NOISE_MM } from '../geometry/index.ts'
import {
  type Area,
  discMeets,
  distanceTo,
  distanceToLine,
  grown,
  holds,
  lineMeets,
  linesCross,
  overlaps,
} from './areas.ts'
import type { Point } from './types.ts'

/** Something that no label may lie on. `open` to leaders: a leader line may cross it. mm. */
export type Obstacle =
  | { readonly kind: 'area'; readonly area: Area; readonly open?: boolean }
  | { readonly kind: 'disc'; readonly at: Point; readonly radius: number; readonly open?: boolean }
  | { readonly kind: 'line'; readonly from: Point; readonly to: Point; readonly open?: boolean }

/** What a label points at: a disc, or a bare point with radius 0. */
export interface Target {
  readonly at: Point
  readonly radius: number
}

/** Where a label lies, seen from its target. `above right`: above it, starting where the target starts. */
export type Side = 'above right' | 'above left' | 'above' | 'below right' | 'below left' | 'below' | 'right' | 'left'

export interface LabelRequest {
  readonly key: string
  /** Sizes of the forms that the label may take, the most wanted first: all its words, the tag alone. mm */
  readonly forms: readonly { readonly width: number; readonly height: number }[]
  /** The first is what a leader points at; a label beside any of the others needs no leader either. */
  readonly targets: readonly [Target, ...Target[]]
  /** What belongs to other labels: without a leader, the label must lie clearly nearer to a target than to these. */
  readonly rivals?: readonly Target[]
  /** The targets are places along one thing, such as a groove: a leader to any of them is as good as to the first. */
  readonly oneThing?: boolean
  /** Best first. */
  readonly sides: readonly Side[]
  /** Kept between the label and its target, and somewhat less of it from everything else; mm. */
  readonly gap: number
  /** Longest leader, mm. */
  readonly reach: number
}

export interface Placed {
  readonly key: string
  /** Index of the form. */
  readonly form: number
  readonly area: Area
  /** From the rim of a target, the first if possible, to the label, where it does not lie beside a target. */
  readonly leader?: { readonly from: Point; readonly to: Point }
}

type Spot = Omit<Placed, 'key'>

/**
 * Finds a place for each label, in the order given: beside its first target, a little away with a leader, beside its
 * other targets, further away with a leader; then the same for its shorter forms; last with a leader to another target.
 * The first free spot wins, so equal input gives equal output. Labels keep clear of the obstacles, of each other and of
 * leaders, and stay in `area`. A label without a free spot is left out of the answer.
 */
export function placeLabels(requests: readonly LabelRequest[], obstacles: readonly Obstacle[], area: Area): Placed[] {
  const taken: Obstacle[] = [...obstacles]
  const placed: Placed[] = []
  for (const request of requests) {
    const spot = firstFree(request, taken, area)
    if (!spot) continue
    placed.push({ key: request.key, ...spot })
    taken.push({ kind: 'area', area: spot.area })
    if (spot.leader) taken.push({ kind: 'line', ...spot.leader })
  }
  return placed
}

function firstFree(request: LabelRequest, taken: readonly Obstacle[], area: Area): Spot | undefined {
  for (const spot of spotsOf(request)) {
    if (holds(area, spot.area) && isFree(spot, request, taken) && isOwn(spot, request)) return spot
  }
  return undefined
}

/** Gaps kept from what the label has nothing to do with; from areas, more at its ends, so that two lines do not read as one. */
const ELBOW_ROOM = 0.6
const END_ROOM = 2

function isFree(spot: Spot, request: LabelRequest, taken: readonly Obstacle[]): boolean {
  const near = grown(spot.area, request.gap * ELBOW_ROOM)
  const ends = request.gap * END_ROOM
  const room: Area = { min: [spot.area.min[0] - ends, near.min[1]], max: [spot.area.max[0] + ends, near.max[1]] }
  // The area first, of all obstacles: most spots fail there, and leaders take longer to look at.
  return (
    taken.every((obstacle) => !isOn(obstacle, obstacle.kind === 'area' && !obstacle.open ? room : near)) &&
    isLedFreely(spot.leader, request, taken)
  )
}

function isLedFreely(leader: Spot['leader'], request: LabelRequest, taken: readonly Obstacle[]): boolean {
  if (leader === undefined) return true
  return taken.every(
    (obstacle) =>
      (obstacle.open === true || !cuts(leader, obstacle, request)) &&
      !runsAlong(leader, obstacle, request.gap * ELBOW_ROOM),
  )
}

/** Without a leader, a label is this many times further from the bores of other labels than from its own. */
const CLEARLY = 1.5

/** True when nobody can take the label for that of another bore: it has a leader, or its nearest bore is its own. */
function isOwn({ area, leader }: Spot, { targets, rivals = [] }: LabelRequest): boolean {
  if (leader || rivals.length === 0) return true
  const own = Math.min(...targets.map((target) => rimDistance(area, target)))
  return rivals.every((rival) => rimDistance(area, rival) > CLEARLY * own)
}

const rimDistance = (area: Area, { at, radius }: Target): number => distanceTo(area, at) - radius

/** True when an obstacle reaches into an area. */
export function isOn(obstacle: Obstacle, room: Area): boolean {
  switch (obstacle.kind) {
    case 'area':
      return overlaps(obstacle.area, room)
    case 'disc':
      return discMeets(room, obstacle.at, obstacle.radius)
    case 'line':
      return lineMeets(room, obstacle.from, obstacle.to)
    default:
      return obstacle satisfies never
  }
}

function cuts(leader: { from: Point; to: Point }, obstacle: Obstacle, request: LabelRequest): boolean {
  switch (obstacle.kind) {
    case 'area':
      return lineMeets(obstacle.area, leader.from, leader.to)
    case 'disc': {
      const isTarget = request.targets.some(({ at }) => at[0] === obstacle.at[0] && at[1] === obstacle.at[1])
      const [dx, dy] = [leader.from[0] - obstacle.at[0], leader.from[1] - obstacle.at[1]]
      const own = isTarget && Math.hypot(dx, dy) <= obstacle.radius + NOISE_MM
      return !own && distanceToLine(obstacle.at, leader.from, leader.to) < obstacle.radius
    }
    case 'line':
      return linesCross(leader.from, leader.to, obstacle.from, obstacle.to)
    default:
      return obstacle satisfies never
  }
}

/** The steepest slope between a line and a leader that is taken for a part of it: 6 in 100. */
const NEARLY_PARALLEL = 0.06

/** True when a leader lies on a line or close beside it, where nobody could tell the two apart; `near` in mm. */
function runsAlong(leader: { from: Point; to: Point }, obstacle: Obstacle, near: number): boolean {
  if (obstacle.kind !== 'line') return false
  const [dx, dy] = [obstacle.to[0] - obstacle.from[0], obstacle.to[1] - obstacle.from[1]]
  const long = Math.hypot(dx, dy)
  if (long <= near) return false
  const along = ([x, y]: Point): number => ((x - obstacle.from[0]) * dx + (y - obstacle.from[1]) * dy) / long
  const across = ([x, y]: Point): number => ((y - obstacle.from[1]) * dx - (x - obstacle.from[0]) * dy) / long
  const [a, b] = [along(leader.from), along(leader.to)]
  const [p, q] = [across(leader.from), across(leader.to)]
  if (Math.abs(q - p) > NEARLY_PARALLEL * Math.abs(b - a)) return false
  const shared = Math.min(Math.max(a, b), long) - Math.max(Math.min(a, b), 0)
  return shared > near && Math.min(Math.abs(p), Math.abs(q)) < near
}

/** Leaders grow by this many gaps from one try to the next. */
const STEP = 1.5
/** Leaders up to this many gaps long count as near. */
const NEAR = 5

function* spotsOf(request: LabelRequest): Generator<Spot> {
  const [first, ...others] = request.targets
  const led = request.oneThing ? request.targets : [first]
  for (let form = 0; form < request.forms.length; form += 1) {
    yield* beside(request, form, first)
    const near = Math.min(NEAR * request.gap, request.reach)
    for (const target of led) yield* withLeaders(request, form, target, 2 * request.gap, near)
    for (const target of others) yield* beside(request, form, target)
    for (const target of led) yield* withLeaders(request, form, target, (NEAR + STEP) * request.gap, request.reach)
  }
  // Better a leader to another hole of the row than none.
  const shortest = request.forms.length - 1
  for (const target of others) yield* withLeaders(request, shortest, target, 2 * request.gap, request.reach)
}

function* beside(request: LabelRequest, form: number, target: Target): Generator<Spot> {
  for (const side of request.sides) yield { form, area: areaBeside(request, form, target, side) }
}

function areaBeside(request: LabelRequest, form: number, target: Target, side: Side): Area {
  const { width, height } = sizeOf(request, form)
  const [x, y] = target.at
  const off = target.radius + request.gap
  const low = side.startsWith('above') ? y + off : side.startsWith('below') ? y - off - height : y - height / 2
  const left = leftOf(side, x, target.radius, off, width)
  return { min: [left, low], max: [left + width, low + height] }
}

function leftOf(side: Side, x: number, radius: number, off: number, width: number): number {
  switch (side) {
    case 'above right':
    case 'below right':
      return x - radius
    case 'above left':
    case 'below left':
      return x + radius - width
    case 'above':
    case 'below':
      return x - width / 2
    case 'right':
      return x + off
    case 'left':
      return x - off - width
    default:
      return side satisfies never
  }
}

/** Eight ways out, and the sides that they belong to; unit lengths are near enough for a leader. */
const WAYS: Readonly<Record<Side, readonly Point[]>> = {
  'above right': [
    [0.5, 0.866],
    [0.866, 0.5],
  ],
  'above left': [
    [-0.5, 0.866],
    [-0.866, 0.5],
  ],
  'below right': [
    [0.5, -0.866],
    [0.866, -0.5],
  ],
  'below left': [
    [-0.5, -0.866],
    [-0.866, -0.5],
  ],
  above: [[0, 1]],
  below: [[0, -1]],
  right: [[1, 0]],
  left: [[-1, 0]],
}

function* withLeaders(request: LabelRequest, form: number, target: Target, from: number, to: number): Generator<Spot> {
  const { width, height } = sizeOf(request, form)
  for (let length = from; length <= to; length += STEP * request.gap) {
    for (const side of request.sides) {
      for (const way of WAYS[side]) {
        const rim: Point = [target.at[0] + way[0] * target.radius, target.at[1] + way[1] * target.radius]
        const end: Point = [rim[0] + way[0] * length, rim[1] + way[1] * length]
        const low = end[1] - height / 2
        const left =
          way[0] > 0 ? end[0] + request.gap / 2 : way[0] < 0 ? end[0] - request.gap / 2 - width : end[0] - width / 2
        const shift = way[0] === 0 ? (way[1] * height) / 2 : 0
        const area: Area = { min: [left, low + shift], max: [left + width, low + shift + height] }
        yield { form, area, leader: { from: rim, to: end } }
      }
    }
  }
}

function sizeOf(request: LabelRequest, form: number): { width: number; height: number } {
  const size = request.forms[form]
  if (!size) throw new Error(`label ${request.key} has no form ${form}`)
  return size
}
