import makerjs from 'makerjs'
import { closedPathsOf, type PathVertex, type Vec2 } from './path.ts'
import { NOISE_MM } from './tolerance.ts'

/** A closed path, counter-clockwise, mm. */
export type ClosedPath = readonly PathVertex[]

/** A circle as two half circles. Throws where the radius is no length. */
export function circlePath(centre: Vec2, radius: number): ClosedPath {
  if (!(radius > NOISE_MM)) throw new RangeError(`no circle of radius ${radius}`)
  return pathOf({ paths: { circle: new makerjs.paths.Circle([centre[0], centre[1]], radius) } })
}

/**
 * A rectangle from `min` to `max` with corners of that radius; square at 0. Throws where it has no size or the
 * corners are too large for it.
 */
export function rectanglePath(min: Vec2, max: Vec2, radius: number): ClosedPath {
  const width = max[0] - min[0]
  const height = max[1] - min[1]
  if (!(width > NOISE_MM && height > NOISE_MM) || radius < 0 || 2 * radius > Math.min(width, height) + NOISE_MM) {
    throw new RangeError(`no rectangle ${width} × ${height} with corners of ${radius}`)
  }
  const model =
    radius <= NOISE_MM
      ? new makerjs.models.Rectangle(width, height)
      : new makerjs.models.RoundRectangle(width, height, radius)
  return pathOf(makerjs.model.moveRelative(model, [min[0], min[1]]))
}

/** A slot: all points within half its width of the line between the centres of its two round ends. Throws where it has no size. */
export function slotPath(from: Vec2, to: Vec2, width: number): ClosedPath {
  if (!(width > NOISE_MM) || Math.hypot(to[0] - from[0], to[1] - from[1]) <= NOISE_MM) {
    throw new RangeError(`no slot from ${from} to ${to}, ${width} wide`)
  }
  return pathOf(new makerjs.models.Slot([from[0], from[1]], [to[0], to[1]], width / 2))
}

function pathOf(model: makerjs.IModel): ClosedPath {
  const [path, ...more] = closedPathsOf(model)
  if (path === undefined || more.length > 0) throw new Error(`${more.length + 1} contours where one was drawn`)
  return path
}
