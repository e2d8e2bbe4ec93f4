import { NOISE_MM, poseOf, Y, Z } from '../geometry/index.ts'
import type { LooseShelvesSpec, PinRowSpec } from '../project/index.ts'
import { board } from './boards.ts'
import type { Opening } from './carcase/index.ts'
import { type Parts, partsOf } from './parts.ts'
import { pinTroubles } from './shelf-troubles.ts'
import type { PlacedHardware } from './types.ts'

/**
 * Positions datum + k × pitch that lie in [low, high], mm, ascending; both limits are kept. Empty when none fits.
 * Each is worked out from k, so that no rounding adds up.
 */
export function gridPositions(low: number, high: number, datum: number, pitch: number): number[] {
  const first = Math.ceil((low - datum - NOISE_MM) / pitch)
  const last = Math.floor((high - datum + NOISE_MM) / pitch)
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, k) => datum + (first + k) * pitch)
}

/** Height of hole 0 of a pin row in an opening, module frame, mm. */
export function pinDatum(pins: PinRowSpec, sidesFoot: number, opening: Opening): number {
  return sidesFoot + pins.datum + (pins.bothFaces === 'stagger' && opening.parity === 1 ? pins.pitch / 2 : 0)
}

export interface ShelvesRequest {
  readonly module: string
  readonly spec: LooseShelvesSpec
  readonly opening: Opening
  readonly sidesFoot: number
  /** Number of the first loose shelf of this opening in its module. */
  readonly firstNumber: number
  /** Number of this opening among those with pin rows. */
  readonly rowNumber: number
}

/** Pin rows on both walls of an opening and the loose shelves that lie on them, spread over its height. */
export function looseShelves(request: ShelvesRequest): Parts {
  const { spec, opening, module } = request
  const { pins } = spec
  const datum = pinDatum(pins, request.sidesFoot, opening)
  const heights = gridPositions(opening.z0 + pins.keepClear, opening.z1 - pins.keepClear, datum, pins.pitch)
  const columns = { front: opening.front + pins.frontSetback, rear: opening.rear - pins.rearSetback }
  const places = spreadOver(request, heights)
  const troubles = pinTroubles(request, places.length, columns)
  if (troubles.length > 0) return partsOf({ troubles })
  const hardware = (['front', 'rear'] as const).flatMap((column) =>
    heights.map((z, k): PlacedHardware => {
      const series = `${module}/pins-${request.rowNumber}-${column}`
      return {
        id: `${series}/${k + 1}`,
        item: pins.item,
        frame: module,
        stations: [
          {
            part: 'left',
            panel: opening.left.panel,
            pose: poseOf(Z, Y, [opening.x0, columns[column], z]),
            wood: 'ahead',
          },
          {
            part: 'right',
            panel: opening.right.panel,
            pose: poseOf(Y, Z, [opening.x1, columns[column], z]),
            wood: 'ahead',
          },
        ],
        settings: {},
        ...(pins.bothFaces === 'stagger' && { keepsApart: true }),
        series,
        at: spec.at,
      }
    }),
  )
  return partsOf({ panels: shelfBoards(request, places), hardware, troubles })
}

/** Loose shelf: opening width − 2 × clearance; depth = inside depth − front setback − rear gap. */
function shelfBoards(request: ShelvesRequest, places: readonly number[]): Parts['panels'] {
  const { spec, opening } = request
  const lift = pinRadius(spec.pins)
  return places.map((z, k) => {
    const under = z + lift
    return board({
      module: request.module,
      role: 'loose shelf',
      name: `shelf ${request.firstNumber + k}`,
      stock: spec.stock,
      box: {
        min: [opening.x0 + spec.clearance, opening.front + spec.frontSetback, under],
        max: [opening.x1 - spec.clearance, opening.rear - spec.rearGap, under + spec.stock.thickness],
      },
      at: spec.at,
    })
  })
}

/** A shelf lies on the upper side of its pins. */
export function pinRadius(pins: PinRowSpec): number {
  return (pins.item.parts.left?.[0]?.diameter ?? 0) / 2
}

/** Space that a hand needs to lift a shelf off its pins, mm; common practice. */
const SHELF_PLAY_MM = 10

/**
 * Pin heights for n shelves, as near as can be to an even spread, ascending: each shelf clears the one below and what
 * is above the opening. Fewer than n where no more have room.
 */
export function spreadOver(request: ShelvesRequest, heights: readonly number[]): number[] {
  const { spec, opening } = request
  const step = spec.stock.thickness + SHELF_PLAY_MM
  const ceiling = opening.z1 - pinRadius(spec.pins) - spec.stock.thickness
  const free = heights.filter((z) => z <= ceiling + NOISE_MM)
  // The highest place that each shelf may take, so that those above it still have one.
  const highest: number[] = []
  for (let k = spec.count - 1, limit = Number.POSITIVE_INFINITY; k >= 0; k -= 1) {
    const top = free.filter((z) => z <= limit + NOISE_MM).at(-1)
    if (top === undefined) return spread(free, step, spec.count)
    highest[k] = top
    limit = top - step
  }
  const chosen: number[] = []
  for (let k = 0; k < spec.count; k += 1) {
    const wish = opening.z0 + ((opening.z1 - opening.z0) * (k + 1)) / (spec.count + 1)
    const low = (chosen.at(-1) ?? Number.NEGATIVE_INFINITY) + step
    const room = free.filter((z) => z >= low - NOISE_MM && z <= (highest[k] ?? low) + NOISE_MM)
    chosen.push(nearestTo(wish, room))
  }
  return chosen
}

/** As many as have room, from the lowest up; at most n. */
function spread(free: readonly number[], step: number, count: number): number[] {
  const chosen: number[] = []
  for (const z of free) {
    if (chosen.length < count && z >= (chosen.at(-1) ?? Number.NEGATIVE_INFINITY) + step - NOISE_MM) chosen.push(z)
  }
  return chosen
}

/** The height nearest to a wish; the lower of two as near. Throws when there is none. */
function nearestTo(wish: number, heights: readonly number[]): number {
  const [first, ...rest] = heights
  if (first === undefined) throw new Error(`no pin height near ${wish}`)
  return rest.reduce((best, z) => (Math.abs(z - wish) < Math.abs(best - wish) - NOISE_MM ? z : best), first)
}
