import { NOISE_MM, poseOf, X, Y } from '../../geometry/index.ts'
import { MM_PER_INCH, mm } from '../../length/index.ts'
import type { FeetSpec, ModuleSpec } from '../../project/index.ts'
import { boardBox } from '../boards.ts'
import { atLeast, atMost } from '../mend.ts'
import { type Parts, partsOf } from '../parts.ts'
import type { PlacedHardware, PlacedPanel, PlacingTrouble } from '../types.ts'
import type { OnBottom } from './base.ts'
import { blockedAlong, freePlaces } from './clear-line.ts'

/** Between two feet along the width, at most, mm; common practice. */
const LONGEST_SPAN_MM = 36 * MM_PER_INCH
/** Between the flange of a foot and a panel that stands on the bottom, mm; common practice. */
const FLANGE_ROOM_MM = 2

/**
 * Levelling feet under the bottom by the footprint of the module: one in each corner, and a pair more for each further
 * span, evenly spaced, moved beside a partition that stands above.
 */
export function placeFeet(spec: ModuleSpec, feet: FeetSpec, bottom: PlacedPanel, on: OnBottom): Parts {
  const run = spec.width - 2 * feet.inset
  const spans = Math.max(1, Math.ceil((run - NOISE_MM) / LONGEST_SPAN_MM))
  const wishes = Array.from({ length: spans + 1 }, (_, k) => feet.inset + (run * k) / spans)
  const room = feet.item.flangeDiameter / 2 + FLANGE_ROOM_MM
  const places = [feet.inset, spec.depth - feet.inset].flatMap((y) => {
    const inner = freePlaces(
      wishes.slice(1, -1),
      blockedAlong(0, y, bottom, on, room),
      [on.x0 + room, on.x1 - room],
      feet.item.padDiameter,
    )
    return [feet.inset, ...inner, spec.width - feet.inset].map((x) => [x, y] as const)
  })
  const z = boardBox(bottom).min[2]
  const hardware = places.map(
    ([x, y], k): PlacedHardware => ({
      id: `${spec.key}/feet/${k + 1}`,
      item: feet.item,
      frame: spec.key,
      stations: [{ part: 'bottom', panel: bottom.id, pose: poseOf(X, Y, [x, y, z]), wood: 'ahead' }],
      settings: {},
      series: `${spec.key}/feet`,
      note: `stands ${mm(feet.item.height)} mm high in the middle of a travel of ${mm(feet.item.travel)} mm`,
      at: feet.at,
    }),
  )
  return partsOf({ hardware, troubles: footTroubles(spec, feet, bottom, on) })
}

type Mending = Pick<PlacingTrouble, 'fix' | 'change'>

/** A foot under a side or the back, beyond the bottom or the footprint, or in another's way. */
function footTroubles(spec: ModuleSpec, feet: FeetSpec, bottom: PlacedPanel, on: OnBottom): PlacingTrouble[] {
  const { inset, item } = feet
  const box = boardBox(bottom)
  const flange = item.flangeDiameter / 2
  const short = Math.max(
    on.x0 + flange - inset,
    inset + flange - (spec.width - on.x0),
    box.min[1] + flange - inset,
    spec.depth - Math.min(on.rear, box.max[1]) + flange - inset,
    item.padDiameter / 2 - inset,
  )
  const between = Math.min(spec.width, spec.depth) - 2 * inset - item.padDiameter
  const most = (Math.min(spec.width, spec.depth) - item.padDiameter) / 2
  const set = (value: string): Mending => ({
    fix: `set \`inset: ${value}\``,
    change: [{ path: [...feet.at, 'inset'], value }],
  })
  const narrow = { fix: 'take smaller feet, or make the module larger' }
  const trouble = (message: string, mending: Mending): PlacingTrouble => ({
    rule: 'foot-place',
    severity: 'stop',
    panels: [bottom.id],
    message,
    ...mending,
    at: feet.at,
  })
  const troubles: PlacingTrouble[] = []
  if (short > NOISE_MM) {
    const what = `a levelling foot ${mm(inset)} mm in lies ${mm(short)} mm under a side or the back, or beyond the bottom or the footprint`
    troubles.push(trouble(what, inset + short > most + NOISE_MM ? narrow : set(atLeast(inset + short))))
  }
  if (between < -NOISE_MM) {
    const what = `two levelling feet, ${mm(inset)} mm in, overlap by ${mm(-between)} mm`
    // They can come out until the worst of them would lie under a side.
    troubles.push(trouble(what, most < inset + short - NOISE_MM ? narrow : set(atMost(most))))
  }
  return troubles
}
