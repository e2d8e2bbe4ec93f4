import type { PieceUse } from '../../templates/index.ts'
import { type Area, areaOfEntity } from '../areas.ts'
import type { Obstacle } from '../labels.ts'
import type { Entity, Point } from '../types.ts'
import type { DrawnPiece } from './face-pages.ts'
import { edgeNames, notesOf, runsOn } from './notes.ts'
import { type PieceText, setSayings } from './piece-text.ts'
import { seamLetters } from './seams.ts'
import { onSheet, type Sheet } from './sheet.ts'
import { drawCutLine, drawStripLines, wordRoom } from './strip-lines.ts'
import { secondFoldWords, stripSayings } from './strip-words.ts'
import { sketchOf } from './window.ts'

/** Room for a line of words beside a fold line, mm. */
const BESIDE = 7.5
const BESIDE_SIZES = [3.2, 2.6, 2.2, 1.9] as const

/** Words beside the second fold line: outside it like the name of an edge, else inside. */
function besideFold(sheet: Sheet, use: PieceUse, text: string | undefined, taken: readonly Obstacle[]): PieceText {
  const { secondFold } = use
  if (text === undefined || secondFold === undefined) return { entities: [], obstacles: [], left: [] }
  const { axis, at } = secondFold
  const point: Point = axis === 0 ? [at, 0] : [0, at]
  const line = onSheet(sheet, point)[axis]
  const out = at > use.origin[axis] ? 1 : -1
  const { window } = sheet
  const band = (side: number): Area => {
    const [low, high] = [Math.min(line, line + side * BESIDE), Math.max(line, line + side * BESIDE)]
    return axis === 0
      ? { min: [low, window.min[1] + 1], max: [high, window.max[1] - 1] }
      : { min: [window.min[0] + 1, low], max: [window.max[0] - 1, high] }
  }
  const sayings = [{ text, bold: true }]
  const outside = setSayings(sayings, band(out), axis === 0, taken, BESIDE_SIZES)
  return outside.left.length === 0 ? outside : setSayings(sayings, band(-out), axis === 0, taken, BESIDE_SIZES)
}

/** All that is drawn of one cut-out piece. */
export function drawPiece(sheet: Sheet, use: PieceUse): DrawnPiece {
  const sketch = sketchOf(sheet)
  drawCutLine(sketch, sheet)
  drawStripLines(sketch, sheet, use)
  const upright = use.along === 1
  const room = wordRoom(sheet)
  const runs = runsOn(sheet.view)
  // The figures of a strip's one run stand with its other words; of several, each points at its own holes.
  const [run, ...others] = runs
  const only = others.length === 0 ? run : undefined
  // What the lines are comes before all that can stand elsewhere: a strip is laid by them.
  const names = edgeNames(sheet, sketch.obstacles)
  const named: Obstacle[] = [...sketch.obstacles, ...names.obstacles]
  const fold = besideFold(sheet, use, secondFoldWords(sheet.view, use), named)
  const words = setSayings(stripSayings(sheet, use, only), room, upright, [...named, ...fold.obstacles])
  const obstacles: Obstacle[] = [...sketch.obstacles, ...fold.obstacles, ...words.obstacles]
  const notes = notesOf(sheet, { ...sketch, obstacles }, only === undefined ? runs : [], sheet.window, names)
  const tags = notes.tagged.map((text) => ({ text }))
  const meanings = setSayings(tags, room, upright, [...obstacles, ...takenBy(notes.entities)], BESIDE_SIZES)
  const left = [...words.left, ...fold.left, ...meanings.left].map(({ text }) => `${sheet.page.label} ${text}`)
  return {
    sketch,
    notes: {
      entities: [...words.entities, ...fold.entities, ...notes.entities, ...meanings.entities],
      tagged: left,
      left: notes.left,
    },
    letters: seamLetters(sheet),
  }
}

function takenBy(entities: readonly Entity[]): Obstacle[] {
  return entities.map((entity) => {
    if (entity.kind === 'line') return { kind: 'line', from: entity.from, to: entity.to }
    return { kind: 'area', area: areaOfEntity(entity) }
  })
}
