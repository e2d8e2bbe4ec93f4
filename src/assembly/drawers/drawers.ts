import { type Box, NOISE_MM } from '../../geometry/index.ts'
import type { DrawerSlide } from '../../hardware/index.ts'
import { mm } from '../../length/index.ts'
import { type Bay, type DrawersSpec, type Limits, limitOf } from '../../project/index.ts'
import type { RuleId } from '../../rulebook/index.ts'
import type { Opening } from '../carcase/index.ts'
import { merge, type Parts, partsOf } from '../parts.ts'
import type { PlacingTrouble } from '../types.ts'
import { bottomReach, drawerBox, sidesLift } from './box.ts'
import { drawerFront } from './front.ts'
import { type HingedWall, hingedWall, packingNeeded, takenByPlates } from './hinges.ts'
import { layersFor, placePacking } from './packing.ts'
import { longestSlide, placeSlides, slideHeight } from './slides.ts'
import { type StackedDrawer, stackOf } from './stack.ts'

export interface DrawersRequest {
  readonly module: string
  readonly moduleName: string
  /** The bay that they stand in. */
  readonly bay: Bay
  readonly spec: DrawersSpec
  readonly opening: Opening
  readonly limits: Limits
  /** Between the hidden face of an overlay front and the carcase's front edges, mm. */
  readonly frontGap: number
  /** Number of the first drawer of this opening in its module. */
  readonly firstNumber: number
  /** The doors and hinges before inner drawers. */
  readonly before?: Parts
}

/** Planes and pieces that all drawers of one opening share; module frame, mm. */
interface Stack {
  readonly request: DrawersRequest
  readonly slide: DrawerSlide
  /** Front end of the slides. */
  readonly slideFront: number
  /** Front of the boxes: the hidden face of their fronts. */
  readonly boxFront: number
  readonly walls: Readonly<Record<Side, Wall>>
}

type Side = 'left' | 'right'

interface Wall {
  readonly hinged: HingedWall | undefined
  readonly layers: number
  readonly packing: number
}

/** Least width of a box between its sides, mm; common practice. */
const LEAST_INSIDE_MM = 50
/** Wood of the side above the groove that a slide's screws need, mm; common practice. */
const ABOVE_GROOVE_MM = 8

/** All drawers of an opening: fronts, boxes, slides and packings. */
export function placeDrawers(request: DrawersRequest): Parts {
  const { spec, opening } = request
  const stacked = stackOf(spec, request.bay, opening)
  if ('excess' in stacked) {
    const what = spec.fronts === undefined ? 'inner drawers' : 'drawer fronts'
    const too =
      stacked.excess > NOISE_MM ? `take ${mm(stacked.excess)} mm more than there is` : 'leave nothing for a share'
    return stopped(request, 'drawer-stack', {
      message: `${what}: their heights and gaps ${too}`,
      fix: 'make them lower, or fewer',
    })
  }
  const body = opening.front + (spec.fronts?.lay === 'inset' ? spec.fronts.stock.thickness : 0)
  const slide = longestSlide(spec.slides, opening.rear - body, spec.box.behind)
  if (slide === undefined) return tooDeep(request, body)
  const slideFront = body + slide.setback
  const boxFront =
    spec.fronts === undefined ? slideFront : spec.fronts.lay === 'inset' ? body : opening.front - request.frontGap
  const stack: Stack = {
    request,
    slide,
    slideFront,
    boxFront,
    walls: { left: wallOf(request, slide, 'left'), right: wallOf(request, slide, 'right') },
  }
  const inside = boxWidth(stack) - 2 * spec.box.stock.thickness
  if (inside < LEAST_INSIDE_MM) {
    return stopped(request, 'drawer-narrow', {
      message: `an opening ${mm(opening.x1 - opening.x0)} mm wide leaves ${mm(Math.max(0, inside))} mm inside a drawer; ${LEAST_INSIDE_MM} mm is the least`,
      fix: `make the opening ${mm(LEAST_INSIDE_MM - inside)} mm wider`,
    })
  }
  return merge(stacked.map((place, k) => oneDrawer(stack, place, `drawer ${request.firstNumber + k}`)))
}

function wallOf({ spec, opening, before }: DrawersRequest, slide: DrawerSlide, side: Side): Wall {
  const hinged = before && hingedWall(before, opening, side)
  const layers = spec.packing === 'none' ? 0 : layersFor(packingNeeded(hinged, slide.sideSpace), spec.packing)
  return { hinged, layers, packing: spec.packing === 'none' ? 0 : layers * spec.packing.thickness }
}

/** Box width = opening − packings − 2 × side space. */
function boxWidth({ request: { opening }, slide, walls }: Stack): number {
  return opening.x1 - opening.x0 - walls.left.packing - walls.right.packing - 2 * slide.sideSpace
}

function tooDeep(request: DrawersRequest, body: number): Parts {
  const { spec, opening } = request
  const shortest = spec.slides.reduce((best, one) => (one.length < best.length ? one : best))
  const wanted = shortest.setback + shortest.length + spec.box.behind
  const depth = opening.rear - body
  return stopped(request, 'drawer-slide-length', {
    message: `${spec.slides.length === 1 ? 'the' : 'the shortest'} slide, ${shortest.id}, wants a depth of ${mm(wanted)} mm with ${mm(spec.box.behind)} mm behind it; there are ${mm(depth)} mm`,
    fix: `make the module ${mm(wanted - depth)} mm deeper${spec.slides.length === 1 ? ', or take a shorter slide' : ''}`,
  })
}

function stopped(
  request: DrawersRequest,
  rule: RuleId,
  words: { readonly message: string; readonly fix: string },
): Parts {
  const { opening, spec, moduleName } = request
  const trouble: PlacingTrouble = {
    rule,
    severity: 'stop',
    panels: [opening.left.panel, opening.right.panel],
    message: `${moduleName}, ${words.message}`,
    fix: words.fix,
    at: spec.at,
  }
  return partsOf({ troubles: [trouble] })
}

function oneDrawer(stack: Stack, place: StackedDrawer, name: string): Parts {
  const { request, slide } = stack
  const { spec } = request
  const box = boxOf(stack, place)
  // The middle line of the slide lies on the side of the box, and above the groove by what its screws need.
  const foot = box.min[2] + sidesLift(spec.box)
  const free = {
    from: Math.max(foot + slide.height / 2, foot + bottomReach(spec.box) + ABOVE_GROOVE_MM),
    to: box.max[2] - slide.height / 2,
  }
  if (free.to < free.from - NOISE_MM) {
    return stopped(request, 'drawer-box-low', {
      message: `${name}: a box ${mm(Math.max(0, box.max[2] - box.min[2]))} mm high has no room for a slide ${mm(slide.height)} mm high`,
      fix: `make it ${mm(free.from - free.to)} mm higher`,
    })
  }
  const struck = struckDoor(stack, box, name)
  if (struck !== undefined) return struck
  const taken = (['left', 'right'] as const).flatMap((side) => takenByPlates(stack.walls[side].hinged, slide.height))
  const z = slideHeight({ from: foot, to: box.max[2] }, free, request.opening.parity, taken)
  if (z === undefined) return plateInTheWay(stack, name, free, taken)
  return buildDrawer(stack, place, name, box, z)
}

/** The whole box, bottom included: its place less the clearances, as long as the slide. */
function boxOf(stack: Stack, place: StackedDrawer): Box {
  const { request, slide, walls, boxFront } = stack
  const { opening, spec } = request
  return {
    min: [opening.x0 + walls.left.packing + slide.sideSpace, boxFront, place.z0 + spec.box.clearanceBelow],
    max: [
      opening.x1 - walls.right.packing - slide.sideSpace,
      boxFront + slide.length,
      place.z1 - spec.box.clearanceAbove,
    ],
  }
}

/** Without packing, a drawer that would hit an open door or its hinges. */
function struckDoor({ request, walls, slide }: Stack, box: Box, name: string): Parts | undefined {
  if (request.spec.packing !== 'none') return undefined
  for (const side of ['left', 'right'] as const) {
    const { hinged } = walls[side]
    const needed = packingNeeded(hinged, slide.sideSpace)
    if (hinged === undefined || needed <= 0) continue
    const atHinge = hinged.plates.some((z) =>
      takenByPlates({ ...hinged, plates: [z] }, 0).some(({ from, to }) => from < box.max[2] && to > box.min[2]),
    )
    const atDoor = packingNeeded({ ...hinged, hinge: 0 }, slide.sideSpace) > 0
    if (!atHinge && !atDoor) continue
    const what = atHinge
      ? `the open hinges of ${hinged.name}, which stand ${mm(hinged.hinge)} mm into the opening`
      : `${hinged.name}, which stands open ${mm(hinged.door)} mm into the opening`
    return stopped(request, 'drawer-packing', {
      message: `${name} would hit ${what}; its slide lies on the ${side} wall itself`,
      fix: `leave out \`packing: none\`, or name a stock: ${mm(needed)} mm are needed`,
    })
  }
  return undefined
}

/** No height is clear of the plates: say how far the nearest clear one lies outside what the box allows. */
function plateInTheWay(
  stack: Stack,
  name: string,
  free: { readonly from: number; readonly to: number },
  taken: readonly { readonly from: number; readonly to: number }[],
): Parts {
  const around = taken.filter(({ from, to }) => from < free.to && to > free.from)
  const up = Math.max(...around.map(({ to }) => to)) - free.to
  const down = free.from - Math.min(...around.map(({ from }) => from))
  const [way, by] = up < down ? ['lower', up] : ['higher', down]
  return stopped(stack.request, 'drawer-hinge', {
    message: `${name}: its slide and packing, ${mm(stack.slide.height)} mm high, would lie on a hinge plate at every height that the box allows`,
    fix: `set the hinge ${mm(by)} mm ${way} (\`hinges: [ … ]\`), or give the drawer another height`,
  })
}

function buildDrawer(stack: Stack, place: StackedDrawer, name: string, box: Box, z: number): Parts {
  const { request, slide, slideFront } = stack
  const { spec, module } = request
  const built = drawerBox({ module, name, spec: spec.box, box, at: spec.at, limits: request.limits })
  const packings = { left: packingOf(stack, name, 'left', z), right: packingOf(stack, name, 'right', z) }
  const packed = merge([packings.left.parts, packings.right.parts])
  // A packing that cannot be made has nothing to hold the slide.
  if (packed.troubles.length > 0) return partsOf({ troubles: packed.troubles })
  const slides = placeSlides({
    module,
    key: name.replaceAll(' ', '-'),
    slide,
    front: slideFront,
    z,
    left: { panel: packings.left.panel, x: packings.left.x, box: built.left.id, boxX: box.min[0] },
    right: { panel: packings.right.panel, x: packings.right.x, box: built.right.id, boxX: box.max[0] },
    note: `box ${mm(box.max[0] - box.min[0])} mm wide, ${mm(slide.sideSpace)} mm left beside it for each slide`,
    at: spec.at,
  })
  const front =
    spec.fronts === undefined || place.front === undefined
      ? {}
      : drawerFront({
          module,
          name,
          spec,
          fronts: spec.fronts,
          place: place.front,
          hidden: stack.boxFront,
          boxFront: built.front,
        })
  return merge([front, built.parts, packed, { hardware: slides }])
}

/** The packing on one wall, and what the slide is screwed to: its face, or the wall's own. */
function packingOf(stack: Stack, name: string, side: Side, z: number) {
  const { request, slide, slideFront, walls } = stack
  const { spec, opening, module } = request
  const bound = opening[side]
  const x = side === 'left' ? opening.x0 : opening.x1
  const { layers, packing } = walls[side]
  const plain = { parts: merge([]), panel: bound.panel, x }
  if (layers === 0 || spec.packing === 'none') return plain
  const { parts, last } = placePacking({
    module,
    name,
    side,
    wall: { panel: bound.panel, thickness: bound.thickness, x },
    stock: spec.packing,
    layers,
    slide,
    front: slideFront,
    z,
    screws: spec.faceScrews,
    at: spec.at,
  })
  if (last === undefined) return { ...plain, parts }
  return { parts, panel: last.id, x: side === 'left' ? x + packing : x - packing }
}
