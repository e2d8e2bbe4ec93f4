import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { checksAtRest, definitionText, writeDefinition } from '../support/definition.ts'
import { DESK, type OpenPage, openPage } from '../support/open-page.ts'

/** 336 − 2 × 18 = 300 inside have room for 5 shelves, not for 6; 80 deep, pin columns lie 80 − 2 × 37 = 6 apart. */
const TEXT = `storyrod: 1
title: two boxes
stock:
  board: { thickness: 18, sheet: [2500, 1250] } # as measured
modules:
  low: # stands left
    width: 600
    depth: 400
    carcase height: 336
    stock: board
    carcase: { back: none }
    inside: { loose shelves: { count: 6 } } # as many as fit
  shallow:
    width: 600
    depth: 80
    carcase height: 336
    stock: board
    carcase: { back: none }
    inside: { loose shelves: 1 }
`

let open: OpenPage | undefined
let page: Page

beforeAll(async () => {
  open = await openPage(DESK)
  page = open.page
  await writeDefinition(page, TEXT)
})
afterAll(async () => {
  expect(open?.troubles).toEqual([])
  await open?.close()
})

const judge = () => page.locator('#judge')
const note = (words: string) => judge().locator('.note', { hasText: words })

test('stops come first, with their number, what is wrong, what would mend it and the line', async () => {
  await judge().getByRole('heading', { name: '2 stops' }).waitFor()
  const first = judge().locator('.note').first()
  expect(await first.locator('.note-head').textContent()).toContain('6 are asked for')
  expect(await first.locator('.note-fix').textContent()).toBe('to mend it: ask for 5 loose shelves')
  await first.getByRole('button', { name: 'line 12' }).waitFor()
  await judge()
    .getByRole('button', { name: /^stop 1: low/ })
    .waitFor()
})

test('while stops stand Judge has the height, and the files are shown when they are asked for', async () => {
  const height = () => judge().evaluate((node) => node.getBoundingClientRect().height)
  const files = page.locator('#take-away')
  const zip = files.getByRole('button', { name: /in one zip$/ })
  expect(await zip.isVisible()).toBe(false)
  const whole = await height()
  await files.getByRole('button', { name: '2 stops first: show the files all the same' }).click()
  await files.getByText('2 stops: wood cut from these drawings would be spoilt.').waitFor()
  expect(await zip.isDisabled()).toBe(true)
  // Three fifths of what both have together, and not all but a strip.
  expect(whole).toBeGreaterThan((await height()) + 100)
})

test('a fix is applied by one press, comments stay, and one press takes it back', async () => {
  await note('6 are asked for').getByRole('button', { name: 'Apply this fix' }).click()
  await judge().getByText('modules › low › inside › loose shelves › count is now 5').waitFor()
  expect(await definitionText(page)).toBe(TEXT.replace('count: 6', 'count: 5'))
  await checksAtRest(page)
  expect(await note('6 are asked for').count()).toBe(0)
  await judge().getByRole('button', { name: 'Undo this' }).click()
  expect(await definitionText(page)).toBe(TEXT)
  await note('6 are asked for').waitFor()
})

test('the same by keyboard', async () => {
  const press = note('pin columns').getByRole('button', { name: 'Apply this fix' })
  await press.focus()
  await page.keyboard.press('Enter')
  const back = judge().getByRole('button', { name: 'Undo this' })
  await back.waitFor()
  await checksAtRest(page)
  expect(await note('pin columns').count()).toBe(0)
  await back.focus()
  await page.keyboard.press('Enter')
  await note('pin columns').waitFor()
})

test('its line opens the definition there', async () => {
  await page.locator('#define').getByRole('radio', { name: 'Form' }).check()
  await note('6 are asked for').getByRole('button', { name: 'line 12' }).click()
  expect(await page.locator('#define').getByRole('radio', { name: 'Text' }).isChecked()).toBe(true)
  expect(await note('6 are asked for').getAttribute('aria-current')).toBeNull()
  await note('6 are asked for').locator('.note-head').click()
  expect(await note('6 are asked for').getAttribute('aria-current')).toBe('true')
})

test('the rule is unfolded when it is asked for', async () => {
  const rule = note('6 are asked for').locator('details.rule')
  expect(await rule.getByText('findings: pin-rows-short').isVisible()).toBe(false)
  await rule.locator('summary').click()
  expect(await rule.getByText('findings: pin-rows-short').isVisible()).toBe(true)
})

test('a mistake comes before all findings, with the nearest name by one press, while the old ones stay', async () => {
  await writeDefinition(page, TEXT.replace('carcase height: 336', 'carcas height: 336'))
  await judge()
    .getByRole('heading', { name: /^1 mistake/ })
    .waitFor()
  const first = judge().locator('.note').first()
  expect(await first.locator('mark').textContent()).toBe('carcas height')
  await judge().getByRole('heading', { name: '2 stops' }).waitFor()
  const fix = note('6 are asked for').getByRole('button', { name: 'Apply this fix' })
  expect(await fix.getAttribute('aria-disabled')).toBe('true')
  await first.getByRole('button', { name: 'Write “carcase height”' }).click()
  expect(await definitionText(page)).toBe(TEXT)
  await judge()
    .getByRole('heading', { name: /mistake/ })
    .waitFor({ state: 'detached' })
})

test('what changed is said in one polite place', async () => {
  const said = page.locator('#said')
  await writeDefinition(page, TEXT.replace('count: 6', 'count: 5'))
  await said.getByText('1 stop, 1 note', { exact: true }).waitFor({ state: 'attached' })
  await writeDefinition(page, TEXT.replace('thickness: 18', 'thickness: x').replace('depth: 80', 'depth: eighty'))
  await said.getByText('the definition has 2 mistakes').waitFor({ state: 'attached' })
  expect(await said.getAttribute('role')).toBe('status')
})

test('what is silenced lies folded at the end, with its reason', async () => {
  await writeDefinition(page, `${TEXT}findings: { pin-rows-short: { silence: it is a model } }\n`)
  await judge().getByRole('heading', { name: '1 stop' }).waitFor()
  const silenced = judge().locator('details', { hasText: 'silenced by the definition' })
  expect(await silenced.getByText('because: it is a model').isVisible()).toBe(false)
  await silenced.locator('summary').click()
  expect(await silenced.getByText('because: it is a model').isVisible()).toBe(true)
})

test('cautions are in sight whatever is scrolled, and all of them when asked for', async () => {
  const cautions = judge().locator('.cautions')
  expect(await cautions.getByText('a licensed professional decide.').isVisible()).toBe(true)
  const inSight = await cautions.locator('summary').evaluate((node) => {
    const { top, bottom } = node.getBoundingClientRect()
    const area = node.closest('.area-body')?.getBoundingClientRect()
    return area !== undefined && top >= area.top && bottom <= area.bottom + 1
  })
  expect(inSight).toBe(true)
  await cautions.locator('summary').click()
  await cautions.getByText('Wear ear and eye protection').waitFor()
  await cautions.locator('summary').click()
})
