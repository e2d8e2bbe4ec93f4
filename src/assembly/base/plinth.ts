import { type Box, NOISE_MM } from '../../geometry/index.ts'
import type { ModuleSpec, PlinthSpec } from '../../project/index.ts'
import { board, boardBox } from '../boards.ts'
import { type Contact, contactOf, fastenerOffsets, placeJoint } from '../joints/index.ts'
import { atLeast } from '../mend.ts'
import { merge, type Parts, partsOf } from '../parts.ts'
import type { PanelRole, PlacedPanel, PlacingTrouble } from '../types.ts'
import type { OnBottom } from './base.ts'
import { blockedAlong, freePlaces } from './clear-line.ts'

/** Kept between a screw that is driven from inside the carcase and whatever stands beside it, mm; common practice. */
const DRIVER_ROOM_MM = 12
/** Between two screws into one board, at least, mm; common practice. */
const SCREWS_APART_MM = 30

/** The frame under the bottom: front and back run through, the sides stand between them; fixed from inside the carcase. */
export function placePlinth(spec: ModuleSpec, plinth: PlinthSpec, bottom: PlacedPanel, on: OnBottom): Parts {
  const { front, back, left, right } = plinthBoards(spec, plinth)
  const frame = [front, back].flatMap((head) =>
    [left, right].map((tip) =>
      placeJoint({
        module: spec.key,
        head,
        tip,
        joint: plinth.joint,
        at: plinth.at,
        asked: [...plinth.at, 'joint'],
        limits: spec,
      }),
    ),
  )
  const fixed = [front, back].map((tip) => fixing(spec, plinth, bottom, tip, on))
  // Sides that stand under the module's own sides are out of a screw's reach: the front and the back hold them.
  const sides = [left, right].map((tip) => ({ hardware: fixing(spec, plinth, bottom, tip, on).hardware }))
  return merge([{ panels: [front, back, left, right] }, ...frame, ...fixed, ...sides])
}

function plinthBoards(spec: ModuleSpec, plinth: PlinthSpec): Record<'front' | 'back' | 'left' | 'right', PlacedPanel> {
  const { stock, height, frontRecess, backRecess, sideRecess } = plinth
  const t = stock.thickness
  const [x0, x1] = [sideRecess, spec.width - sideRecess]
  const [y0, y1] = [frontRecess, spec.depth - backRecess]
  const make = (role: PanelRole & `plinth ${string}`, x: readonly number[], y: readonly number[]): PlacedPanel => {
    const box: Box = { min: [x[0] ?? 0, y[0] ?? 0, -height], max: [x[1] ?? 0, y[1] ?? 0, 0] }
    return board({ module: spec.key, role, name: role, stock, box, at: plinth.at })
  }
  return {
    front: make('plinth front', [x0, x1], [y0, y0 + t]),
    back: make('plinth back', [x0, x1], [y1 - t, y1]),
    left: make('plinth left side', [x0, x0 + t], [y0 + t, y1 - t]),
    right: make('plinth right side', [x1 - t, x1], [y0 + t, y1 - t]),
  }
}

/**
 * Screws through the bottom into the upper edge of one board, along its middle: evenly spaced, but moved where a
 * partition stands or a fastener is in the way. Troubles where the board lies out of their reach.
 */
function fixing(
  spec: ModuleSpec,
  plinth: PlinthSpec,
  bottom: PlacedPanel,
  tip: PlacedPanel,
  on: OnBottom,
): Pick<Parts, 'hardware' | 'troubles'> {
  const contact = withinReach(contactOf(bottom, tip), bottom, tip, on)
  if (contact === undefined)
    return partsOf({ troubles: [outOfReach(plinth, bottom, tip, leastRecess(spec, plinth, bottom, tip, on))] })
  const along = contact.along[0] === 0 ? 1 : 0
  const at = contact.middle[along === 0 ? 1 : 0]
  const middle = contact.middle[along]
  const blocked = blockedAlong(along, at, bottom, on, DRIVER_ROOM_MM)
  const wishes = fastenerOffsets(contact.length, plinth.fix).map((offset) => middle + offset)
  const reach = contact.length / 2 - DRIVER_ROOM_MM
  const places = freePlaces(wishes, blocked, [middle - reach, middle + reach], SCREWS_APART_MM)
  // A driver reaches it, and what stands in the way of the screws is no matter of the recess.
  if (places.length < 2) return partsOf({ troubles: [noPlace(plinth, bottom, tip)] })
  const offsets = places.map((place) => place - middle)
  return placeJoint({
    module: spec.key,
    head: bottom,
    tip,
    joint: plinth.fix,
    contact,
    offsets,
    at: plinth.at,
    asked: [...plinth.at, 'fix'],
    limits: spec,
  })
}

/** The contact, as far as a driver reaches its middle line from inside the carcase; nothing where it does not. */
function withinReach(
  contact: Contact | undefined,
  bottom: PlacedPanel,
  tip: PlacedPanel,
  on: OnBottom,
): Contact | undefined {
  if (contact === undefined) return undefined
  const under = boardBox(bottom)
  const own = boardBox(tip)
  const clear: Box = {
    min: [on.x0, under.min[1], under.min[2]],
    max: [on.x1, Math.min(on.rear, under.max[1]), under.max[2]],
  }
  const along = contact.along[0] === 0 ? 1 : 0
  const across = along === 0 ? 1 : 0
  const line = (own.min[across] + own.max[across]) / 2
  const least = Math.max(own.max[across] - line, DRIVER_ROOM_MM)
  const frontEdge = across === 1 ? own.max[across] - line : least
  const clearly = line >= clear.min[across] + frontEdge - NOISE_MM && line <= clear.max[across] - least + NOISE_MM
  if (!clearly) return undefined
  const low = Math.max(own.min[along], clear.min[along])
  const high = Math.min(own.max[along], clear.max[along])
  if (high - low <= 2 * DRIVER_ROOM_MM) return undefined
  const middle: [number, number, number] = [line, line, contact.middle[2]]
  middle[along] = (low + high) / 2
  return { ...contact, middle, length: high - low }
}

const noPlace = (plinth: PlinthSpec, bottom: PlacedPanel, tip: PlacedPanel): PlacingTrouble => ({
  rule: 'plinth-fixing',
  severity: 'stop',
  panels: [tip.id, bottom.id],
  message: `the ${tip.name} cannot be fixed: what stands on the bottom or is fastened in it leaves no place for two screws`,
  fix: 'make the module wider, or its partitions fewer',
  at: plinth.at,
})

function outOfReach(plinth: PlinthSpec, bottom: PlacedPanel, tip: PlacedPanel, recess: number): PlacingTrouble {
  const key = tip.role === 'plinth front' ? 'front recess' : 'back recess'
  const [now, value] = [key === 'front recess' ? plinth.frontRecess : plinth.backRecess, atLeast(recess)]
  const mending =
    recess > now + NOISE_MM
      ? { fix: `set \`${key}: ${value}\` or more`, change: [{ path: [...plinth.at, key], value }] }
      : { fix: 'make the module wider, or its partitions fewer' }
  return {
    rule: 'plinth-fixing',
    severity: 'stop',
    panels: [tip.id, bottom.id],
    message: `the ${tip.name} cannot be fixed: no two screws reach it through the clear inside of the bottom`,
    ...mending,
    at: plinth.at,
  }
}

/** The least recess of the front or the back at which a driver reaches its upper edge from inside the carcase, mm; 0: none. */
function leastRecess(
  spec: ModuleSpec,
  plinth: PlinthSpec,
  bottom: PlacedPanel,
  tip: PlacedPanel,
  on: OnBottom,
): number {
  const under = boardBox(bottom)
  const own = boardBox(tip)
  const long = Math.min(own.max[0], on.x1) - Math.max(own.min[0], on.x0)
  // Too short inside for two screws, wherever it stands.
  if (long <= 2 * DRIVER_ROOM_MM) return 0
  const half = plinth.stock.thickness / 2
  if (tip.role === 'plinth front') return under.min[1]
  return spec.depth - half - (Math.min(on.rear, under.max[1]) - Math.max(half, DRIVER_ROOM_MM))
}
