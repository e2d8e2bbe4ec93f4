import { type Project, paperWords, sheetWords } from '../../project/index.ts'
import type { Area } from '../areas.ts'
import { correctionWords, type PageSetup, stretchOf } from '../pages/setup.ts'
import { rectangle } from '../pages/strokes.ts'
import { TEXT_ASCENT, textWidth } from '../text-width.ts'
import type { Drawing, Entity, Text } from '../types.ts'
import { type CoverPanel, contentsOf, toolBlocks } from './contents.ts'
import { type Block, type Columns, flow, lineStep, wrapped } from './flow.ts'
import type { Tool } from './tools.ts'
import { cautionsOf, stepsOf } from './words.ts'

/** Sheets of paper that a project takes, and those that a plain grid over every marked face would take. */
export interface PageCount {
  readonly sheets: number
  readonly grid: number
}

/** What the cover of all pages tells. */
export interface Cover {
  readonly project: Project
  readonly setup: PageSetup
  /** In the order of their pages. */
  readonly panels: readonly CoverPanel[]
  readonly tools: readonly Tool[]
  readonly count: PageCount
  /** Pages before the cover, which are only to be measured. */
  readonly measuring: number
}

/** Columns are no narrower than this, mm: about fifty letters. */
const LEAST_COLUMN = 84
const COLUMN_GAP = 6
const TITLE = 8
const LINE = 3.6
const FOOT = 3
/** The height of a cover that is cut from a roll grows by such steps, mm. */
const STEP = 20

/**
 * The cover of a project's pages, as many sheets as it takes: how to go on, bits, cautions, contents with the page numbers of
 * the file in which the measuring pages come first, then the cover, then the panels. From a roll, one sheet as short as it can be.
 */
export function coverDrawings(cover: Cover): Drawing[] {
  // How many sheets it takes does not hang on the page numbers: those are never broken.
  const sheet = sheetFor(cover)
  const count = laidOut(cover, sheet, 1).length
  return laidOut(cover, sheet, count).map((entities, page) => drawingOf(cover, sheet, entities, page, count))
}

interface Sheet {
  readonly width: number
  readonly height: number
}

/** The paper upright; of a roll, the shortest on which all stands on one sheet. */
function sheetFor(cover: Cover): Sheet {
  const { paper } = cover.setup
  if (paper.roll !== true) return paper
  for (let height = 10 * STEP; height < paper.height; height += STEP) {
    const sheet = { width: paper.width, height }
    if (laidOut(cover, sheet, 1).length === 1) return sheet
  }
  return paper
}

/** The entities of each page; `count` is how many pages the cover is taken to have. */
function laidOut(cover: Cover, sheet: Sheet, count: number): Entity[][] {
  const { project, setup, panels, tools, measuring } = cover
  const blocks: Block[] = [
    ...stepsOf(measuring, setup.units),
    ...toolBlocks(tools),
    ...cautionsOf(project),
    ...contentsOf(panels, measuring + count + 1),
  ]
  const head = headOf(cover, sheet)
  const { margin } = setup
  const bottom = margin + 2 * FOOT
  const width = sheet.width - 2 * margin
  const columns = Math.max(1, Math.floor((width + COLUMN_GAP) / (LEAST_COLUMN + COLUMN_GAP)))
  const columnsOf = (page: number): Columns => ({
    left: margin,
    width: (width - (columns - 1) * COLUMN_GAP) / columns,
    gap: COLUMN_GAP,
    count: columns,
    top: page === 0 ? head.bottom - 4 : sheet.height - margin,
    bottom,
  })
  const [first = [], ...others] = flow(blocks, columnsOf)
  return [[...head.entities, ...first], ...others]
}

/** The warning if there is one, the title, and what there is to print. */
function headOf(cover: Cover, sheet: Sheet): { entities: Entity[]; bottom: number } {
  const { project, setup, count } = cover
  const { margin, stamp, paperName } = setup
  const width = sheet.width - 2 * margin
  const entities: Entity[] = []
  let y = sheet.height - margin
  const lines = (words: string, height: number, bold: boolean, inset = 0): void => {
    for (const text of wrapped(words, width - 2 * inset, height, bold)) {
      entities.push(textAt(margin + inset, y - TEXT_ASCENT * height, height, text, bold))
      y -= lineStep(height)
    }
  }
  if (stamp !== undefined) {
    const top = y
    y -= 2
    lines(stamp, 5, true, 3)
    const frame: Area = { min: [margin, y - 1], max: [margin + width, top] }
    entities.push(rectangle({ min: [frame.min[0] + 0.3, frame.min[1]], max: [frame.max[0] - 0.3, top - 0.3] }, 'bold'))
    y -= 4
  }
  lines(project.title === '' ? 'Full-size pages' : project.title, TITLE, true)
  y -= 1
  lines(`Full-size pages on ${paperWords(paperName)}.${correctionWords(setup)}`, LINE, false)
  lines(
    `${sheetWords(count.sheets, paperName)} to print beside this cover; a plain grid of pages would take ${count.grid}.${cutOnly(cover)}`,
    LINE,
    false,
  )
  return { entities, bottom: y }
}

function cutOnly({ panels }: Cover): string {
  const count = panels.filter(({ faces }) => faces.length === 0).length
  if (count === 0) return ''
  return count === 1 ? ' 1 panel is only cut.' : ` ${count} panels are only cut.`
}

function drawingOf(cover: Cover, sheet: Sheet, entities: readonly Entity[], page: number, pages: number): Drawing {
  const { setup, project } = cover
  const stretch = stretchOf(setup, setup.paper)
  const foot = footOf(project.title, `cover, ${page + 1} of ${pages}`, sheet, setup.margin)
  return {
    title: `cover, page ${page + 1}`,
    view: { min: [0, 0], max: [sheet.width, sheet.height] },
    ...(stretch !== undefined && { stretch }),
    layers: [{ name: 'NOTE', operation: 'note', entities: [...entities, ...foot] }],
  }
}

/** The project and the page, in the last line of a sheet; a title that is too long gives way. */
function footOf(title: string, page: string, sheet: Sheet, margin: number): Text[] {
  const y = margin + 0.8
  const right = sheet.width - margin
  const room = right - margin - textWidth(page, FOOT) - 6
  const [words = ''] = wrapped(title, room, FOOT)
  const number: Text = { kind: 'text', at: [right, y], height: FOOT, anchor: 'end', text: page }
  return words === '' ? [number] : [textAt(margin, y, FOOT, words, false), number]
}

function textAt(x: number, y: number, height: number, text: string, bold: boolean): Text {
  return { kind: 'text', at: [x, y], height, anchor: 'start', text, ...(bold && { bold }) }
}
