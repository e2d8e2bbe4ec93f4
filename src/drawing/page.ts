import type { Units } from '../length/index.ts'
import type { Panel } from '../panel/index.ts'
import type { PaperName } from '../project/index.ts'
import { printedPages, type Round } from '../templates/index.ts'
import { cutoutRoom, cutoutThings } from './page-cutout.ts'
import { furnitureOf, reserveFor } from './page-furniture.ts'
import { notesOf, runsOn } from './page-notes.ts'
import { type PrintSpec, setupOf, stretchOf } from './page-setup.ts'
import { sheetsOf } from './page-sheet.ts'
import { type FaceView, faceView } from './page-view.ts'
import { sketchOf, TICK } from './page-window.ts'
import type { Drawing, Layer } from './types.ts'

/** What neighbouring sheets show in common, mm; more where a bore would be cut. */
const OVERLAP = 14
/** Shown beyond the panel's edges, mm: room for the edge's name and for the fold. */
const SURROUND = 8
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
    surround: SURROUND,
    reserve: reserveFor(stamp),
    keep: [
      ...view.bores.map(({ at, reach }) => ({ at, radius: reach + CLEAR })),
      ...view.cutouts.flatMap(cutoutRoom),
      ...view.edgeBores.map(({ at }) => ({ at, radius: TICK.outside + 1 })),
    ],
  })
  const runs = runsOn(view)
  return sheetsOf(view, pages, units).map((sheet) => {
    const sketch = sketchOf(sheet)
    const notes = notesOf(sheet, sketch, runs)
    const furniture = furnitureOf(sheet, pages, setup, notes)
    const stretch = stretchOf(setup, sheet.page.paper)
    return {
      title: `${panel.moduleName}: ${panel.name}, face ${face}, sheet ${sheet.page.label}`,
      view: { min: [0, 0], max: [sheet.page.paper.width, sheet.page.paper.height] },
      ...(stretch !== undefined && { stretch }),
      layers: inked([
        { name: 'EDGE', operation: 'mark', entities: sketch.edges },
        { name: 'GROOVE', operation: 'mark', entities: sketch.grooves },
        { name: 'CUTOUT', operation: 'mark', entities: sketch.cutouts },
        { name: 'BORE', operation: 'bore', entities: sketch.bores },
        { name: 'COUNTERSINK', operation: 'countersink', entities: sketch.countersinks },
        { name: 'MARK', operation: 'mark', entities: sketch.marks },
        { name: 'NOTE', operation: 'note', entities: notes.entities },
        { name: 'SHEET', operation: 'note', entities: furniture },
      ]),
    }
  })
}

/** Bores, the corners of grooves, and the contours of cutouts: what a sheet must show to be worth its paper. */
function thingsOf(view: FaceView): Round[] {
  const bores = view.bores.map(({ at, reach }) => ({ at, radius: reach }))
  const corners = view.grooves.flatMap(({ min, max }) =>
    [min, max, [min[0], max[1]] as const, [max[0], min[1]] as const].map((at) => ({ at, radius: 0 })),
  )
  return [...bores, ...corners, ...view.cutouts.flatMap(cutoutThings)]
}

const inked = (layers: readonly Layer[]): Layer[] => layers.filter((layer) => layer.entities.length > 0)
