import { NOISE_MM } from '../../geometry/index.ts'
import type { DrawerSlide } from '../../hardware/index.ts'
import { mm } from '../../length/index.ts'
import { PLATE_REACH_MM, type Span } from '../fronts/index.ts'
import type { Parts } from '../parts.ts'
import type { PlacingTrouble } from '../types.ts'
import { type HingedWall, takenByPlates } from './hinges.ts'
import { slideHeight } from './slides.ts'
import { type DrawerRoom, type DrawersRequest, stopped } from './troubles.ts'

interface InTheWay {
  readonly name: string
  readonly slide: DrawerSlide
  readonly walls: Readonly<Record<'left' | 'right', { readonly hinged: HingedWall | undefined }>>
  /** Of all drawers of the opening. */
  readonly rooms: readonly DrawerRoom[]
}

/** No height is clear of the plates: say where the hinges would leave all drawers of the opening room. */
export function plateInTheWay(request: DrawersRequest, there: InTheWay): Parts {
  const { name, slide } = there
  return stopped(request, 'drawer-hinge', {
    message: `${name}: its slide and packing, ${mm(slide.height)} mm high, would lie on a hinge plate at every height that the box allows`,
    ...clearHinges(request, there),
  })
}

/**
 * Each hinge at the nearest height at which every drawer still has a place for its slide: between the lowest place of one
 * and the highest of the next. Nothing of a front on which no such heights are left.
 */
function clearHinges(
  { opening }: DrawersRequest,
  { slide, walls, rooms }: InTheWay,
): Pick<PlacingTrouble, 'fix' | 'change'> {
  const wall = walls.left.hinged ?? walls.right.hinged
  const none = { fix: 'give the drawers other heights, or the door fewer hinges' }
  if (wall === undefined) return none
  const reach = slide.height / 2 + PLATE_REACH_MM
  const low = Math.max(opening.z0 + PLATE_REACH_MM, wall.foot + wall.room)
  const high = Math.min(opening.z1 - PLATE_REACH_MM, wall.head - wall.room)
  const borders = rooms.flatMap(({ free }) => [ceiled(free.from + reach, wall), floored(free.to - reach, wall)])
  const chosen: number[] = []
  for (const plate of [...wall.plates].sort((a, b) => a - b)) {
    const clear = (at: number): boolean => allClear(rooms, { ...wall, plates: [...chosen, at] }, slide, opening.parity)
    const places = [plate, ...borders]
      .filter((at) => at === plate || (at >= low - NOISE_MM && at <= high + NOISE_MM))
      .filter((at) => at - (chosen.at(-1) ?? Number.NEGATIVE_INFINITY) >= 2 * wall.room - NOISE_MM && clear(at))
    const nearest = places.sort((a, b) => Math.abs(a - plate) - Math.abs(b - plate))[0]
    if (nearest === undefined) return none
    chosen.push(nearest)
  }
  const value = chosen.map((at) => `${Math.round((at - wall.foot) * 1000) / 1000} mm`)
  return { fix: `set \`hinges: [${value.join(', ')}]\``, change: [{ path: [...wall.at, 'hinges'], value }] }
}

/** Whole tenths of a millimetre above the door's lower end, so that they can be written. */
const ceiled = (z: number, { foot }: HingedWall): number => foot + Math.ceil((z - foot - NOISE_MM) * 10) / 10
const floored = (z: number, { foot }: HingedWall): number => foot + Math.floor((z - foot + NOISE_MM) * 10) / 10

function allClear(rooms: readonly DrawerRoom[], wall: HingedWall, slide: DrawerSlide, parity: 0 | 1): boolean {
  const taken: Span[] = takenByPlates(wall, slide.height)
  return rooms.every(({ side, free }) => free.to < free.from || slideHeight(side, free, parity, taken) !== undefined)
}
