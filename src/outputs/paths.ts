import { type Face, facesDrawn, hasWork } from '../drawing/index.ts'
import type { Panel } from '../panel/index.ts'

/** Files of one panel, relative to the output folder, with forward slashes. */
export interface PanelFiles {
  readonly svg: readonly string[]
  readonly dxf: readonly string[]
  readonly pdf: readonly string[]
}

/** `svg/glaze-store/left-side-a.svg`; module and panel keys are safe as file names by construction. */
export function facePath(kind: keyof PanelFiles, panel: Panel, face: Face): string {
  const folder = kind === 'pdf' ? 'templates' : kind
  return `${folder}/${panel.module}/${panel.key}-${face.toLowerCase()}.${kind}`
}

/**
 * Faces that get full-size pages: those with something to mark. Bores in the edges stand on the pages of face A. A panel
 * without any work is cut to size by its drawing; a sheaf of empty outlines would help nobody.
 */
export function facesMarked(panel: Panel): Face[] {
  const inEdges = panel.bores.some((bore) => bore.surface !== 'A' && bore.surface !== 'B')
  return facesDrawn(panel).filter((face) => hasWork(panel, face) || (face === 'A' && inEdges))
}

/** All files of a panel. */
export function filesOf(panel: Panel): PanelFiles {
  const of = (kind: keyof PanelFiles, faces: readonly Face[]): string[] =>
    faces.map((face) => facePath(kind, panel, face))
  const drawn = facesDrawn(panel)
  return { svg: of('svg', drawn), dxf: of('dxf', drawn), pdf: of('pdf', facesMarked(panel)) }
}
