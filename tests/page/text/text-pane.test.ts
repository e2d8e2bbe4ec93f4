import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest'
import { textField } from '../support/definition.ts'
import { DESK, type OpenPage, openPage } from '../support/open-page.ts'

let desk: OpenPage
let page: Page

beforeAll(async () => {
  desk = await openPage(DESK)
  page = desk.page
  await textField(page)
  await page.locator('.cm-content').waitFor()
})
afterAll(async () => {
  expect(desk.troubles).toEqual([])
  await desk.close()
})

/** Steps that undo all that a test typed; a history holds each of them. */
async function undoAll(): Promise<void> {
  await page.keyboard.press('Escape')
  await page.locator('.cm-content').focus()
  for (let step = 0; step < 12; step += 1) await page.keyboard.press('Control+z')
}

/** Puts the cursor at the end of the line that begins with some words. */
async function goTo(words: string): Promise<void> {
  await page.locator('.cm-content').focus()
  await page.keyboard.press('Control+Home')
  await page.keyboard.press('Control+f')
  await page.keyboard.type(words)
  await page.keyboard.press('Enter')
  await page.keyboard.press('Escape')
  await page.keyboard.press('End')
}

const lines = (): Promise<string[]> => page.locator('.cm-line').allTextContents()

describe('the text', () => {
  afterEach(undoAll)

  test('takes a key from the list, with its sentence, by the keyboard alone', async () => {
    await goTo('units: mm')
    await page.keyboard.press('Enter')
    await page.keyboard.type('ker')
    const list = page.locator('.cm-tooltip-autocomplete')
    await list.waitFor()
    expect(await list.locator('li').allTextContents()).toContain('kerf')
    expect(await page.locator('.cm-completionInfo').textContent()).toMatch(/saw cut/)
    // The list takes keys from 75 ms after it has opened on.
    await page.waitForTimeout(150)
    await page.keyboard.press('Enter')
    await page.keyboard.type('3')
    expect(await lines()).toContain('kerf: 3')
  })

  test('offers the names that the definition gives', async () => {
    await goTo('depth: 560')
    await page.keyboard.press('Enter')
    await page.keyboard.type('lipping: none')
    await page.keyboard.press('Enter')
    await page.keyboard.type('worktop: { stock: bee')
    await page.locator('.cm-tooltip-autocomplete').waitFor()
    expect(await page.locator('.cm-tooltip-autocomplete li').first().textContent()).toMatch(/^beech top/)
  })

  test('where a word or keys may stand, a key of the group is taken on a line of its own', async () => {
    await goTo('width: 640')
    await page.keyboard.press('Enter')
    await page.keyboard.type('ba')
    const list = page.locator('.cm-tooltip-autocomplete')
    const base = list.locator('li', { hasText: /^base$/ })
    await base.waitFor()
    await page.waitForTimeout(150)
    await page.keyboard.press('Enter')
    await list.locator('li', { hasText: /^none$/ }).waitFor()
    await page.keyboard.type('cas')
    await list.locator('li', { hasText: /^casters/ }).waitFor()
    await page.waitForTimeout(150)
    await page.keyboard.press('Enter')
    // What the key takes is offered at once.
    await list.locator('li', { hasText: /^caster 75/ }).waitFor()
    await page.waitForTimeout(150)
    await page.keyboard.type('caster 75')
    const now = await lines()
    const at = now.indexOf('    base:')
    expect(now.slice(at, at + 2)).toEqual(['    base:', '      casters: caster 75'])
  })

  test('says what a key means where one points at it, and at the foot where the cursor stands', async () => {
    await goTo('working height: 850')
    await page.locator('.text-foot', { hasText: 'above the floor' }).waitFor()
    await page
      .locator('.tx-key', { hasText: /^carcase$/ })
      .first()
      .hover()
    const box = page.locator('.tx-explained')
    await box.waitFor()
    expect(await box.textContent()).toMatch(/Which panel laps which/)
    await page.mouse.move(0, 0)
  })

  test('underlines what cannot be read, tells it by keyboard, and undoes', async () => {
    await goTo('units: mm')
    const before = await lines()
    await page.keyboard.press('Backspace')
    await page.keyboard.type('x')
    const mark = page.locator('.cm-lintRange-error', { hasText: /^mx$/ })
    await mark.waitFor()
    await page.keyboard.press('F8')
    await page.locator('.cm-tooltip-lint', { hasText: 'Expected: mm or in' }).waitFor()
    await undoAll()
    await mark.waitFor({ state: 'detached' })
    expect(await lines()).toEqual(before)
  })

  test('leaves a plan that is drawn in characters whole, and scrolls sideways to its end', async () => {
    await page.locator('.cm-content').focus()
    await page.keyboard.press('Control+Home')
    const plan = page.locator('.cm-line.tx-drawn')
    const plain = page.locator('.cm-line', { hasText: /^units: mm$/ })
    const one = await plain.evaluate((node) => node.getBoundingClientRect().height)
    const heights = await plan.evaluateAll((nodes) => nodes.map((node) => node.getBoundingClientRect().height))
    expect(heights).toEqual(Array(9).fill(one))
    const [room, whole] = await page.locator('.cm-scroller').evaluate((node) => [node.clientWidth, node.scrollWidth])
    expect(whole).toBeGreaterThan(room ?? 0)
  })

  test('does not keep the keyboard: Escape, then Tab, leaves it', async () => {
    await page.locator('.cm-content').focus()
    await page.keyboard.press('Escape')
    await page.keyboard.press('Tab')
    expect(await page.evaluate(() => document.activeElement?.closest('.cm-editor') === null)).toBe(true)
    const described = await page.locator('.cm-content').getAttribute('aria-describedby')
    expect(await page.locator(`#${described}`).textContent()).toMatch(/Escape, then Tab, leaves the text/)
  })
})
