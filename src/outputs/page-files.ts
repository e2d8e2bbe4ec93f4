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
export function sharedPagePaths(built: Built): string[] {
  if (built.panels.every((panel) => facesMarked(panel).length === 0)) return []
  return [...(measuringOf(built, undefined).length > 0 ? [MEASURE_FILE] : []), ALL_PAGES_FILE, PAGES_FILE]
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
  const { project } = built
  const info = infoFor(built, stamp)
  const all = openPdf(
    info(`${project.title === '' ? '' : `${project.title}: `}all full-size pages`, fingerprint(seed)),
    fonts,
  )
  const records: PageRecord[] = []
  const count = (): PrintCount => countOf(records)

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
    const { measuring, cover } = frontOf(built, records, stamp)
    if (measuring.length > 0) yield await measureFile(built, all, stamp)
    const front = [...named('Measure first', measuring), ...named('Cover', cover)]
    yield { path: ALL_PAGES_FILE, bytes: await all.finish(front) }
    const text = pagesJson(project, records, front.length, stamp)
    yield { path: PAGES_FILE, bytes: new TextEncoder().encode(text) }
  }

  return { of, shared, count }
}

/** The page that is only measured, alone; fonts as files, or those of a book. */
export async function measureFile(
  built: Built,
  fonts: Parameters<typeof pdfOf>[2],
  stamp?: string,
): Promise<OutputFile> {
  const pages = measuringOf(built, stamp)
  const info = infoFor(built, stamp)('measure first', printOf(pages))
  return { path: MEASURE_FILE, bytes: await pdfOf(pages, info, fonts) }
}

/** The pages that are only measured. */
export function measuringOf({ project }: Built, stamp: string | undefined): Drawing[] {
  return measuringPages(setupOf(project.outputs, project.units, stamp), project.title)
}

/** What comes before the pages of the panels; the cover counts these. */
export function frontOf(
  built: Built,
  records: readonly PageRecord[],
  stamp: string | undefined,
): { readonly measuring: readonly Drawing[]; readonly cover: readonly Drawing[] } {
  const { project, panels } = built
  const measuring = measuringOf(built, stamp)
  const cover: Cover = {
    project,
    setup: setupOf(project.outputs, project.units, stamp),
    panels: records.map(({ panel, faces }) => ({ module: panel.moduleName, panel: panel.name, faces })),
    tools: toolsOf(project, panels),
    count: countOf(records),
    measuring: measuring.length,
  }
  return { measuring, cover: coverDrawings(cover) }
}

/** The sheets of several panels. */
export function countOf(records: readonly PageRecord[]): PrintCount {
  return {
    ...total(records.flatMap(({ faces }) => faces)),
    overBudget: records.filter(({ overBudget }) => overBudget).length,
  }
}

const infoFor =
  ({ project }: Built, stamp: string | undefined) =>
  (name: string, print: string): PdfInfo => ({
    title: stamp === undefined ? name : `${stamp}: ${name}`,
    subject: project.title,
    fingerprint: print,
  })

const printOf = (pages: readonly Drawing[]): string => fingerprint(JSON.stringify(pages))

/** Module, panel, and what of its title is left: `face A, sheet A1`. */
function bookmarkOf({ moduleName, name }: Panel, { title }: Drawing): Bookmark {
  const prefix = `${moduleName}: ${name}, `
  return [moduleName, name, title.startsWith(prefix) ? title.slice(prefix.length) : title]
}

/** Pages of which the first has a bookmark. */
const named = (name: string, pages: readonly Drawing[]): FrontPage[] =>
  pages.map((page, k) => (k === 0 ? { page, bookmark: [name] } : { page }))
