import type { Drawn, Work } from './layers.ts'
import { joinedInto } from './line-breaks.ts'
import type { ScheduleRow } from './schedule-words.ts'
import { textWidth } from './text-width.ts'
import type { Entity } from './types.ts'

const NOTE: Work = { kind: 'note' }

export interface ScheduleBlock {
  /** Said over the rows, where there is something to say. */
  readonly heading?: string
  readonly rows: readonly ScheduleRow[]
}

/** Distances in heights of the table's text. */
const LINE = 1.65
const COLUMN_SPACE = 1.7
/** From one line of a cell to its next. */
const CELL_LINE = 1.25
/** Longer cells are broken at their commas, so that a table does not make its whole drawing small. */
const COLUMN_MOST = 27

type Column = keyof ScheduleRow

const COLUMNS: readonly Column[] = ['tag', 'count', 'bit', 'depth', 'fromY', 'fromX', 'purpose']

/**
 * The table of everything made on a face, its upper left corner at (left, top); mm. Thin lines over and below its
 * head, a hair line below each row; the tags are bold.
 */
export function drawSchedule(
  blocks: readonly ScheduleBlock[],
  heads: Readonly<Record<Column, string>>,
  at: { readonly left: number; readonly top: number; readonly height: number },
): Drawn[] {
  const rows = blocks.flatMap((block) => block.rows)
  if (rows.length === 0) return []
  const { left, height } = at
  const columns = placeColumns(rows, heads, left, height)
  const entities: Entity[] = []
  let bottom = at.top
  const rule = (pen: 'bold' | 'thin' | 'hair'): void => {
    entities.push({ kind: 'line', pen, from: [left, bottom], to: [columns.right, bottom] })
  }
  const line = (cells: readonly (readonly [x: number, text: string])[], boldCells: number): void => {
    const broken = cells.map(([x, text]) => [x, cellLines(text, height)] as const)
    const y = bottom - (LINE - 0.48) * height
    bottom -= (LINE + (Math.max(...broken.map(([, lines]) => lines.length)) - 1) * CELL_LINE) * height
    broken.forEach(([x, lines], column) => {
      const weight = column < boldCells ? { bold: true } : {}
      lines.forEach((text, k) => {
        const at = [x, y - k * CELL_LINE * height] as const
        if (text !== '') entities.push({ kind: 'text', at, height, anchor: 'start', text, ...weight })
      })
    })
  }
  const cells = (row: Readonly<Record<Column, string>>): [number, string][] =>
    columns.starts.map(([column, x]) => [x, row[column]])
  rule('thin')
  line(cells(heads), COLUMNS.length)
  rule('thin')
  for (const block of blocks) {
    if (block.rows.length === 0) continue
    if (block.heading !== undefined) {
      line([[left, block.heading]], 1)
      rule('hair')
    }
    for (const row of block.rows) {
      line(cells(row), 1)
      rule('hair')
    }
  }
  return entities.map((entity) => ({ work: NOTE, entity }))
}

function cellLines(text: string, height: number): string[] {
  return joinedInto(text.split(/(?<=,) /), ' ', (line) => textWidth(line, height) <= COLUMN_MOST * height)
}

function placeColumns(
  rows: readonly ScheduleRow[],
  heads: Readonly<Record<Column, string>>,
  left: number,
  height: number,
): { starts: [Column, number][]; right: number } {
  const starts: [Column, number][] = []
  let x = left
  for (const column of COLUMNS) {
    starts.push([column, x])
    const widths = rows.flatMap((row) =>
      cellLines(row[column], height).map((text) => textWidth(text, height, column === 'tag')),
    )
    x += Math.max(textWidth(heads[column], height, true), ...widths) + COLUMN_SPACE * height
  }
  return { starts, right: x - COLUMN_SPACE * height }
}
