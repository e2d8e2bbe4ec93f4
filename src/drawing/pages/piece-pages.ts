import type { Units } from '../../length/index.ts'
import type { Panel } from '../../panel/index.ts'
import type { PaperName } from '../../project/index.ts'
import {
  cutOuts,
  type FacePlan,
  type PanelPlan,
  type Piece,
  type PlannedFace,
  planBudget,
} from '../../templates/index.ts'
import { type Area, grown } from '../areas.ts'
import type { Obstacle } from '../labels.ts'
import type { Circle, Drawing, Entity } from '../types.ts'
import { type DrawnPiece, drawingOf, facePages, planFace } from './face-pages.ts'
import { furnitureOf, reserveFor, roomOn } from './furniture.ts'
import { hardwareStage } from './hardware-pages.ts'
import { drawHardware } from './hardware-piece.ts'
import { drawPiece } from './piece-sheet.ts'
import { setSayings } from './piece-text.ts'
import { type PageSetup, type PrintSpec, setupOf } from './setup.ts'
import { sheetsOf } from './sheet.ts'
import { type FaceView, faceView } from './view.ts'

/** How the full-size pages of a panel are asked for. */
export interface PanelPrint {
  /** A paper's name alone: with the usual margin, not corrected for a printer. */
  readonly print: PaperName | (PrintSpec & { readonly pageBudget?: number })
  readonly units: Units
  /** A warning printed on every sheet. */
  readonly stamp?: string
  /** The panels of the module: a strip may serve the panel of the other hand. */
  readonly others?: readonly Panel[]
}

export interface PanelPages {
  readonly plan: PanelPlan
  /** A drawing for each sheet of paper: those of face A, then those of face B. */
  readonly drawings: readonly Drawing[]
}

/**
 * All full-size pages of a panel: pages of the whole of each of its `faces`; where a budget is set that these would exceed, strips,
 * repeated strips and pieces for one pattern, see `planBudget`.
 */
export function panelPages(panel: Panel, faces: readonly ('A' | 'B')[], asked: PanelPrint): PanelPages {
  const setup = setupOf(asked.print, asked.units, asked.stamp)
  const budget = typeof asked.print === 'string' ? undefined : asked.print.pageBudget
  const views = new Map(faces.map((face) => [face, faceView(panel, face)]))
  const viewOf = (face: 'A' | 'B'): FaceView => views.get(face) ?? faceView(panel, face)
  const plan = planBudget(
    panel,
    faces.map((face) => ({ face, whole: (marked) => wholePages(without(viewOf(face), marked), setup) })),
    {
      sheet: { paper: setup.paper, margin: setup.margin, reserve: reserveFor(setup) },
      ...(budget !== undefined && { budget }),
      ...(asked.others !== undefined && { others: asked.others }),
      hardware: hardwareStage(panel, setup, asked.others),
    },
  )
  return { plan, drawings: plan.faces.flatMap((planned) => faceDrawings(viewOf(planned.face), planned, setup)) }
}

/** Pages of the whole face for what cut-out pieces have left; none where they have left nothing. */
function wholePages(view: FaceView, setup: PageSetup): FacePlan {
  const left = view.bores.length + view.edgeBores.length + view.grooves.length + view.cutouts.length
  return left > 0 ? planFace(view, setup) : { pieces: [], sheets: 0, grid: 0, least: 0 }
}

function faceDrawings(view: FaceView, { plan, marked }: PlannedFace, setup: PageSetup): Drawing[] {
  const { loose, whole } = cutOuts(plan.pieces)
  const sheets = [...new Set(loose.map(({ sheet }) => sheet))]
  return [
    ...facePages(without(view, marked), whole, setup, asSheets(loose)),
    ...sheets.map((sheet) => cutOutSheet(view, plan.pieces, sheet, setup)),
  ]
}

/** A sheet of cut-out pieces. */
export function cutOutSheet(view: FaceView, pieces: readonly Piece[], number: number, setup: PageSetup): Drawing {
  const { loose, whole } = cutOuts(pieces)
  // Pieces that are taped together have one use.
  const uses = [...new Set(loose.map(({ use }) => use))]
  const here = uses.flatMap((use) => {
    if (use === undefined) return []
    const strip = loose.filter((piece) => piece.use === use)
    const sheets = sheetsOf(showing(view, use), strip, setup.units)
    return sheets.filter(({ page }) => page.sheet === number).map((sheet) => ({ sheet, use }))
  })
  const [first] = here
  if (first === undefined) throw new Error('a sheet without a piece')
  const drawn = namedOnce(
    here.map(({ sheet, use }) =>
      use.hardware === undefined ? drawPiece(sheet, use) : drawHardware(sheet, use.hardware),
    ),
  )
  const label = sheetLabel(loose, number)
  const own = { ...first.sheet, view, page: { ...first.sheet.page, label } }
  const pages = [...whole, ...asSheets(loose)]
  const { paper } = first.sheet.page
  const beside = besidePieces(
    here.map(({ sheet }) => sheet.window),
    drawn.flatMap(({ notes }) => notes.tagged),
    roomOn(paper, setup),
  )
  const notes = [{ entities: [], tagged: beside.left, left: drawn.reduce((sum, one) => sum + one.notes.left, 0) }]
  const furniture = [...furnitureOf(own, pages, setup, notes), ...beside.entities]
  const title = `${view.panel.moduleName}: ${view.panel.name}, face ${view.face}, sheet ${label}`
  return drawingOf(title, paper, setup, drawn, furniture)
}

/** From the frames of pieces to words beside them, mm, and the sizes of those, the best first, and most lines, for a narrow blank strip. */
const BESIDE = { off: 1.5, sizes: [2.8, 2.4, 2.1], lines: 14 } as const

/** Words for which a piece has no room stand beside the pieces, where the sheet is blank. */
function besidePieces(
  pieces: readonly Area[],
  words: readonly string[],
  room: Area,
): { entities: readonly Entity[]; left: string[] } {
  const taken = pieces.map((window): Obstacle => ({ kind: 'area', area: grown(window, BESIDE.off) }))
  const { entities, left } = setSayings(
    words.map((text) => ({ text })),
    room,
    false,
    taken,
    BESIDE.sizes,
    BESIDE.lines,
  )
  return { entities, left: left.map(({ text }) => text) }
}

/** A sheet is named for the first of its pieces: `S1+`. */
function sheetLabel(loose: readonly Piece[], number: number): string {
  const [first, ...others] = loose.filter(({ sheet }) => sheet === number)
  if (first === undefined) throw new Error('a sheet without a piece')
  return others.length === 0 ? first.label : `${first.label}+`
}

/** The pieces under the names of their sheets, for the map. */
const asSheets = (loose: readonly Piece[]): Piece[] =>
  loose.map((piece) => ({ ...piece, label: sheetLabel(loose, piece.sheet) }))

/** Of a hole that two pieces of a sheet show, one circle has its name: names are unique in a drawing. */
function namedOnce(drawn: readonly DrawnPiece[]): DrawnPiece[] {
  const seen = new Set<string>()
  const once = (circles: readonly Circle[]): Circle[] =>
    circles.map((circle) => {
      const { id, ...nameless } = circle
      if (id === undefined || !seen.has(id)) {
        if (id !== undefined) seen.add(id)
        return circle
      }
      return nameless
    })
  return drawn.map(({ sketch, ...words }) => ({
    sketch: { ...sketch, bores: once(sketch.bores), countersinks: once(sketch.countersinks) },
    ...words,
  }))
}

/** A face without what is marked by cut-out pieces. */
function without(view: FaceView, marked: ReadonlySet<string>): FaceView {
  if (marked.size === 0) return view
  return only(view, (id) => !marked.has(id))
}

/** A face with what one piece marks. */
function showing(view: FaceView, { bores, cuts }: { bores: readonly string[]; cuts: readonly string[] }): FaceView {
  const shown = new Set([...bores, ...cuts])
  return only(view, (id) => shown.has(id))
}

function only(view: FaceView, isShown: (id: string) => boolean): FaceView {
  return {
    ...view,
    bores: view.bores.filter(({ bore }) => isShown(bore.id)),
    edgeBores: view.edgeBores.filter(({ bore }) => isShown(bore.id)),
    grooves: view.grooves.filter(({ groove }) => isShown(groove.id)),
    cutouts: view.cutouts.filter(({ cutout }) => isShown(cutout.id)),
  }
}
