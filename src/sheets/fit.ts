import { assemble } from '../assembly/index.ts'
import { NOISE_MM } from '../geometry/index.ts'
import { panelsOf } from '../panel/index.ts'
import type { FitSpec, Project, ReadResult } from '../project/index.ts'
import { fewestSheets, layOut, usableSize } from './lay-out.ts'
import { partsByStock } from './parts.ts'

type Sized = (mm: number) => ReadResult

/** No cabinet is smaller, mm. */
const LEAST_MM = 60

/**
 * The largest size, in whole steps, at which every part of the project comes out of the sheets that are on hand; the
 * definition is worked out anew at each size that is tried. `undefined` when there is none. It goes down from the
 * largest size at which the bare area of the parts would suffice, so no size that comes out is passed over.
 */
export function largestSize(fit: FitSpec, sized: Sized): number | undefined {
  const most = Math.floor((fit.atMost + NOISE_MM) / fit.step)
  const least = Math.ceil((LEAST_MM - NOISE_MM) / fit.step)
  for (let k = highest(fit, sized, least, most); k >= least; k -= 1) {
    const read = sized(k * fit.step)
    if (read.ok && comesOut(read.project, fit.kerf)) return k * fit.step
  }
  return undefined
}

/** The number of steps above which some stock has too little area, or a part is longer than its sheet: both grow with the size. */
function highest(fit: FitSpec, sized: Sized, least: number, most: number): number {
  let low = least
  let high = most
  while (low < high) {
    const middle = Math.ceil((low + high) / 2)
    const read = sized(middle * fit.step)
    // A size at which nothing can be built says nothing of those above it, unless it is too large for its sheet anyway.
    if (read.ok && tooLarge(read.project)) high = middle - 1
    else low = middle
  }
  return low
}

function tooLarge(project: Project): boolean {
  return [...partsOf(project)].some(([stock, parts]) => {
    const usable = usableSize(stock)
    const longest = Math.max(usable.length, usable.width) + NOISE_MM
    if (parts.some((part) => Math.max(part.length, part.width) > longest)) return true
    return stock.onHand !== undefined && fewestSheets(parts, stock) > stock.onHand
  })
}

const partsOf = (project: Project) => partsByStock(panelsOf(assemble(project)))

function comesOut(project: Project, kerf: number): boolean {
  return [...partsOf(project)].every(
    ([stock, parts]) => layOut(parts, stock, kerf, stock.onHand ?? parts.length) !== undefined,
  )
}
