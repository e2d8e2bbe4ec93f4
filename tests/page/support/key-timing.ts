import type { Page } from 'playwright-core'

/** One key press, ms from the moment at which the browser took it. */
export interface KeyTiming {
  /** The new drawing stands in the document. */
  readonly drawn: number
  /** The frame that shows it has been painted. */
  readonly shown: number
}

interface Timed extends Window {
  timings: KeyTiming[]
}

/** From now on the page notes each key press that a new drawing follows. */
export async function watchKeys(page: Page): Promise<void> {
  await page.evaluate(() => {
    const timed = window as unknown as Timed
    timed.timings = []
    let pressed: number | undefined
    window.addEventListener(
      'keydown',
      (event) => {
        pressed = event.timeStamp
      },
      { capture: true },
    )
    new MutationObserver(() => {
      if (pressed === undefined) return
      const from = pressed
      pressed = undefined
      const drawn = performance.now() - from
      requestAnimationFrame(() => {
        // A message that is posted while a frame is made is heard right after that frame.
        const { port1, port2 } = new MessageChannel()
        port1.onmessage = () => timed.timings.push({ drawn, shown: performance.now() - from })
        port2.postMessage(undefined)
      })
    }).observe(document.body, { subtree: true, attributes: true, attributeFilter: ['data-drawn'] })
  })
}

/** Presses a key where the focus is, and waits until the drawing that it changes is shown. */
export async function pressTimed(page: Page, key: string): Promise<KeyTiming> {
  const before = await page.evaluate(() => (window as unknown as Timed).timings.length)
  await page.keyboard.press(key)
  const handle = await page.waitForFunction((count) => (window as unknown as Timed).timings[count], before, {
    polling: 5,
  })
  const timing = (await handle.jsonValue()) as KeyTiming | undefined
  if (timing === undefined) throw new Error('a key press was not timed')
  return timing
}

/** Puts the cursor of the text editor at the end of a line that holds nothing but these words, by keyboard alone. */
export async function cursorAtEndOf(page: Page, text: string, words: string): Promise<void> {
  const line = text.split('\n').findIndex((one) => one.trim() === words)
  if (line < 0) throw new Error(`no line says ${words}`)
  await page.getByRole('radio', { name: 'Text' }).check({ force: true })
  await page.locator('.cm-content').focus()
  await page.keyboard.press('Control+Home')
  for (let k = 0; k < line; k += 1) await page.keyboard.press('ArrowDown')
  await page.keyboard.press('End')
}

/** The value in the middle, and the largest. */
export function spread(values: readonly number[]): { readonly median: number; readonly worst: number } {
  const sorted = [...values].sort((a, b) => a - b)
  const median = sorted[sorted.length >> 1]
  const worst = sorted.at(-1)
  if (median === undefined || worst === undefined) throw new Error('nothing was timed')
  return { median, worst }
}
