import { type CoverFace, type Drawing, type PageCount, panelPages } from '../drawing/index.ts'
import type { Panel } from '../panel/index.ts'
import type { Project } from '../project/index.ts'
import { facesMarked } from './paths.ts'

/** Counts of sheets: those there are, those of a plain grid, and those that no pages of whole faces could be fewer than. */
export interface SheetCount extends PageCount {
  readonly least: number
}

/** The full-size pages of one panel, those of face A first. */
export interface PanelPages {
  readonly panel: Panel
  readonly drawings: readonly Drawing[]
  readonly faces: readonly (CoverFace & SheetCount)[]
}

/** The sums of several counts. */
export function total(counts: readonly SheetCount[]): SheetCount {
  const sum = (of: (count: SheetCount) => number): number => counts.reduce((all, count) => all + of(count), 0)
  return { sheets: sum(({ sheets }) => sheets), grid: sum(({ grid }) => grid), least: sum(({ least }) => least) }
}

/** Plans and draws what there is to mark on a panel of these; no pages where there is nothing. */
export function pagesOf(
  { outputs, units }: Project,
  panel: Panel,
  panels: readonly Panel[],
  stamp?: string,
): PanelPages {
  const others = panels.filter(({ module }) => module === panel.module)
  const print = { print: outputs, units, others, ...(stamp !== undefined && { stamp }) }
  const { plan, drawings } = panelPages(panel, facesMarked(panel), print)
  return {
    panel,
    drawings,
    faces: plan.faces.map(({ face, plan: { pieces, sheets, grid, least } }) => ({
      face,
      sheets,
      grid,
      least,
      kinds: [...new Set(pieces.map(({ kind }) => kind))],
    })),
  }
}
