import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { choose, lookAtPanel, redrawn, settled, wordsOf } from './drawing/drawn.ts'
import { settled as checked, drop, fileState, printed, sampleFile, taken, unfold } from './files/doings.ts'
import { inOneChain } from './support/chain.ts'
import { wholeText, writeDefinition } from './support/definition.ts'
import { DESK, type OpenPage, openPage } from './support/open-page.ts'

/** Pins 17 deep in boards of 18 leave 1 of wood: a stop at each of them. The other module has none. */
const TOO_DEEP = `storyrod: 1
stock: { board: { thickness: 18, sheet: [2500, 1250] } }
hardware:
  pin 5: { hole depth: 17 }
modules:
  plain: { width: 600, depth: 400, carcase height: 336, stock: board }
  shelved:
    width: 600
    depth: 400
    carcase height: 720
    stock: board
    inside:
      loose shelves: 1
`

inOneChain()

let desk: OpenPage
let page: Page

beforeAll(async () => {
  desk = await openPage(DESK)
  page = desk.page
})
afterAll(() => desk.close())

const middle = async (): Promise<{ x: number; y: number }> => {
  const box = await page.locator('svg[data-drawn]').boundingBox()
  if (box === null) throw new Error('no drawing')
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 }
}
const doneSteps = (): Promise<number> => page.locator('.first-look li.done').count()

test('a module is pressed in its middle, hole or not: the first look ticks it off, and the form shows it', async () => {
  await redrawn(page, () => page.getByLabel('module', { exact: true }).selectOption({ label: 'tool locker' }))
  expect(await doneSteps()).toBe(0)
  const { x, y } = await middle()
  await page.mouse.click(x, y)
  await expect.poll(doneSteps).toBeGreaterThan(0)
  expect(await page.locator('#define').getByLabel('Module shown here').inputValue()).toBe('tool locker')
})

test('a hole that is pressed brings its panel with it', async () => {
  await page.getByRole('radio', { name: 'Front', exact: true }).check({ force: true })
  await choose(page, 'Off')
  await settled(page)
  for (let k = 0; k < 4; k += 1) await page.getByRole('button', { name: 'Nearer' }).click()
  const rim = await page
    .locator('svg[data-drawn] .rim')
    .first()
    .evaluate((path) => {
      if (!(path instanceof SVGPathElement)) throw new Error('no rim')
      const at = path.getPointAtLength(0).matrixTransform(path.getScreenCTM() ?? undefined)
      const paper = path.ownerSVGElement?.getBoundingClientRect()
      return {
        x: at.x - ((paper?.left ?? 0) + (paper?.width ?? 0) / 2),
        y: at.y - ((paper?.top ?? 0) + (paper?.height ?? 0) / 2),
      }
    })
  // It is pulled to the middle of the sheet, wherever it was.
  const { x, y } = await middle()
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x - rim.x, y - rim.y, { steps: 3 })
  await page.mouse.up()
  const at = await page
    .locator('svg[data-drawn] .rim')
    .first()
    .evaluate((path) => {
      if (!(path instanceof SVGPathElement)) throw new Error('no rim')
      const point = path.getPointAtLength(0).matrixTransform(path.getScreenCTM() ?? undefined)
      return { x: point.x, y: point.y }
    })
  await page.mouse.click(at.x, at.y)
  await page.getByRole('region', { name: 'The hole' }).waitFor()
  await expect.poll(() => wordsOf(page.locator('.sheet-list [role="option"]'))).toMatch(/^tool locker: .+: .+ mm from /)
  await page.keyboard.press('Escape')
  await page.keyboard.press('Escape')
  await page.getByRole('button', { name: 'Fit' }).click()
})

test('an opening that is pressed from the front is chosen in the form', async () => {
  await redrawn(page, () => page.getByLabel('module', { exact: true }).selectOption({ label: 'bucket bay' }))
  const box = await page.locator('svg[data-drawn] .part.opening').first().boundingBox()
  if (box === null) throw new Error('no opening')
  await page.mouse.click(box.x + box.width / 2, box.y + box.height / 3)
  expect(await wordsOf(page.locator('.foot-strip'))).toMatch(/^opening .* Change it in Define/)
  const chosen = page.locator('#define .opening[aria-pressed="true"]')
  await chosen.waitFor()
  expect(await chosen.getAttribute('data-path')).toBe('["modules","bucket bay","inside"]')
  expect(await page.locator('#define').getByLabel('Module shown here').inputValue()).toBe('bucket bay')
})

// One shelf more at each press, from none, and never the second press for the same one: 3. Then two modules more: 9 + 2.
test('presses that follow each other at once all count', async () => {
  const define = page.locator('#define')
  await define.getByRole('button', { name: 'one more: loose shelves' }).click({ clickCount: 3, delay: 0 })
  expect(await define.getByLabel('loose shelves', { exact: true }).inputValue()).toBe('3')
  await define.getByRole('button', { name: 'Add a module' }).click({ clickCount: 2, delay: 0 })
  expect(await define.getByLabel('Module shown here').locator('option').count()).toBe(11)
  for (let k = 0; k < 5; k += 1) await page.getByRole('button', { name: 'Undo' }).click()
  expect(await wholeText(page)).toBe(sampleFile('pottery-studio.yaml'))
})

test('a finding leads to its place and its line, and its flag back to it', async () => {
  await writeDefinition(page, TOO_DEEP)
  await page.locator('#see').getByRole('listbox').waitFor()
  const note = page.locator('#judge .note', { hasText: 'leaves only 1 mm of wood' }).first()
  await note.locator('.note-head').click()
  await page.getByRole('listbox', { name: /shelved: (left|right) side, face A/ }).waitFor()
  await page.locator('.ring.place').first().waitFor({ state: 'attached' })
  await page.locator('#define .cm-activeLine', { hasText: 'shelved:' }).waitFor()
  // The focus is elsewhere, and the flag brings it back to the note.
  await page.getByRole('listbox').focus()
  await page.locator('#see .flag.stop').first().click()
  const hasFocus = (): Promise<boolean> =>
    note.locator('.note-head').evaluate((head) => head === document.activeElement)
  await expect.poll(hasFocus).toBe(true)
  expect(await note.getAttribute('aria-current')).toBe('true')
})

// What was pressed and judged above is part of it: it is the same page, of which nobody has yet asked what went wrong.
test('a whole session: opened, typed, seen, taken, printed, saved; no request leaves and nothing is amiss', async () => {
  await page.evaluate(() => Object.assign(window, { showSaveFilePicker: undefined, showOpenFilePicker: undefined }))
  await drop(page, [['cart.yaml', sampleFile('clay-cart.yaml')]])
  await page.getByRole('dialog').getByRole('button', { name: 'Go on without saving' }).click()
  await fileState(page, 'cart.yaml', 'saved')
  await page.locator('#define .cm-content').focus()
  await page.keyboard.press('Control+End')
  await page.keyboard.type('# mine\n')
  await fileState(page, 'cart.yaml', 'not saved')
  await page.locator('#define').getByRole('radio', { name: 'Form' }).check()
  await redrawn(page, () => page.locator('#define').getByLabel('width', { exact: true }).first().fill('601 mm'))
  await page.getByLabel('module', { exact: true }).selectOption('')
  await page.getByRole('radio', { name: 'Floor plan' }).check({ force: true })
  await page.getByRole('listbox', { name: /floor/i }).waitFor()
  const cart = page.getByLabel('module', { exact: true })
  await redrawn(page, () => cart.selectOption({ index: 1 }))
  const name = (await cart.locator('option:checked').textContent()) ?? ''
  await choose(page, 'Isometric')
  await choose(page, 'Front')
  await lookAtPanel(page, name, 'left side')
  await choose(page, 'Facing pair')
  await checked(page)
  const all = await taken(page, () => page.locator('.take button.main').first().click())
  expect(all.name).toMatch(/\.zip$/)
  await unfold(page, 'Print full size')
  const [choice = ''] = await page
    .getByLabel('What to print')
    .locator('option')
    .evaluateAll((options) => options.map((option) => (option instanceof HTMLOptionElement ? option.value : '')))
  expect((await printed(page, choice)).subarray(0, 5).toString('latin1')).toBe('%PDF-')
  const saved = await taken(page, () => page.getByRole('button', { name: 'Save', exact: true }).click())
  expect(saved.name).toBe('cart.yaml')
  expect(saved.bytes.toString('utf8')).toBe(await wholeText(page))
  expect(saved.bytes.toString('utf8')).toMatch(/width: 601 mm[\s\S]*# mine\n$/)
  await fileState(page, 'cart.yaml', 'saved')
  expect(desk.troubles).toEqual([])
})
