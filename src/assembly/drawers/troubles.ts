import { type Box, NOISE_MM } from '../../geometry/index.ts'
import { type DrawerSlide, itemsOfKind } from '../../hardware/index.ts'
import { mm } from '../../length/index.ts'
import { type Bay, type DrawersSpec, limitOf, type ModuleSpec } from '../../project/index.ts'
import type { RuleId } from '../../rulebook/index.ts'
import type { Opening } from '../carcase/index.ts'
import type { Span } from '../fronts/index.ts'
import { atLeast } from '../mend.ts'
import { type Parts, partsOf } from '../parts.ts'
import type { PlacingTrouble } from '../types.ts'
import { longestSlide } from './slides.ts'
import type { StackedDrawer } from './stack.ts'

export interface DrawersRequest {
  readonly module: string
  readonly moduleName: string
  readonly owner: ModuleSpec
  /** The bay that they stand in. */
  readonly bay: Bay
  readonly spec: DrawersSpec
  readonly opening: Opening
  /** Between the hidden face of an overlay front and the carcase's front edges, mm. */
  readonly frontGap: number
  /** Number of the first drawer of this opening in its module. */
  readonly firstNumber: number
  /** The doors and hinges before inner drawers. */
  readonly before?: Parts
}

/** What a drawer has of its opening; heights in the module frame, mm. */
export interface DrawerRoom {
  readonly box: Box
  /** Of the box's sides. */
  readonly side: Span
  /** Of the middle line of its slide. */
  readonly free: Span
}

type Words = Pick<PlacingTrouble, 'message' | 'fix' | 'change'>

/** A drawer, or all of an opening, that cannot be made. */
export function stopped(request: DrawersRequest, rule: RuleId, { message, ...mending }: Words): Parts {
  const { opening, spec, moduleName } = request
  const trouble: PlacingTrouble = {
    rule,
    severity: 'stop',
    panels: [opening.left.panel, opening.right.panel],
    message: `${moduleName}, ${message}`,
    ...mending,
    at: spec.at,
  }
  return partsOf({ troubles: [trouble] })
}

/** Heights that are more together than the opening: all alike takes what there is. */
export function tooHigh(request: DrawersRequest, excess: number): Parts {
  const { spec } = request
  const what = spec.fronts === undefined ? 'inner drawers' : 'drawer fronts'
  const too = excess > NOISE_MM ? `take ${mm(excess)} mm more than there is` : 'leave nothing for a share'
  const count = spec.stack.length
  return stopped(request, 'drawer-stack', {
    message: `${what}: their heights and gaps ${too}`,
    fix: `make them lower, or all alike: \`stack: ${count}\``,
    change: [{ path: [...spec.at, 'stack'], value: count }],
  })
}

/** No slide goes into the depth: a shorter one of the catalogue where one was asked for, else a deeper module. */
export function tooShallow(request: DrawersRequest, body: number): Parts {
  const { spec, opening, owner } = request
  const shortest = spec.slides.reduce((best, one) => (one.length < best.length ? one : best))
  const wanted = shortest.setback + shortest.length + spec.box.behind
  const depth = opening.rear - body
  const named = spec.slides.length === 1
  const message = `${named ? 'the' : 'the shortest'} slide, ${shortest.id}, wants a depth of ${mm(wanted)} mm with ${mm(spec.box.behind)} mm behind it; there are ${mm(depth)} mm`
  const alike = itemsOfKind('drawer slide').filter((one) => one.measure === shortest.measure)
  const other = named ? longestSlide(alike, depth, spec.box.behind) : undefined
  if (other !== undefined) {
    return stopped(request, 'drawer-slide-length', {
      message,
      fix: `a ${other.id} is the longest that fits`,
      change: [{ path: [...spec.at, 'slide'], value: other.id }],
    })
  }
  const deeper = { path: [...owner.at, 'depth'], value: atLeast(owner.depth + wanted - depth) }
  return stopped(request, 'drawer-slide-length', {
    message,
    fix: `make the module ${mm(wanted - depth)} mm deeper`,
    ...(!owner.fitted && { change: [deeper] }),
  })
}

export function tooNarrow(request: DrawersRequest, inside: number): Parts {
  const { opening, owner, bay } = request
  const least = limitOf(owner, 'drawer-narrow', 'stop')
  const short = Math.max(least, roomForCorners(request)) - inside
  const wider = { path: [...owner.at, 'width'], value: atLeast(owner.width + short) }
  return stopped(request, 'drawer-narrow', {
    message: `an opening ${mm(opening.x1 - opening.x0)} mm wide leaves ${mm(Math.max(0, inside))} mm inside a drawer; ${mm(least)} mm is the least`,
    fix: `make the opening ${mm(short)} mm wider`,
    // A bay among others takes but its share of a wider module.
    ...(bay === owner.inside && !owner.fitted && { change: [wider] }),
  })
}

/** Between two pilots that come toward each other, and how much deeper than its screw each is [S28], mm. */
const BETWEEN_TIPS_MM = 5
const BEYOND_TIP_MM = 1

/** The length of a box front that the screws from both corners pass each other in, mm; own arithmetic. */
function roomForCorners({ spec }: DrawersRequest): number {
  const { item } = spec.box.joint
  if (item.kind !== 'through screw') return 0
  return 2 * (item.length - spec.box.stock.thickness + BEYOND_TIP_MM) + BETWEEN_TIPS_MM
}

interface LowBox {
  readonly name: string
  readonly place: StackedDrawer
  /** In its stack, from 0 at the top. */
  readonly number: number
  readonly slide: DrawerSlide
  readonly room: DrawerRoom
}

export function tooLow(request: DrawersRequest, low: LowBox): Parts {
  const { name, slide, room } = low
  const short = room.free.from - room.free.to
  return stopped(request, 'drawer-box-low', {
    message: `${name}: a box ${mm(Math.max(0, room.box.max[2] - room.box.min[2]))} mm high has no room for a slide ${mm(slide.height)} mm high`,
    ...higher(request, low, short),
  })
}

/** A drawer of its own height is made higher; of those that are all alike there can be but so many. */
function higher({ spec }: DrawersRequest, { place, number }: LowBox, short: number): Omit<Words, 'message'> {
  const fix = `make it ${mm(short)} mm higher`
  const own = spec.stack[number]?.height
  const value = own === undefined ? '' : atLeast(own + short)
  if (own !== undefined) return { fix, change: [{ path: [...spec.at, 'stack', number, 'height'], value }] }
  if (spec.stack.some(({ height, share }) => height !== undefined || share !== 1)) return { fix }
  const gap = spec.fronts?.gap ?? 0
  const { z0, z1 } = place.front ?? place
  const most = Math.floor((spec.stack.length * (z1 - z0 + gap) + NOISE_MM) / (z1 - z0 + short + gap))
  if (most < 1) return { fix }
  const there = `there is room for ${most === 1 ? 'one drawer' : `${most} drawers`}`
  return { fix: `${fix}: ${there}`, change: [{ path: [...spec.at, 'stack'], value: most }] }
}
