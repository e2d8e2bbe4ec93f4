import type { Drawing } from '../types.ts'
import { measurePage } from './measure-page.ts'
import type { PageSetup } from './setup.ts'

/** Draws a page for a paper and a printer, with the project's title on it. */
type FrontPage = (setup: PageSetup, title: string) => Drawing

/** The pages that are printed alone and measured before any other, in their order. */
const MEASURING: readonly FrontPage[] = [measurePage]

/** The drawings of the pages that are only to be measured. */
export function measuringPages(setup: PageSetup, title: string): Drawing[] {
  return MEASURING.map((page) => page(setup, title))
}
