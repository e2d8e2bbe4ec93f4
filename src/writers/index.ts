export { type DxfOptions, dxfOf } from './dxf/dxf-of.ts'
export { lintDxf } from './dxf/lint.ts'
export { type Bookmark, type FrontPage, openPdf, type PdfBook, type PdfFonts, type PdfInfo, pdfOf } from './pdf.ts'
export { pageSvgOf, svgOf } from './svg.ts'
