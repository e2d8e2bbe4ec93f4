import { roundMm } from '../geometry/index.ts'
import { correctionOf, type Project, paperSize } from '../project/index.ts'
import type { PageRecord } from './page-files.ts'
import { total } from './panel-pages.ts'
import { ALL_PAGES_FILE, pagesPath } from './paths.ts'

/** Raised when a reader of the last version could misread the file. */
export const PAGES_VERSION = 1

/**
 * The text of pages.json: what there is to print, panel by panel, and where it stands in the file of all pages, of which
 * `front` come before the panels. Lengths in mm, rounded to 0.001; two spaces, keys in a fixed order, one final line end.
 */
export function pagesJson(project: Project, records: readonly PageRecord[], front: number, stamp?: string): string {
  const { paper, bars, pageBudget } = project.outputs
  const { width, height, roll } = paperSize(paper)
  const correction = correctionOf(project.outputs)
  let page = front + 1
  const panels = records.flatMap(({ panel, faces, overBudget }) => {
    if (faces.length === 0) return []
    const { sheets } = total(faces)
    const record = {
      id: panel.id,
      file: pagesPath(panel),
      page,
      sheets,
      ...(overBudget && { overBudget }),
      faces: faces.map(({ face, sheets: own, grid, least, kinds }) => ({ face, sheets: own, grid, least, kinds })),
    }
    page += sheets
    return [record]
  })
  const content = {
    format: 'storyrod pages',
    version: PAGES_VERSION,
    title: project.title,
    ...(stamp !== undefined && { warning: stamp }),
    paper: { name: paper, width: roundMm(width), ...(roll === true ? { roll } : { height: roundMm(height) }) },
    ...(pageBudget !== undefined && { pageBudget }),
    ...(bars !== undefined && correction !== undefined && { bars }),
    file: ALL_PAGES_FILE,
    front,
    ...total(records.flatMap(({ faces }) => faces)),
    panels,
    cutOnly: records.filter(({ faces }) => faces.length === 0).map(({ panel }) => panel.id),
  }
  return `${JSON.stringify(content, null, 2)}\n`
}
