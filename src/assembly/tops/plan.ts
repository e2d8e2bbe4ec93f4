import { type ClosedPath, type Pose, placeBack, rectanglePath } from '../../geometry/index.ts'
import { boardBox } from '../boards.ts'
import type { PlacedPanel } from '../types.ts'

/** A rectangle seen from above, module frame, mm. */
export interface Area {
  readonly x0: number
  readonly x1: number
  readonly y0: number
  readonly y1: number
}

/** What a panel covers, seen from above. */
export function areaOf(panel: PlacedPanel): Area {
  const { min, max } = boardBox(panel)
  return { x0: min[0], x1: max[0], y0: min[1], y1: max[1] }
}

/** The area with so much more, or less, on each side. */
export function grown({ x0, x1, y0, y1 }: Area, by: number): Area {
  return { x0: x0 - by, x1: x1 + by, y0: y0 - by, y1: y1 + by }
}

/** How far two areas overlap, mm: the lesser of both ways; below 0, how far they lie apart along one of them. */
export function overlap(a: Area, b: Area): number {
  return Math.min(Math.min(a.x1, b.x1) - Math.max(a.x0, b.x0), Math.min(a.y1, b.y1) - Math.max(a.y0, b.y0))
}

/** An area with corners of that radius as a path in the frame of a panel that lies flat. */
export function areaPath(area: Area, radius: number, moduleFromPanel: Pose): ClosedPath {
  const a = placeBack(moduleFromPanel, [area.x0, area.y0, 0])
  const b = placeBack(moduleFromPanel, [area.x1, area.y1, 0])
  const min = [Math.min(a[0], b[0]), Math.min(a[1], b[1])] as const
  const max = [Math.max(a[0], b[0]), Math.max(a[1], b[1])] as const
  return rectanglePath(min, max, Math.min(radius, (max[0] - min[0]) / 2, (max[1] - min[1]) / 2))
}
