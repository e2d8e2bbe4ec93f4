import { type Box, MINUS_X, MINUS_Y, MINUS_Z, placedBox, poseOf, type Vec3, X, Y, Z } from '../geometry/index.ts'
import type { DefinitionPath, Stock } from '../project/index.ts'
import type { PanelRole, PlacedPanel } from './types.ts'

/**
 * Which way face A looks, the panel's x and y in the module frame, what its faces look at, and the edges that a person
 * measures from. Panels with a front edge lie with it toward you (y = 0), x along the grain, so the two sides of a
 * module lie as they are marked at the bench: inside up, front edges toward you, and each the mirror of the other.
 */
const LYING = {
  rightward: { x: MINUS_Z, y: Y, faces: { A: 'right face', B: 'left face' }, datum: { x: 'x1', y: 'y0' } },
  leftward: { x: Z, y: Y, faces: { A: 'left face', B: 'right face' }, datum: { x: 'x0', y: 'y0' } },
  upward: { x: X, y: Y, faces: { A: 'upper face', B: 'underside' }, datum: { x: 'x0', y: 'y0' } },
  downward: { x: MINUS_X, y: Y, faces: { A: 'underside', B: 'upper face' }, datum: { x: 'x1', y: 'y0' } },
  forward: { x: Z, y: MINUS_X, faces: { A: 'inside', B: 'outside' }, datum: { x: 'x0', y: 'y1' } },
  backward: { x: Z, y: X, faces: { A: 'hidden face', B: 'show face' }, datum: { x: 'x0', y: 'y0' } },
  'across, as a front': { x: MINUS_X, y: Z, faces: { A: 'hidden face', B: 'show face' }, datum: { x: 'x1', y: 'y0' } },
  // The grain runs across the module: strips, drawer fronts, box ends.
  'across, backward': { x: MINUS_X, y: Z, faces: { A: 'inside', B: 'outside' }, datum: { x: 'x1', y: 'y0' } },
  'across, hidden': { x: MINUS_X, y: Z, faces: { A: 'hidden face', B: 'show face' }, datum: { x: 'x1', y: 'y0' } },
  'across, forward': { x: X, y: Z, faces: { A: 'inside', B: 'outside' }, datum: { x: 'x0', y: 'y0' } },
  // The grain runs from front to back: drawer sides, packings, plinth sides. Each hand is the mirror of the other.
  'deep, rightward': { x: Y, y: Z, faces: { A: 'inside', B: 'outside' }, datum: { x: 'x0', y: 'y0' } },
  'deep, leftward': { x: MINUS_Y, y: Z, faces: { A: 'inside', B: 'outside' }, datum: { x: 'x1', y: 'y0' } },
} as const satisfies Record<string, Lying>

interface Lying {
  readonly x: Vec3
  readonly y: Vec3
  readonly faces: PlacedPanel['faces']
  readonly datum: PlacedPanel['datum']
}

const LOOKS: Record<PanelRole, keyof typeof LYING> = {
  'left side': 'rightward',
  'right side': 'leftward',
  partition: 'rightward',
  bottom: 'upward',
  'fixed shelf': 'upward',
  'loose shelf': 'upward',
  top: 'downward',
  back: 'forward',
  door: 'backward',
  flap: 'across, as a front',
  'fixed front': 'backward',
  'drawer front': 'across, hidden',
  'drawer left side': 'deep, rightward',
  'drawer right side': 'deep, leftward',
  'drawer box front': 'across, backward',
  'drawer box back': 'across, forward',
  'drawer bottom': 'upward',
  'left packing': 'deep, rightward',
  'right packing': 'deep, leftward',
  'top rail': 'downward',
  'front stretcher': 'across, backward',
  'rear stretcher': 'across, forward',
  worktop: 'upward',
  'machine top': 'upward',
  'chamber floor': 'upward',
  'platform upper skin': 'upward',
  'platform lower skin': 'downward',
  'platform core': 'upward',
  'plinth front': 'across, backward',
  'plinth back': 'across, forward',
  'plinth left side': 'deep, rightward',
  'plinth right side': 'deep, leftward',
}

/** All roles that a panel can have. */
export const PANEL_ROLES = Object.keys(LOOKS) as readonly PanelRole[]

const CARCASE_FACES = { A: 'inside', B: 'outside' } as const
const OUTER_ROLES: readonly PanelRole[] = ['left side', 'right side', 'top', 'bottom', 'back']

export interface BoardRequest {
  readonly module: string
  readonly role: PanelRole
  /** For people; the file name follows from it. */
  readonly name: string
  readonly stock: Stock
  /** Where the finished board lies, module frame, mm; its extent along the thickness is the stock's mean thickness. */
  readonly box: Box
  /** Hinge edge of a door: measured from there. */
  readonly datumY?: 'y0' | 'y1'
  readonly at: DefinitionPath
}

/** The board that fills a box, lying as its role says. */
export function board(request: BoardRequest): PlacedPanel {
  const lying: Lying = LYING[LOOKS[request.role]]
  const { box } = request
  const pose = poseOf(lying.x, lying.y, [0, 0, 0])
  const corner = (axis: 0 | 1 | 2): number => {
    // The origin is where x and y start and where face A lies (z at its end).
    const start = pose.x[axis] + pose.y[axis] - pose.z[axis]
    return start > 0 ? box.min[axis] : box.max[axis]
  }
  const span = (v: Vec3): number =>
    Math.abs(v[0]) * (box.max[0] - box.min[0]) +
    Math.abs(v[1]) * (box.max[1] - box.min[1]) +
    Math.abs(v[2]) * (box.max[2] - box.min[2])
  const key = request.name.replaceAll(' ', '-')
  return {
    id: `${request.module}/${key}`,
    module: request.module,
    key,
    name: request.name,
    role: request.role,
    stock: request.stock,
    length: span(pose.x),
    width: span(pose.y),
    thickness: span(pose.z),
    moduleFromPanel: { ...pose, origin: [corner(0), corner(1), corner(2)] },
    faces: OUTER_ROLES.includes(request.role) ? CARCASE_FACES : lying.faces,
    datum: request.datumY === undefined ? lying.datum : { ...lying.datum, y: request.datumY },
    at: request.at,
  }
}

/** The box of a board in its own frame. */
export function ownBox(panel: PlacedPanel): Box {
  return { min: [0, 0, -panel.thickness], max: [panel.length, panel.width, 0] }
}

/** The box of a board in the module frame. */
export function boardBox(panel: PlacedPanel): Box {
  return placedBox(panel.moduleFromPanel, ownBox(panel))
}

/** The axis of the module frame across which a board is thick. */
export function thicknessAxis(panel: PlacedPanel): 0 | 1 | 2 {
  const z = panel.moduleFromPanel.z
  return z[0] !== 0 ? 0 : z[1] !== 0 ? 1 : 2
}
