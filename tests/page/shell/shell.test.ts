import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { checksAtRest, definitionText, textField, writeDefinition } from '../support/definition.ts'
import { DESK, type OpenPage, openPage, PHONE } from '../support/open-page.ts'
import { overhang, tooSmall } from '../support/sizes.ts'

const TEXT =
  'storyrod: 1\ntitle: a box\nstock: { board: { thickness: 18, sheet: [2500, 1250] } }\nmodules:\n  box: { width: 600, depth: 400, carcase height: 500, stock: board }\n'

/** A machine that runs many tests at once is slow. */
const SOON = { timeout: 30_000 }

const AREAS = ['Define', 'See', 'Judge', 'Take away']
const idOf = (area: string): string => `#${area.toLowerCase().replace(' ', '-')}`

const focused = (page: Page): Promise<string> =>
  page.evaluate(() => document.activeElement?.id || document.activeElement?.textContent || '')

// Both are opened from the disk, as a double click does, and at the end nothing has gone wrong in them.
describe('on a desk', () => {
  let open: OpenPage | undefined
  let page: Page
  beforeAll(async () => {
    open = await openPage(DESK)
    page = open.page
  })
  afterAll(async () => {
    expect(open?.troubles).toEqual([])
    await open?.close()
  })

  test('the first press of Tab offers to skip to the drawing', async () => {
    await page.keyboard.press('Tab')
    expect(await focused(page)).toBe('Skip to the drawing')
    await page.keyboard.press('Enter')
    expect(await focused(page)).toBe('see')
  })

  test('four areas, each a region with a heading', async () => {
    for (const area of AREAS) await page.getByRole('region', { name: area }).waitFor()
    expect(await page.getByRole('heading', { level: 1 }).allTextContents()).toEqual(['Storyrod'])
    for (const role of ['banner', 'main'] as const) expect(await page.getByRole(role).count()).toBe(1)
  })

  test('the title names the project', async () => {
    await writeDefinition(page, TEXT)
    await page.waitForFunction(() => document.title.includes('a box · Storyrod'))
  })

  test('Undo and Redo, by press and by keys from anywhere', async () => {
    const undo = page.getByRole('button', { name: 'Undo', exact: true })
    const redo = page.getByRole('button', { name: 'Redo', exact: true })
    await writeDefinition(page, TEXT.replace('600', '640'))
    const changed = TEXT.replace('600', '640')
    const text = () => expect.poll(() => definitionText(page), SOON)
    await undo.click()
    await text().not.toBe(changed)
    await redo.click()
    await text().toBe(changed)
    await page.locator('#see').focus()
    await page.keyboard.press('Control+z')
    await text().not.toBe(changed)
    await page.keyboard.press('Control+Shift+z')
    await text().toBe(changed)
    await page.locator('#see').focus()
    await page.keyboard.press('Control+z')
    await text().not.toBe(changed)
    await page.keyboard.press('Control+y')
    await text().toBe(changed)
    await expect.poll(() => redo.isDisabled(), SOON).toBe(true)
  })

  test('Settings open and close by keyboard, and the drawing changes its units', async () => {
    const summary = page.locator('summary', { hasText: 'Settings' })
    await summary.focus()
    await page.keyboard.press('Enter')
    const units = page.getByLabel('Lengths in the drawing')
    await units.waitFor()
    await units.selectOption('in')
    await page.keyboard.press('Escape')
    await units.waitFor({ state: 'hidden' })
    expect(await focused(page)).toContain('Settings')
    await summary.click()
    await units.selectOption('defined')
    await page.getByLabel('Light or dark').selectOption('dark')
    const paper = () => page.locator('#judge').evaluate((node) => getComputedStyle(node).backgroundColor)
    await expect.poll(paper, SOON).toBe('rgb(27, 29, 26)')
    await page.getByLabel('Light or dark').selectOption('as the system')
    await page.locator('#see').click({ position: { x: 5, y: 5 } })
    await units.waitFor({ state: 'hidden' })
  })

  test('Define is put aside and the drawing gets its room; the focus stays with the press', async () => {
    const width = () => page.locator('#see').evaluate((node) => node.getBoundingClientRect().width)
    const before = await width()
    const [head, press] = await page
      .locator('.area-define > .area-head, .fold-define')
      .evaluateAll((nodes) => nodes.map((node) => node.getBoundingClientRect()))
    // In one line with the heading.
    expect(press?.top).toBeLessThan((head?.top ?? 0) + 20)
    await page.getByRole('button', { name: 'Put aside Define' }).focus()
    await page.keyboard.press('Enter')
    await page.waitForFunction(() => document.activeElement?.className === 'unfold')
    expect(await width()).toBeGreaterThan(before + 200)
    await page.keyboard.press('Enter')
    await page.waitForFunction(() => document.activeElement?.classList.contains('fold-define') === true)
    expect(await width()).toBe(before)
  })

  test('the first look ticks off a width that is changed, can be put away, and brought back', async () => {
    const strip = page.getByRole('region', { name: 'First look' })
    await writeDefinition(page, TEXT)
    const step = strip.getByRole('listitem').nth(1)
    const field = await textField(page)
    await field.fill(TEXT.replace('600', '650'))
    await step.getByText('done').waitFor({ state: 'attached' })
    await strip.getByRole('button', { name: 'Put away' }).click()
    await strip.waitFor({ state: 'detached' })
    await page.reload()
    await page.locator('[data-drawn]').waitFor()
    expect(await strip.count()).toBe(0)
    await page.locator('summary', { hasText: 'Settings' }).click()
    await page.getByLabel('First look: three steps').check()
    await strip.waitFor()
  })

  test('nothing to press is lower than a finger', async () => {
    expect(await tooSmall(page)).toEqual([])
  })
})

describe('on small screens', () => {
  let open: OpenPage | undefined
  let page: Page
  beforeAll(async () => {
    open = await openPage(PHONE)
    page = open.page
    await checksAtRest(page)
  })
  afterAll(async () => {
    expect(open?.troubles).toEqual([])
    await open?.close()
  })

  const bar = () => page.getByRole('navigation', { name: 'Parts of the page' })

  test('the bar says how much there is to judge: the sample has seven notes', async () => {
    await bar().getByRole('button', { name: 'Judge 7 notes', exact: true }).waitFor()
  })

  test.each([
    ['a phone', PHONE],
    ['a small phone', { width: 360, height: 640 }],
    ['a phone lying', { width: 844, height: 390 }],
  ])('%s: one area at a time; nothing is wider than the screen or lower than a finger', async (_, screen) => {
    await page.setViewportSize(screen)
    for (const area of AREAS) {
      await bar().getByRole('button', { name: area }).click()
      for (const other of AREAS) expect(await page.locator(idOf(other)).isVisible()).toBe(other === area)
      expect(await bar().locator('[aria-current="true"]').textContent()).toContain(area)
      expect(await overhang(page)).toBe(0)
      expect(await tooSmall(page)).toEqual([])
    }
  })

  test('a phone lying: one row of head, and the title block whole beside the sheet', async () => {
    await page.setViewportSize({ width: 844, height: 390 })
    await bar().getByRole('button', { name: 'See' }).click()
    const box = async (part: string) => {
      const found = await page.locator(part).boundingBox()
      if (found === null) throw new Error(`${part} is not seen`)
      return found
    }
    // One row: a finger of 44 px, and less than 8 px above and below it.
    expect((await box('.head')).height).toBeLessThan(60)
    const block = await box('.title-block')
    const paper = await box('.drawing-paper')
    expect(block.y + block.height).toBeLessThanOrEqual(390)
    expect(block.x).toBeGreaterThanOrEqual(paper.x + paper.width - 1)
    expect(paper.height).toBeGreaterThan(200)
  })

  test('on a phone, what one types in is large enough not to be zoomed in on', async () => {
    await page.setViewportSize(PHONE)
    const field = await textField(page)
    const size = await field.evaluate((one) => Number.parseFloat(getComputedStyle(one).fontSize))
    expect(size).toBeGreaterThanOrEqual(16)
    const heights = await page
      .locator('.text-tools button')
      .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().height))
    expect(heights.length).toBeGreaterThan(0)
    expect(Math.min(...heights)).toBeGreaterThanOrEqual(44)
    expect(await overhang(page)).toBe(0)
    await page.locator('#define').getByRole('radio', { name: 'Form' }).check()
  })

  test('a finding that is gone to brings the drawing up', async () => {
    await page.setViewportSize(PHONE)
    await bar().getByRole('button', { name: 'Judge' }).click()
    await page.locator('#judge .note-head', { hasText: 'flap opens upward' }).click()
    await page.locator('#see').waitFor()
    await page.locator('#judge').waitFor({ state: 'hidden' })
  })

  test.each([
    ['a tablet upright', { width: 820, height: 1180 }],
    ['a wide screen', { width: 1920, height: 1080 }],
  ])('%s shows all areas', async (_, screen) => {
    await page.setViewportSize(screen)
    for (const area of AREAS) expect(await page.locator(idOf(area)).isVisible()).toBe(true)
    expect(await overhang(page)).toBe(0)
  })
})
