import { type Face, facesDrawn, hasWork } from '../drawing/index.ts'
import type { Panel } from '../panel/index.ts'

/** Files of one panel, relative to the output folder, with forward slashes. */
export interface PanelFiles {
  readonly svg: readonly string[]
  readonly dxf: readonly string[]
  readonly pdf: readonly string[]
}

/** `svg/glaze-store/left-side-a.svg`; module and panel keys are safe as file names by construction. */
export function facePath(kind: 'svg' | 'dxf', panel: Panel, face: Face): string {
  return `${kind}/${panel.module}/${panel.key}-${face.toLowerCase()}.${kind}`
}

/** `templates/glaze-store/left-side.pdf`: the full-size pages of both faces. */
export function pagesPath(panel: Panel): string {
  return `templates/${panel.module}/${panel.key}.pdf`
}

/** The page that is printed first and only measured. */
export const MEASURE_FILE = 'templates/measure-first.pdf'
/** Every full-size page of the project, with a cover. */
export const ALL_PAGES_FILE = 'templates/all-pages.pdf'
/** How many sheets there are, panel by panel. */
export const PAGES_FILE = 'templates/pages.json'

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
  const drawn = facesDrawn(panel)
  return {
    svg: drawn.map((face) => facePath('svg', panel, face)),
    dxf: drawn.map((face) => facePath('dxf', panel, face)),
    pdf: facesMarked(panel).length > 0 ? [pagesPath(panel)] : [],
  }
}
