import { expect, test } from 'vitest'
import type { Drawing } from '../../src/drawing/types.ts'
import { openPdf, pdfOf } from '../../src/writers/index.ts'
import { FONTS } from './pdf-fonts.ts'

const INFO = { title: 'a title', subject: 'a subject', fingerprint: 'abc123' }
const latin1 = new TextDecoder('latin1')

/** A page that is told from others by its width. */
const page = (width: number, words = 'words'): Drawing => ({
  title: `page ${width}`,
  view: { min: [0, 0], max: [width, 100] },
  layers: [
    {
      name: 'NOTE',
      operation: 'note',
      entities: [
        { kind: 'text', at: [10, 10], height: 4, anchor: 'start', text: words, bold: true },
        { kind: 'text', at: [10, 20], height: 4, anchor: 'start', text: words },
      ],
    },
  ],
})

/** Widths of the pages in the order in which a reader shows them, mm: the list of the page tree, each looked up. */
function widthsOf(bytes: Uint8Array): number[] {
  const text = latin1.decode(bytes)
  const kids = /\/Kids \[([^\]]*)\]/.exec(text)?.[1] ?? ''
  return [...kids.matchAll(/(\d+) 0 R/g)].map(([, id]) => {
    const object = new RegExp(`\\n${id} 0 obj[\\s\\S]*?/MediaBox \\[0 0 ([\\d.]+) `).exec(text)
    return Math.round((Number(object?.[1]) * 25.4) / 72)
  })
}

/** Titles of the bookmarks with the page of each, in the order of the file. */
function bookmarksOf(bytes: Uint8Array): string[] {
  const text = latin1.decode(bytes)
  return [...text.matchAll(/\/Dest \[(\d+) 0 R \/Fit\][\s\S]*?\/Title \(([^)]*)\)/g)].map(
    ([, id, title]) => `${title}: ${id}`,
  )
}

test('pages of the front come before those that were added', async () => {
  const book = openPdf(INFO, FONTS)
  book.add(page(210))
  book.add(page(220))
  const bytes = await book.finish([{ page: page(300) }, { page: page(310) }])
  expect(widthsOf(bytes)).toEqual([300, 310, 210, 220])
})

test('bookmarks stand in the order of the pages, those of one name under one', async () => {
  const book = openPdf(INFO, FONTS)
  book.add(page(210), ['cart', 'left side', 'sheet A1'])
  book.add(page(220), ['cart', 'left side', 'sheet A2'])
  book.add(page(230), ['cart', 'door', 'sheet A1'])
  const bytes = await book.finish([{ page: page(300), bookmark: ['Cover'] }, { page: page(310) }])
  const text = latin1.decode(bytes)
  const kids = [...(/\/Kids \[([^\]]*)\]/.exec(text)?.[1] ?? '').matchAll(/(\d+) 0 R/g)].map(([, id]) => id)
  const [cover, , first, second, third] = kids
  expect(bookmarksOf(bytes).sort()).toEqual(
    [
      `Cover: ${cover}`,
      `cart: ${first}`,
      `left side: ${first}`,
      `sheet A1: ${first}`,
      `sheet A2: ${second}`,
      `door: ${third}`,
      `sheet A1: ${third}`,
    ].sort(),
  )
  expect(text).toMatch(/\/PageMode \/UseOutlines/)
})

test('a file without bookmarks has no list of them', async () => {
  expect(latin1.decode(await pdfOf([page(210)], INFO, FONTS))).not.toMatch(/\/Outlines|\/PageMode/)
})

test('fonts that another book has read give the same bytes as those of files', async () => {
  const book = openPdf(INFO, FONTS)
  book.add(page(210, 'Other words: 5 × 13, ⌀ 35, Größe'))
  const own = await pdfOf([page(210, 'Größe 5 × 13')], INFO, FONTS)
  expect(await pdfOf([page(210, 'Größe 5 × 13')], INFO, book)).toEqual(own)
  await book.finish()
  expect(await pdfOf([page(210, 'Größe 5 × 13')], INFO, book)).toEqual(own)
})

test('a book without pages is refused, by its title', () => {
  expect(() => openPdf(INFO, FONTS).finish()).toThrow('a PDF without pages was asked for: a title')
})

test('asks to be printed as it is', async () => {
  const text = latin1.decode(await pdfOf([page(210)], INFO, FONTS))
  expect(text).toMatch(/\/PrintScaling \/None/)
})
