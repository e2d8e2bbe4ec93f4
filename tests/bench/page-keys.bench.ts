import { readFileSync } from 'node:fs'
import { pathToFileURL } from 'node:url'
import type { Page } from 'playwright-core'
import { bench, describe } from 'vitest'
import { cursorAtEndOf, type KeyTiming, pressTimed, spread, watchKeys } from '../page/support/key-timing.ts'
import { browser, DESK, openPage } from '../page/support/open-page.ts'
import { pageFile } from '../page/support/page-file.ts'
import { workshopText } from '../support/workshop.ts'

// Question: from a key press to the new drawing, how much longer does the page take than a browser takes to show a letter
// in a bare text field? The peer is such a field in the same browser, asked in the same way, so that what the asking
// costs is in both. The figures that a person feels are measured in the page itself, and printed: from the moment at
// which the browser took the key until the new drawing stands in the document, and until the frame with it was painted.
const sample = readFileSync(new URL('../../out-samples/pottery-studio.yaml', import.meta.url), 'utf8')
const many = workshopText(200)
const PRESSES = 60
const WARMING = 40
const OPENINGS = 5
/** As fast as a fast typist types. */
const TYPED_EVERY_MS = 100

interface Typist {
  readonly page: Page
  readonly press: (key: string) => Promise<KeyTiming>
}

async function typist(text: string | undefined, words: string): Promise<Typist> {
  const { page } = await openPage()
  if (text !== undefined) {
    const drop = await page.evaluateHandle((definition) => {
      const data = new DataTransfer()
      data.items.add(new File([definition], 'many.yaml'))
      return data
    }, text)
    await page.locator('body').dispatchEvent('drop', { dataTransfer: drop })
    await page.getByText('many.yaml').first().waitFor()
  }
  await cursorAtEndOf(page, text ?? sample, words)
  // From now on each key press leaves a size that can be built: `640.` and `640.5` by turns.
  await page.keyboard.press('.')
  await watchKeys(page)
  return { page, press: (key) => pressTimed(page, key) }
}

/** Looks at something else by the title block, and goes on typing where one was. */
async function lookAt({ page }: Typist, cell: 'module' | 'panel', label: string): Promise<void> {
  const before = await page.locator('[data-drawn]').getAttribute('data-drawn')
  await page.getByLabel(cell, { exact: true }).selectOption({ label })
  await page.locator(`[data-drawn]:not([data-drawn="${before}"])`).waitFor()
  await page.locator('.cm-content').focus()
}

/** The longest that the page was kept from hearing a key while somebody typed on without waiting for the drawing. */
async function longestBlocked({ page }: Typist): Promise<number> {
  await page.evaluate(() => {
    const watched = window as unknown as { longest: number }
    watched.longest = 0
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) watched.longest = Math.max(watched.longest, duration)
    }).observe({ entryTypes: ['longtask'] })
  })
  for (let k = 0; k < PRESSES; k += 1) {
    await page.keyboard.press(k % 2 === 0 ? '5' : 'Backspace')
    await page.waitForTimeout(TYPED_EVERY_MS)
  }
  return page.evaluate(() => (window as unknown as { longest: number }).longest)
}

interface Opening {
  /** The picture with which the page begins was painted. */
  readonly picture: number
  /** The page itself stands, with its own drawing, and can be pressed. */
  readonly drawn: number
}

/** From the call of the page, ms; in a browser that has never seen it. */
async function opening(): Promise<Opening> {
  const context = await (await browser()).newContext({ viewport: DESK })
  const page = await context.newPage()
  await page.addInitScript({
    content: `(function look() {
      requestAnimationFrame(() => {
        if (document.querySelector('#page .part') === null) return look()
        const { port1, port2 } = new MessageChannel()
        port1.onmessage = () => { window.picture = performance.now() }
        port2.postMessage(undefined)
      })
    })()
    new MutationObserver((_, watch) => {
      if (document.querySelector('[data-drawn]') === null) return
      window.drawn = performance.now()
      watch.disconnect()
    }).observe(document, { subtree: true, childList: true, attributes: true, attributeFilter: ['data-drawn'] })`,
  })
  await page.goto(pathToFileURL(await pageFile()).href)
  await page.locator('[data-drawn]').waitFor()
  const after = await page.evaluate(() => {
    const { picture, drawn } = window as unknown as Opening
    return { picture, drawn }
  })
  await context.close()
  return after
}

async function figures(name: string, press: (key: string) => Promise<KeyTiming>): Promise<void> {
  // What is compiled while one types the first few keys is no part of what each takes.
  for (let k = 0; k < WARMING; k += 1) await press(k % 2 === 0 ? '5' : 'Backspace')
  const timings: KeyTiming[] = []
  for (let k = 0; k < PRESSES; k += 1) timings.push(await press(k % 2 === 0 ? '5' : 'Backspace'))
  const drawn = spread(timings.map((one) => one.drawn))
  const shown = spread(timings.map((one) => one.shown))
  process.stdout.write(
    `${name}: drawn after ${inWords(drawn)}; painted after ${inWords(shown)} (median of ${PRESSES})\n`,
  )
}

const inWords = ({ median, worst }: ReturnType<typeof spread>): string =>
  `${median.toFixed(1)} ms, at worst ${worst.toFixed(1)}`
const openings: Opening[] = []
for (let k = 0; k < OPENINGS; k += 1) openings.push(await opening())
process.stdout.write(`first picture after ${inWords(spread(openings.map(({ picture }) => picture)))}\n`)
process.stdout.write(`the page itself after ${inWords(spread(openings.map(({ drawn }) => drawn)))}\n`)

const studio = await typist(undefined, 'width: 640')
await figures('a key press, pottery studio, all of it', studio.press)
await lookAt(studio, 'module', 'glaze store')
await figures('a key press, pottery studio, a module', studio.press)
await lookAt(studio, 'panel', 'bottom')
await figures('a key press, pottery studio, a face', studio.press)
await lookAt(studio, 'module', 'all modules')
const large = await typist(many, 'width: 600')
await figures('a key press, 200 modules', large.press)
process.stdout.write(`typing on over 200 modules: blocked for ${(await longestBlocked(large)).toFixed(0)} ms at most\n`)

const bare = await (await browser()).newPage()
await bare.setContent('<textarea autofocus data-drawn="0"></textarea>')
await bare.locator('textarea').focus()
await bare.evaluate(() => {
  const field = document.querySelector('textarea')
  field?.addEventListener('input', () => field.setAttribute('data-drawn', field.value))
})
await watchKeys(bare)

const alternately = (press: (key: string) => Promise<unknown>): (() => Promise<void>) => {
  let back = false
  return async () => {
    back = !back
    await press(back ? '5' : 'Backspace')
  }
}

describe('a key press', () => {
  // A page behind another one is painted when there is nothing else to do.
  const inFront = (page: Page) => ({ time: 3000, warmupIterations: 5, setup: () => page.bringToFront() })
  bench('until the new drawing is painted, pottery studio', alternately(studio.press), inFront(studio.page))
  bench('until the new drawing is painted, 200 modules', alternately(large.press), inFront(large.page))
  bench(
    'until the letter is painted, a bare text field',
    alternately((key) => pressTimed(bare, key)),
    inFront(bare),
  )
})
