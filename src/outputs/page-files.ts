import {
  type Cover,
  coverDrawings,
  type Drawing,
  measuringPages,
  type PageCount,
  setupOf,
  toolsOf,
} from '../drawing/index.ts'
import type { Panel } from '../panel/index.ts'
import { type Bookmark, type FrontPage, openPdf, type PdfInfo, pdfOf } from '../writers/index.ts'
import type { Built } from './build.ts'
import type { Fonts, OutputFile } from './files.ts'
import { fingerprint } from './fingerprint.ts'
import { pagesJson } from './pages-json.ts'
import { type PagesOfPanel, pagesOf, total } from './panel-pages.ts'
import { ALL_PAGES_FILE, facesMarked, MEASURE_FILE, PAGES_FILE, pagesPath } from './paths.ts'

/** A panel's pages without their drawings, which are many. */
export type PageRecord = Omit<PagesOfPanel, 'drawings'>

/** Paths of the files of full-size pages that belong to no one panel, in the order in which they are written. */
export function sharedPagePaths({ project, panels }: Built): string[] {
  if (panels.every((panel) => facesMarked(panel).length === 0)) return []
  const measuring = measuringPages(setupOf(project.outputs, project.units, undefined), project.title)
  return [...(measuring.length > 0 ? [MEASURE_FILE] : []), ALL_PAGES_FILE, PAGES_FILE]
}

/** The full-size pages of a project: a file for each panel as it comes, and those that hold them all at the end. */
export interface PageFiles {
  /** The panel's own file; its pages go into the one of all. Nothing where there is nothing to mark. */
  readonly of: (panel: Panel) => Promise<OutputFile | undefined>
  /** After all panels: the files that belong to no one panel. */
  readonly shared: () => AsyncGenerator<OutputFile>
  /** What there is to print so far. */
  readonly count: () => PrintCount
}

/** What there is to print, and how many panels take more sheets than the definition allows. */
export interface PrintCount extends PageCount {
  readonly overBudget: number
}

/**
 * Draws each page once: into its panel's file and, at the same time, into that of all. `seed` tells one project's pages
 * from another's.
 */
export function pageFiles(built: Built, fonts: Fonts, seed: string, stamp?: string): PageFiles {
  const { project, panels } = built
  const setup = setupOf(project.outputs, project.units, stamp)
  const titled = (name: string): string => (stamp === undefined ? name : `${stamp}: ${name}`)
  const info = (name: string, print: string): PdfInfo => ({
    title: titled(name),
    subject: project.title,
    fingerprint: print,
  })
  const all = openPdf(
    info(`${project.title === '' ? '' : `${project.title}: `}all full-size pages`, fingerprint(seed)),
    fonts,
  )
  const records: PageRecord[] = []
  const count = (): PrintCount => ({
    ...total(records.flatMap(({ faces }) => faces)),
    overBudget: records.filter(({ overBudget }) => overBudget).length,
  })

  async function of(panel: Panel): Promise<OutputFile | undefined> {
    const { drawings, ...record } = pagesOf(built, panel, stamp)
    records.push(record)
    if (drawings.length === 0) return undefined
    for (const page of drawings) all.add(page, bookmarkOf(panel, page))
    const name = `${panel.moduleName}: ${panel.name}, full size`
    return { path: pagesPath(panel), bytes: await pdfOf(drawings, info(name, printOf(drawings)), all) }
  }

  async function* shared(): AsyncGenerator<OutputFile> {
    if (records.every(({ faces }) => faces.length === 0)) return
    const measuring = measuringPages(setup, project.title)
    if (measuring.length > 0)
      yield { path: MEASURE_FILE, bytes: await pdfOf(measuring, info('measure first', printOf(measuring)), all) }
    const cover: Cover = {
      project,
      setup,
      panels: records.map(({ panel, faces }) => ({ module: panel.moduleName, panel: panel.name, faces })),
      tools: toolsOf(project, panels),
      count: count(),
      measuring: measuring.length,
    }
    const front = [...named('Measure first', measuring), ...named('Cover', coverDrawings(cover))]
    yield { path: ALL_PAGES_FILE, bytes: await all.finish(front) }
    const text = pagesJson(project, records, front.length, stamp)
    yield { path: PAGES_FILE, bytes: new TextEncoder().encode(text) }
  }

  return { of, shared, count }
}

const printOf = (pages: readonly Drawing[]): string => fingerprint(JSON.stringify(pages))

/** Module, panel, and what of its title is left: `face A, sheet A1`. */
function bookmarkOf({ moduleName, name }: Panel, { title }: Drawing): Bookmark {
  const prefix = `${moduleName}: ${name}, `
  return [moduleName, name, title.startsWith(prefix) ? title.slice(prefix.length) : title]
}

/** Pages of which the first has a bookmark. */
const named = (name: string, pages: readonly Drawing[]): FrontPage[] =>
  pages.map((page, k) => (k === 0 ? { page, bookmark: [name] } : { page }))
