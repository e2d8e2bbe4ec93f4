import type { Units } from '../../length/index.ts'
import type { Panel, Run } from '../../panel/index.ts'
import type { PaperName } from '../../project/index.ts'
import { type Piece, printedPages, type Round } from '../../templates/index.ts'
import type { Drawing, Entity, Layer } from '../types.ts'
import { cutoutRoom, cutoutThings } from './cutout.ts'
import { TICK } from './edge-bores.ts'
import { furnitureOf, reserveFor, roomOn } from './furniture.ts'
import { holesOf } from './holes.ts'
import { notesOf, runsOn } from './notes.ts'
import { type PageSetup, type PrintSpec, setupOf, stretchOf } from './setup.ts'
import { type Sheet, sheetsOf } from './sheet.ts'
import { type EdgeBore, type FaceView, faceView } from './view.ts'
import { sketchOf } from './window.ts'

/** What neighbouring sheets show in common, mm; more where a bore would be cut. */
const OVERLAP = 14
/** Kept between a bore's rim and the end of the sheet that shows it whole, mm. */
const CLEAR = 3

/**
 * The full-size template of one face, a drawing for each sheet, in the order of taping. The view of each is the paper,
 * (0, 0) its lower left corner, mm; what lies in the window is at true size. Face B is drawn as seen from face B.
 * Sheets that would be blank are left out, see `printedPages`. `stamp` is a warning printed on every sheet. A paper's name
 * alone: with the usual margin, not corrected for a printer.
 */
export function pageDrawings(
  panel: Panel,
  face: 'A' | 'B',
  paper: PaperName | PrintSpec,
  units: Units,
  stamp?: string,
): Drawing[] {
  const setup = setupOf(paper, units, stamp)
  const view = faceView(panel, face)
  const pages = printedPages({ width: view.width, height: view.height }, setup.paper, thingsOf(view), {
    margin: setup.margin,
    overlap: OVERLAP,
    surround: Math.max(...Object.values(view.surround)),
    reserve: reserveFor(setup),
    keep: [
      ...holesOf(view).map(({ at, reach }) => ({ at, radius: reach + CLEAR })),
      ...view.cutouts.flatMap(cutoutRoom),
      ...ticksOf(view).map(({ at }) => ({ at, radius: TICK.outside + 1 })),
    ],
  })
  const runs = runsOn(view)
  const pieces = sheetsOf(view, pages, units)
  const sheets = [...new Set(pages.map(({ sheet }) => sheet))]
  return sheets.map((sheet) =>
    sheetDrawing(
      pieces.filter(({ page }) => page.sheet === sheet),
      pages,
      runs,
      setup,
    ),
  )
}

/** One sheet of paper with its pieces. */
function sheetDrawing(
  pieces: readonly Sheet[],
  pages: readonly Piece[],
  runs: readonly Run[],
  setup: PageSetup,
): Drawing {
  const [first] = pieces
  if (first === undefined) throw new Error('a sheet without a piece')
  const { panel, face } = first.view
  const { paper } = first.page
  const stretch = stretchOf(setup, paper)
  const drawn = pieces.map((piece) => {
    const sketch = sketchOf(piece)
    const notes = notesOf(piece, sketch, runs, roomOn(paper, setup))
    return { sketch, notes }
  })
  const furniture = furnitureOf(
    first,
    pages,
    setup,
    drawn.map(({ notes }) => notes),
  )
  const all = (entities: (one: (typeof drawn)[number]) => readonly Entity[]): Entity[] => drawn.flatMap(entities)
  return {
    title: `${panel.moduleName}: ${panel.name}, face ${face}, sheet ${first.page.label}`,
    view: { min: [0, 0], max: [paper.width, paper.height] },
    ...(stretch !== undefined && { stretch }),
    layers: inked([
      { name: 'EDGE', operation: 'mark', entities: all(({ sketch }) => sketch.edges) },
      { name: 'GROOVE', operation: 'mark', entities: all(({ sketch }) => sketch.grooves) },
      { name: 'CUTOUT', operation: 'mark', entities: all(({ sketch }) => sketch.cutouts) },
      { name: 'BORE', operation: 'bore', entities: all(({ sketch }) => sketch.bores) },
      { name: 'COUNTERSINK', operation: 'countersink', entities: all(({ sketch }) => sketch.countersinks) },
      { name: 'MARK', operation: 'mark', entities: all(({ sketch }) => sketch.marks) },
      { name: 'NOTE', operation: 'note', entities: all(({ notes }) => notes.entities) },
      { name: 'SHEET', operation: 'note', entities: furniture },
    ]),
  }
}

/** The bores at shoulders of rebates, which are ticked at the edge. */
function ticksOf({ edgeBores }: FaceView): readonly EdgeBore[] {
  return edgeBores.filter(({ onFlap }) => onFlap === undefined)
}

/** Bores, those in edges with them, the corners of grooves, and the contours of cutouts: what a sheet must show to be worth its paper. */
function thingsOf(view: FaceView): Round[] {
  const bores = holesOf(view).map(({ at, reach }) => ({ at, radius: reach }))
  const ticks = ticksOf(view).map(({ at }) => ({ at, radius: 0 }))
  const corners = view.grooves.flatMap(({ min, max }) =>
    [min, max, [min[0], max[1]] as const, [max[0], min[1]] as const].map((at) => ({ at, radius: 0 })),
  )
  return [...bores, ...ticks, ...corners, ...view.cutouts.flatMap(cutoutThings)]
}

const inked = (layers: readonly Layer[]): Layer[] => layers.filter((layer) => layer.entities.length > 0)
