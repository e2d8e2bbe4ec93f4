import { boundsOf, type ClosedPath, circleArcOf, curvesOf, mirroredPath, pointAlong, same } from '../geometry/index.ts'
import type { Units } from '../length/index.ts'
import { type Cutout, distancesFromDatum, type Panel } from '../panel/index.ts'
import type { FaceView } from './face.ts'
import type { Obstacle, Target } from './labels.ts'
import type { Drawn, Work } from './layers.ts'
import type { ScheduleRow } from './schedule-words.ts'
import type { Point } from './types.ts'
import { bitWords, placeWords } from './words.ts'

const NOTE: Work = { kind: 'note' }
const MARK: Work = { kind: 'mark' }

/** Half of the cross in the middle of a cutout, in text heights. */
const CROSS = 0.6
/** Arcs are kept clear of in chords of this much turn at most, radians. */
const CHORD_TURN = Math.PI / 12

/** A cutout's path as one sees it on a face, counter-clockwise. */
export function seenPath(panel: Panel, face: 'A' | 'B', { path }: Cutout): ClosedPath {
  return face === 'A' ? path : mirroredPath(path, panel.length)
}

/** True where a cutout reaches over the edge of its panel, or touches it: then it is a mark, and no tool runs. */
export function cutoutLeaves(panel: Panel, { path, notch }: Cutout): boolean {
  // A notch takes a corner off on purpose.
  if (notch === true) return false
  const { min, max } = boundsOf(path)
  const least = Math.min(...min, panel.length - max[0], panel.width - max[1])
  return least < 0 || same(least, 0)
}

/**
 * A cutout's contour, and a small cross in its middle for a compass or a rule. A notch is crossed from corner to corner,
 * as what is cut away is.
 */
export function drawCutout(view: FaceView, cutout: Cutout, units: Units, size: number): Drawn[] {
  const vertices = seenPath(view.panel, view.face, cutout)
  // The outline runs round a notch: its own contour is no second cut.
  const work: Work =
    cutout.notch === true
      ? NOTE
      : cutoutLeaves(view.panel, cutout)
        ? MARK
        : cutout.through
          ? { kind: 'cutout' }
          : { kind: 'pocket', depth: cutout.depth }
  const title = cutoutTitle(view.panel, cutout, units)
  const strokes = cutout.notch === true ? diagonals(vertices) : middleCross(vertices, size)
  return [
    { work, entity: { kind: 'path', id: cutout.id, title, vertices } },
    ...strokes.map(([from, to]): Drawn => ({ work: NOTE, entity: { kind: 'line', pen: 'hair', from, to } })),
  ]
}

function middleCross(path: ClosedPath, size: number): [from: Point, to: Point][] {
  const { min, max } = boundsOf(path)
  const [x, y] = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2]
  const half = Math.min(CROSS * size, (max[0] - min[0]) / 4, (max[1] - min[1]) / 4)
  return [
    [
      [x - half, y],
      [x + half, y],
    ],
    [
      [x, y - half],
      [x, y + half],
    ],
  ]
}

function diagonals(path: ClosedPath): [from: Point, to: Point][] {
  const { min, max } = boundsOf(path)
  return [
    [min, max],
    [
      [min[0], max[1]],
      [max[0], min[1]],
    ],
  ]
}

/** What no label may lie across: the contour, in chords, and the cross in its middle. */
export function cutoutObstacles(view: FaceView, cutout: Cutout, size: number): Obstacle[] {
  const path = seenPath(view.panel, view.face, cutout)
  const points = curvesOf(path).flatMap((curve): Point[] => {
    const count = curve.bulge === 0 ? 1 : Math.ceil(Math.abs(circleArcOf(curve).sweep) / CHORD_TURN)
    return Array.from({ length: count }, (_, k) => pointAlong(curve, k / count))
  })
  const { min, max } = boundsOf(path)
  return [
    ...points.map(
      (from, k): Obstacle => ({ kind: 'line', from, to: points[(k + 1) % points.length] ?? from, open: true }),
    ),
    { kind: 'disc', at: [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2], radius: CROSS * size, open: true },
  ]
}

/** Where a label may point at a cutout: the furthest points of its contour on each side. */
export function cutoutTargets(path: ClosedPath): readonly [Target, ...Target[]] {
  const { min, max } = boundsOf(path)
  const points = curvesOf(path).flatMap((curve) => [0, 0.25, 0.5, 0.75].map((share) => pointAlong(curve, share)))
  const [x, y] = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2]
  const nearest = (to: Point): Target => {
    const off = (p: Point): number => Math.hypot(p[0] - to[0], p[1] - to[1])
    return { at: points.reduce((best, p) => (off(p) < off(best) ? p : best), points[0] ?? to), radius: 0 }
  }
  return [nearest([x, max[1]]), nearest([max[0], y]), nearest([x, min[1]]), nearest([min[0], y])]
}

/** `60 round`, `120 × 35, radius 17.5`: the size along the panel's x and y. */
export function cutoutSize({ path }: Cutout, units: Units): string {
  const { min, max } = boundsOf(path)
  const [w, h] = [max[0] - min[0], max[1] - min[1]]
  const radii = curvesOf(path)
    .filter(({ bulge }) => bulge !== 0)
    .map((curve) => circleArcOf(curve).radius)
  const [radius] = radii
  const one = radius !== undefined && radii.every((other) => same(other, radius))
  if (one && path.every(({ bulge }) => bulge > 0) && same(w, 2 * radius) && same(h, 2 * radius)) {
    return `${bitWords(w, units)} round`
  }
  const size = `${placeWords(w, units)} × ${placeWords(h, units)}`
  return one ? `${size}, radius ${bitWords(radius, units)}` : size
}

const depthWords = ({ through, depth }: Cutout, units: Units): string =>
  through ? 'through' : `${bitWords(depth, units)} deep`

/** The words beside a cutout: `cable port, 60 round, through`; `notch, 5.9 × 21.4, cut away`. */
export function cutoutLabel(cutout: Cutout, units: Units): string {
  if (cutout.notch === true) return `notch, ${cutoutSize(cutout, units)}, cut away`
  return `${cutout.purpose}, ${cutoutSize(cutout, units)}, ${depthWords(cutout, units)}`
}

/** Where a cutout lies from the datum edges: `middle 100` of a round one, `0 to 21` of a notch, `40 to 160, middle 100` of another. */
export function cutoutPlaces(panel: Panel, cutout: Cutout, units: Units): { readonly x: string; readonly y: string } {
  const { min, max } = boundsOf(cutout.path)
  const [a, b] = [distancesFromDatum(panel, min), distancesFromDatum(panel, max)]
  const round = cutoutSize(cutout, units).endsWith(' round')
  const place = (p: number, q: number): string => {
    const middle = `middle ${placeWords((p + q) / 2, units)}`
    if (round) return middle
    const span = `${placeWords(Math.min(p, q), units)} to ${placeWords(Math.max(p, q), units)}`
    return cutout.notch === true ? span : `${span}, ${middle}`
  }
  return { x: place(a.x, b.x), y: place(a.y, b.y) }
}

/** What a pointer resting on a cutout reads. */
export function cutoutTitle(panel: Panel, cutout: Cutout, units: Units): string {
  const { x, y } = cutoutPlaces(panel, cutout, units)
  return `${cutoutLabel(cutout, units)}, ${y} from ${panel.edges[panel.datum.y]}, ${x} from ${panel.edges[panel.datum.x]}`
}

/** The line of a cutout in the table. */
export function cutoutRow(panel: Panel, cutout: Cutout, tag: string, units: Units): ScheduleRow {
  const { x, y } = cutoutPlaces(panel, cutout, units)
  return {
    tag,
    count: '',
    bit: cutoutSize(cutout, units),
    depth: cutout.notch === true ? 'cut away' : cutout.through ? 'through' : bitWords(cutout.depth, units),
    fromY: y,
    fromX: x,
    purpose: cutout.purpose,
  }
}
