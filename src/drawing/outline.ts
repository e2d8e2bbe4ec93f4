import { closedPathsOf, outlineModel } from '../geometry/index.ts'
import { coreOf } from '../panel/index.ts'
import type { Area } from './areas.ts'
import type { FaceView } from './face.ts'
import type { Drawn } from './layers.ts'

/** What is cut from the sheet, as seen on the face: the panel less its lippings. */
export function coreArea(view: FaceView): Area {
  const core = coreOf(view.panel)
  const [a, b] = [view.toView(core.min), view.toView(core.max)]
  return { min: [Math.min(a[0], b[0]), a[1]], max: [Math.max(a[0], b[0]), b[1]] }
}

/**
 * The outline is what is cut, in its place behind the finished edges, so that every distance stays one from a finished
 * edge. Where a lipping lies between the two, the finished edge is a note.
 */
export function drawOutline(view: FaceView): Drawn[] {
  const { panel } = view
  const { min, max } = coreArea(view)
  const outline = closedPathsOf(outlineModel(max[0] - min[0], max[1] - min[1])).map((vertices): Drawn => {
    const moved =
      panel.lipping === undefined
        ? vertices
        : vertices.map(({ at: [x, y], bulge }) => ({ at: [x + min[0], y + min[1]] as const, bulge }))
    return { work: { kind: 'outline' }, entity: { kind: 'path', id: 'outline', vertices: moved } }
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
