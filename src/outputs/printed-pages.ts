import type { Drawing } from '../drawing/index.ts'
import type { Panel } from '../panel/index.ts'
import type { Built } from './build.ts'
import { countOf, frontOf, measuringOf, type PageRecord, type PrintCount } from './page-files.ts'
import { pagesOf } from './panel-pages.ts'

/** What is printed: the page that is only measured, a panel or a module by its key, or all with a cover. */
export type PrintChoice =
  | { readonly of: 'measuring' }
  | { readonly of: 'panel'; readonly panel: string }
  | { readonly of: 'module'; readonly module: string }
  | { readonly of: 'all' }

/** Pages as they are made: those of a panel, with what it is called; `front`: they come before all others. */
export interface PagesMade {
  readonly of: string
  readonly drawings: readonly Drawing[]
  readonly front: boolean
}

/**
 * The full-size pages of a choice, panel by panel, just as they stand in the PDF files; at the end, how many sheets there are
 * of panels. Pages that are only measured, and the cover, are not counted, as they are not in the files' own count.
 */
export function* printedPages(built: Built, choice: PrintChoice, stamp?: string): Generator<PagesMade, PrintCount> {
  const records: PageRecord[] = []
  for (const panel of built.panels.filter(isChosen(choice))) {
    const { drawings, ...record } = pagesOf(built, panel, stamp)
    records.push(record)
    if (drawings.length > 0) yield { of: `${panel.moduleName}: ${panel.name}`, drawings, front: false }
  }
  if (choice.of === 'measuring') yield { of: 'measure first', drawings: measuringOf(built, stamp), front: true }
  if (choice.of === 'all' && records.some(({ faces }) => faces.length > 0)) {
    const { measuring, cover } = frontOf(built, records, stamp)
    yield { of: 'cover', drawings: [...measuring, ...cover], front: true }
  }
  return countOf(records)
}

function isChosen(choice: PrintChoice): (panel: Panel) => boolean {
  switch (choice.of) {
    case 'measuring':
      return () => false
    case 'panel':
      return ({ id }) => id === choice.panel
    case 'module':
      return ({ module }) => module === choice.module
    case 'all':
      return () => true
    default:
      return choice satisfies never
  }
}
