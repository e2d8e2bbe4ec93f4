import { type OutputSpec, sheetWords } from '../project/index.ts'
import type { PrintCount } from './page-files.ts'

/** `212 sheets of A3 to print (a plain grid would take 540)`, and what is over the page budget; nothing where nothing is to print. */
export function printWords(
  { sheets, grid, overBudget }: PrintCount,
  { paper, pageBudget = 0 }: OutputSpec,
): string | undefined {
  if (sheets === 0) return undefined
  const over = overBudget === 0 ? '' : `; ${overPages(overBudget, pageBudget)}`
  return `${sheetWords(sheets, paper)} to print (a plain grid would take ${grid})${over}`
}

/** `2 panels take more than the 3 of the page budget`. */
function overPages(panels: number, budget: number): string {
  return `${panels === 1 ? '1 panel takes' : `${panels} panels take`} more than the ${budget} of the page budget`
}
