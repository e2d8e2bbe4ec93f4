import type { SceneArea, ScenePoint } from '../scene/types.ts'

/** Where the drawing lies on the screen: px = scale × mm + shift, in both directions. */
export interface Camera {
  /** CSS pixels a mm of the drawing. */
  readonly scale: number
  readonly x: number
  readonly y: number
}

/** A point on the sheet, CSS pixels from its upper left corner. */
export type ScreenPoint = readonly [number, number]

export interface SheetSize {
  readonly width: number
  readonly height: number
}

/** What stays free about a drawing that is fitted, px; the words beside it are within its bounds. */
export const MARGIN_PX = 16
/** The same on a narrow sheet. */
export const NARROW_MARGIN_PX = 8
/** A sheet that is less wide is a phone's. */
export const NARROW_PX = 460

/** As near as one can come, px a mm: a 5 mm hole is then 200 px wide. */
const NEAREST = 40
/** As far as one can go, as a part of the scale that fits all. */
const FARTHEST_OF_FIT = 0.4
/** So much of a drawing stays on the sheet however far it is moved, px. */
export const LEFT_PX = 44
/** A drawing that shrinks to less than this part of the sheet is fitted anew. */
const TOO_SMALL = 0.55

export const toScreen = ({ scale, x, y }: Camera, [px, py]: ScenePoint): ScreenPoint => [scale * px + x, scale * py + y]
export const toScene = ({ scale, x, y }: Camera, [px, py]: ScreenPoint): ScenePoint => [
  (px - x) / scale,
  (py - y) / scale,
]

const marginOf = ({ width }: SheetSize): number => (width < NARROW_PX ? NARROW_MARGIN_PX : MARGIN_PX)

/** All of `bounds` in the middle of the sheet. A drawing or sheet without size is shown at 1 px a mm. */
export function fitted({ min, max }: SceneArea, size: SheetSize): Camera {
  const margin = marginOf(size)
  const across = (size.width - 2 * margin) / (max[0] - min[0])
  const up = (size.height - 2 * margin) / (max[1] - min[1])
  const wanted = Math.min(across, up, NEAREST)
  const scale = Number.isFinite(wanted) && wanted > 0 ? wanted : 1
  return centredOn([(min[0] + max[0]) / 2, (min[1] + max[1]) / 2], scale, size)
}

/** `at` in the middle of the sheet. */
export const centredOn = (at: ScenePoint, scale: number, { width, height }: SheetSize): Camera => ({
  scale,
  x: width / 2 - scale * at[0],
  y: height / 2 - scale * at[1],
})

/** Nearer (factor over 1) or farther, `fixed` staying where it is; within what is useful for `bounds`. */
export function zoomed(camera: Camera, fixed: ScreenPoint, factor: number, bounds: SceneArea, size: SheetSize): Camera {
  const farthest = fitted(bounds, size).scale * FARTHEST_OF_FIT
  const scale = Math.min(Math.max(camera.scale * factor, Math.min(farthest, camera.scale)), NEAREST)
  const [x, y] = toScene(camera, fixed)
  return { scale, x: fixed[0] - scale * x, y: fixed[1] - scale * y }
}

/** Moved by pixels, but never so far that nothing of the drawing is left on the sheet. */
export function panned(camera: Camera, by: ScreenPoint, bounds: SceneArea, size: SheetSize): Camera {
  const moved = { ...camera, x: camera.x + by[0], y: camera.y + by[1] }
  const [left, top] = toScreen(moved, bounds.min)
  const [right, bottom] = toScreen(moved, bounds.max)
  const back = (low: number, high: number, room: number): number => {
    const keep = Math.min(LEFT_PX, room / 2)
    if (high < keep) return keep - high
    return low > room - keep ? room - keep - low : 0
  }
  return { ...moved, x: moved.x + back(left, right, size.width), y: moved.y + back(top, bottom, size.height) }
}

/**
 * Of a drawing that was fitted and has changed a little, as it does while somebody types: where it is still wholly on the
 * sheet and not too small, nothing moves; else it is fitted anew.
 */
export function keptFitted(camera: Camera, bounds: SceneArea, size: SheetSize): Camera {
  const [left, top] = toScreen(camera, bounds.min)
  const [right, bottom] = toScreen(camera, bounds.max)
  const margin = marginOf(size) / 2
  const isOn = left >= margin && top >= margin && right <= size.width - margin && bottom <= size.height - margin
  const fills = Math.max((right - left) / (size.width - 2 * margin), (bottom - top) / (size.height - 2 * margin))
  return isOn && fills >= TOO_SMALL ? camera : fitted(bounds, size)
}
