import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { unzipSync } from 'fflate'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { SAMPLES } from '../../support/samples.ts'
import { inOneChain } from '../support/chain.ts'
import { type OpenPage, openPage } from '../support/open-page.ts'
import { fileState, LONG, settled, taken, unfold } from './doings.ts'
import { inFolder, withFolder } from './folder.ts'

inOneChain()

let desk: OpenPage

beforeAll(async () => {
  // Far from the zone of those who made the samples, and of those who test.
  desk = await openPage(undefined, { timezoneId: 'Pacific/Kiritimati', locale: 'ar-EG' })
})
afterAll(() => desk.close())

/** Paths below a folder, with forward slashes. */
const below = (folder: string): string[] =>
  readdirSync(folder, { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? below(join(folder, entry.name)).map((path) => `${entry.name}/${path}`) : [entry.name],
  )

/** Of files taken from a sample, those that are not what the command writes. */
const wrongOf = (stem: string, files: ReadonlyMap<string, Uint8Array>): string[] =>
  [...files].flatMap(([path, bytes]) =>
    Buffer.compare(bytes, readFileSync(join(SAMPLES, stem, path))) === 0 ? [] : [path],
  )

const how = (words: string | RegExp) => desk.page.locator('.take-how').getByText(words)

test('Stop while all are made: nothing is offered, and what is in a folder is whole and said to be not all', async () => {
  const { page } = desk
  const offered: string[] = []
  page.on('download', (download) => offered.push(download.suggestedFilename()))
  await settled(page)
  await page.getByRole('button', { name: /^All \d+ files/ }).click()
  await how(/^Files: \d+ of 427/).waitFor(LONG)
  await page.getByRole('button', { name: 'Stop', exact: true }).click()
  await how('Stopped. Nothing was taken away.').waitFor()
  await withFolder(page)
  await page.getByRole('button', { name: 'Into a folder…' }).click()
  await page.waitForFunction(() => (window as never as { folder: { size: number } }).folder.size > 1, undefined, LONG)
  await page.getByRole('button', { name: 'Stop', exact: true }).click()
  await how(/^Stopped\. Of all files the first \d+ are in the folder drawings\.$/).waitFor()
  const files = await inFolder(page)
  expect(files.size).toBeLessThan(427)
  expect(await how(`the first ${files.size} are`).count()).toBe(1)
  expect(wrongOf('pottery-studio', files)).toEqual([])
  expect(offered).toEqual([])
})

test.each([
  ['glaze-store/left-side', 'Drawings to look at (SVG): 161', 'svg/glaze-store/left-side-a.svg'],
  ['glaze-store/left-side', 'For the machine (DXF): 161', 'dxf/glaze-store/left-side-a.dxf'],
  ['tool-locker/back', 'Full-size pages (PDF): 99', 'templates/tool-locker/back.pdf'],
  ['all', 'Lists, and pages of all: 6', 'panels.json'],
  ['all', 'Lists, and pages of all: 6', 'findings.txt'],
])('one file of %s, from %s, is the one that the command writes', async (_, fold, path) => {
  const { page } = desk
  await settled(page)
  await unfold(page, 'Single files')
  await unfold(page, fold)
  const { name, bytes } = await taken(page, () => page.locator(`.take [data-path="${path}"]`).click())
  expect(name).toBe(path.split('/').at(-1))
  expect(Buffer.compare(bytes, readFileSync(join(SAMPLES, 'pottery-studio', path)))).toBe(0)
})

test.each([
  ['clay-cart', 'Clay cart, in inches'],
  ['kiln-carts', 'Two kiln carts out of one sheet'],
])('all of %s in one zip: every byte of every file that the command writes', async (stem, words) => {
  const { page } = desk
  await page.locator('summary', { hasText: 'More files' }).click()
  await page.getByRole('button', { name: words }).click()
  await fileState(page, `${stem}.yaml`, 'sample')
  await page.locator('.take button.main', { hasText: `All ${below(join(SAMPLES, stem)).length} files` }).waitFor()
  await settled(page)
  const { name, bytes } = await taken(page, () => page.getByRole('button', { name: /^All \d+ files/ }).click())
  expect(name).toBe(`${stem}-drawings.zip`)
  const wanted = below(join(SAMPLES, stem))
  expect(wanted.length).toBeGreaterThan(30)
  const files = new Map(Object.entries(unzipSync(bytes)))
  expect([...files.keys()].sort()).toEqual(wanted.map((path) => `${stem}-drawings/${path}`).sort())
  const apart = new Map([...files].map(([path, file]) => [path.slice(`${stem}-drawings/`.length), file]))
  expect(wrongOf(stem, apart)).toEqual([])
  // The first file's time and date, 2 bytes each from byte 10 on (APPNOTE 6.3, 4.3.7): 0 o'clock, and month 1 << 5 | day 1 of 1980.
  expect([...bytes.subarray(10, 14)]).toEqual([0, 0, 0x21, 0])
})

// Of kiln-carts, which the test before has left open.
test('all into a folder: where a file cannot be written it says so and leaves no part of it; then every byte', async () => {
  const { page } = desk
  const wanted = below(join(SAMPLES, 'kiln-carts'))
  const into = page.getByRole('button', { name: 'Into a folder…' })
  await withFolder(page, 'svg/left-cart/right-side-a.svg')
  await into.click()
  await how('Not all files could be written into drawings: the disk is full').waitFor(LONG)
  const some = await inFolder(page)
  expect(some.size).toBeGreaterThan(0)
  expect([...some.keys()]).not.toContain('svg/left-cart/right-side-a.svg')
  expect(wrongOf('kiln-carts', some)).toEqual([])
  await withFolder(page)
  await into.click()
  await how(new RegExp(`^${wanted.length} files, .*, are in the folder drawings\\.$`)).waitFor(LONG)
  const all = await inFolder(page)
  expect([...all.keys()].sort()).toEqual([...wanted].sort())
  expect(wrongOf('kiln-carts', all)).toEqual([])
})

test('nothing of the page went wrong', () => {
  expect(desk.troubles).toEqual([])
})
