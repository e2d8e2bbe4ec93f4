import type { Page } from 'playwright-core'

/** One key press, ms from the moment at which the browser took it. */
export interface KeyTiming {
  /** The new drawing stands in the document. */
  readonly drawn: number
  /** The frame that shows it has been painted. */
  readonly shown: number
}

interface Timed extends Window {
  /** Hears of the next timing. */
  hearTiming?: (timing: KeyTiming) => void
}

/** From now on the page notes each key press that a new drawing follows. */
export async function watchKeys(page: Page): Promise<void> {
  await page.evaluate(() => {
    const timed = window as unknown as Timed
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
        port1.onmessage = () => timed.hearTiming?.({ drawn, shown: performance.now() - from })
        port2.postMessage(undefined)
      })
    }).observe(document.body, { subtree: true, attributes: true, attributeFilter: ['data-drawn'] })
  })
}

/** How long a drawing is waited for, ms: a key that leaves nothing that can be drawn would be waited for without end. */
const PATIENCE_MS = 20_000

/** Presses a key where the focus is, and waits until the drawing that it changes is shown. To ask again and again would take part in what is timed. */
export async function pressTimed(page: Page, key: string): Promise<KeyTiming> {
  const heard = page.evaluate(
    (patience) =>
      new Promise<KeyTiming>((resolve, reject) => {
        const giveUp = setTimeout(() => reject(new Error('no new drawing follows the key')), patience)
        const timed = window as unknown as Timed
        timed.hearTiming = (timing) => {
          clearTimeout(giveUp)
          resolve(timing)
        }
      }),
    PATIENCE_MS,
  )
  const [timing] = await Promise.all([heard, page.keyboard.press(key)])
  return timing
}

/** Puts the cursor of the text editor at the end of the first line that holds nothing but these words, by keyboard alone. */
export async function cursorAtEndOf(page: Page, text: string, words: string): Promise<void> {
  const lines = text.split('\n')
  const line = lines.findIndex((one) => one.trim() === words)
  if (line < 0) throw new Error(`no line says ${words}`)
  await page.getByRole('radio', { name: 'Text' }).check({ force: true })
  await page.locator('.cm-content').focus()
  await page.keyboard.press('Control+Home')
  const active = page.locator('.cm-activeLine')
  // A long line may be shown as several: then more presses are needed than there are lines.
  for (let k = 0; k < lines.length; k += 1) {
    if (k >= line && (await active.textContent())?.trim() === words) break
    await page.keyboard.press('ArrowDown')
  }
  if ((await active.textContent())?.trim() !== words) throw new Error(`the cursor does not come to ${words}`)
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
