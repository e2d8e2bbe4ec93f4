import { NOISE_MM } from '../../geometry/index.ts'
import { itemsOfKind, type LockingBolt } from '../../hardware/index.ts'
import { mm } from '../../length/index.ts'
import { limitOf } from '../../project/index.ts'
import { atLeast, atMost } from '../mend.ts'
import type { PlacingTrouble } from '../types.ts'
import { coreBore } from './axle.ts'
import type { FlipPlace } from './place.ts'
import type { PlatformBoards } from './platform.ts'

type Mending = Pick<PlacingTrouble, 'fix' | 'change'>

const isInch = ({ id }: { readonly id: string }): boolean => id.endsWith(' in')

/** A core that is too thin for the axle, or so thick that the axle would rattle in its channel. */
export function channelTroubles(place: FlipPlace, { front, rear }: PlatformBoards): PlacingTrouble[] {
  const { spec, flip } = place
  const { axle, core } = flip
  // The axle has the least room where the sheet is thinnest.
  const thinnest = Math.min(...core.readings)
  const shared = { rule: 'axle-channel', panels: [front.id, rear.id], at: flip.at } as const
  if (thinnest < axle.coreLeast - NOISE_MM) {
    const message = `${spec.name}: a core of ${mm(thinnest)} mm leaves no channel for the ${axle.id}, which needs ${mm(axle.coreLeast)} mm`
    return [{ ...shared, severity: 'stop', message, ...thinnerAxle(place, thinnest) }]
  }
  const slack = core.thickness - axle.diameter
  if (slack <= limitOf(spec, 'axle-channel', 'note') + NOISE_MM) return []
  const message = `${spec.name}: the channel is ${mm(core.thickness)} mm high and the ${axle.id} ${mm(axle.diameter)} mm thick: pack it out by ${mm(slack / 2)} mm above and below, so that the axle lies in the middle`
  return [{ ...shared, severity: 'note', message }]
}

/** The thickest axle that a core takes. */
function thinnerAxle({ flip }: FlipPlace, thinnest: number): Mending {
  const words = `take a core of ${mm(flip.axle.coreLeast)} mm or more`
  const found = itemsOfKind('axle')
    .filter((one) => isInch(one) === isInch(flip.axle) && one.coreLeast <= thinnest + NOISE_MM)
    .sort((a, b) => b.diameter - a.diameter)[0]
  if (found === undefined) return { fix: `${words}, or a thinner axle` }
  return { fix: `${words}, or ${found.id}`, change: [{ path: [...flip.at, 'axle'], value: found.id }] }
}

/** The thickness of a core that keeps the wood beside the bores in its ends, mm. */
function coreFor(item: LockingBolt): number {
  const [hole] = item.parts.core ?? []
  return hole === undefined ? 0 : hole.diameter + 2 * (hole.edgeWall ?? hole.diameter / 2)
}

/** Where the definition says the locking bolts, or can say them. */
function boltsAt({ flip }: FlipPlace): PlacingTrouble['at'] {
  const { at } = flip.lock
  return at.at(-1) === 'locking bolts' ? at : [...at, 'locking bolts']
}

/** A core whose ends are too thin for the bores of the locking bolts. */
export function thinCore(place: FlipPlace, { front, rear }: PlatformBoards): PlacingTrouble[] {
  const { spec, flip } = place
  const { item, at } = flip.lock
  const least = coreFor(item)
  if (flip.core.thickness >= least - NOISE_MM) return []
  const found = itemsOfKind('locking bolt').find(
    (one) => isInch(one) === isInch(item) && coreFor(one) <= flip.core.thickness + NOISE_MM,
  )
  const words = `take a core of ${mm(least)} mm or more`
  return [
    {
      rule: 'locking-place',
      severity: 'stop',
      panels: [front.id, rear.id],
      message: `${spec.name}: the bores of a ${item.id}, ${mm(coreBore(item))} mm wide, want a core of ${mm(least)} mm; it is ${mm(flip.core.thickness)} mm thick`,
      ...(found === undefined
        ? { fix: words }
        : { fix: `${words}, or a ${found.id}`, change: [{ path: [...boltsAt(place), 'item'], value: found.id }] }),
      at,
    },
  ]
}

/** Locking bolts beyond the core boards; they may stand from `low` to `high` from the platform's edge, mm. */
export function lockTrouble(
  place: FlipPlace,
  { front, rear }: PlatformBoards,
  low: number,
  high: number,
): PlacingTrouble {
  const { spec, flip } = place
  const { item, edgeDistance, at } = flip.lock
  const where = edgeDistance < low ? "too near the platform's edge" : 'too near the channel of the axle, or beyond it'
  const value = edgeDistance < low ? atLeast(low) : atMost(high)
  return {
    rule: 'locking-place',
    severity: 'stop',
    panels: [front.id, rear.id],
    message: `${spec.name}: a ${item.id}, ${mm(edgeDistance)} mm from the platform's edge, lies ${where}`,
    ...(high >= low
      ? {
          fix: `set its \`edge distance\` from ${atLeast(low)} to ${atMost(high)}`,
          change: [{ path: [...boltsAt(place), 'edge distance'], value }],
        }
      : { fix: 'make the platform deeper, or take a smaller bolt or axle' }),
    at,
  }
}
