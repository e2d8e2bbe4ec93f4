import { LINE_HEIGHT } from '../areas.ts'
import { joinedInto } from '../line-breaks.ts'
import { TEXT_ASCENT, textWidth } from '../text-width.ts'
import type { Entity, Text } from '../types.ts'

/** One of the texts that stand beside each other in a line; longer ones are broken within their width. */
export interface Cell {
  readonly text: string
  /** Of the column's width, all cells of a line together 1. */
  readonly share: number
  readonly anchor?: 'start' | 'end'
  readonly bold?: boolean
  /** Never broken: for a figure. */
  readonly whole?: boolean
}

/** What is set below each other in the columns of a page. */
export type Block =
  /** A heading stays with what follows, under a line across the column. */
  | { readonly kind: 'heading'; readonly text: string }
  /** `lead` is bold, in a line of its own. */
  | { readonly kind: 'paragraph'; readonly text: string; readonly lead?: string }
  | CellBlock

/** A line of cells. */
export interface CellBlock {
  readonly kind: 'cells'
  readonly cells: readonly Cell[]
  /** In the same column as the next block. */
  readonly keep?: boolean
  /** Free above, in lines. */
  readonly before?: number
  /** Said in bold above it where it comes first in a column: what it belongs to. */
  readonly over?: string
}

/** The columns of one page, mm from its lower left corner. */
export interface Columns {
  readonly left: number
  readonly width: number
  readonly gap: number
  readonly count: number
  readonly top: number
  readonly bottom: number
}

/** Font sizes, mm. */
export const BODY = 3.1
const HEADING = 4.4
/** From line to line, in font sizes. */
const LEADING = 1.32
/** Free between the cells of a line, mm. */
const CELL_GAP = 2

/** A stretch of a column that is not broken. */
interface Slab {
  readonly height: number
  /** Free above it, unless it stands at the top of a column. */
  readonly before: number
  readonly keep: boolean
  readonly over?: string
  readonly at: (left: number, top: number) => Entity[]
}

/**
 * Sets blocks in columns, the left one first, and page after page: for each page its entities. A block that is higher than a
 * column is broken between its lines. `columnsOf` says what each page (0 first) has room for; all have the same width.
 */
export function flow(blocks: readonly Block[], columnsOf: (page: number) => Columns): Entity[][] {
  const { width } = columnsOf(0)
  const pages: Entity[][] = [[]]
  let columns = columnsOf(0)
  let column = 0
  let y = columns.top
  const next = (): void => {
    column += 1
    if (column === columns.count) {
      columns = columnsOf(pages.length)
      pages.push([])
      column = 0
    }
    y = columns.top
  }
  const put = (slab: Slab, left: number): void => {
    pages.at(-1)?.push(...slab.at(left, y))
    y -= slab.height
  }
  for (const chain of chained(blocks.flatMap((block) => slabsOf(block, width)))) {
    const high = chain.reduce((sum, { height, before }, k) => sum + height + (k === 0 ? 0 : before), 0)
    const fresh = y === columns.top
    const before = fresh ? 0 : (chain[0]?.before ?? 0)
    if (!fresh && y - before - high < columns.bottom) next()
    for (const slab of chain) {
      if (y < columns.top) y -= slab.before
      if (y < columns.top && y - slab.height < columns.bottom) next()
      const left = columns.left + column * (columns.width + columns.gap)
      if (y === columns.top && slab.over !== undefined) put(headLine(slab.over, width), left)
      put(slab, left)
    }
  }
  return pages
}

/** Slabs that stay together: each with those that ask to stand with the next. */
function chained(slabs: readonly Slab[]): Slab[][] {
  const chains: Slab[][] = []
  let open = false
  for (const slab of slabs) {
    if (open) chains.at(-1)?.push(slab)
    else chains.push([slab])
    open = slab.keep
  }
  return chains
}

function slabsOf(block: Block, width: number): Slab[] {
  switch (block.kind) {
    case 'heading':
      return [headingSlab(block.text, width)]
    case 'paragraph': {
      const lead = block.lead === undefined ? [] : wrapped(block.lead, width, BODY, true)
      const lines = wrapped(block.text, width, BODY)
      const all = [...lead.map((text) => ({ text, bold: true })), ...lines.map((text) => ({ text, bold: false }))]
      return all.map(({ text, bold }, k) => ({
        ...lineSlab([{ text, x: 0, anchor: 'start', bold }]),
        before: k === 0 ? BODY * 0.6 : 0,
        keep: k < all.length - 1,
      }))
    }
    case 'cells':
      return cellSlabs(block, width)
    default:
      return block satisfies never
  }
}

function headingSlab(words: string, width: number): Slab {
  const lines = wrapped(words, width, HEADING, true)
  const height = lines.length * HEADING * LEADING + 1.2
  return {
    height,
    before: 4,
    keep: true,
    at: (left, top) => [
      ...lines.map((line, k) =>
        textAt(left, top - HEADING * (TEXT_ASCENT + k * LEADING), HEADING, line, 'start', true),
      ),
      { kind: 'line', from: [left, top - height + 0.8], to: [left + width, top - height + 0.8], pen: 'thin' },
    ],
  }
}

/** A bold line, cut where it is too long. */
const headLine = (words: string, width: number): Slab =>
  lineSlab([{ text: wrapped(words, width, BODY, true)[0] ?? '', x: 0, anchor: 'start', bold: true }])

function cellSlabs({ cells, keep = false, before = 0, over }: CellBlock, width: number): Slab[] {
  let left = 0
  const set = cells.map(({ text, share, anchor = 'start', bold = false, whole = false }, k) => {
    const wide = share * width - (k === cells.length - 1 ? 0 : CELL_GAP)
    const x = anchor === 'start' ? left : left + wide
    left += share * width
    return { x, anchor, bold, lines: whole ? [text] : wrapped(text, wide, BODY, bold) }
  })
  const count = Math.max(1, ...set.map(({ lines }) => lines.length))
  return Array.from({ length: count }, (_, k) => ({
    ...lineSlab(set.map(({ lines, ...cell }) => ({ ...cell, text: lines[k] ?? '' }))),
    before: k === 0 ? before * BODY : 0,
    keep: keep || k < count - 1,
    ...(over !== undefined && { over }),
  }))
}

interface Piece {
  readonly text: string
  readonly x: number
  readonly anchor: 'start' | 'end'
  readonly bold: boolean
}

function lineSlab(pieces: readonly Piece[]): Slab {
  return {
    height: BODY * LEADING,
    before: 0,
    keep: false,
    at: (left, top) =>
      pieces
        .filter(({ text }) => text !== '')
        .map(({ text, x, anchor, bold }) => textAt(left + x, top - BODY * TEXT_ASCENT, BODY, text, anchor, bold)),
  }
}

function textAt(x: number, y: number, height: number, text: string, anchor: Text['anchor'], bold: boolean): Text {
  return { kind: 'text', at: [x, y], height, anchor, text, ...(bold && { bold }) }
}

/** Words in lines no wider than `width` mm; a word that is wider is broken where it must be. */
export function wrapped(words: string, width: number, height: number, bold = false): string[] {
  const fits = (line: string): boolean => textWidth(line, height, bold) <= width
  return joinedInto(
    words.split(' ').flatMap((word) => broken(word, fits)),
    ' ',
    fits,
  )
}

function broken(word: string, fits: (line: string) => boolean): string[] {
  if (fits(word)) return [word]
  const pieces: string[] = []
  let piece = ''
  for (const letter of word) {
    if (piece !== '' && !fits(piece + letter)) {
      pieces.push(piece)
      piece = ''
    }
    piece += letter
  }
  return [...pieces, piece]
}

/** From line to line of a text of this size, mm; texts so set never touch. */
export const lineStep = (height: number): number => height * Math.max(LEADING, LINE_HEIGHT)
