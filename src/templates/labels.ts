import type { Rect } from './types.ts'

/** `A1` for the top left page, `B1` below it, `A2` right of it; after row Z comes AA. */
export function pageLabel(row: number, column: number): string {
  let letters = ''
  for (let left = row; left >= 0; left = Math.floor(left / 26) - 1)
    letters = String.fromCharCode(65 + (left % 26)) + letters
  return `${letters}${column + 1}`
}

/** The letters of a registration mark: a, b, … z, aa, ab, … */
export const markLetters = (index: number): string => pageLabel(index, 0).slice(0, -1).toLowerCase()

/** Windows in the order in which they are read and taped, each with its row from the top and its place in the row. */
export function inRows<Window extends Rect>(
  windows: readonly Window[],
): { window: Window; row: number; column: number }[] {
  const middle = ({ min, max }: Rect): number => (min[1] + max[1]) / 2
  const height = ({ min, max }: Rect): number => max[1] - min[1]
  const rows: Window[][] = []
  for (const window of [...windows].sort((a, b) => middle(b) - middle(a) || a.min[0] - b.min[0])) {
    const row = rows.at(-1)
    const [first] = row ?? []
    // Those whose middles lie less than half a page apart in height stand in one row.
    const level = first !== undefined && middle(first) - middle(window) < Math.min(height(first), height(window)) / 2
    if (level) row?.push(window)
    else rows.push([window])
  }
  return rows.flatMap((row, k) =>
    row.sort((a, b) => a.min[0] + a.max[0] - b.min[0] - b.max[0]).map((window, column) => ({ window, row: k, column })),
  )
}
