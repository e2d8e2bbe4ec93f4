import type { Panel } from '../../panel/index.ts'
import {
  type HardwarePlanner,
  hardwarePlanner,
  laidOnSheets,
  type Piece,
  type SheetSpec,
} from '../../templates/index.ts'
import type { Drawing } from '../types.ts'
import { drawingOf } from './face-pages.ts'
import { furnitureOf, reserveFor } from './furniture.ts'
import { drawHardware } from './hardware-piece.ts'
import { wordWays } from './hardware-words.ts'
import type { PageSetup } from './setup.ts'
import { type Sheet, sheetsOf } from './sheet.ts'
import { faceView } from './view.ts'

/** The last stage of a budget for a panel: pieces for one pattern each. `panels` are those of the module. */
export function hardwareStage(panel: Panel, setup: PageSetup, panels: readonly Panel[] = []): HardwarePlanner {
  return hardwarePlanner(panel, sheetSpec(setup), wordWays(setup.units), panels)
}

/** The sheet that cut-out pieces are laid on. */
export const sheetSpec = (setup: PageSetup): SheetSpec => ({
  paper: setup.paper,
  margin: setup.margin,
  reserve: reserveFor(setup),
})

/** All of a face marked with such pieces alone, a drawing for each sheet. */
export function hardwareDrawings(
  panel: Panel,
  face: 'A' | 'B',
  setup: PageSetup,
  panels: readonly Panel[] = [],
): Drawing[] {
  const { pieces } = hardwareStage(panel, setup, panels)(face, new Set())
  const pages = laidOnSheets(pieces, sheetSpec(setup), 0)
  const sheets = sheetsOf(faceView(panel, face), pages, setup.units)
  return [...new Set(pages.map(({ sheet }) => sheet))].map((number) =>
    sheetDrawing(
      sheets.filter(({ page }) => page.sheet === number),
      pages,
      setup,
    ),
  )
}

function sheetDrawing(sheets: readonly Sheet[], pages: readonly Piece[], setup: PageSetup): Drawing {
  const [first] = sheets
  if (first === undefined) throw new Error('a sheet without a piece')
  const drawn = sheets.flatMap((sheet) => {
    const piece = sheet.page.use?.hardware
    return piece === undefined ? [] : [{ ...drawHardware(sheet, piece), letters: [] }]
  })
  const { panel, face } = first.view
  const title = `${panel.moduleName}: ${panel.name}, face ${face}, sheet ${first.page.label}`
  const notes = drawn.map((one) => one.notes)
  return drawingOf(title, first.page.paper, setup, drawn, furnitureOf(first, pages, setup, notes))
}
