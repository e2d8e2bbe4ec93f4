import { type CoverFace, type Drawing, type PageCount, panelPages } from '../drawing/index.ts'
import type { Panel } from '../panel/index.ts'
import type { Built } from './build.ts'
import { facesMarked } from './paths.ts'

/** Counts of sheets: those there are, those of a plain grid, and those that no pages of whole faces could be fewer than. */
export interface SheetCount extends PageCount {
  readonly least: number
}

/** The full-size pages of one panel, those of face A first. */
export interface PagesOfPanel {
  readonly panel: Panel
  readonly drawings: readonly Drawing[]
  readonly faces: readonly (CoverFace & SheetCount)[]
  /** No templates of any kind do with as few sheets as the definition allows. */
  readonly overBudget: boolean
}

/** The sums of several counts. */
export function total(counts: readonly SheetCount[]): SheetCount {
  const sum = (of: (count: SheetCount) => number): number => counts.reduce((all, count) => all + of(count), 0)
  return { sheets: sum(({ sheets }) => sheets), grid: sum(({ grid }) => grid), least: sum(({ least }) => least) }
}

/** Plans and draws what there is to mark on a panel; no pages where there is nothing. */
export function pagesOf({ project, panels }: Built, panel: Panel, stamp?: string): PagesOfPanel {
  const marked = facesMarked(panel)
  if (marked.length === 0) return { panel, drawings: [], faces: [], overBudget: false }
  const { plan, drawings } = panelPages(panel, marked, {
    print: project.outputs,
    units: project.units,
    others: panels.filter((other) => other.module === panel.module),
    ...(stamp !== undefined && { stamp }),
  })
  return {
    panel,
    drawings,
    overBudget: !plan.met,
    faces: plan.faces.map(({ face, plan: { pieces, sheets, grid, least } }) => ({
      face,
      sheets,
      grid,
      least,
      kinds: [...new Set(pieces.map(({ kind }) => kind))],
    })),
  }
}
