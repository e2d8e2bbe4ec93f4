import type { Locator, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest'
import { sampleText } from '../../support/samples.ts'
import { wholeText } from '../support/definition.ts'
import { DESK, type OpenPage, openPage } from '../support/open-page.ts'

const STUDIO = sampleText('pottery-studio')
/** A machine that runs many tests at once is slow. */
const PATIENCE_MS = 30_000

let opened: OpenPage
let page: Page
let form: Locator

beforeAll(async () => {
  opened = await openPage(DESK)
  page = opened.page
  page.setDefaultTimeout(PATIENCE_MS)
  form = page.locator('#define')
  await form.locator('.module-card').waitFor()
})

// Each test finds the sample as it was.
afterEach(async () => {
  const undo = page.getByRole('button', { name: 'Undo' })
  for (let k = 0; k < 40 && (await undo.isEnabled()); k += 1) await undo.click()
  await form.getByLabel('Module shown here').selectOption('glaze store')
})

afterAll(async () => {
  await opened.close()
  expect(opened.troubles).toEqual([])
})

const soon = <T>(read: () => Promise<T>) => expect.poll(read, { timeout: PATIENCE_MS })
const field = (label: string): Locator => form.locator('.module-card').getByLabel(label, { exact: true }).first()
const shown = (): Promise<string> => form.getByLabel('Module shown here').inputValue()
const isFocused = (one: Locator): Promise<boolean> => one.evaluate((node) => node === document.activeElement)

async function textNow(): Promise<string> {
  const text = await wholeText(page)
  await form.getByRole('radio', { name: 'Form' }).check()
  return text
}

test.each(['45,5 cm', '60 cn', '23 7/'])(
  'of %j nothing reaches the definition, not even its beginning',
  async (typed) => {
    const width = field('width')
    await width.fill('')
    await width.pressSequentially(typed)
    await width.press('Tab')
    expect(await width.inputValue()).toBe(typed)
    expect(await width.getAttribute('aria-invalid')).toBe('true')
    expect(await textNow()).toBe(STUDIO)
  },
)

test('what is mended behind that is written, and Escape takes the visit back', async () => {
  const width = field('width')
  await width.fill('')
  await width.pressSequentially('70,')
  await width.press('Backspace')
  expect(await textNow()).toBe(STUDIO.replace('    width: 640\n', '    width: 70\n'))
  await page.getByRole('button', { name: 'Undo' }).click()
  await width.fill('700')
  await width.press('Escape')
  expect(await width.inputValue()).toBe('640')
  expect(await textNow()).toBe(STUDIO)
})

test('undo in the field shows what the definition then says', async () => {
  const width = field('width')
  await width.fill('')
  await width.pressSequentially('600')
  await width.press('Control+z')
  await soon(() => width.inputValue()).toBe('640')
  expect(await isFocused(width)).toBe(true)
  // What never was in the definition is taken back by itself, and nothing else with it.
  await width.fill('610')
  await width.press('Enter')
  await width.fill('61O')
  await width.press('Control+z')
  await soon(() => width.inputValue()).toBe('610')
  expect(await textNow()).toBe(STUDIO.replace('    width: 640\n', '    width: 610\n'))
})

test('from a new name one goes on into the width, by Tab or by a press', async () => {
  await field('name').fill('book box')
  await field('name').press('Enter')
  await page.keyboard.press('Tab')
  await page.keyboard.type('555')
  await soon(shown).toBe('book box')
  expect(await isFocused(field('width'))).toBe(true)
  expect(await field('width').inputValue()).toBe('555')
  expect(await form.getByText('This cannot be changed from the form').count()).toBe(0)
  await field('name').fill('paper box')
  await field('width').click()
  await page.keyboard.press('Control+a')
  await page.keyboard.type('444')
  await soon(shown).toBe('paper box')
  expect(await isFocused(field('width'))).toBe(true)
  expect(await field('width').inputValue()).toBe('444')
  expect(await textNow()).toContain('  paper box:\n    width: 444\n')
})

test('undo of a new name stays with its module, undo of a new module goes back to the one before', async () => {
  await form.getByLabel('Module shown here').selectOption('tool locker')
  await soon(() => field('name').inputValue()).toBe('tool locker')
  await field('name').fill('first aid')
  await field('name').press('Enter')
  await soon(shown).toBe('first aid')
  await page.getByRole('button', { name: 'Undo' }).click()
  await soon(shown).toBe('tool locker')
  await form.getByRole('button', { name: 'Add a module', exact: true }).click()
  await soon(shown).toBe('module')
  await page.getByRole('button', { name: 'Undo' }).click()
  await soon(shown).toBe('tool locker')
})

test('a way out beside a mistake waits until the field is left, so that Tab leads to the next field', async () => {
  const width = field('width')
  const wayOut = form.locator('.module-card').getByRole('button', { name: 'Take it out' })
  await width.fill('0')
  await soon(() => width.getAttribute('aria-invalid')).toBe('true')
  expect(await wayOut.count()).toBe(0)
  await width.press('Tab')
  expect(await isFocused(field('depth'))).toBe(true)
  await wayOut.waitFor()
})

test('what is wrong in one opening is not shown in another', async () => {
  await form.getByLabel('Module shown here').selectOption('bucket bay')
  await form.getByRole('button', { name: /^the whole inside: empty/ }).click()
  await form.getByRole('button', { name: 'side by side', exact: true }).click()
  await form.getByRole('button', { name: /^bay 1: empty/ }).click()
  await field('size (width)').fill('abc')
  await form.getByRole('button', { name: /^bay 2: empty/ }).click()
  await soon(() => field('size (width)').inputValue()).toBe('')
  expect(await field('size (width)').getAttribute('aria-invalid')).toBe('false')
})

test('what a field means stands at the foot of the form while it has the focus, and takes no room in sight else', async () => {
  const note = form.locator('.form-note')
  expect(await note.isVisible()).toBe(false)
  await field('width').focus()
  await soon(() => note.textContent()).toMatch(/^width: Outside width/)
  expect(await note.isVisible()).toBe(true)
  await field('width').blur()
  await soon(() => note.isVisible()).toBe(false)
})
