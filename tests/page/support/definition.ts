import type { Locator, Page } from 'playwright-core'
import { expect } from 'vitest'

/** Shows the definition as text, on a phone too. The field that it stands in, whatever that is made of. */
export async function textField(page: Page): Promise<Locator> {
  const bar = page.locator('.area-bar')
  if (await bar.isVisible()) await bar.getByRole('button', { name: 'Define' }).click()
  await page.locator('#define').getByRole('radio', { name: 'Text' }).check()
  return page.locator('#define .area-body').locator('textarea, [contenteditable="true"]').first()
}

/** Writes another definition in place of the one that is there, as a person who pastes it, and waits for the checks. */
export async function writeDefinition(page: Page, text: string): Promise<void> {
  await (await textField(page)).fill(text)
  await checksAtRest(page)
}

/** Waits until the checks have looked at the text as it stands. */
export async function checksAtRest(page: Page): Promise<void> {
  await page.locator('.findings-count[data-looking="no"]').waitFor({ state: 'attached' })
}

/** The text of the definition as its field shows it; of a short one, that is all of it. */
export async function definitionText(page: Page): Promise<string> {
  const field = await textField(page)
  return field.evaluate((node) =>
    node instanceof HTMLTextAreaElement
      ? node.value
      : [...node.querySelectorAll('.cm-line')].map((line) => line.textContent).join('\n'),
  )
}

/** All of the text of the definition, however long, as the text editor copies it; the editor stays in sight. */
export async function wholeText(page: Page): Promise<string> {
  await (await textField(page)).focus()
  await page.keyboard.press('Control+a')
  // Listened to before the keys are pressed, which take another way into the browser.
  await page.evaluate(() => {
    delete document.body.dataset.copied
    const keep = (event: ClipboardEvent): void => {
      document.body.dataset.copied = event.clipboardData?.getData('text/plain')
    }
    document.addEventListener('copy', keep, { once: true })
  })
  await page.keyboard.press('Control+c')
  const copied = (): Promise<string> => page.evaluate(() => document.body.dataset.copied ?? '')
  await expect.poll(copied, { timeout: 30_000 }).not.toBe('')
  return copied()
}
