import { readFileSync } from 'node:fs'
import { bench, describe } from 'vitest'
import { cursorAtEndOf, pressTimed, spread, watchKeys } from '../page/support/key-timing.ts'
import { browser, openPage } from '../page/support/open-page.ts'
import { workshop } from '../support/workshop.ts'

// Question: from a key press to the new drawing, how much longer does the page take than a browser takes to show a letter
// in a bare text field? The peer is such a field in the same browser, asked in the same way, so that what the asking
// costs is in both. The figures that a person feels are measured in the page itself, and printed: from the moment at
// which the browser took the key until the new drawing stands in the document, and until the frame with it was painted.
const sample = readFileSync(new URL('../../out-samples/pottery-studio.yaml', import.meta.url), 'utf8')
const many = workshop(200)
const PRESSES = 60

async function typist(text: string | undefined, words: string): Promise<(key: string) => Promise<unknown>> {
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
  await watchKeys(page)
  return (key) => pressTimed(page, key)
}

async function figures(name: string, press: (key: string) => Promise<unknown>): Promise<void> {
  const timings: { drawn: number; shown: number }[] = []
  for (let k = 0; k < PRESSES; k += 1) timings.push((await press(k % 2 === 0 ? 'Backspace' : '0')) as never)
  const drawn = spread(timings.map((one) => one.drawn))
  const shown = spread(timings.map((one) => one.shown))
  const words = ({ median, worst }: typeof drawn): string => `${median.toFixed(1)} ms, at worst ${worst.toFixed(1)}`
  process.stdout.write(`${name}: drawn after ${words(drawn)}; painted after ${words(shown)} (median of ${PRESSES})\n`)
}

const studio = await typist(undefined, 'width: 640')
await figures('a key press, pottery studio', studio)
const large = await typist(many, 'width: 600')
await figures('a key press, 200 modules', large)

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
    await press(back ? '0' : 'Backspace')
  }
}

describe('a key press', () => {
  const options = { time: 3000, warmupIterations: 5 }
  bench('until the new drawing is painted, pottery studio', alternately(studio), options)
  bench('until the new drawing is painted, 200 modules', alternately(large), options)
  bench(
    'until the letter is painted, a bare text field',
    alternately((key) => pressTimed(bare, key)),
    options,
  )
})
