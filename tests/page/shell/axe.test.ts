import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { axeFaults } from '../support/axe.ts'
import { writeDefinition } from '../support/definition.ts'
import { DESK, type OpenPage, openPage, PHONE } from '../support/open-page.ts'

/** Six shelves where there is room for five; too shallow for two columns of pins; a silenced one. */
const TEXT = `storyrod: 1
title: two boxes
stock: { board: { thickness: 18, sheet: [2500, 1250] } }
modules:
  low:
    { width: 600, depth: 400, carcase height: 336, stock: board, inside: { loose shelves: 6 } }
  shallow:
    { width: 600, depth: 80, carcase height: 336, stock: board, carcase: { back: none }, inside: { loose shelves: 1 } }
findings: { tall-module: { silence: it is a model } }
`

let open: OpenPage | undefined
let page: Page

beforeAll(async () => {
  open = await openPage(DESK)
  page = open.page
  // The sample once, as it is opened; what is unfolded and broken with less to look through.
  expect(await axeFaults(page)).toEqual([])
  await writeDefinition(page, TEXT)
})
afterAll(() => open?.close())

describe.each(['light', 'dark'] as const)('no violation, %s', (colorScheme) => {
  beforeAll(() => page.emulateMedia({ colorScheme }))

  test('on a desk with all unfolded, the definition as text and as form', async () => {
    await page.setViewportSize(DESK)
    await page.locator('details').evaluateAll((all) => {
      for (const one of all) if (one instanceof HTMLDetailsElement) one.open = true
    })
    expect(await axeFaults(page)).toEqual([])
    await page.locator('#define').getByRole('radio', { name: 'Form' }).check()
    await page.locator('#define .module-card').waitFor()
    expect(await axeFaults(page, '#define')).toEqual([])
  })

  test('with a mistake in the definition', async () => {
    await writeDefinition(page, TEXT.replace('width', 'widht'))
    await page
      .locator('#judge')
      .getByRole('heading', { name: /mistake/ })
      .waitFor()
    expect(await axeFaults(page, '#define', '#see', '#judge')).toEqual([])
    await writeDefinition(page, TEXT)
  })

  test('on a phone, each area', async () => {
    await page.setViewportSize(PHONE)
    const show = (area: string) => page.locator('.area-bar').getByRole('button', { name: area }).click()
    await show('Define')
    expect(await axeFaults(page)).toEqual([])
    for (const [area, part] of [
      ['See', '#see'],
      ['Judge', '#judge'],
      ['Take away', '#take-away'],
    ] as const) {
      await show(area)
      expect(await axeFaults(page, part, '.area-bar'), area).toEqual([])
    }
  })
})
