import { mm } from '../length/index.ts'
import type { RuleId } from '../rulebook/index.ts'
import { atLeast, atMost } from './mend.ts'
import { gridPositions, pinDatum, pinRadius, type ShelvesRequest, spreadOver } from './shelves.ts'
import type { PlacingTrouble } from './types.ts'

type Mending = Pick<PlacingTrouble, 'fix' | 'change'>

/** What keeps an opening from having its loose shelves: too few heights, or columns that meet. */
export function pinTroubles(
  request: ShelvesRequest,
  places: number,
  columns: { readonly front: number; readonly rear: number },
): PlacingTrouble[] {
  const { spec, opening } = request
  const say = (rule: RuleId, message: string, mending: Mending): PlacingTrouble => ({
    rule,
    severity: 'stop',
    panels: [opening.left.panel, opening.right.panel],
    message,
    ...mending,
    at: spec.at,
  })
  const troubles: PlacingTrouble[] = []
  if (places < spec.count) {
    const room = `${shelves(places)} of ${mm(spec.stock.thickness)} mm`
    const asked = `${spec.count} ${spec.count === 1 ? 'is' : 'are'} asked for`
    const message = `an opening ${mm(opening.z1 - opening.z0)} mm high has pin heights with room for ${room}; ${asked}`
    troubles.push(say('pin-rows-short', message, fewer(request, places)))
  }
  const apart = columns.rear - columns.front
  const least = leastApart(request)
  if (apart < least) {
    const message = `the front and rear pin columns are only ${mm(apart)} mm apart; ${mm(least)} mm is the least`
    troubles.push(say('pin-columns-crossed', message, nearerTheEdges(request, least)))
  }
  return troubles
}

const shelves = (n: number): string => `${n} loose ${n === 1 ? 'shelf' : 'shelves'}`

/** Between the middles of the two columns: a pin's diameter of wood between the holes. */
const leastApart = ({ spec }: ShelvesRequest): number => 4 * pinRadius(spec.pins)

/** As many shelves as have room; for the only one, pins nearer to the panels above and below. */
function fewer(request: ShelvesRequest, places: number): Mending {
  const { at } = request.spec
  if (places > 0) return { fix: `ask for ${shelves(places)}`, change: [{ path: [...at, 'count'], value: places }] }
  const clear = clearFor(request)
  if (clear === undefined) return { fix: 'leave the shelf out, or make the opening higher' }
  return { fix: `set \`keep clear: ${clear}\``, change: [{ path: [...at, 'pins', 'keep clear'], value: clear }] }
}

/** The most that can be kept clear above and below so that there are pin heights enough. */
function clearFor(request: ShelvesRequest): string | undefined {
  const { spec, opening, sidesFoot } = request
  const { pins } = spec
  const datum = pinDatum(pins, sidesFoot, opening)
  for (let clear = Math.ceil(pins.keepClear) - 1; clear >= 0; clear -= 1) {
    const heights = gridPositions(opening.z0 + clear, opening.z1 - clear, datum, pins.pitch)
    if (spreadOver(request, heights).length >= spec.count) return `${clear} mm`
  }
  return undefined
}

/** Both setbacks lessened alike, where there is wood enough beside the holes; else a deeper opening. */
function nearerTheEdges(request: ShelvesRequest, least: number): Mending {
  const { spec, opening } = request
  const { frontSetback, rearSetback } = spec.pins
  const deep = opening.rear - opening.front
  const share = (deep - least) / (frontSetback + rearSetback)
  const [front, rear] = [frontSetback * share, rearSetback * share]
  if (Math.min(front, rear) < 3 * pinRadius(spec.pins)) {
    return { fix: `make the opening ${atLeast(frontSetback + rearSetback + least - deep)} deeper` }
  }
  return {
    fix: `set \`front setback: ${atMost(front)}\` and \`rear setback: ${atMost(rear)}\``,
    change: [
      { path: [...spec.at, 'pins', 'front setback'], value: atMost(front) },
      { path: [...spec.at, 'pins', 'rear setback'], value: atMost(rear) },
    ],
  }
}
