import { type Box, MINUS_X, NOISE_MM, turn, type Vec3, X, Y } from '../../geometry/index.ts'
import type { PanelRole, PlacedModule, PlacedPanel } from '../types.ts'
import { floorBox } from './footprint.ts'

/** What bolts between two modules depend on of each, wherever on the floor they stand together. */
export type Joinable = Pick<PlacedModule, 'key' | 'name' | 'panels' | 'cuts' | 'cutouts' | 'floorFromModule'>

/** The face of a carcase panel that looks out of its module, floor frame, or one that is shifted along the floor; mm. */
export interface OuterFace {
  readonly module: Joinable
  readonly panel: PlacedPanel
  readonly box: Box
  /** Square to the face, out of the module: along x or y. */
  readonly out: Vec3
  readonly axis: 0 | 1
  /** Where the face lies along that axis. */
  readonly plane: number
}

/** The panels that a bolt may go through, and where their outer faces look in the module frame. */
const OUTWARD: Readonly<Partial<Record<PanelRole, Vec3>>> = { 'left side': MINUS_X, 'right side': X, back: Y }

/** Outer faces of the sides and the back; fronts are no carcase panels. */
export function outerFaces(module: Joinable): OuterFace[] {
  return module.panels.flatMap((panel) => {
    const outward = OUTWARD[panel.role]
    if (outward === undefined) return []
    const out = turn(module.floorFromModule, outward)
    const axis = Math.abs(out[0]) > Math.abs(out[1]) ? 0 : 1
    const box = floorBox(module, panel)
    return [{ module, panel, box, out, axis, plane: out[axis] > 0 ? box.max[axis] : box.min[axis] }]
  })
}

/** What two faces that lie on each other share: `across` runs along the floor, `up` along z; below 0 where they are apart. */
export interface SharedRectangle {
  readonly across: readonly [from: number, to: number]
  readonly up: readonly [from: number, to: number]
}

/** True when two faces lie in one plane and look at each other. */
export function faceToFace(a: OuterFace, b: OuterFace): boolean {
  return a.axis === b.axis && a.out[a.axis] * b.out[b.axis] < 0 && Math.abs(a.plane - b.plane) <= NOISE_MM
}

/** x or y, whichever runs along the faces. */
export const acrossAxis = (face: OuterFace): 0 | 1 => (face.axis === 0 ? 1 : 0)

export function sharedRectangle(a: OuterFace, b: OuterFace): SharedRectangle {
  const both = (axis: 0 | 1 | 2): [number, number] => [
    Math.max(a.box.min[axis], b.box.min[axis]),
    Math.min(a.box.max[axis], b.box.max[axis]),
  ]
  return { across: both(acrossAxis(a)), up: both(2) }
}

/** The lesser extent of a shared rectangle, mm; below 0 where there is none. */
export function leastExtent({ across, up }: SharedRectangle): number {
  return Math.min(across[1] - across[0], up[1] - up[0])
}
