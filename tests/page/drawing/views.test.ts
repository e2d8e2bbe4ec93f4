import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { sceneOf } from '../../../src/page/scene/index.ts'
import { laidSample } from '../scene/laid.ts'
import { DESK, type OpenPage, openPage } from '../support/open-page.ts'
import { choose, lookAtPanel, onScreen, redrawn, rings, wordsOf } from './drawn.ts'

let desk: OpenPage
let page: Page
beforeAll(async () => {
  desk = await openPage(DESK)
  page = desk.page
})
afterAll(async () => {
  expect(desk.troubles).toEqual([])
  await desk.close()
})

const paper = async (): Promise<{ x: number; y: number; width: number; height: number }> => {
  const box = await page.locator('.drawing-paper').boundingBox()
  if (box === null) throw new Error('no paper')
  return box
}
/** Width of all that is drawn, CSS px. */
const widthOfParts = (): Promise<number> =>
  page.locator('svg[data-drawn] .parts').evaluate((parts) => parts.getBoundingClientRect().width)
/** The same in mm. */
const widthOfDrawing = (): Promise<number> =>
  page.locator('svg[data-drawn] .parts').evaluate((parts) => (parts instanceof SVGGElement ? parts.getBBox().width : 0))

test('first one sees all of it, and panels go apart', async () => {
  expect(await page.getByLabel('module', { exact: true }).inputValue()).toBe('')
  const together = await widthOfDrawing()
  await redrawn(page, () => page.getByRole('slider', { name: 'apart' }).fill('20'))
  expect(await widthOfDrawing()).toBeGreaterThan(1.2 * together)
  await redrawn(page, () => page.getByRole('button', { name: 'Turn by a quarter' }).click())
  await redrawn(page, () => page.getByRole('slider', { name: 'apart' }).fill('0'))
})

test('a module in the floor plan: pressed once it is named, then one goes to its front', async () => {
  await choose(page, 'Floor plan')
  // The floor is drawn from above; the name of a module stands in the middle of its footprint.
  const name = page.locator('svg[data-drawn] .word.name', { hasText: 'bucket bay' })
  const box = await name.boundingBox()
  if (box === null) throw new Error('the bucket bay has no name')
  await page.mouse.click(box.x + box.width / 2, box.y + box.height + 8)
  expect(await wordsOf(page.locator('.foot-strip strong'))).toBe('bucket bay')
  await redrawn(page, () => page.getByRole('button', { name: 'See its front' }).click())
  expect(await page.getByLabel('module', { exact: true }).inputValue()).toBe('bucket-bay')
  expect(await page.getByRole('radio', { name: 'Front' }).isChecked()).toBe(true)
})

test('doors are on, off or open', async () => {
  await redrawn(page, () => page.getByLabel('module', { exact: true }).selectOption({ label: 'tool locker' }))
  const fronts = page.locator('svg[data-drawn] .part.front')
  const pins = page.locator('svg[data-drawn] .rim[data-operation="bore 5 11 shelf pins"]')
  // One door hides all that is inside; without it the rows of pins are seen from the front.
  expect(await fronts.count()).toBe(1)
  expect(await pins.count()).toBe(0)
  await choose(page, 'Off')
  expect(await fronts.count()).toBe(0)
  expect(await pins.count()).toBe(1)
  await choose(page, 'Open')
  expect(await pins.count()).toBe(1)
})

/** The middle of what is drawn, mm, of the rectangle that one part of a scene is. */
function middleOf(doors: 'on' | 'off', key: string): readonly [number, number] {
  const scene = sceneOf(laidSample('pottery-studio'), { kind: 'front', module: 'tool-locker', doors })
  const corners = scene.parts
    .find((part) => part.key === key)
    ?.d.match(/-?[\d.]+/g)
    ?.map(Number)
  if (corners?.length !== 8) throw new Error(`${key} is no rectangle`)
  const [left = 0, top = 0, , , right = 0, bottom = 0] = corners
  return [(left + right) / 2, (top + bottom) / 2]
}

// The door covers both openings. 60 under the middle of a loose shelf there is nothing but the opening, and the back behind it.
test('what one sees from the front is what one presses: door, shelf, and an opening where there is only air', async () => {
  const pressed = async (doors: 'on' | 'off', key: string, down = 0): Promise<string> => {
    const [x, y] = middleOf(doors, key)
    const at = await onScreen(page, x, y + down)
    await page.mouse.move(at.x, at.y)
    const read = await page.locator('svg[data-drawn] > title').textContent()
    await page.mouse.click(at.x, at.y)
    return `${read}; ${await wordsOf(page.locator('.foot-strip strong'))}`
  }
  await choose(page, 'On')
  expect(await pressed('on', 'opening 1')).toBe('door, hinged at its left edge; tool locker: door')
  await choose(page, 'Off')
  expect(await pressed('off', 'tool-locker/shelf-1')).toBe('shelf 1; tool locker: shelf 1')
  expect(await pressed('off', 'tool-locker/shelf-1', 60)).toMatch(/^(opening [\d.]+ × [\d.]+); \1$/)
  await page.keyboard.press('Escape')
})

test('keys walk the panels of a module and go to a face; back leads back', async () => {
  await redrawn(page, () => page.getByRole('radio', { name: 'Isometric' }).check({ force: true }))
  await page.getByRole('listbox').focus()
  await page.keyboard.press('n')
  const picked = await wordsOf(page.locator('.foot-strip strong'))
  expect(picked).toMatch(/^tool locker: /)
  expect(await page.locator('svg[data-drawn] .lit').getAttribute('d')).toMatch(/^M/)
  await redrawn(page, () => page.keyboard.press('Enter'))
  expect(await wordsOf(page.locator('.title-block .drawn'))).toContain(`${picked}, face A`)
  await redrawn(page, () => page.keyboard.press('Backspace'))
  expect(await page.getByRole('radio', { name: 'Isometric' }).isChecked()).toBe(true)
})

test('the wheel zooms where the pointer is; pulling moves; Fit shows all again', async () => {
  await lookAtPanel(page, 'tool locker', 'left side')
  const middle = await onScreen(page, 300, 200)
  // A browser tells the place of a wheel in whole px, so it is turned at one: x0 + s x and y0 + s y for a scale of s.
  const fit = { x: Math.round(middle.x), y: Math.round(middle.y) }
  const scale = (await onScreen(page, 301, 200)).x - middle.x
  const point = [300 + (fit.x - middle.x) / scale, 200 + (fit.y - middle.y) / scale] as const
  const width = await widthOfParts()
  await page.mouse.move(fit.x, fit.y)
  await page.mouse.wheel(0, -420)
  // 420 px of the wheel are a factor of e.
  await expect.poll(async () => (await widthOfParts()) / width).toBeCloseTo(Math.E, 1)
  const near = await onScreen(page, ...point)
  expect(near.x).toBeCloseTo(fit.x, 1)
  expect(near.y).toBeCloseTo(fit.y, 1)

  await page.mouse.down()
  await page.mouse.move(fit.x - 40, fit.y + 25, { steps: 4 })
  await page.mouse.up()
  const moved = await onScreen(page, ...point)
  expect(moved.x - near.x).toBeCloseTo(-40, 0)
  expect(moved.y - near.y).toBeCloseTo(25, 0)

  await page.getByRole('button', { name: 'Fit' }).click()
  const { x, y, width: paperWidth, height } = await paper()
  const [left, right] = [await onScreen(page, 0, 0), await onScreen(page, 705.7, 540.2)]
  expect(left.x > x && left.y > y && right.x < x + paperWidth && right.y < y + height).toBe(true)
})

test('typing does not move what is looked at, and a broken definition keeps its last good drawing', async () => {
  await page.getByRole('listbox').focus()
  await page.keyboard.press('+')
  const before = await onScreen(page, 300, 200)
  await page.getByRole('radio', { name: 'Text' }).check({ force: true })
  const editor = page.locator('#define').locator('textarea, .cm-content').first()
  await editor.focus()
  await page.keyboard.press('Control+End')
  await redrawn(page, () => page.keyboard.insertText('\n# as it is\n'))
  expect(await onScreen(page, 300, 200)).toEqual(before)

  await page.keyboard.insertText('\nmodules 5: [\n')
  await page.locator('.last-good').waitFor()
  const [strip, paper] = await Promise.all(
    ['.last-good', '.drawing-paper'].map((one) => page.locator(one).first().boundingBox()),
  )
  expect((strip?.y ?? 0) + (strip?.height ?? 0)).toBeLessThanOrEqual((paper?.y ?? 0) + 1)
  expect(await wordsOf(page.locator('.last-good'))).toMatch(
    /^Last good drawing: the definition has (a mistake|\d+ mistakes)/,
  )
  expect(await page.locator('svg[data-drawn] .part.panel').count()).toBe(1)
  await page.getByRole('button', { name: 'Undo' }).click()
  await page.locator('.last-good').waitFor({ state: 'detached' })
})

/*
 * Pins 17 deep in a board of 18 leave 1: a stop at each of them. The rows are 37 from the front and 37 from the back, which
 * is a board of 18 on the edges: the sides are 560 − 18 = 542 deep. They are 720 long; the uppermost pin, the first that is
 * found, is 608 from the bottom. The drawing has the top at the left: x = 720 − 608 = 112, y = 542 − 37 = 505.
 */
const FIRST_PIN = [112, 505] as const
const TOO_DEEP = `storyrod: 1
stock:
  ply: { thickness: 18, sheet: [2500, 1250], grain: along length }
hardware:
  pin 5: { hole depth: 17 }
modules:
  locker:
    stock: ply
    width: 600
    depth: 560
    carcase height: 720
    inside: { loose shelves: 1 }
`

test('a finding is flagged where it is and leads to its note, which leads to the place', async () => {
  const editor = page.locator('#define').locator('textarea, .cm-content').first()
  await editor.focus()
  await page.keyboard.press('Control+a')
  await redrawn(page, () => page.keyboard.insertText(TOO_DEEP))
  await redrawn(page, () => page.getByLabel('panel', { exact: true }).selectOption({ label: 'left side' }))
  const flag = page.locator('.flag').first()
  await flag.waitFor()
  expect(await flag.getAttribute('aria-label')).toContain('leaves only 1 mm of wood behind it')
  expect(await flag.getAttribute('class')).toBe('flag stop')
  await page.getByRole('listbox').focus()
  await page.keyboard.press('f')
  expect(await flag.evaluate((one) => one === document.activeElement)).toBe(true)
  await page.keyboard.press('Enter')
  await page.locator('#judge li[aria-current="true"]').waitFor()

  // From elsewhere, the note of the finding turns the drawing to that face and rings the place.
  await choose(page, 'Facing pair')
  await redrawn(page, () => page.locator('#judge .note-head').first().click())
  expect(await page.getByRole('radio', { name: 'Face A' }).isChecked()).toBe(true)
  const [ring, ...others] = await rings(page, 'place')
  expect(others).toEqual([])
  const pin = await onScreen(page, ...FIRST_PIN)
  expect(Math.hypot((ring?.x ?? 0) - pin.x, (ring?.y ?? 0) - pin.y)).toBeLessThan(1)
})
