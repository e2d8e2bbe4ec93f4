import { boundsOf, type ClosedPath, closedPathsOf, outlineModel, same } from '../geometry/index.ts'
import { coreOf } from '../panel/index.ts'
import type { Area } from './areas.ts'
import { seenPath } from './cutouts.ts'
import type { FaceView } from './face.ts'
import type { Drawn } from './layers.ts'
import type { Point } from './types.ts'

/** What is cut from the sheet, as seen on the face: the panel less its lippings. */
export function coreArea(view: FaceView): Area {
  const core = coreOf(view.panel)
  const [a, b] = [view.toView(core.min), view.toView(core.max)]
  return { min: [Math.min(a[0], b[0]), a[1]], max: [Math.max(a[0], b[0]), b[1]] }
}

/**
 * The outline is what is cut, in its place behind the finished edges, so that every distance stays one from a finished
 * edge, and round the notches at its corners. Where a lipping lies between the two, the finished edge is a note.
 */
export function drawOutline(view: FaceView): Drawn[] {
  const { panel } = view
  const { min, max } = coreArea(view)
  const outline = closedPathsOf(outlineModel(max[0] - min[0], max[1] - min[1])).map((vertices): Drawn => {
    const moved =
      panel.lipping === undefined
        ? vertices
        : vertices.map(({ at: [x, y], bulge }) => ({ at: [x + min[0], y + min[1]] as const, bulge }))
    return { work: { kind: 'outline' }, entity: { kind: 'path', id: 'outline', vertices: roundNotches(view, moved) } }
  })
  if (panel.lipping === undefined) return outline
  const finished = closedPathsOf(outlineModel(panel.length, panel.width)).map(
    (vertices): Drawn => ({
      work: { kind: 'note' },
      entity: { kind: 'path', id: 'finished-edge', title: 'finished edge, lippings on', pen: 'thin', vertices },
    }),
  )
  return [...outline, ...finished]
}

/** The corners of the outline, with three in the place of each that a notch takes off. */
function roundNotches(view: FaceView, corners: ClosedPath): ClosedPath {
  const notches = view.panel.cutouts
    .filter((cutout) => cutout.notch === true)
    .map((cutout) => boundsOf(seenPath(view.panel, view.face, cutout)))
  if (notches.length === 0) return corners
  return corners.flatMap((corner, k) => {
    const { at } = corner
    const notch = notches.find(({ min, max }) => [0, 1].every((axis) => holds(min, max, at, axis as 0 | 1)))
    const before = corners.at(k - 1)
    if (notch === undefined || before === undefined) return [corner]
    const middle = corners.reduce((sum, one) => sum + one.at[0], 0) / corners.length
    const across = corners.reduce((sum, one) => sum + one.at[1], 0) / corners.length
    const inner: Point = [at[0] < middle ? notch.max[0] : notch.min[0], at[1] < across ? notch.max[1] : notch.min[1]]
    const level = same(before.at[1], at[1])
    const [first, last]: [Point, Point] = level
      ? [
          [inner[0], at[1]],
          [at[0], inner[1]],
        ]
      : [
          [at[0], inner[1]],
          [inner[0], at[1]],
        ]
    return [first, inner, last].map((place) => ({ at: place, bulge: 0 }))
  })
}

/** True where the notch reaches from the corner, or from beyond it, into the outline. */
function holds(min: Point, max: Point, at: Point, axis: 0 | 1): boolean {
  const inside = (a: number, b: number): boolean => a < b && !same(a, b)
  return (
    (inside(at[axis], max[axis]) && !inside(at[axis], min[axis])) ||
    (inside(min[axis], at[axis]) && !inside(max[axis], at[axis]))
  )
}
