import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { unzipSync } from 'fflate'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { SAMPLES } from '../../support/samples.ts'
import { type OpenPage, openPage } from '../support/open-page.ts'
import { fileState, settled, taken, unfold } from './doings.ts'

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
  const files = unzipSync(bytes)
  const wanted = below(join(SAMPLES, stem))
  expect(wanted.length).toBeGreaterThan(30)
  expect(Object.keys(files).sort()).toEqual(wanted.map((path) => `${stem}-drawings/${path}`).sort())
  const differing = wanted.filter((path) => {
    const file = files[`${stem}-drawings/${path}`]
    return file === undefined || Buffer.compare(file, readFileSync(join(SAMPLES, stem, path))) !== 0
  })
  expect(differing).toEqual([])
  // The first file's time and date, 2 bytes each from byte 10 on (APPNOTE 6.3, 4.3.7): 0 o'clock, and month 1 << 5 | day 1 of 1980.
  expect([...bytes.subarray(10, 14)]).toEqual([0, 0, 0x21, 0])
})

test('nothing of the page went wrong', () => {
  expect(desk.troubles).toEqual([])
})
