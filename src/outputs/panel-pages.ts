import { type CoverFace, type Drawing, facePages, type PageCount } from '../drawing/index.ts'
import type { Panel } from '../panel/index.ts'
import type { Project } from '../project/index.ts'
import { facesMarked } from './paths.ts'

/** The full-size pages of one panel, those of face A first. */
export interface PanelPages {
  readonly panel: Panel
  readonly drawings: readonly { readonly drawing: Drawing; readonly face: CoverFace['face'] }[]
  readonly faces: readonly (CoverFace & PageCount)[]
}

/** The sums of several counts. */
export function total(counts: readonly PageCount[]): PageCount {
  return counts.reduce((sum, { sheets, grid }) => ({ sheets: sum.sheets + sheets, grid: sum.grid + grid }), {
    sheets: 0,
    grid: 0,
  })
}

/** Plans and draws what there is to mark on a panel; no pages where there is nothing. */
export function panelPages({ outputs, units }: Project, panel: Panel, stamp?: string): PanelPages {
  const faces = facesMarked(panel).map((face) => ({ face, pages: facePages(panel, face, outputs, units, stamp) }))
  return {
    panel,
    drawings: faces.flatMap(({ face, pages }) => pages.drawings.map((drawing) => ({ drawing, face }))),
    faces: faces.map(({ face, pages: { plan } }) => ({
      face,
      sheets: plan.sheets,
      grid: plan.grid,
      kinds: [...new Set(plan.pieces.map(({ kind }) => kind))],
    })),
  }
}
