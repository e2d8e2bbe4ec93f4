import { type Box, NOISE_MM } from '../../geometry/index.ts'
import type { DrawerSlide } from '../../hardware/index.ts'
import { mm } from '../../length/index.ts'
import { limitOf } from '../../project/index.ts'
import { merge, type Parts, partsOf } from '../parts.ts'
import { bottomReach, drawerBox, sidesLift } from './box.ts'
import { drawerFront } from './front.ts'
import { type HingedWall, hingedWall, packingNeeded, takenByPlates } from './hinges.ts'
import { layersFor, placePacking } from './packing.ts'
import { plateInTheWay } from './plate-trouble.ts'
import { longestSlide, placeSlides, slideHeight } from './slides.ts'
import { type StackedDrawer, stackOf } from './stack.ts'
import { type DrawerRoom, type DrawersRequest, stopped, tooHigh, tooLow, tooNarrow, tooShallow } from './troubles.ts'

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

/** Wood of the side above the groove that a slide's screws need, mm; common practice. */
const ABOVE_GROOVE_MM = 8

/** All drawers of an opening: fronts, boxes, slides and packings. */
export function placeDrawers(request: DrawersRequest): Parts {
  const { spec, opening } = request
  const stacked = stackOf(spec, request.bay, opening)
  if ('excess' in stacked) {
    return tooHigh(request, stacked.excess)
  }
  const body = opening.front + (spec.fronts?.lay === 'inset' ? spec.fronts.stock.thickness : 0)
  const slide = longestSlide(spec.slides, opening.rear - body, spec.box.behind)
  if (slide === undefined) return tooShallow(request, body)
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
  if (inside < limitOf(request.owner, 'drawer-narrow', 'stop') - NOISE_MM) return tooNarrow(request, inside)
  const rooms = stacked.map((place) => roomOf(stack, place))
  return merge(stacked.map((place, k) => oneDrawer(stack, place, rooms, k)))
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

/** The box of a drawer, and where the middle line of its slide can lie: on its side, and above the groove by what its screws need. */
function roomOf(stack: Stack, place: StackedDrawer): DrawerRoom {
  const { spec } = stack.request
  const { height } = stack.slide
  const box = boxOf(stack, place)
  const foot = box.min[2] + sidesLift(spec.box)
  const from = Math.max(foot + height / 2, foot + bottomReach(spec.box) + ABOVE_GROOVE_MM)
  return { box, side: { from: foot, to: box.max[2] }, free: { from, to: box.max[2] - height / 2 } }
}

function oneDrawer(stack: Stack, place: StackedDrawer, rooms: readonly DrawerRoom[], k: number): Parts {
  const { request, slide } = stack
  const room = rooms[k] ?? roomOf(stack, place)
  const name = `drawer ${request.firstNumber + k}`
  const { box, side, free } = room
  if (free.to < free.from - NOISE_MM) return tooLow(request, { name, place, number: k, slide, room })
  const struck = struckDoor(stack, box, name)
  if (struck !== undefined) return struck
  const taken = (['left', 'right'] as const).flatMap((one) => takenByPlates(stack.walls[one].hinged, slide.height))
  const z = slideHeight(side, free, request.opening.parity, taken)
  if (z === undefined) return plateInTheWay(request, { name, slide, walls: stack.walls, rooms })
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
      fix: `leave out \`packing: none\`: ${mm(needed)} mm are needed`,
      change: [{ path: [...request.spec.at, 'packing'], value: 'auto' }],
    })
  }
  return undefined
}

function buildDrawer(stack: Stack, place: StackedDrawer, name: string, box: Box, z: number): Parts {
  const { request, slide, slideFront } = stack
  const { spec, module } = request
  const built = drawerBox({ module, name, spec: spec.box, box, at: spec.at, limits: request.owner })
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
    usual: request.owner.stock,
    at: spec.at,
  })
  if (last === undefined) return { ...plain, parts }
  return { parts, panel: last.id, x: side === 'left' ? x + packing : x - packing }
}
