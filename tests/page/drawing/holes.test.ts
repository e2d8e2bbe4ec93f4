import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { DESK, type OpenPage, openPage, PHONE } from '../support/open-page.ts'
import { choose, lookAtPanel, onScreen, redrawn, rings, settled, wordsOf } from './drawn.ts'

/*
 * The left side of the sample's tool locker, by hand. The module: working height 850, less the worktop 26.5 and the casters
 * 100, is 723.5 high; its bottom goes over, so the sides stand on its 17.8: they are 705.7 long. Depth 560, less the door's
 * 17.8 and the gap of 2: 540.2. On the drawing the top is at the left and the front edge below, so what is b from the
 * bottom and f from the front is at x = 705.7 − b, y = 540.2 − f. Pins stand 37 from the front and on multiples of 32 from
 * the bottom; the ninth is 288 up: x = 417.7, y = 503.2. They are 11 deep, since the sample changes pin 5 to that.
 */
const PIN_9 = [417.7, 503.2] as const
const PIN_10 = [417.7 - 32, 503.2] as const

const card = (page: Page) => page.getByRole('region', { name: 'The hole' })

describe('on a desk', () => {
  let desk: OpenPage
  let page: Page
  beforeAll(async () => {
    desk = await openPage(DESK)
    page = desk.page
    await lookAtPanel(page, 'tool locker', 'left side')
  })
  afterAll(async () => {
    expect(desk.troubles).toEqual([])
    await desk.close()
  })

  // 37 / 25.4 = 1.4567: 1 29/64 is 36.909, so 0.1 remains. 288 / 25.4 = 11.3386: 11 11/32 is 288.131, 0.1 too much.
  test('pointing at a hole tells what it is for, bit, depth and both distances in both units', async () => {
    const at = await onScreen(page, ...PIN_9)
    await page.mouse.move(at.x + 3, at.y - 2)
    await card(page).waitFor()
    const words = await wordsOf(card(page))
    expect(words).toContain('shelf pin 5 deep 11 tool locker: left side, face A, inside')
    expect(words).toContain('from front 37 mm 1 29/64 in + 0.1 mm')
    expect(words).toContain('from bottom 288 mm 11 11/32 in − 0.1 mm')
    const [ring, ...others] = await rings(page, 'chosen')
    expect(others).toEqual([])
    expect(Math.hypot((ring?.x ?? 0) - at.x, (ring?.y ?? 0) - at.y)).toBeLessThan(1)
    expect(await page.locator('svg[data-drawn] .reading.hole-size').allTextContents()).toEqual(['37 mm', '288 mm'])
  })

  // A sheet of 1280 has no room for a card beside the hole: it lies across it, and leaves the most of it.
  test('the card hides neither the hole nor its sizes, and is low', async () => {
    const at = await onScreen(page, ...PIN_9)
    const [box, sheet] = [await card(page).boundingBox(), await page.locator('.drawing-paper').boundingBox()]
    if (box === null || sheet === null) throw new Error('no card')
    const covers = (y: number, height: number): boolean => y + height > box.y && y < box.y + box.height
    expect(covers(at.y - 15, 30)).toBe(false)
    expect(box.height).toBeLessThan(0.4 * sheet.height)
    const readings = page.locator('svg[data-drawn] .reading.hole-size')
    for (const reading of await readings.all()) {
      const size = await reading.boundingBox()
      expect(size === null || covers(size.y, size.height)).toBe(false)
    }
  })

  // The pin's partner is the ninth pin of the right side, which lies mirrored beside it: as high as this one.
  test('its partner is shown on the facing panel, as high across the fold', async () => {
    const at = await onScreen(page, ...PIN_9)
    await page.mouse.click(at.x, at.y)
    await redrawn(page, () => page.getByRole('button', { name: 'Show partner in right side' }).click())
    await page.locator('.ring.partner').waitFor()
    const [own] = await rings(page, 'chosen')
    const [partner, ...others] = await rings(page, 'partner')
    expect(others).toEqual([])
    expect((partner?.y ?? 0) - (own?.y ?? 99)).toBeCloseTo(0, 1)
    expect((partner?.x ?? 0) - (own?.x ?? 0)).toBeGreaterThan(100)
    await redrawn(page, () => page.getByRole('button', { name: 'Back', exact: true }).click())
    await page.keyboard.press('Escape')
  })

  test('arrow keys walk the holes, and what is chosen is read', async () => {
    const sheet = page.getByRole('listbox')
    await sheet.focus()
    const at = await onScreen(page, ...PIN_9)
    await page.mouse.click(at.x, at.y)
    const line = sheet.getByRole('option')
    await expect.poll(() => wordsOf(line)).toContain('288 mm from bottom')
    // To the left is up the side, since its top lies at the left.
    await page.keyboard.press('ArrowLeft')
    await expect
      .poll(() => wordsOf(line))
      .toBe('shelf pin 5 deep 11, 37 mm from front, 320 mm from bottom, face A, inside, 1 partner')
    expect(await sheet.getAttribute('aria-activedescendant')).toBe(await line.getAttribute('id'))
    // The rear row stands 37 before the back, which is 6.4 thick and let in: 540.2 − 6.4 − 37 = 496.8.
    await page.keyboard.press('ArrowUp')
    await expect.poll(() => wordsOf(line)).toContain('496.8 mm from front, 320 mm from bottom')
    await page.keyboard.press('Escape')
    await expect.poll(() => wordsOf(line)).toBe('49 holes; arrow keys walk them')
  })

  test('an operation that is switched off is neither drawn nor found', async () => {
    const pins = page.locator('svg[data-drawn] .rim[data-operation="bore 5 11 shelf pins"]')
    expect(await pins.count()).toBe(1)
    await page.locator('.legend summary').click()
    const row = page.getByRole('checkbox', { name: '22 × 5 deep 11 shelf pin' })
    await row.uncheck()
    expect(await pins.count()).toBe(0)
    await page.locator('.legend summary').click()
    const at = await onScreen(page, ...PIN_9)
    await page.mouse.click(at.x, at.y)
    expect(await rings(page, 'chosen')).toEqual([])
    await page.locator('.legend summary').click()
    await page.getByRole('button', { name: 'All on' }).click()
    expect(await pins.count()).toBe(1)
    await page.locator('.legend summary').click()
  })

  test('two pins are measured 32 mm apart, by pointer near them', async () => {
    await page.getByRole('button', { name: 'Measure' }).click()
    await settled(page)
    const [one, two] = [await onScreen(page, ...PIN_9), await onScreen(page, ...PIN_10)]
    await page.mouse.click(one.x + 2, one.y + 3)
    await page.mouse.click(two.x - 2, two.y + 2)
    const words = async (): Promise<string> => await wordsOf(page.locator('.measure-strip'))
    expect(await words()).toContain('straight 32 mm 1 17/64 in − 0.1 mm across 32 mm')
    expect(await words()).toContain('up 0 mm 0 in')
  })

  test('and by keys, from a pin to the next', async () => {
    const sheet = page.getByRole('listbox')
    await sheet.focus()
    await page.keyboard.press('ArrowLeft')
    await page.keyboard.press('Enter')
    await page.keyboard.press('ArrowLeft')
    await page.keyboard.press('Enter')
    expect(await wordsOf(page.locator('.measure-strip'))).toContain('straight 32 mm')
    await page.keyboard.press('Escape')
    await page.keyboard.press('Escape')
    expect(await page.locator('.measure-strip').count()).toBe(0)
  })
})

/*
 * A drawing is not coloured by the system as words are. With the light page chosen on a system that writes white on black, its
 * ink would be black on black.
 */
test('where the system sets all colours, ink and paper of the drawing are its own, whatever is chosen here', async () => {
  const { page, close } = await openPage(DESK, { forcedColors: 'active', colorScheme: 'dark' })
  await lookAtPanel(page, 'tool locker', 'left side')
  const at = await onScreen(page, ...PIN_9)
  await page.mouse.click(at.x, at.y)
  await page.locator('.reading.hole-size').first().waitFor()
  for (const theme of ['light', 'dark', undefined]) {
    const colours = await page.evaluate((chosen) => {
      if (chosen === undefined) delete document.documentElement.dataset.theme
      else document.documentElement.dataset.theme = chosen
      const probe = document.createElement('i')
      document.body.append(probe)
      const system = (name: string): string => {
        probe.style.color = name
        return getComputedStyle(probe).color
      }
      const of = (selector: string, property: 'stroke' | 'fill'): string => {
        const element = document.querySelector(`svg[data-drawn] ${selector}`)
        return element === null ? 'nothing drawn' : getComputedStyle(element)[property]
      }
      const found = {
        ink: system('CanvasText'),
        paper: system('Canvas'),
        outline: of('.part.panel', 'stroke'),
        board: of('.part.panel', 'fill'),
        reading: of('.reading', 'fill'),
        ringsDiffer: of('.ring.chosen', 'stroke') !== system('Canvas'),
      }
      probe.remove()
      return found
    }, theme)
    const { ink, paper } = colours
    expect(ink).not.toBe(paper)
    expect(colours).toEqual({ ink, paper, outline: ink, board: paper, reading: ink, ringsDiffer: true })
  }
  await close()
})

describe('under a finger', () => {
  let phone: OpenPage
  let page: Page
  beforeAll(async () => {
    phone = await openPage(PHONE)
    page = phone.page
    await lookAtPanel(page, 'tool locker', 'left side')
  })
  afterAll(async () => {
    expect(phone.troubles).toEqual([])
    await phone.close()
  })

  test('a tap tells of the hole across the sheet opposite it, and nothing moves under the finger', async () => {
    const before = await onScreen(page, ...PIN_9)
    // A finger hits a little off.
    await page.touchscreen.tap(before.x + 2, before.y + 6)
    await card(page).waitFor()
    expect(await wordsOf(card(page))).toContain('from bottom 288 mm')
    await expect.poll(async () => (await rings(page, 'chosen')).length).toBe(1)
    const box = await card(page).boundingBox()
    const [ring] = await rings(page, 'chosen')
    // The pin is low on the sheet, so the card lies at its head.
    expect(ring?.y ?? 0).toBeGreaterThan((box?.y ?? 999) + (box?.height ?? 0))
    expect(ring?.y).toBeCloseTo(before.y, 0)
    expect(box?.width ?? 0).toBeGreaterThan(300)
  })

  test('a tap elsewhere lets go', async () => {
    const blank = await onScreen(page, 450, 330)
    await page.touchscreen.tap(blank.x, blank.y)
    expect(await card(page).count()).toBe(0)
  })

  // Two fingers 100 px apart that go to 200 px: twice as large, about the middle between them.
  test('two fingers pinch it', async () => {
    const middle = await onScreen(page, 350, 270)
    const wide = async (): Promise<number> => (await onScreen(page, 450, 270)).x - (await onScreen(page, 350, 270)).x
    const before = await wide()
    const hand = await page.context().newCDPSession(page)
    const touch = async (type: 'touchStart' | 'touchMove' | 'touchEnd', apart: number): Promise<void> => {
      const touchPoints = [-apart / 2, apart / 2].map((off, id) => ({ id, x: middle.x + off, y: middle.y }))
      await hand.send('Input.dispatchTouchEvent', { type, touchPoints: type === 'touchEnd' ? [] : touchPoints })
    }
    await touch('touchStart', 100)
    for (const apart of [120, 160, 200]) await touch('touchMove', apart)
    await touch('touchEnd', 0)
    await expect.poll(async () => (await wide()) / before).toBeCloseTo(2, 1)
    expect((await onScreen(page, 350, 270)).x).toBeCloseTo(middle.x, -1)
    await page.getByRole('button', { name: 'Fit' }).click()
  })

  test('every press is large enough for a finger', async () => {
    const small = await page.locator('.drawing :is(button, select, summary):visible').evaluateAll((all) =>
      all.flatMap((press) => {
        const { width, height } = press.getBoundingClientRect()
        return width < 44 || height < 44 ? [`${press.textContent} ${width} × ${height}`] : []
      }),
    )
    expect(small).toEqual([])
  })

  test('nothing of it is wider than the screen', async () => {
    await choose(page, 'Facing pair')
    const right = await page
      .locator('.drawing :is(button, select, input, summary, .cell, .drawing-paper):visible')
      .evaluateAll((all) => Math.max(...all.map((one) => one.getBoundingClientRect().right)))
    expect(right).toBeLessThanOrEqual(PHONE.width)
  })
})
