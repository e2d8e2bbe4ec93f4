import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { outputFile, printedPages } from '../../../src/outputs/index.ts'
import { FONTS } from '../../support/fonts.ts'
import { openSample } from '../../support/samples.ts'
import { browser, openPage } from '../support/open-page.ts'
import { printed } from './doings.ts'

/**
 * Prints full-size pages from the page as a browser does, into FOLDER/NAME-printed.pdf, with the same pages as the command
 * writes them beside it, FOLDER/NAME-file.pdf: for page_prints.py to compare. Then prints all pages of the sample, and counts
 * the sheets. Usage: tsx print-in-browser.ts FOLDER
 */
const [target] = process.argv.slice(2)
if (target === undefined) throw new Error('usage: tsx print-in-browser.ts FOLDER')

/** The page to measure, and panels with strips, seams, edges that fold and more than a metre of taped pages. */
const CHOICES = [
  ['measuring', 'templates/measure-first.pdf'],
  ['panel glaze-store/left-side', 'templates/glaze-store/left-side.pdf'],
  ['panel forming-stand/platform-lower-skin', 'templates/forming-stand/platform-lower-skin.pdf'],
] as const

mkdirSync(target, { recursive: true })
const { built, definition } = openSample('pottery-studio')
const desk = await openPage()
for (const [choice, path] of CHOICES) {
  const name = path.replace(/^templates\/|\.pdf$/g, '').replaceAll('/', '-')
  const file = await outputFile(built, FONTS, definition, path)
  if (file === undefined) throw new Error(`the sample has no ${path}`)
  writeFileSync(join(target, `${name}-file.pdf`), file.bytes)
  writeFileSync(join(target, `${name}-printed.pdf`), await printed(desk.page, choice))
}

// The command says 628 sheets of them, besides those that stand before: README, Full-size pages.
const wanted = [...printedPages(built, { of: 'all' })].reduce((sum, { drawings }) => sum + drawings.length, 0)
const all = await printed(desk.page, 'all')
await desk.page.getByRole('status').getByText('628 sheets of A4 to print').waitFor()
const sheets = all.toString('latin1').match(/\/Type \/Page\b/g)?.length ?? 0
if (sheets !== wanted || sheets < 628) throw new Error(`of all pages ${sheets} sheets were printed, not ${wanted}`)
process.stdout.write(`all pages: ${sheets} sheets printed\n`)

await desk.close()
await (await browser()).close()
