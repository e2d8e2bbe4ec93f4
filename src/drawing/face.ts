import type { EdgeSide } from '../assembly/index.ts'
import { NOISE_MM, same, type Vec2, type Vec3 } from '../geometry/index.ts'
import type { Bore, Groove, Panel } from '../panel/index.ts'
import type { Area } from './areas.ts'
import type { Point } from './types.ts'

export type Face = 'A' | 'B'

/** Where an edge of the panel lies on the drawing. */
export type DrawnSide = 'left' | 'right' | 'low' | 'high'

/** A panel seen on one face: the panel's lower left corner, as seen, is at (0, 0). */
export interface FaceView {
  readonly panel: Panel
  readonly face: Face
  /** A point of the panel frame, on the drawing. */
  readonly toView: (at: Vec3 | Vec2) => Point
  /** A direction of the panel frame, on the drawing. */
  readonly turn: (direction: Vec3) => Point
  readonly sideOf: (edge: EdgeSide) => DrawnSide
  /** The panel on the drawing. */
  readonly area: Area
}

/** Face A lies as the panel frame does; face B is what one sees after turning the panel over about its y axis. */
export function faceView(panel: Panel, face: Face): FaceView {
  const mirrored = face === 'B'
  return {
    panel,
    face,
    toView: (at) => [mirrored ? panel.length - at[0] : at[0], at[1]],
    turn: ([x, y]) => [mirrored ? 0 - x : x, y],
    sideOf: (edge) => {
      if (edge === 'y0') return 'low'
      if (edge === 'y1') return 'high'
      return (edge === 'x0') === mirrored ? 'right' : 'left'
    },
    area: { min: [0, 0], max: [panel.length, panel.width] },
  }
}

/** A groove's rectangle on the drawing. */
export function grooveArea(view: FaceView, groove: Groove): Area {
  const a = view.toView(groove.min)
  const b = view.toView(groove.max)
  return { min: [Math.min(a[0], b[0]), a[1]], max: [Math.max(a[0], b[0]), b[1]] }
}

/** A point at `along` from the left or lower end of a side and `out` mm outside it (inside where negative). */
export function besideEdge(area: Area, side: DrawnSide, along: number, out: number): Point {
  switch (side) {
    case 'low':
      return [area.min[0] + along, area.min[1] - out]
    case 'high':
      return [area.min[0] + along, area.max[1] + out]
    case 'left':
      return [area.min[0] - out, area.min[1] + along]
    case 'right':
      return [area.max[0] + out, area.min[1] + along]
    default:
      return side satisfies never
  }
}

/** What is bored from an edge of the panel is marked on face A's drawing; what is bored from a face, on its own. */
export function isDrawnOn(bore: Bore, face: Face): boolean {
  return bore.surface === face || (face === 'A' && bore.surface !== 'B')
}

/** Done by hand: bores in edges, and those that lean. */
export function isHandWork(bore: Bore): boolean {
  return bore.leanDeg !== undefined || (bore.surface !== 'A' && bore.surface !== 'B')
}

/** Half the width of a bore where it enters, mm: the hole or its sink, whichever is wider. */
export function mouthRadius(bore: Bore): number {
  return Math.max(bore.diameter, bore.sink?.diameter ?? 0) / 2
}

/**
 * True where a bore from a face would cut over the panel's edge. The checks refuse such a bore; where it is drawn all
 * the same, it is a mark for a person to look at, since a machine would drill beside the panel.
 */
export function leavesPanel(panel: Panel, bore: Bore): boolean {
  const radius = mouthRadius(bore)
  const [x, y] = bore.at
  const room = Math.min(x, panel.length - x, y, panel.width - y)
  return room < radius - NOISE_MM
}

/** True when anything is bored, grooved or cut out from that face; edge bores are no face's work. */
export function hasWork(panel: Panel, face: Face): boolean {
  const cut = [...panel.grooves, ...panel.cutouts].some((one) => one.face === face)
  return cut || panel.bores.some((bore) => bore.surface === face)
}

/** The faces that get a drawing: A always, B where it has work. */
export function facesDrawn(panel: Panel): Face[] {
  return hasWork(panel, 'B') ? ['A', 'B'] : ['A']
}

/** Which ends of a groove stop inside the panel, along the drawing's x or y. */
export function endsInside(view: FaceView, area: Area, axis: 0 | 1): { start: boolean; end: boolean } {
  const { min, max } = area
  return {
    start: min[axis] > view.area.min[axis] && !same(min[axis], view.area.min[axis]),
    end: max[axis] < view.area.max[axis] && !same(max[axis], view.area.max[axis]),
  }
}
