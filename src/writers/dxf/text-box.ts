import { type Point, TEXT_ASCENT, TEXT_DESCENT, textWidth } from '../../drawing/index.ts'

/** Height of a capital over the font size: 1493 of 2048 units in DejaVu Sans; DXF text is sized by its capitals. */
export const CAPITAL_SHARE = 0.729

/** A TEXT as the file has it: lengths in the file's unit, `height` of a capital. */
export interface FileText {
  readonly at: Point
  readonly height: number
  readonly turnDeg: number
  readonly anchor: 'start' | 'middle' | 'end'
  readonly text: string
}

/**
 * The corners of the room that a text takes. The font is the reader's own choice, so the text is reckoned at the wider
 * of bold DejaVu Sans and of letters that are all as wide as a capital is high, as those of the plain stroke font that
 * DXF files name (`txt`) are, from memory.
 */
export function textCorners({ at, height, turnDeg, anchor, text }: FileText): Point[] {
  const size = height / CAPITAL_SHARE
  const width = Math.max(textWidth(text, size, true), height * text.length)
  const start = anchor === 'start' ? 0 : anchor === 'middle' ? -width / 2 : -width
  const [sin, cos] = [Math.sin((turnDeg * Math.PI) / 180), Math.cos((turnDeg * Math.PI) / 180)]
  return [start, start + width].flatMap((x) =>
    [-TEXT_DESCENT * size, TEXT_ASCENT * size].map(
      (y): Point => [at[0] + x * cos - y * sin, at[1] + x * sin + y * cos],
    ),
  )
}
