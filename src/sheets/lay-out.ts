import { NOISE_MM } from '../geometry/index.ts'
import type { Stock } from '../project/index.ts'
import type { LaidPart, Layout, Part } from './types.ts'

/** A rectangle of a sheet that is still free. */
interface Free {
  readonly sheet: number
  readonly x: number
  readonly y: number
  readonly length: number
  readonly width: number
}

interface Order {
  readonly before: (a: Part, b: Part) => number
}

/** Ways to sort the parts: the hardest to place first, by different ideas of hard. */
const ORDERS: readonly Order[] = [
  { before: (a, b) => b.length * b.width - a.length * a.width },
  { before: (a, b) => Math.max(b.length, b.width) - Math.max(a.length, a.width) },
  { before: (a, b) => b.width - a.width || b.length - a.length },
  { before: (a, b) => b.length - a.length || b.width - a.width },
  { before: (a, b) => b.length + b.width - a.length - a.width },
]

/** How well a part sits in a free rectangle, by what it leaves: lower is better. */
const SEATS: readonly ((spareLength: number, spareWidth: number) => number)[] = [
  (l, w) => Math.min(l, w),
  (l, w) => Math.max(l, w),
  (l, w) => l * w,
]

/** Which of the two cuts that free a placed part goes right through: true for the one across the length. */
const CUTS: readonly ((spareLength: number, spareWidth: number, part: Sized) => boolean)[] = [
  (l, w) => l >= w,
  (l, w) => l < w,
  (l, w, part) => l * part.width <= w * part.length,
]

interface Sized {
  readonly length: number
  readonly width: number
}

/** Sizes of a sheet between its trimmed edges, mm. */
export function usableSize(stock: Stock): Sized {
  return { length: stock.sheet.length - 2 * stock.edgeTrim, width: stock.sheet.width - 2 * stock.edgeTrim }
}

/**
 * The parts of one stock laid on as few sheets as it finds, with a saw cut of `kerf` mm between neighbours; never more
 * than `most` sheets. `undefined` when they do not come out of that many. Parts lie with the grain; where there is none
 * they may be turned. Several orders and rules of cutting are tried, always in the same order: first fit by best seat,
 * each free rectangle split by one straight cut right through and one that meets it (Jylänki, "A thousand ways to pack
 * the bin", 2010, from memory). The result is good, not proven the best.
 */
export function layOut(parts: readonly Part[], stock: Stock, kerf: number, most: number): Layout | undefined {
  let best: Layout | undefined
  for (const order of ORDERS) {
    const sorted = [...parts].sort((a, b) => order.before(a, b) || (a.panel < b.panel ? -1 : 1))
    for (const seat of SEATS) {
      for (const cut of CUTS) {
        const limit = best === undefined ? most : best.sheets.length - 1
        const sheets = laid(sorted, stock, kerf, limit, { seat, cut })
        if (sheets !== undefined) best = { stock, sheets }
        if (best !== undefined && best.sheets.length <= fewestSheets(parts, stock)) return best
      }
    }
  }
  return best
}

/** No layout needs fewer sheets than this: the area of the parts against that of a trimmed sheet. */
export function fewestSheets(parts: readonly Part[], stock: Stock): number {
  const usable = usableSize(stock)
  const area = parts.reduce((sum, part) => sum + part.length * part.width, 0)
  return Math.max(parts.length > 0 ? 1 : 0, Math.ceil(area / (usable.length * usable.width) - NOISE_MM))
}

interface Rules {
  readonly seat: (spareLength: number, spareWidth: number) => number
  readonly cut: (spareLength: number, spareWidth: number, part: Sized) => boolean
}

function laid(
  parts: readonly Part[],
  stock: Stock,
  kerf: number,
  most: number,
  rules: Rules,
): LaidPart[][] | undefined {
  const usable = usableSize(stock)
  // A part takes its kerf with it, and the sheet is as much larger, so that none is lost at the far edges.
  const whole = { length: usable.length + kerf, width: usable.width + kerf }
  const sheets: LaidPart[][] = []
  let free: Free[] = []
  for (const part of parts) {
    let spot = bestSpot(part, free, stock, kerf, rules)
    if (spot === undefined) {
      if (sheets.length >= most) return undefined
      const opened: Free = { sheet: sheets.length, x: 0, y: 0, ...whole }
      spot = bestSpot(part, [opened], stock, kerf, rules)
      if (spot === undefined) return undefined
      sheets.push([])
      free = [...free, opened]
    }
    const { place, turned, taken } = spot
    sheets[place.sheet]?.push({ ...part, x: place.x, y: place.y, turned })
    free = free.flatMap((one) => (one === place ? split(place, taken, rules) : [one]))
  }
  return sheets
}

interface Spot {
  readonly place: Free
  readonly turned: boolean
  /** With the kerf. */
  readonly taken: Sized
}

function bestSpot(part: Part, free: readonly Free[], stock: Stock, kerf: number, rules: Rules): Spot | undefined {
  let best: { readonly spot: Spot; readonly score: number } | undefined
  const ways = stock.grain === 'none' ? [false, true] : [false]
  for (const place of free) {
    for (const turned of ways) {
      const taken = {
        length: (turned ? part.width : part.length) + kerf,
        width: (turned ? part.length : part.width) + kerf,
      }
      const spareLength = place.length - taken.length
      const spareWidth = place.width - taken.width
      if (spareLength < -NOISE_MM || spareWidth < -NOISE_MM) continue
      const score = rules.seat(spareLength, spareWidth)
      // Earlier sheets are filled first.
      if (best === undefined || (score < best.score - NOISE_MM && place.sheet <= best.spot.place.sheet)) {
        best = { spot: { place, turned, taken }, score }
      }
    }
  }
  return best?.spot
}

/** What is left of a free rectangle once its lower left corner is taken: two rectangles, by straight cuts. */
function split(place: Free, taken: Sized, rules: Rules): Free[] {
  const spareLength = place.length - taken.length
  const spareWidth = place.width - taken.width
  const acrossFirst = rules.cut(spareLength, spareWidth, taken)
  const beside: Free = {
    ...place,
    x: place.x + taken.length,
    length: spareLength,
    width: acrossFirst ? place.width : taken.width,
  }
  const above: Free = {
    ...place,
    y: place.y + taken.width,
    width: spareWidth,
    length: acrossFirst ? taken.length : place.length,
  }
  return [beside, above].filter((one) => one.length > NOISE_MM && one.width > NOISE_MM)
}
