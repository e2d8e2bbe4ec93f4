import type { Box } from '../../geometry/index.ts'
import type { DefinitionPath, DrawerBoxSpec, JointSpec, Limits, Stock } from '../../project/index.ts'
import { board, boardBox } from '../boards.ts'
import { contactOf, placeJoint } from '../joints/index.ts'
import { merge, type Parts, partsOf } from '../parts.ts'
import type { PanelRole, PlacedCut, PlacedPanel } from '../types.ts'

export interface BoxRequest {
  readonly module: string
  /** `drawer 1`. */
  readonly name: string
  readonly spec: DrawerBoxSpec
  /** The whole drawer box, bottom included, module frame, mm. */
  readonly box: Box
  readonly at: DefinitionPath
  readonly limits: Limits
}

export interface BuiltBox {
  readonly parts: Parts
  readonly left: PlacedPanel
  readonly right: PlacedPanel
  readonly front: PlacedPanel
}

/** Width of the groove for a drawer bottom: its thickest reading and the play, mm. */
export function bottomGroove(spec: DrawerBoxSpec): number {
  return spec.bottomStock.thickest + spec.groovePlay
}

/** From the lower edge of the sides to where nothing of the bottom is in the way any more, mm. */
export function bottomReach(spec: DrawerBoxSpec): number {
  return spec.bottom === 'grooved' ? spec.grooveHeight + bottomGroove(spec) : 0
}

/** Lower edge of the sides above the underside of the box, mm: an applied bottom lies under them. */
export function sidesLift(spec: DrawerBoxSpec): number {
  return spec.bottom === 'applied' ? spec.bottomStock.thickness : 0
}

/** Sides the whole length, box front and back between them, the bottom in grooves of all four or under them. */
export function drawerBox(request: BoxRequest): BuiltBox {
  const { module, spec, box } = request
  const t = spec.stock.thickness
  const [x0, y0] = box.min
  const [x1, y1, z1] = box.max
  const z0 = box.min[2] + sidesLift(spec)
  const make = (role: PanelRole, name: string, stock: Stock, min: Box['min'], max: Box['max']): PlacedPanel =>
    board({ module, role, name: `${request.name} ${name}`, stock, box: { min, max }, at: request.at })
  const left = make('drawer left side', 'left side', spec.stock, [x0, y0, z0], [x0 + t, y1, z1])
  const right = make('drawer right side', 'right side', spec.stock, [x1 - t, y0, z0], [x1, y1, z1])
  const front = make('drawer box front', 'box front', spec.stock, [x0 + t, y0, z0], [x1 - t, y0 + t, z1])
  const back = make('drawer box back', 'box back', spec.stock, [x0 + t, y1 - t, z0], [x1 - t, y1, z1])
  const inner = bottomBox(request)
  const bottom = make('drawer bottom', 'bottom', spec.bottomStock, inner.min, inner.max)
  const ends = [front, back]
  const sides = [left, right]
  const corners = sides.flatMap((side) => ends.map((end) => partsOf(corner(request, side, end))))
  const fixed = spec.bottom === 'applied' ? [...sides, ...ends].map((one) => under(request, bottom, one)) : []
  const cuts = spec.bottom === 'grooved' ? [...sides, ...ends].map((one) => grooveIn(request, one)) : []
  return {
    parts: merge([{ panels: [left, right, front, back, bottom], cuts }, ...corners, ...fixed]),
    left,
    right,
    front,
  }
}

function bottomBox({ spec, box }: BoxRequest): Box {
  const t = spec.stock.thickness
  if (spec.bottom === 'applied') {
    return { min: box.min, max: [box.max[0], box.max[1], box.min[2] + spec.bottomStock.thickness] }
  }
  const inset = t - (spec.grooveDepth - spec.edgePlay)
  // The bottom stands in the middle of the play.
  const z = box.min[2] + spec.grooveHeight + (bottomGroove(spec) - spec.bottomStock.thickness) / 2
  return {
    min: [box.min[0] + inset, box.min[1] + inset, z],
    max: [box.max[0] - inset, box.max[1] - inset, z + spec.bottomStock.thickness],
  }
}

/** The groove runs the whole length of a board, as a saw cuts it: its ends lie in the corners and behind the front. */
function grooveIn({ spec, box, at }: BoxRequest, panel: PlacedPanel): PlacedCut {
  const own = boardBox(panel)
  const z = box.min[2] + spec.grooveHeight
  const min: [number, number, number] = [own.min[0], own.min[1], z]
  const max: [number, number, number] = [own.max[0], own.max[1], z + bottomGroove(spec)]
  // Face A looks into the box.
  const inward = panel.moduleFromPanel.z
  const axis = inward[0] !== 0 ? 0 : 1
  if (inward[axis] > 0) min[axis] = own.max[axis] - spec.grooveDepth
  else max[axis] = own.min[axis] + spec.grooveDepth
  return {
    panel: panel.id,
    kind: 'groove',
    box: { min, max },
    roundEnds: false,
    purpose: 'groove for the bottom',
    at,
  }
}

/** The fasteners of a corner stand above the groove. */
function corner(
  { module, spec, at, limits }: BoxRequest,
  side: PlacedPanel,
  end: PlacedPanel,
): ReturnType<typeof placeJoint> {
  const whole = contactOf(side, end)
  if (whole === undefined) throw new Error(`${side.id} and ${end.id} do not touch`)
  const kept = bottomReach(spec)
  const [x, y, z] = whole.middle
  const contact = { ...whole, middle: [x, y, z + kept / 2] as const, length: whole.length - kept }
  return placeJoint({
    module,
    head: side,
    tip: end,
    joint: spec.joint,
    contact,
    at,
    asked: [...at, 'box', 'joint'],
    limits,
  })
}

function under(request: BoxRequest, bottom: PlacedPanel, upright: PlacedPanel): Parts {
  const joint: JointSpec = request.spec.bottomJoint
  return partsOf(
    placeJoint({ module: request.module, head: bottom, tip: upright, joint, at: request.at, limits: request.limits }),
  )
}
