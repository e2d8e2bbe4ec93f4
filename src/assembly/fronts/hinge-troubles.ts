import { NOISE_MM, same } from '../../geometry/index.ts'
import { type CupHinge, hingeOnPlate, itemsOfKind, USUAL_HINGES } from '../../hardware/index.ts'
import { mm } from '../../length/index.ts'
import type { Edit } from '../../project/index.ts'
import type { Edge } from '../carcase/index.ts'
import { atLeast } from '../mend.ts'
import type { PlacingTrouble } from '../types.ts'
import type { HingeLine } from './hinge-line.ts'
import { PLATE_REACH_MM, solveOverlay } from './hinge-rules.ts'
import type { HingeRequest } from './hinges.ts'

type Mending = Pick<PlacingTrouble, 'fix' | 'change'>

export function noWall({ front, door }: HingeRequest): PlacingTrouble {
  return {
    rule: 'hinge-overlay',
    severity: 'stop',
    panels: [door.panel.id],
    message: `${door.panel.name}: there is no panel at its ${door.hang} edge for the hinge plates`,
    fix: 'hang it at another edge, or give the carcase that panel',
    at: front.at,
  }
}

/** A hinge that comes nearest to the overlay that is wanted, and how near. */
interface Nearest {
  readonly hinge: CupHinge
  readonly nearest: number
}

export function noOverlay(request: HingeRequest, { hinge, nearest }: Nearest): PlacingTrouble {
  const { front, door } = request
  return {
    rule: 'hinge-overlay',
    severity: 'stop',
    panels: [door.panel.id],
    message: `${door.panel.name}: an overlay of ${mm(door.overlay)} mm is wanted, but no plate of ${hinge.id} gives it; the nearest is ${mm(nearest)} mm`,
    ...(otherPlate(request, hinge) ?? otherHinge(request) ?? otherReveal(request, nearest)),
    at: front.at,
  }
}

const solves = (hinge: CupHinge, overlay: number): boolean => !('nearest' in solveOverlay(hinge, overlay))

/** Where one plate was asked for: another on which the same hinge gives the overlay. */
function otherPlate({ front, door }: HingeRequest, hinge: CupHinge): Mending | undefined {
  const plate = itemsOfKind('hinge plate').find(
    (one) => one.system === hinge.system && solves(hingeOnPlate(hinge, one), door.overlay),
  )
  return plate && { fix: `a ${plate.id} would do`, change: [{ path: [...front.at, 'plate'], value: plate.id }] }
}

/** One of the usual hinges with a plate by rule. */
function otherHinge({ front, door }: HingeRequest): Mending | undefined {
  const found = itemsOfKind('cup hinge').find(
    (one) =>
      USUAL_HINGES.includes(one.id) && (one.lay === 'inset') === (front.lay === 'inset') && solves(one, door.overlay),
  )
  if (found === undefined) return undefined
  const change: Edit[] = [
    { path: [...front.at, 'hinge'], value: found.id },
    { path: [...front.at, 'plate'], value: 'auto' },
  ]
  return { fix: `a ${found.id} would do, with the plate left to the rule`, change }
}

const exact = (length: number): string => `${Math.round(length * 1000) / 1000} mm`

/** The reveal, the gap or the inset gap at the hinge edge by which the nearest overlay is the one that is wanted. */
function otherReveal({ front, door, opening }: HingeRequest, nearest: number): Mending {
  const by = mm(Math.abs(door.overlay - nearest))
  const words: Mending = { fix: `change the reveal or gap by ${by} mm, or choose another hinge` }
  const said = (key: string, value: number): Mending =>
    value < 0
      ? words
      : { fix: `set \`${key}: ${exact(value)}\``, change: [{ path: [...front.at, key], value: exact(value) }] }
  if (front.lay === 'inset') return said('inset gap', -nearest)
  const thickness = opening[door.hang]?.thickness ?? 0
  if (same(door.overlay, thickness - front.reveal[door.hang])) {
    const reveal = thickness - nearest
    if (reveal < 0) return words
    const at = (edge: Edge): string => exact(edge === door.hang ? reveal : front.reveal[edge])
    const value = { left: at('left'), right: at('right'), top: at('top'), bottom: at('bottom') }
    return {
      fix: `set its \`reveal\` at the ${door.hang} to ${exact(reveal)}`,
      change: [{ path: [...front.at, 'reveal'], value }],
    }
  }
  const gap = thickness - 2 * nearest
  // Of two fronts over one panel the larger gap counts.
  return gap > thickness - 2 * door.overlay || same(front.gap, thickness - 2 * door.overlay) ? said('gap', gap) : words
}

/** Cups must lie on the door, and not on each other; `room` is half of what a cup takes along the edge, mm. */
export function placeTroubles(
  { door, front }: HingeRequest,
  line: HingeLine,
  places: readonly number[],
  { hinge, room }: { readonly hinge: CupHinge; readonly room: number },
): PlacingTrouble[] {
  const flap = door.hang === 'top' || door.hang === 'bottom'
  const [size, low, high] = flap ? ['wide', 'left', 'right'] : ['high', 'lower', 'upper']
  const mending = clearPlaces(front.at, line, places, cupReach(hinge), size ?? '')
  const trouble = (what: string): PlacingTrouble => ({
    rule: 'hinge-height',
    severity: 'stop',
    panels: [door.panel.id],
    message: `${door.panel.name} is ${mm(line.to - line.from)} mm ${size}; ${what}`,
    ...mending,
    at: front.at,
  })
  const ends = places
    .filter((at) => at - line.from < room - NOISE_MM || line.to - at < room - NOISE_MM)
    .map((at) => {
      const [end, from] = at - line.from < line.to - at ? [low, at - line.from] : [high, line.to - at]
      return trouble(
        `a hinge ${mm(from)} mm from its ${end} end leaves no room for the cup, which takes ${mm(room)} mm`,
      )
    })
  const pairs = places.slice(1).flatMap((at, k) => {
    const apart = at - (places[k] ?? at)
    if (apart >= 2 * room - NOISE_MM) return []
    return [trouble(`two of its hinges are only ${mm(apart)} mm apart; ${mm(2 * room)} mm is the least`)]
  })
  return [...ends, ...pairs]
}

/** From the middle of a cup to the end of its door, with the wood that its holes ask for, mm. */
export function cupReach(hinge: CupHinge): number {
  const holes = hinge.parts.cup ?? []
  return Math.max(
    ...holes.map(
      ({ y, diameter, edgeWall }) =>
        Math.abs(y) + diameter / 2 + Math.max(edgeWall ?? diameter / 2, hinge.cupDistance.min),
    ),
  )
}

/**
 * The same number of hinges, each moved as little as can be, from the lowest up, so that cups and plates have room; no
 * such places on a door too low.
 */
function clearPlaces(
  at: PlacingTrouble['at'],
  line: HingeLine,
  places: readonly number[],
  room: number,
  size: string,
): Mending {
  const low = Math.max(room, line.clear.from + PLATE_REACH_MM - line.from)
  const high = Math.min(line.to - line.from - room, line.clear.to - PLATE_REACH_MM - line.from)
  const short = 2 * room * (places.length - 1) - (high - low)
  if (short > NOISE_MM) {
    return { fix: `make it ${atLeast(line.to - line.from + short)} ${size} or more, or take fewer hinges` }
  }
  let from = low
  const moved = places.map((place, k) => {
    const now = Math.min(Math.max(place - line.from, from), high - 2 * room * (places.length - 1 - k))
    from = now + 2 * room
    return now
  })
  const value = moved.map((distance) => `${Math.round(distance * 10) / 10} mm`)
  return { fix: `set \`hinges: [${value.join(', ')}]\``, change: [{ path: [...at, 'hinges'], value }] }
}
