import { MINUS_Z, NOISE_MM, poseOf, X, Y, Z } from '../../geometry/index.ts'
import { type FlapStay, itemsOfKind } from '../../hardware/index.ts'
import { mm } from '../../length/index.ts'
import type { FlapSpec } from '../../project/index.ts'
import type { Opening } from '../carcase/index.ts'
import { type Parts, partsOf } from '../parts.ts'
import type { PlacedHardware, PlacingTrouble } from '../types.ts'
import type { PlacedDoor } from './fronts.ts'
import type { Span } from './hinge-rules.ts'
import { type Leaf, shelvesAgainst } from './plate-wall.ts'

export interface StayRequest {
  readonly module: string
  readonly front: FlapSpec
  readonly flap: PlacedDoor
  readonly opening: Opening
  readonly leaves: readonly Leaf[]
}

type Side = 'left' | 'right'

/** The stays that hold a flap open: a bracket on the side and one on the flap, each pair placed once. */
export function placeStays(request: StayRequest): Parts {
  const { front } = request
  if (front.stay === 'none') return partsOf({})
  const kinds =
    front.stay === 'auto' ? itemsOfKind('flap stay').filter(({ hang }) => hang === front.hang) : [front.stay]
  const fitting = kinds.find((item) => troubleOf(request, item) === undefined)
  if (fitting !== undefined) return placed(request, fitting)
  const last = kinds.at(-1)
  const why = last && troubleOf(request, last)
  if (last === undefined || why === undefined) return partsOf({})
  const trouble: PlacingTrouble = {
    rule: 'flap-stay',
    severity: 'stop',
    panels: [request.flap.panel.id],
    message: `${request.flap.panel.name}: ${why}`,
    ...otherStay(request),
    at: front.at,
  }
  return partsOf({ troubles: [trouble] })
}

/** Another stay that has room, or none. */
function otherStay(request: StayRequest): Pick<PlacingTrouble, 'fix' | 'change'> {
  const { front } = request
  const other = itemsOfKind('flap stay').find(
    (item) => item.hang === front.hang && troubleOf(request, item) === undefined,
  )
  const path = [...front.at, 'stay']
  if (other !== undefined) return { fix: `a ${other.id} has room`, change: [{ path, value: other.id }] }
  const idle = front.stays === 'auto' ? [] : [{ path: [...front.at, 'stays'], value: undefined }]
  return {
    fix: 'give the flap more room, or set `stay: none` and hold it by hand',
    change: [{ path, value: 'none' }, ...idle],
  }
}

function placed(request: StayRequest, item: FlapStay): Parts {
  return partsOf({ hardware: sidesOf(request, item).map((side, k) => placeStay(request, item, side, k + 1)) })
}

/** Which sides take one: the left, or both for a flap wider than the item's figure. */
function sidesOf({ front, flap }: StayRequest, item: FlapStay): Side[] {
  const both = front.stays === 'both' || (front.stays === 'auto' && flap.x1 - flap.x0 > item.bothFrom + NOISE_MM)
  return both ? ['left', 'right'] : ['left']
}

/** The middles of the two brackets, module frame, mm: their heights, and how far back the one on the side stands. */
function middles({ flap, opening }: StayRequest, item: FlapStay): { carcase: number; flap: number; back: number } {
  const [face, into] = item.hang === 'top' ? [opening.z1, -1] : [opening.z0, 1]
  return {
    carcase: face + into * item.carcase.fromHinges,
    flap: face + into * item.flap.fromHinges,
    back: Math.max(opening.front, flap.hidden) + item.carcase.back,
  }
}

/** Why a stay has no room, or nothing when it has. */
function troubleOf(request: StayRequest, item: FlapStay): string | undefined {
  const { flap, opening, leaves } = request
  const { carcase, flap: onFlap, back } = middles(request, item)
  const { x, y } = item.bracket
  const zone: Span = { from: Math.min(carcase, onFlap) - y, to: Math.max(carcase, onFlap) + y }
  const high = opening.z1 - opening.z0
  if (zone.from < opening.z0 - NOISE_MM || zone.to > opening.z1 + NOISE_MM) {
    return `the ${item.id} needs an opening ${mm(Math.max(item.carcase.fromHinges, item.flap.fromHinges) + y)} mm high; it is ${mm(high)}`
  }
  if (onFlap - y < flap.z0 - NOISE_MM || onFlap + y > flap.z1 + NOISE_MM)
    return `the bracket of the ${item.id} does not lie on it`
  const deep = opening.rear - (back - item.carcase.back)
  if (back + x > opening.rear + NOISE_MM)
    return `the ${item.id} needs ${mm(item.carcase.back + x)} mm of depth behind the flap; there are ${mm(deep)}`
  const sides = sidesOf(request, item)
  const wide = sides.length * (item.flap.fromSide + x)
  if (opening.x1 - opening.x0 < wide) return `the ${item.id} needs an opening ${mm(wide)} mm wide`
  const shelf = sides
    .flatMap((side) => shelvesAgainst(side, opening, leaves))
    .find(({ from, to }) => from < zone.to && to > zone.from)
  return shelf && `a fixed shelf stands in the way of the ${item.id}`
}

function placeStay(request: StayRequest, item: FlapStay, side: Side, number: number): PlacedHardware {
  const { module, flap, opening, front } = request
  const { carcase, flap: onFlap, back } = middles(request, item)
  const left = side === 'left'
  const series = `${module}/${flap.panel.key}-stay`
  const wall = left ? opening.x0 : opening.x1
  const across = left ? opening.x0 + item.flap.fromSide : opening.x1 - item.flap.fromSide
  return {
    id: `${series}/${number}`,
    item,
    frame: module,
    stations: [
      {
        part: 'carcase',
        panel: opening[side].panel,
        pose: poseOf(Y, left ? MINUS_Z : Z, [wall, back, carcase]),
        wood: 'ahead',
      },
      { part: 'flap', panel: flap.panel.id, pose: poseOf(X, Z, [across, flap.hidden, onFlap]), wood: 'ahead' },
    ],
    settings: {},
    series,
    note: `${item.title}; measure yours before you drill`,
    at: front.at,
  }
}

/** How far past the level a flap on cup hinges opens, degrees: hinges of 110°, from memory. */
const PAST_LEVEL_DEG = 20

/** A flap that is lifted rises above the carcase when it is open: its free edge goes this much past the hinges' level. */
export function swingNote(front: FlapSpec, flap: PlacedDoor, carcaseTop: number): PlacingTrouble[] {
  const rise = flap.z1 + (flap.z1 - flap.z0) * Math.sin((PAST_LEVEL_DEG * Math.PI) / 180) - carcaseTop
  if (front.hang !== 'top' || rise <= NOISE_MM) return []
  return [
    {
      rule: 'flap-swing',
      severity: 'note',
      panels: [flap.panel.id],
      message: `${flap.panel.name} opens upward: its free edge rises about ${Math.round(rise)} mm above the carcase`,
      fix: 'keep the space above free, overhangs of a worktop included',
      at: front.at,
    },
  ]
}
