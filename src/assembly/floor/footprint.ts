import { type Box, compose, placedBox, type Vec3 } from '../../geometry/index.ts'
import { ownBox } from '../boards.ts'
import type { PlacedModule, PlacedPanel } from '../types.ts'

/** A rectangle on the floor, floor frame, mm. */
export interface Rectangle {
  readonly min: readonly [x: number, y: number]
  readonly max: readonly [x: number, y: number]
}

/** Quarter turns counter-clockwise as seen from above. */
export type Turns = 0 | 1 | 2 | 3

/** Where the front left corner of a module, or of a row, stands, and how it is turned; mm. */
export interface Spot {
  readonly x: number
  readonly y: number
  readonly turns: Turns
}

/** The x axis after so many quarter turns; the y axis is that of one turn more. */
const AXES: Readonly<Record<Turns, Vec3>> = { 0: [1, 0, 0], 1: [0, 1, 0], 2: [-1, 0, 0], 3: [0, -1, 0] }

export const turned = (turns: Turns, more: number): Turns => ((turns + more) % 4) as Turns

/** The axes of a frame after so many quarter turns, exact. */
export function axesAfter(turns: Turns): { readonly x: Vec3; readonly y: Vec3 } {
  return { x: AXES[turns], y: AXES[turned(turns, 1)] }
}

/** The spot that lies at x, y and so many turns as seen from another. */
export function spotFrom(spot: Spot, own: Spot): Spot {
  const { x, y } = axesAfter(spot.turns)
  return {
    x: spot.x + x[0] * own.x + y[0] * own.y,
    y: spot.y + x[1] * own.x + y[1] * own.y,
    turns: turned(spot.turns, own.turns),
  }
}

/** What a rectangle of a width and a depth covers when its front left corner stands on a spot. */
export function covered(spot: Spot, width: number, depth: number): Rectangle {
  const far = spotFrom(spot, { x: width, y: depth, turns: 0 })
  return {
    min: [Math.min(spot.x, far.x), Math.min(spot.y, far.y)],
    max: [Math.max(spot.x, far.x), Math.max(spot.y, far.y)],
  }
}

/** What a module covers on the floor, fronts and back included, overhangs of worktops left out. */
export function footprintOf({ floorFromModule, size }: Pick<PlacedModule, 'floorFromModule' | 'size'>): Rectangle {
  const { min, max } = placedBox(floorFromModule, { min: [0, 0, 0], max: [size.width, size.depth, 0] })
  return { min: [min[0], min[1]], max: [max[0], max[1]] }
}

/** How far two rectangles reach into each other, mm along x and y; below 0 where they are apart. */
export function shareOf(a: Rectangle, b: Rectangle): readonly [x: number, y: number] {
  return [
    Math.min(a.max[0], b.max[0]) - Math.max(a.min[0], b.min[0]),
    Math.min(a.max[1], b.max[1]) - Math.max(a.min[1], b.min[1]),
  ]
}

/** The box of a panel in the floor frame. */
export function floorBox(module: Pick<PlacedModule, 'floorFromModule'>, panel: PlacedPanel): Box {
  return placedBox(compose(module.floorFromModule, panel.moduleFromPanel), ownBox(panel))
}
