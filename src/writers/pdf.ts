import PDFDocument from 'pdfkit'
import { toBytes } from 'pdfkit/output'
import type { Drawing } from '../drawing/index.ts'
import { checkDrawing } from './check-drawing.ts'
import { draw, onPage, type PenHolder, penFor, points } from './pdf-draw.ts'

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

/** A fixed date: the same pages give the same bytes whenever they are made. */
const DATE = new Date(Date.UTC(2000, 0, 1))

/** What pdfkit keeps to itself and has no method for. */
interface Inside {
  readonly _root: {
    readonly data: { ViewerPreferences?: unknown; readonly Pages: { readonly data: { Kids: unknown[] } } }
  }
  readonly _font: { readonly font: unknown }
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

/** Opaque to all but pdfkit. */
interface ReadFonts {
  readonly regular: unknown
  readonly bold: unknown
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
  const open = (name: keyof ReadFonts): unknown => {
    // pdfkit takes a font that has been read as well as a file; its types do not know that.
    document.registerFont(name, given[name] as PDFKit.Mixins.PDFFontSource)
    document.font(name)
    return inside(document)._font.font
  }
  return { regular: open('regular'), bold: open('bold') }
}

const inside = (document: PDFKit.PDFDocument): Inside => document as unknown as Inside
