import type { PieceUse } from '../../templates/index.ts'
import type { Obstacle } from '../labels.ts'
import type { DrawnPiece } from './face-pages.ts'
import { notesOf, runsOn } from './notes.ts'
import { setSayings } from './piece-text.ts'
import type { Sheet } from './sheet.ts'
import { drawCutLine, drawStripLines, wordRoom } from './strip-lines.ts'
import { secondFoldWords, stripSayings } from './strip-words.ts'
import { sketchOf } from './window.ts'

/** All that is drawn of one cut-out piece. */
export function drawPiece(sheet: Sheet, use: PieceUse): DrawnPiece {
  const sketch = sketchOf(sheet)
  drawCutLine(sketch, sheet)
  drawStripLines(sketch, sheet, use)
  const upright = use.along === 1
  const room = wordRoom(sheet)
  const second = secondFoldWords(sheet.view, use)
  const words = setSayings(stripSayings(sheet, use), room, upright, sketch.obstacles)
  const obstacles: Obstacle[] = [...sketch.obstacles, ...words.obstacles]
  const fold = setSayings(second === undefined ? [] : [{ text: second, bold: true }], room, upright, obstacles)
  const notes = notesOf(sheet, { ...sketch, obstacles: [...obstacles, ...fold.obstacles] }, runsOn(sheet.view))
  const { label } = sheet.page
  return {
    sketch,
    notes: {
      entities: [...words.entities, ...fold.entities, ...notes.entities],
      tagged: [...words.left.map(({ text }) => `${label}: ${text}`), ...notes.tagged.map((tag) => `${label} ${tag}`)],
      left: notes.left + fold.left.length,
    },
  }
}
