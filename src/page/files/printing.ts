import type { Fonts } from '../../outputs/index.ts'
import type { PrintedPage } from './asks.ts'
import type { FilesCrew } from './crew.ts'

/** The family by which the pages ask for their letters. */
const FAMILY = 'DejaVu Sans'

let letters: Promise<void> | undefined

/** Gives the browser the letters of the pages, the same as those in the PDF files; once. */
export function loadLetters(crew: FilesCrew): Promise<void> {
  letters ??= fontsFrom(crew).then(async ({ regular, bold }) => {
    const faces = [
      new FontFace(FAMILY, regular as BufferSource, { weight: '400' }),
      new FontFace(FAMILY, bold as BufferSource, { weight: '700' }),
    ]
    for (const face of faces) document.fonts.add(await face.load())
  })
  // What failed may be tried again.
  letters.catch(() => {
    letters = undefined
  })
  return letters
}

async function fontsFrom(crew: FilesCrew): Promise<Fonts> {
  let fonts: Fonts | undefined
  await crew.run({ kind: 'fonts' }, (news) => {
    if (news.kind === 'fonts') fonts = news.fonts
  })
  if (fonts === undefined) throw new Error('the letters of the pages could not be loaded')
  return fonts
}

/**
 * Puts pages where only the printer sees them, each on a sheet of its size without margins. Returns what takes them away. All
 * other things of the page are kept off the paper meanwhile.
 */
export function layOutForPrint(pages: readonly PrintedPage[]): () => void {
  const sizes = [...new Set(pages.map(sizeOf))]
  const style = document.createElement('style')
  style.textContent = [
    ...sizes.map((size, k) => `@page sheet-${k} { size: ${size}; margin: 0 }\n.sheet-${k} { page: sheet-${k} }`),
    '.printed { display: none }',
    '@media print {',
    'html, body { block-size: auto; margin: 0; overflow: visible; background: #fff }',
    'body > :not(.printed) { display: none !important }',

    '.printed { display: block; color-scheme: light }',
    '.printed > div { position: relative; overflow: hidden; break-inside: avoid; break-after: page }',
    '.printed > div:last-child { break-after: auto }',
    // What is set by the baseline of a line would stand a little off.
    '.printed svg { position: absolute; inset: 0 auto auto 0; display: block }',
    `.printed text { font-family: "${FAMILY}"; font-kerning: normal; white-space: pre }`,
    '}',
  ].join('\n')
  const printed = document.createElement('div')
  printed.className = 'printed'
  printed.setAttribute('aria-hidden', 'true')
  for (const page of pages) {
    const sheet = document.createElement('div')
    sheet.className = `sheet-${sizes.indexOf(sizeOf(page))}`
    // A little less than the sheet, so that what the browser rounds off never makes an empty sheet after it.
    sheet.style.cssText = `inline-size: ${page.width}mm; block-size: ${page.height - ROUNDED_OFF_MM}mm`
    sheet.innerHTML = page.svg
    printed.append(sheet)
  }
  document.head.append(style)
  document.body.append(printed)
  return () => {
    style.remove()
    printed.remove()
  }
}

/** More than a pixel of 1/96 in; nothing is drawn so near to the border of a sheet. */
const ROUNDED_OFF_MM = 0.3

const sizeOf = ({ width, height }: PrintedPage): string => `${tidy(width)}mm ${tidy(height)}mm`
const tidy = (mm: number): number => Math.round(mm * 1000) / 1000
