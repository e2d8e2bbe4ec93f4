import type { Locator, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest'
import { parse } from 'yaml'
import { sampleText } from '../../support/samples.ts'
import { wholeText, writeDefinition } from '../support/definition.ts'
import { DESK, type OpenPage, openPage, PHONE } from '../support/open-page.ts'

const STUDIO = sampleText('pottery-studio')

let opened: OpenPage
let page: Page
let form: Locator

async function open(screen: typeof DESK | typeof PHONE): Promise<void> {
  opened = await openPage(screen)
  page = opened.page
  page.setDefaultTimeout(PATIENCE_MS)
  form = page.locator('#define')
  await form.locator('.module-card').waitFor({ state: 'attached' })
}

async function close(): Promise<void> {
  await opened.close()
  expect(opened.troubles).toEqual([])
}

/** A machine that runs many tests at once is slow. */
const PATIENCE_MS = 30_000
const soon = <T>(read: () => Promise<T>) => expect.poll(read, { timeout: PATIENCE_MS })

const showAs = (way: 'Form' | 'Text'): Promise<void> => form.getByRole('radio', { name: way }).check()

/** The whole text of the definition; the form is shown again behind it. */
async function textNow(): Promise<string> {
  const text = await wholeText(page)
  await showAs('Form')
  return text
}

const field = (label: string): Locator => form.locator('.module-card').getByLabel(label, { exact: true }).first()
const press = (name: string): Locator => form.getByRole('button', { name, exact: true })
const definition = async (): Promise<Definition> => parse(await textNow()) as Definition

interface Definition {
  readonly modules: Readonly<Record<string, { readonly width: unknown; readonly inside?: unknown }>>
  readonly 'floor plan': readonly { readonly row: readonly string[] }[]
}

async function undoAll(): Promise<void> {
  const undo = page.getByRole('button', { name: 'Undo' })
  for (let k = 0; k < 40 && (await undo.isEnabled()); k += 1) await undo.click()
}

describe('at a desk', () => {
  beforeAll(() => open(DESK))
  afterAll(close)
  // Each test finds the sample as it was.
  afterEach(async () => {
    await undoAll()
    await form.getByLabel('Module shown here').selectOption('glaze store')
  })

  test('a width is typed as people write it; nothing else of the text changes, and one step takes it back', async () => {
    const width = field('width')
    await soon(() => width.inputValue()).toBe('640')
    await width.fill('')
    await width.pressSequentially('23 7/16"')
    await width.blur()
    expect(await textNow()).toBe(STUDIO.replace('    width: 640\n', '    width: 23 7/16"\n'))
    await page.getByRole('button', { name: 'Undo' }).click()
    expect(await textNow()).toBe(STUDIO)
    await soon(() => field('width').inputValue()).toBe('640')
  })

  test('other units are taken without another size, in one step', async () => {
    await form.locator('summary', { hasText: 'other units, same sizes' }).click()
    await press('Go on in inches').click()
    await soon(() => form.getByLabel('usual sizes', { exact: true }).inputValue()).toBe('mm')
    expect(await form.getByLabel('units', { exact: true }).inputValue()).toBe('in')
    await soon(() => field('width').inputValue()).toBe('640 mm')
    const text = await textNow()
    expect(text).toContain('units: in\nusual sizes: mm\n')
    expect(text).toContain('    width: 640 mm\n')
    await page.locator('.findings-count[data-looking="no"]').waitFor({ state: 'attached' })
    expect(await form.getByText(/^The definition has/).count()).toBe(0)
    await press('Go on in millimetres').click()
    await soon(() => form.getByLabel('units', { exact: true }).inputValue()).toBe('mm')
    await page.getByRole('button', { name: 'Undo' }).click()
    await page.getByRole('button', { name: 'Undo' }).click()
    expect(await textNow()).toBe(STUDIO)
  })

  test('nothing stands below the page, however long the form is', async () => {
    const height = await page.evaluate(() => ({ page: document.documentElement.scrollHeight, screen: innerHeight }))
    expect(height).toEqual({ page: DESK.height, screen: DESK.height })
  })

  test('what is no length says so at its field, and definition and drawing stay', async () => {
    const before = await page.locator('[data-drawn]').first().getAttribute('data-drawn')
    const width = field('width')
    await width.fill('64O')
    expect(await width.getAttribute('aria-invalid')).toBe('true')
    const described = (await width.getAttribute('aria-describedby'))?.split(' ').at(-1)
    expect(await page.locator(`[id="${described}"]`).textContent()).toBe(
      'not a length: a length such as 600, 600 mm, 23 7/16 in; or: as large as fits',
    )
    await width.blur()
    expect(await width.inputValue()).toBe('64O')
    expect(await page.locator('[data-drawn]').first().getAttribute('data-drawn')).toBe(before)
    await width.press('Escape')
    expect(await width.inputValue()).toBe('640')
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true)
  })

  test('an emptied field takes its key out and shows what holds then', async () => {
    await form.getByLabel('Module shown here').selectOption('mould store')
    const height = field('working height')
    await soon(() => height.inputValue()).toBe('815')
    await height.fill('')
    await height.blur()
    await soon(() => field('working height').getAttribute('placeholder')).toBe('from common')
    expect((await definition()).modules['mould store']).not.toHaveProperty('working height')
  })

  test('an opening is pressed, split, and filled with shelves and a door', async () => {
    await form.getByLabel('Module shown here').selectOption('bucket bay')
    await form.getByRole('button', { name: /^the whole inside: empty/ }).click()
    await press('stacked').click()
    await form.getByRole('button', { name: /^bay 2: empty/ }).click()
    await press('one more: loose shelves').click()
    await soon(() => form.getByLabel('loose shelves', { exact: true }).inputValue()).toBe('1')
    await press('one more: loose shelves').click()
    await soon(() => form.getByLabel('loose shelves', { exact: true }).inputValue()).toBe('2')
    await form.getByRole('radio', { name: 'door' }).click()
    await form.getByRole('button', { name: /^bay 2: 2 loose shelves, door/ }).waitFor()
    await form.getByRole('button', { name: /^bay 1: empty/ }).click()
    await field('size (height)').fill('150 mm')
    await form.getByRole('button', { name: /^bay 1: empty, 464.4 mm wide, 150 mm high/ }).waitFor()
    expect((await definition()).modules['bucket bay']?.inside).toEqual({
      stacked: [{ size: '150 mm' }, { 'loose shelves': 2, front: { kind: 'door' } }],
    })
    await undoAll()
    expect(await textNow()).toBe(STUDIO)
  })

  test('all of it by keyboard: to an opening, into it, and split', async () => {
    await form.getByLabel('Module shown here').selectOption('bucket bay')
    const opening = form.getByRole('button', { name: /^the whole inside: empty/ })
    await opening.waitFor()
    await form.getByLabel('stock', { exact: true }).first().focus()
    for (let k = 0; k < 4 && !(await isFocused(opening)); k += 1) await page.keyboard.press('Tab')
    expect(await isFocused(opening)).toBe(true)
    await page.keyboard.press('Enter')
    const split = press('side by side')
    for (let k = 0; k < 8 && !(await isFocused(split)); k += 1) await page.keyboard.press('Tab')
    await page.keyboard.press('Enter')
    await form.getByRole('button', { name: /^bay 2: empty/ }).waitFor()
    await page.keyboard.press('Control+z')
    await opening.waitFor()
  })

  test('a module is added, renamed and removed', async () => {
    await press('Add a module').click()
    await soon(() => field('name').inputValue()).toBe('module')
    await field('name').fill('kiln stand')
    await field('name').press('Enter')
    await soon(() => form.getByLabel('Module shown here').inputValue()).toBe('kiln stand')
    const text = await textNow()
    expect(text).toContain('  kiln stand:')
    expect(text).not.toContain('  module:')
    await press('Remove kiln stand').click()
    expect(await textNow()).toBe(STUDIO)
    await field('name').fill('')
    expect(await field('name').getAttribute('aria-invalid')).toBe('true')
  })

  test('a name that is taken is refused; another goes wherever the module is named', async () => {
    await form.getByLabel('Module shown here').selectOption('tool locker')
    await soon(() => field('name').inputValue()).toBe('tool locker')
    await field('name').fill('glaze store')
    expect(await field('name').getAttribute('aria-invalid')).toBe('true')
    await field('name').fill('first aid')
    await field('name').press('Enter')
    await soon(() => form.getByLabel('Module shown here').inputValue()).toBe('first aid')
    const { modules, 'floor plan': rows } = await definition()
    expect(Object.keys(modules)[3]).toBe('first aid')
    expect(rows[0]?.row).toContain('first aid')
  })

  test('mistakes are said at the head, marked on module and fold, and gone to', async () => {
    await form.getByLabel('Module shown here').selectOption('tool locker')
    await showAs('Text')
    await form.locator('.cm-content').focus()
    await page.keyboard.press('Control+End')
    await page.keyboard.insertText('\nfit:\n  groove: much\n')
    await showAs('Form')
    await form.getByText('The definition has a mistake.').waitFor()
    const fold = form.locator('summary', { hasText: /^kerf, fit, bits/ })
    await soon(() => fold.textContent()).toMatch(/mistake inside/)
    await press('Go to it').click()
    await soon(() => fold.locator('..').getAttribute('open')).not.toBeNull()
    await undoAll()
    await form.getByText('The definition has a mistake.').waitFor({ state: 'detached' })
  })

  test('a mistake at a number with steps is marked there, gone to, and taken back', async () => {
    await writeDefinition(page, STUDIO.replace('- loose shelves: 2\n', '- loose shelves: two\n'))
    await showAs('Form')
    await press('Go to it').click()
    const shelves = form.getByLabel('loose shelves', { exact: true })
    await soon(() => isFocused(shelves)).toBe(true)
    expect([await shelves.getAttribute('aria-invalid'), await shelves.inputValue()]).toEqual(['true', 'two'])
    const described = await shelves.getAttribute('aria-describedby')
    expect(await form.locator(`[id="${described}"]`).textContent()).toBe(
      '"two" is not a number of shelves; expected: a whole number from 1 to 100, or keys such as {count: 2, rear gap: 3}Take it out',
    )
    await shelves.fill('2')
    await shelves.press('Enter')
    await soon(() => shelves.getAttribute('aria-invalid')).toBe('false')
    expect(await textNow()).toBe(STUDIO)
  })

  test('while the text cannot be read the form waits, and says which line to mend', async () => {
    await showAs('Text')
    await form.locator('.cm-content').focus()
    await page.keyboard.press('Control+Home')
    await page.keyboard.type('kerf: "3')
    await showAs('Form')
    await form.getByText(/The form waits: line \d+ of the text cannot be read/).waitFor()
    expect(await field('width').isDisabled()).toBe(true)
    await form.getByRole('button', { name: /^Go to line \d+/ }).click()
    await form.locator('.cm-content').waitFor()
    await undoAll()
    await showAs('Form')
    await soon(() => field('width').isEnabled()).toBe(true)
  })
})

test('on a phone every control has room for a finger, and nothing is wider than the screen', async () => {
  await open(PHONE)
  await page
    .getByRole('navigation')
    .getByRole('button', { name: /^Define/ })
    .click()
  await form.locator('summary', { hasText: /^carcase/ }).tap()
  await form.locator('summary', { hasText: /^floor plan/ }).tap()
  const small = await form.locator('.form').evaluate((root) =>
    [...root.querySelectorAll('button:not(.opening), input:not([type=radio]), select, summary, .switch')]
      .map((one) => ({ what: one.outerHTML.slice(0, 90), box: one.getBoundingClientRect() }))
      .filter(({ box }) => box.height > 0 && (box.height < 43.5 || box.width < 43.5 || box.right > innerWidth))
      .map(({ what, box }) => `${what} ${box.width} × ${box.height}`),
  )
  expect(small).toEqual([])
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(PHONE.width)
  await form.getByRole('button', { name: /^bay 2: 2 loose shelves, pair of doors/ }).tap()
  await form.getByRole('radio', { name: 'none' }).click()
  await form.getByRole('button', { name: /^bay 2: 2 loose shelves, 604/ }).waitFor()
  await close()
})

const isFocused = (one: Locator): Promise<boolean> => one.evaluate((node) => node === document.activeElement)
