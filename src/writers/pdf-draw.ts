import type { Circle, ClosedPath, Drawing, Entity, Line, Pen, Point, Text } from '../drawing/index.ts'
import { arcOf, pointOn } from './arc.ts'
import { segmentsOf } from './check-drawing.ts'

/** Exactly 72 points to the inch of 25.4 mm (ISO 32000-1, 8.3.2.3). */
const PT_PER_MM = 72 / 25.4

/** Widths of lines, mm. None is 0, which printers draw as thin as they can, or not at all. */
export const PEN_MM: Readonly<Record<Pen, number>> = { hair: 0.1, thin: 0.2, bold: 0.6, dashed: 0.2 }
export const DASH_MM = { on: 2, off: 1.4 }

/** A length on paper, in points. */
export const points = (mm: number): number => mm * PT_PER_MM

/** From a drawing (mm, y up) to pdfkit's page (points, y down from the top); the only place that turns y over. */
export function onPage({ view }: Drawing): (p: Point) => [x: number, y: number] {
  return ([x, y]) => [points(x - view.min[0]), points(view.max[1] - y)]
}

/** pdfkit with its sticky state kept track of. */
export interface PenHolder {
  readonly document: PDFKit.PDFDocument
  reset(): void
  use(pen: Pen): void
}

export function penFor(document: PDFKit.PDFDocument): PenHolder {
  let current: Pen | undefined
  return {
    document,
    // A new page starts with pdfkit's own line width and no dashes.
    reset: () => {
      current = undefined
    },
    use: (pen) => {
      if (pen === current) return
      document.lineWidth(points(PEN_MM[pen]))
      if (pen === 'dashed') document.dash(points(DASH_MM.on), { space: points(DASH_MM.off) })
      else if (current === 'dashed') document.undash()
      current = pen
    },
  }
}

type ToPage = ReturnType<typeof onPage>

/** One line, circle, path or text, in the pen that it asks for. */
export function draw(pen: PenHolder, toPage: ToPage, entity: Entity): void {
  switch (entity.kind) {
    case 'line':
      drawLine(pen, toPage, entity)
      break
    case 'circle':
      drawCircle(pen, toPage, entity)
      break
    case 'path':
      drawPath(pen, toPage, entity)
      break
    case 'text':
      drawText(pen.document, toPage, entity)
      break
    default:
      entity satisfies never
  }
}

function drawLine(pen: PenHolder, toPage: ToPage, line: Line): void {
  pen.use(line.pen ?? 'thin')
  pen.document
    .moveTo(...toPage(line.from))
    .lineTo(...toPage(line.to))
    .stroke()
}

/** Four Bézier curves: a radius is off by 0.03 % at most, 0.005 mm on a cup of 35 mm. */
function drawCircle(pen: PenHolder, toPage: ToPage, circle: Circle): void {
  pen.use(circle.pen ?? 'thin')
  pen.document.circle(...toPage(circle.at), points(circle.radius)).stroke()
}

function drawPath(pen: PenHolder, toPage: ToPage, path: ClosedPath): void {
  const { document } = pen
  pen.use(path.pen ?? 'thin')
  segmentsOf(path).forEach(({ from, to, bulge }, index) => {
    if (index === 0) document.moveTo(...toPage(from))
    if (bulge === 0) document.lineTo(...toPage(to))
    else drawArc(document, toPage, from, to, bulge)
  })
  document.closePath()
  if (path.filled === true) document.fill()
  else document.stroke()
}

/** An arc in pieces of a quarter turn at most, each a Bézier curve with handles of 4/3 tan(sweep / 4) radii. */
function drawArc(document: PDFKit.PDFDocument, toPage: ToPage, from: Point, to: Point, bulge: number): void {
  const arc = arcOf(from, to, bulge)
  const count = Math.ceil(Math.abs(arc.sweep) / (Math.PI / 2))
  const handle = (4 / 3) * Math.tan(arc.sweep / count / 4)
  for (let piece = 0; piece < count; piece++) {
    const start = piece === 0 ? from : pointOn(arc, piece / count)
    const end = piece === count - 1 ? to : pointOn(arc, (piece + 1) / count)
    document.bezierCurveTo(
      ...toPage(besideRadius(start, arc.centre, handle)),
      ...toPage(besideRadius(end, arc.centre, -handle)),
      ...toPage(end),
    )
  }
}

/** A point of a circle, moved along its tangent (counter-clockwise) by a share of the radius. */
function besideRadius([x, y]: Point, [cx, cy]: Point, share: number): Point {
  return [x - (y - cy) * share, y + (x - cx) * share]
}

function drawText(document: PDFKit.PDFDocument, toPage: ToPage, text: Text): void {
  document.font(text.bold === true ? 'bold' : 'regular').fontSize(points(text.height))
  const words = covered(document, text.text)
  if (words === '') return
  const [x, y] = toPage(text.at)
  const width = text.anchor === 'start' ? 0 : document.widthOfString(words)
  const left = x - (text.anchor === 'middle' ? width / 2 : width)
  const turned = text.turnDeg === 90
  if (turned) document.save().rotate(-90, { origin: [x, y] })
  document.text(words, left, y, { lineBreak: false, baseline: 'alphabetic' })
  if (turned) document.restore()
}

/** What pdfkit keeps to itself of the font in use. */
interface CurrentFont {
  readonly _font: { readonly font: { hasGlyphForCodePoint(code: number): boolean } }
}

const FIRST_PRINTABLE = 32
const DELETE = 127
const LAST_CONTROL = 159

/** The text with `?` for each letter that the current font cannot show, control characters among them. */
function covered(document: PDFKit.PDFDocument, text: string): string {
  const { font } = (document as unknown as CurrentFont)._font
  return [...text]
    .map((letter) => {
      const code = letter.codePointAt(0) ?? 0
      const control = code < FIRST_PRINTABLE || (code >= DELETE && code <= LAST_CONTROL)
      return !control && font.hasGlyphForCodePoint(code) ? letter : '?'
    })
    .join('')
}
