import { afterAll, beforeAll, expect, test } from 'vitest'
import { DESK, type OpenPage, openPage, PHONE } from './support/open-page.ts'

let desk: OpenPage
let phone: OpenPage

beforeAll(async () => {
  desk = await openPage(DESK)
  phone = await openPage(PHONE)
})
afterAll(async () => {
  await desk.close()
  await phone.close()
})

test('from the disk, the page draws the sample, says no error and asks for nothing', () => {
  expect(desk.troubles).toEqual([])
  expect(phone.troubles).toEqual([])
})

test('nothing is wider than a phone', async () => {
  const width = await phone.page.evaluate(() => document.documentElement.scrollWidth)
  expect(width).toBeLessThanOrEqual(PHONE.width)
})
