import { NOISE_MM } from '../../geometry/index.ts'
import type { Units } from '../../length/index.ts'
import type { Panel, Run } from '../../panel/index.ts'
import type { PaperName } from '../../project/index.ts'
import { type Face, type FacePlan, type Piece, planWhole, type Round } from '../../templates/index.ts'
import type { Drawing, Entity, Layer } from '../types.ts'
import { cutoutRoom, cutoutThings } from './cutout.ts'
import { TICK } from './edge-bores.ts'
import { furnitureOf, reserveFor } from './furniture.ts'
import { notesOf, runsOn } from './notes.ts'
import { seamLetters } from './seams.ts'
import { type PageSetup, type PrintSpec, setupOf, stretchOf } from './setup.ts'
import { type Sheet, sheetsOf } from './sheet.ts'
import { datumPoint, type FaceGroove, type FaceView, faceView } from './view.ts'
import { sketchOf } from './window.ts'

/** What taped sheets show in common, mm. */
const OVERLAP = 14
/** Shown beyond the panel's edges, mm: room for the edge's name and for the fold. */
const SURROUND = 8
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
  const { pieces: pages } = planOf(view, setup)
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

/** The sheets that `pageDrawings` draws, how many a plain grid would take, and how many are needed at least. */
export function pagePlan(panel: Panel, face: 'A' | 'B', paper: PaperName | PrintSpec, stamp?: string): FacePlan {
  return planOf(faceView(panel, face), setupOf(paper, 'mm', stamp))
}

function planOf(view: FaceView, { paper, margin, stamp }: PageSetup): FacePlan {
  return planWhole(toShow(view), paper, { margin, overlap: OVERLAP, reserve: reserveFor(stamp) })
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
    const notes = notesOf(piece, sketch, runs)
    return { sketch, notes, letters: seamLetters(piece) }
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
      { name: 'NOTE', operation: 'note', entities: all(({ notes, letters }) => [...notes.entities, ...letters]) },
      { name: 'SHEET', operation: 'note', entities: furniture },
    ]),
  }
}

/** The face as far as choosing its sheets goes. */
function toShow(view: FaceView): Face {
  const { width, height } = view
  const surround = { x0: SURROUND, x1: SURROUND, y0: SURROUND, y1: SURROUND }
  return { width, height, surround, things: thingsOf(view) }
}

/** Bores, those in edges with them, the corners of grooves, and cutouts: what a sheet must show to be worth its paper. */
function thingsOf(view: FaceView): Round[] {
  const bores = view.bores.map(({ at, reach }) => ({ at, radius: reach + CLEAR }))
  const ticks = view.edgeBores.map(({ at }) => ({ at, radius: TICK.outside + 1 }))
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
