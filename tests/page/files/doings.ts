import { readFileSync } from 'node:fs'
import type { Download, Page } from 'playwright-core'
import { SAMPLES } from '../../support/samples.ts'

/** How long a worker may take that draws, ms: machines that test are slow. */
export const LONG = { timeout: 55_000 }

export const sampleFile = (name: string): string => readFileSync(`${SAMPLES}/${name}`, 'utf8')

/** Drops files anywhere on the page, as a person does from their desk. */
export async function drop(
  page: Page,
  files: readonly (readonly [name: string, text: string | number[]])[],
): Promise<void> {
  await page.evaluate((given) => {
    const data = new DataTransfer()
    for (const [name, content] of given) {
      const part = typeof content === 'string' ? content : Uint8Array.from(content)
      data.items.add(new File([part], name))
    }
    const at = document.querySelector('main') ?? document.body
    at.dispatchEvent(new DragEvent('dragover', { dataTransfer: data, bubbles: true, cancelable: true }))
    at.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }))
  }, files)
}

/** Opens the studio with some of its text changed, saved work or not. */
export async function openText(page: Page, change: (text: string) => string): Promise<void> {
  await drop(page, [
    ['pottery-studio.yaml', change(sampleFile('pottery-studio.yaml'))],
    ['studio-mark.svg', sampleFile('studio-mark.svg')],
  ])
  await fileState(page, 'pottery-studio.yaml', 'saved')
}

/** Waits until the head says so of the file. */
export async function fileState(page: Page, name: string, words: string): Promise<void> {
  await page.locator('.file-state', { hasText: name }).filter({ hasText: words }).waitFor()
}

/** Waits until the checks have looked at the text that stands there. */
export async function settled(page: Page): Promise<void> {
  await page.locator('.take button.main:enabled').first().waitFor(LONG)
}

/** Opens a part of Take away that is folded. */
export async function unfold(page: Page, words: string): Promise<void> {
  const fold = page.locator('.take details.fold', { has: page.locator(`summary:text-is("${words}")`) }).last()
  if (!(await fold.evaluate((one: HTMLDetailsElement) => one.open))) await fold.locator('summary').first().click()
}

/** Prints a choice of Take away as a browser does that takes the size of each sheet from the page. */
export async function printed(page: Page, choice: string): Promise<Buffer> {
  await page.evaluate(() => {
    window.print = () => document.documentElement.setAttribute('data-asked-to-print', '')
    document.documentElement.removeAttribute('data-asked-to-print')
  })
  await settled(page)
  await unfold(page, 'Print full size')
  await page.getByLabel('What to print').selectOption(choice)
  await page.getByRole('button', { name: 'Draw and count the sheets' }).click()
  await page.getByRole('button', { name: 'Print full size', exact: true, disabled: false }).click(LONG)
  await page.locator('[data-asked-to-print]').waitFor(LONG)
  return page.pdf({ preferCSSPageSize: true })
}

/** What a press brings into the downloads. */
export async function taken(page: Page, press: () => Promise<void>): Promise<{ name: string; bytes: Buffer }> {
  const coming = page.waitForEvent('download', LONG)
  await press()
  const download: Download = await coming
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) }
}
