import { NOISE_MM } from '../../geometry/index.ts'
import type { Units } from '../../length/index.ts'
import type { Panel, Run } from '../../panel/index.ts'
import type { PaperName } from '../../project/index.ts'
import { type Face, type FacePlan, type Piece, planWhole, type Round, type Size } from '../../templates/index.ts'
import type { Drawing, Entity, Layer } from '../types.ts'
import { cutoutRoom, cutoutThings } from './cutout.ts'
import { TICK } from './edge-bores.ts'
import { furnitureOf, reserveFor, roomOn } from './furniture.ts'
import { holesOf } from './holes.ts'
import { type Notes, notesOf, runsOn } from './notes.ts'
import { seamLetters } from './seams.ts'
import { type PageSetup, type PrintSpec, setupOf, stretchOf } from './setup.ts'
import { type Sheet, sheetsOf } from './sheet.ts'
import { datumPoint, type FaceGroove, type FaceView, faceView } from './view.ts'
import { type Sketch, sketchOf } from './window.ts'

/** Kept between a bore's rim and the end of the sheet that shows it whole, mm. */
const CLEAR = 3

/**
 * The full-size template of one face, a drawing for each sheet, in the order of taping. The view of each is the paper,
 * (0, 0) its lower left corner, mm; what lies in the window is at true size. Face B is drawn as seen from face B.
 * Sheets that would be blank are left out, see `planWhole`. `stamp` is a warning printed on every sheet. A paper's name
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
  return facePages(view, planFace(view, setup).pieces, setup)
}

/** The fewest pages of the whole face that show all that is on it. */
export function planFace(view: FaceView, setup: PageSetup): FacePlan {
  return planWhole(toShow(view), setup.paper, {
    margin: setup.margin,
    overlap: overlapFor(setup),
    reserve: reserveFor(setup),
  })
}

/** What taped pages show in common: at most a quarter of what the smallest of them shows, or too little is left between seams. */
function overlapFor(setup: PageSetup): number {
  const { left, bottom } = reserveFor(setup)
  const short = Math.min(setup.paper.width, setup.paper.height) - 2 * setup.margin
  return Math.min(setup.overlap, (short - Math.max(left, bottom)) / 4)
}

/** A drawing for each sheet of pages of the whole face; `more`: pieces that are cut out, for the map and the count of sheets. */
export function facePages(
  view: FaceView,
  pages: readonly Piece[],
  setup: PageSetup,
  more: readonly Piece[] = [],
): Drawing[] {
  const runs = runsOn(view)
  const pieces = sheetsOf(view, pages, setup.units)
  const sheets = [...new Set(pages.map(({ sheet }) => sheet))]
  return sheets.map((sheet) =>
    sheetDrawing(
      pieces.filter(({ page }) => page.sheet === sheet),
      [...pages, ...more],
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
  const drawn = pieces.map((piece) => {
    const sketch = sketchOf(piece)
    const notes = notesOf(piece, sketch, runs, roomOn(first.page.paper, setup))
    return { sketch, notes, letters: seamLetters(piece) }
  })
  const notes = drawn.map((one) => one.notes)
  const title = `${panel.moduleName}: ${panel.name}, face ${face}, sheet ${first.page.label}`
  return drawingOf(title, first.page.paper, setup, drawn, furnitureOf(first, pages, setup, notes))
}

/** What is drawn of one piece: the panel at true size, and the words. */
export interface DrawnPiece {
  readonly sketch: Sketch
  readonly notes: Notes
  /** Those of its registration marks. */
  readonly letters: readonly Entity[]
}

/** A sheet of paper with all that is drawn on it, in its layers. */
export function drawingOf(
  title: string,
  paper: Size,
  setup: PageSetup,
  drawn: readonly DrawnPiece[],
  furniture: readonly Entity[],
): Drawing {
  const stretch = stretchOf(setup, paper)
  const all = (entities: (one: DrawnPiece) => readonly Entity[]): Entity[] => drawn.flatMap(entities)
  return {
    title,
    view: { min: [0, 0], max: [paper.width, paper.height] },
    ...(stretch !== undefined && { stretch }),
    layers: inked([
      { name: 'EDGE', operation: 'mark', entities: all(({ sketch }) => sketch.edges) },
      { name: 'GROOVE', operation: 'mark', entities: all(({ sketch }) => sketch.grooves) },
      { name: 'CUTOUT', operation: 'mark', entities: all(({ sketch }) => sketch.cutouts) },
      { name: 'BORE', operation: 'bore', entities: all(({ sketch }) => sketch.bores) },
      { name: 'COUNTERSINK', operation: 'countersink', entities: all(({ sketch }) => sketch.countersinks) },
      { name: 'MARK', operation: 'mark', entities: all(({ sketch }) => sketch.marks) },
      { name: 'NOTE', operation: 'note', entities: all(({ notes, letters }) => [...notes.entities, ...letters]) },
      { name: 'SHEET', operation: 'note', entities: furniture },
    ]),
  }
}

/** The face as far as choosing its sheets goes. */
function toShow(view: FaceView): Face {
  const { width, height, surround } = view
  return { width, height, surround, things: thingsOf(view) }
}

/** Bores, those in edges with them, the corners of grooves, and cutouts: what a sheet must show to be worth its paper. */
function thingsOf(view: FaceView): Round[] {
  const bores = holesOf(view).map(({ at, reach }) => ({ at, radius: reach + CLEAR }))
  // Bores at shoulders of rebates are ticked at the edge.
  const ticked = view.edgeBores.filter(({ onFlap }) => onFlap === undefined)
  const ticks = ticked.map(({ at }) => ({ at, radius: TICK.outside + 1 }))
  const cutouts = view.cutouts.flatMap((item) => [...cutoutRoom(item), ...cutoutThings(item)])
  return [...bores, ...ticks, ...view.grooves.flatMap((groove) => grooveThings(view, groove)), ...cutouts]
}

/** A groove this near to the edge that it runs along is set by a fence from that edge, mm. */
const FENCE = 150

/**
 * The corners of a groove, which say where it ends. Of one that runs through from edge to edge, and is cut along a fence,
 * those at the end nearer to the corner that is measured from: there its distance from the edge can be taken.
 */
function grooveThings(view: FaceView, { min, max }: FaceGroove): Round[] {
  const size = [view.width, view.height] as const
  const along = max[0] - min[0] >= max[1] - min[1] ? 0 : 1
  const across = along === 0 ? 1 : 0
  const through = min[along] <= NOISE_MM && max[along] >= size[along] - NOISE_MM
  const fenced = Math.min(max[across], size[across] - min[across]) <= FENCE
  const ends = through && fenced ? [datumPoint(view)[along] === 0 ? min : max] : [min, max]
  return ends.flatMap((end) =>
    [min[across], max[across]].map((at): Round => {
      const corner = along === 0 ? ([end[0], at] as const) : ([at, end[1]] as const)
      return { at: corner, radius: 0 }
    }),
  )
}

const inked = (layers: readonly Layer[]): Layer[] => layers.filter((layer) => layer.entities.length > 0)
