import PDFDocument from 'pdfkit'
import { toBytes } from 'pdfkit/output'
import type { Circle, ClosedPath, Drawing, Entity, Line, Pen, Point, Text } from '../drawing/index.ts'
import { arcOf, pointOn } from './arc.ts'
import { checkDrawing, segmentsOf } from './check-drawing.ts'

export interface PdfInfo {
  readonly title: string
  readonly subject: string
  /** Of what the pages were drawn from: differs where they differ, so that two files never share an ID. */
  readonly fingerprint: string
}

/** TrueType fonts whose letters are embedded, each once a document. */
export interface PdfFonts {
  readonly regular: Uint8Array
  readonly bold: Uint8Array
}

/** Exactly 72 points to the inch of 25.4 mm (ISO 32000-1, 8.3.2.3). */
const PT_PER_MM = 72 / 25.4

/** Widths of lines, mm. None is 0, which printers draw as thin as they can, or not at all. */
const PEN_MM: Readonly<Record<Pen, number>> = { hair: 0.1, thin: 0.2, bold: 0.6, dashed: 0.2 }
const DASH_MM = { on: 2, off: 1.4 }

/** A fixed date: the same pages give the same bytes whenever they are made. */
const DATE = new Date(Date.UTC(2000, 0, 1))

/** What pdfkit keeps to itself and has no method for. */
interface Inside {
  readonly _root: {
    readonly data: { ViewerPreferences?: unknown; readonly Pages: { readonly data: { Kids: unknown[] } } }
  }
  readonly _font: { readonly font: ReadFont }
}

/** A font file, read; opaque but for this. */
interface ReadFont {
  hasGlyphForCodePoint(code: number): boolean
}

/**
 * Drawings as the pages of one PDF, at true size: a page is as large as its drawing's view, stretched where it says so. The file asks to be printed
 * without scaling. Letters that the font lacks become `?`. Uncompressed, because compressed bytes differ between
 * Node and browsers. Throws when there is no page, or a drawing breaks the promises of its types.
 */
export async function pdfOf(pages: readonly Drawing[], info: PdfInfo, fonts: PdfFonts | PdfBook): Promise<Uint8Array> {
  for (const page of pages) checkDrawing(page)
  const book = openPdf(info, fonts)
  for (const page of pages) book.add(page)
  return book.finish()
}

/** Names of a bookmark and of those that it stands under, the outermost first. */
export type Bookmark = readonly [string, ...string[]]

/** A page that comes before those that were added. */
export interface FrontPage {
  readonly page: Drawing
  readonly bookmark?: Bookmark
}

/** A PDF that is written page by page, so that no drawing need be kept until all are made. */
export interface PdfBook {
  /** Pages with a bookmark can be chosen in a reader's list of contents. */
  readonly add: (page: Drawing, bookmark?: Bookmark) => void
  /** The bytes, with some pages set before all others. Nothing can be added after. */
  readonly finish: (front?: readonly FrontPage[]) => Promise<Uint8Array>
  /** The fonts as they were read. To read them takes longer than to write a page, so other files may use them, too. */
  readonly read: ReadFonts
}

interface ReadFonts {
  readonly regular: ReadFont
  readonly bold: ReadFont
}

/** The same as `pdfOf`, for pages that come one by one. Fonts as files, or those of another book. */
export function openPdf(info: PdfInfo, fonts: PdfFonts | PdfBook): PdfBook {
  const document = newDocument(info)
  const read = readFonts(document, fonts)
  const bytes = toBytes(document)
  const pen = penFor(document)
  const marks: (Bookmark | undefined)[] = []
  const add: PdfBook['add'] = (page, bookmark) => {
    checkDrawing(page)
    drawPage(pen, page)
    marks.push(bookmark)
  }
  return {
    add,
    read,
    finish: (front = []) => {
      const before = marks.length
      for (const { page, bookmark } of front) add(page, bookmark)
      if (marks.length === 0) throw new Error(`a PDF without pages was asked for: ${info.title}`)
      moveToFront(inside(document)._root.data.Pages.data.Kids, before)
      moveToFront(marks, before)
      addBookmarks(document, marks)
      document.end()
      return bytes
    },
  }
}

/** What stands from `before` on comes first. */
function moveToFront(list: unknown[], before: number): void {
  list.unshift(...list.splice(before))
}

/** Each page its own; what they stand under is made at the first of its pages. */
function addBookmarks(document: PDFKit.PDFDocument, marks: readonly (Bookmark | undefined)[]): void {
  const groups = new Map<string, PDFKit.PDFOutline>()
  marks.forEach((mark, pageNumber) => {
    if (mark === undefined) return
    let under = document.outline
    mark.forEach((name, depth) => {
      const key = depth === mark.length - 1 ? undefined : JSON.stringify(mark.slice(0, depth + 1))
      const known = key === undefined ? undefined : groups.get(key)
      under = known ?? under.addItem(name, atPage(pageNumber))
      if (key !== undefined) groups.set(key, under)
    })
  })
}

/** The whole page, by its place in the file; lists below are shut. pdfkit's types know only the last of the three. */
const atPage = (pageNumber: number): { expanded: boolean } => {
  const options = { pageNumber, fit: true, expanded: false }
  return options
}

function drawPage(pen: PenHolder, page: Drawing): void {
  const { document } = pen
  const { min, max } = page.view
  const [x, y] = page.stretch ?? [1, 1]
  document.addPage({ size: [points(max[0] - min[0]) * x, points(max[1] - min[1]) * y], margin: 0 })
  // Readers differ in how they take it, and a unit of 1 says nothing.
  delete (document.page.dictionary as unknown as PageDictionary).data.UserUnit
  // The one place where pages are corrected for a printer: all of them, rulers and strokes as well, from the upper left.
  if (page.stretch !== undefined) document.transform(x, 0, 0, y, 0, 0)
  pen.reset()
  for (const { entities } of page.layers) for (const entity of entities) draw(pen, onPage(page), entity)
}

interface PageDictionary {
  readonly data: { UserUnit?: number }
}

function newDocument(info: PdfInfo): PDFKit.PDFDocument {
  // pdfkit asks for a default font unless it is told that there is none; its types do not know that.
  const noFont = { font: null } as unknown as { font?: string }
  const document = new PDFDocument({
    ...noFont,
    autoFirstPage: false,
    margin: 0,
    compress: false,
    pdfVersion: '1.7',
    info: {
      Title: info.title,
      Subject: info.subject,
      Keywords: info.fingerprint,
      Producer: 'Storyrod',
      Creator: 'Storyrod',
      CreationDate: DATE,
      ModDate: DATE,
    },
  })
  inside(document)._root.data.ViewerPreferences = document.ref({ PrintScaling: 'None', PickTrayByPDFSize: true })
  return document
}

/** Both fonts under their names, in one order, so that a file is the same whichever it uses first. */
function readFonts(document: PDFKit.PDFDocument, fonts: PdfFonts | PdfBook): ReadFonts {
  const given = 'read' in fonts ? fonts.read : fonts
  const open = (name: keyof ReadFonts): ReadFont => {
    // pdfkit takes a font that has been read as well as a file; its types do not know that.
    document.registerFont(name, given[name] as PDFKit.Mixins.PDFFontSource)
    document.font(name)
    return inside(document)._font.font
  }
  return { regular: open('regular'), bold: open('bold') }
}

const inside = (document: PDFKit.PDFDocument): Inside => document as unknown as Inside

const points = (mm: number): number => mm * PT_PER_MM

/** From a drawing (mm, y up) to pdfkit's page (points, y down from the top); the only place that turns y over. */
function onPage({ view }: Drawing): (p: Point) => [x: number, y: number] {
  return ([x, y]) => [points(x - view.min[0]), points(view.max[1] - y)]
}

/** pdfkit with its sticky state kept track of. */
interface PenHolder {
  readonly document: PDFKit.PDFDocument
  reset(): void
  use(pen: Pen): void
}

function penFor(document: PDFKit.PDFDocument): PenHolder {
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

function draw(pen: PenHolder, toPage: ToPage, entity: Entity): void {
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

const FIRST_PRINTABLE = 32
const DELETE = 127
const LAST_CONTROL = 159

/** The text with `?` for each letter that the current font cannot show, control characters among them. */
function covered(document: PDFKit.PDFDocument, text: string): string {
  const { font } = inside(document)._font
  return [...text]
    .map((letter) => {
      const code = letter.codePointAt(0) ?? 0
      const control = code < FIRST_PRINTABLE || (code >= DELETE && code <= LAST_CONTROL)
      return !control && font.hasGlyphForCodePoint(code) ? letter : '?'
    })
    .join('')
}
