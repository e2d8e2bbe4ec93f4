import type { Piece } from '../../templates/index.ts'
import type { Area } from '../areas.ts'
import { textWidth } from '../text-width.ts'
import type { Entity, Point } from '../types.ts'
import type { Sheet } from './sheet.ts'
import { rectangle, strokeIn } from './strokes.ts'
import { textAt } from './text.ts'

/** The map of the sheets, mm: its height, its width unless there are many columns, and the sizes of a cell. */
const MAP = { width: 30, height: 21, cellLeast: 4.2, cellMost: 10, text: 2.6, hatch: 1.3 } as const
export interface Grid {
  readonly columns: number
  readonly rows: number
  readonly cell: Point
}

/** The first and last row and column always show an edge of the panel, so the printed pages tell how many there are. */
export function gridOf(pages: readonly Piece[]): Grid {
  const columns = 1 + Math.max(...pages.map((page) => page.column))
  const rows = 1 + Math.max(...pages.map((page) => page.row))
  const wide = Math.max(MAP.width / columns, MAP.cellLeast)
  return { columns, rows, cell: [Math.min(wide, MAP.cellMost), Math.min(MAP.height / rows, MAP.cellMost)] }
}

/**
 * How the sheets lie, in cells of one size so that each has room for its label: this one in a heavy frame, those that
 * are not printed hatched.
 */
export function mapOf(sheet: Sheet, pages: readonly Piece[], [left, bottom]: Point, grid: Grid): Entity[] {
  const { columns, rows, cell } = grid
  const areaOf = (row: number, column: number): Area => {
    const min: Point = [left + column * cell[0], bottom + (rows - 1 - row) * cell[1]]
    return { min, max: [min[0] + cell[0], min[1] + cell[1]] }
  }
  const cells = Array.from({ length: rows * columns }, (_, k): Entity[] => {
    const [row, column] = [Math.floor(k / columns), k % columns]
    const area = areaOf(row, column)
    const page = pages.find((one) => one.row === row && one.column === column)
    if (page === undefined) return [rectangle(area, 'hair'), ...hatched(area)]
    const here = page.label === sheet.page.label
    return [...(here ? [] : [rectangle(area, 'hair')]), cellLabel(area, page.label, here)]
  })
  const { row, column } = sheet.page
  return [
    ...cells.flat(),
    rectangle({ min: areaOf(rows - 1, 0).min, max: areaOf(0, columns - 1).max }, 'thin'),
    rectangle(areaOf(row, column), 'bold'),
  ]
}

function cellLabel({ min, max }: Area, label: string, bold: boolean): Entity {
  const width = (max[0] - min[0]) * 0.86
  const height = Math.min(MAP.text, (max[1] - min[1]) * 0.8, width / textWidth(label, 1, bold))
  const middle: Point = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2 - 0.36 * height]
  return textAt(middle, height, label, { anchor: 'middle', bold })
}

function hatched(area: Area): Entity[] {
  const { min, max } = area
  const [wide, high] = [max[0] - min[0], max[1] - min[1]]
  return Array.from({ length: Math.floor((wide + high) / MAP.hatch) }, (_, k) => {
    const x = min[0] - high + (k + 1) * MAP.hatch
    return strokeIn(area, [x, min[1]], [x + high, max[1]], 'hair')
  }).flat()
}
