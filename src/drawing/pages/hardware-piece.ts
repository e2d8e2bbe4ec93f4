import type { HardwarePiece, PatternHole, PieceEdge, PieceFold } from '../../templates/index.ts'
import type { Point } from '../types.ts'
import type { DrawnPiece } from './face-pages.ts'
import { hardwareNotes } from './hardware-notes.ts'
import { across, type Sheeted } from './hardware-sheet.ts'
import { CROSS_ARM, drawHole } from './holes.ts'
import type { Sheet } from './sheet.ts'
import { arrowHead, chordsOf, rectangle, strokeIn } from './strokes.ts'
import type { Sketch } from './window.ts'

/** A centre line keeps so far from the centre of a hole, where an awl must find the dot, mm. */
const CLEAR = 0.8
const LEAN_ARROW = 14

/** A cut-out piece with its lines, holes and words, at true size on its sheet. */
export function drawHardware(sheet: Sheet, piece: HardwarePiece): DrawnPiece {
  const { page } = sheet
  const on = ([x, y]: Point): Point => [x - piece.paper.min[0] + page.at[0], y - piece.paper.min[1] + page.at[1]]
  const sketch: Sketch = { edges: [], bores: [], countersinks: [], grooves: [], cutouts: [], marks: [], obstacles: [] }
  const drawn: Sheeted = {
    piece,
    sheet,
    label: page.label,
    on,
    paper: { min: on(piece.paper.min), max: on(piece.paper.max) },
    sketch,
  }
  sketch.marks.push(rectangle(drawn.paper, 'thin'))
  for (const fold of piece.folds) drawFold(drawn, fold)
  cutAway(drawn)
  for (const line of piece.lines) drawLine(drawn, line)
  for (const hole of piece.pattern.holes) drawMark(drawn, hole)
  for (const cut of piece.pattern.cuts) drawCut(drawn, cut)
  return { sketch, notes: hardwareNotes(drawn), letters: [] }
}

function drawFold(drawn: Sheeted, { side, mm, needed, shoulder }: PieceFold): void {
  const { sketch, piece, paper } = drawn
  const [from, to] = across(drawn, side, mm)
  sketch.edges.push({ kind: 'line', from, to, pen: 'bold' })
  sketch.obstacles.push({ kind: 'line', from, to })
  if (!needed || shoulder) return
  // The far arris of the edge that the holes are in.
  const [low, high] = across(drawn, side, mm + piece.panel.thickness)
  sketch.marks.push(...strokeIn(paper, low, high, 'thin'))
  sketch.obstacles.push({ kind: 'line', from: low, to: high, open: true })
}

/** Paper that would be doubled where two folds meet: crossed out, to be cut away. */
function cutAway({ piece, on, sketch }: Sheeted): void {
  const { folds, paper } = piece
  const span = (side: PieceEdge): readonly [number, number] | undefined => {
    const fold = folds.find((one) => one.side === side)
    if (fold === undefined) return undefined
    const axis = side === 'x0' || side === 'x1' ? 0 : 1
    return side === 'x0' || side === 'y0' ? [paper.min[axis], 0 - fold.mm] : [fold.mm, paper.max[axis]]
  }
  for (const side of ['x0', 'x1'] as const)
    for (const other of ['y0', 'y1'] as const) {
      const [x, y] = [span(side), span(other)]
      if (x === undefined || y === undefined) continue
      const [a, b, c, d] = [on([x[0], y[0]]), on([x[1], y[1]]), on([x[0], y[1]]), on([x[1], y[0]])]
      sketch.marks.push({ kind: 'line', from: a, to: b, pen: 'hair' }, { kind: 'line', from: c, to: d, pen: 'hair' })
      sketch.obstacles.push({ kind: 'area', area: { min: a, max: b } })
    }
}

/** From end to end of the paper, but not through the centre of a hole. */
function drawLine({ piece, on, sketch }: Sheeted, line: 0 | 1): void {
  const off = line === 0 ? 1 : 0
  const { min, max } = piece.paper
  const gaps = piece.pattern.holes
    .filter(({ at }) => Math.abs(at[off]) < CLEAR)
    .map(({ at }) => at[line])
    .sort((a, b) => a - b)
  const at = (along: number): Point => on(line === 0 ? [along, 0] : [0, along])
  let from = min[line]
  for (const gap of [...gaps, Number.POSITIVE_INFINITY]) {
    const to = Math.min(gap - CLEAR, max[line])
    if (to > from) sketch.marks.push({ kind: 'line', from: at(from), to: at(to), pen: 'hair' })
    from = gap + CLEAR
  }
  sketch.obstacles.push({ kind: 'line', from: at(min[line]), to: at(max[line]), open: true })
}

function drawMark(drawn: Sheeted, { at, radius, bore, lean }: PatternHole): void {
  const { sketch, sheet, piece, on, paper } = drawn
  const [{ at: first }] = piece.places
  drawHole(sketch, sheet, { bore, at: [at[0] + first[0], at[1] + first[1]], reach: radius, round: lean === undefined })
  if (lean === undefined) return
  const away = (by: number): Point => on([at[0] + lean[0] * by, at[1] + lean[1] * by])
  const [start, tip] = [away(radius), away(radius + CROSS_ARM + LEAN_ARROW)]
  sketch.marks.push(...strokeIn(paper, start, tip, 'thin'), arrowHead(tip, lean))
  sketch.obstacles.push({ kind: 'line', from: start, to: tip, open: true })
}

function drawCut({ sketch, on }: Sheeted, { curves, kind }: HardwarePiece['pattern']['cuts'][number]): void {
  for (const { from, to, bulge } of curves) {
    // The chord back from its end to its start is not part of the rim.
    const points =
      bulge === 0
        ? [from]
        : chordsOf([
            { at: from, bulge },
            { at: to, bulge: 0 },
          ]).slice(0, -1)
    const places = [...points, to].map(on)
    places.slice(1).forEach((end, k) => {
      const start = places[k] ?? end
      sketch[kind === 'groove' ? 'grooves' : 'cutouts'].push({ kind: 'line', from: start, to: end, pen: 'thin' })
      sketch.obstacles.push({ kind: 'line', from: start, to: end, open: true })
    })
  }
}
